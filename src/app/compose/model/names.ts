// Names in a file: letters, digits and hyphens, since surfaces are built from them with dots. One name is changed
// wherever it stands, and never to one that is taken.
import { cutName, LONGEST, numberedName } from '../../../domain/lengths.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { floorOf } from '../../../language/context.ts';

/** A name that is free: the base itself, else with the first number that is. */
export function freeName(taken: readonly string[], base: string): string {
  if (!taken.includes(base)) return base;
  for (let n = 2; ; n += 1) {
    const name = numberedName(base, n, LONGEST.zone);
    if (!taken.includes(name)) return name;
  }
}

/** What somebody typed as a name of the file: 'Hand rub 2' is 'hand-rub-2'; empty where nothing is left of it. */
export const nameFrom = (typed: string): string =>
  typed
    .trim()
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^[^\p{L}]+/u, '')
    .replace(/-+$/, '');

export type Named = 'person' | 'zone' | 'fixture';

const namesOf = (procedure: Procedure, is: Named): readonly string[] => [
  ...(is === 'person' ? [...procedure.people.map(({ id }) => id), 'room'] : []),
  ...(is === 'person' ? [] : procedure.fixtures.map(({ id }) => id)),
  ...(is === 'zone' ? procedure.zones.flatMap(({ id }) => [id, floorOf(id)]) : []),
];

/** `wearer.hand.left` with `wearer` renamed; only whole words between dots. */
function resurfaced(surface: string, head: readonly string[], to: readonly string[]): string {
  const words = surface.split('.');
  return head.every((word, index) => words[index] === word)
    ? [...to, ...words.slice(head.length)].join('.')
    : surface;
}

interface Change {
  readonly person: (id: string) => string;
  readonly zone: (id: string) => string;
  readonly fixture: (id: string) => string;
  readonly surface: (id: string) => string;
}

const same = (id: string): string => id;
const swap = (from: string, to: string) => (id: string) => (id === from ? to : id);

function changeOf(is: Named, from: string, to: string): Change {
  if (is === 'person')
    return {
      person: swap(from, to),
      zone: same,
      fixture: same,
      surface: (id) => resurfaced(id, [from], [to]),
    };
  const [old, now] = is === 'zone' ? [floorOf(from), floorOf(to)] : [from, to];
  return {
    person: same,
    zone: is === 'zone' ? swap(from, to) : same,
    fixture: swap(old, now),
    surface: (id) => resurfaced(id, ['room', old], ['room', now]),
  };
}

/** A value at a key that may be absent. */
const mapped = <Key extends string, T extends { readonly [K in Key]?: string }>(
  value: T,
  key: Key,
  change: (id: string) => string,
): T => {
  const held = value[key];
  return held === undefined ? value : { ...value, [key]: change(held) };
};

/** The draft with one name changed everywhere; the draft itself where the new name is empty or taken. */
export function renamed(procedure: Procedure, is: Named, from: string, wanted: string): Procedure {
  const to = cutName(wanted, is === 'zone' ? LONGEST.zone : LONGEST.name);
  if (to === from || to === '' || namesOf(procedure, is).includes(to)) return procedure;
  const { person, zone, fixture, surface } = changeOf(is, from, to);
  return {
    ...procedure,
    people: procedure.people.map((one) => ({ ...one, id: person(one.id), starts: zone(one.starts) })),
    zones: procedure.zones.map((one) => ({ ...one, id: zone(one.id) })),
    fixtures: procedure.fixtures.map((one) => ({ ...one, id: fixture(one.id), zone: zone(one.zone) })),
    start: procedure.start.map((one) => ({ ...one, surface: surface(one.surface) })),
    accepted: procedure.accepted.map((one) => mapped(one, 'surface', surface)),
    steps: procedure.steps.map((step) => ({
      ...mapped(
        mapped(mapped(mapped(step, 'of', person), 'helper', person), 'fixture', fixture),
        'zone',
        zone,
      ),
      who: person(step.who),
    })),
  };
}
