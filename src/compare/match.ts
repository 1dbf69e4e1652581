// Who and what of one procedure is who and what of the other: people by name and role, else by role in the order of the
// file; zones by name, else by side; fixtures by name and kind, else by kind and zone's side. What has no counterpart is
// listed, never guessed: it cannot be compared.
import type { Procedure } from '../domain/procedure.ts';

/** From names of the second procedure to names of the first. */
export interface Match {
  readonly person: ReadonlyMap<string, string>;
  readonly zone: ReadonlyMap<string, string>;
  readonly fixture: ReadonlyMap<string, string>;
}

interface Named {
  readonly id: string;
}

/** By id where the kinds agree, then in order within each kind. */
function paired<Thing extends Named>(
  a: readonly Thing[],
  b: readonly Thing[],
  kindOf: (thing: Thing, of: 'a' | 'b') => string,
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const taken = new Set<string>();
  const pair = (one: Thing, other: Thing): void => {
    found.set(other.id, one.id);
    taken.add(one.id);
  };
  for (const other of b) {
    const one = a.find(({ id }) => id === other.id);
    if (one && kindOf(one, 'a') === kindOf(other, 'b')) pair(one, other);
  }
  for (const other of b) {
    if (found.has(other.id)) continue;
    const one = a.find(
      (candidate) => !taken.has(candidate.id) && kindOf(candidate, 'a') === kindOf(other, 'b'),
    );
    if (one) pair(one, other);
  }
  return found;
}

/** The floors of paired zones are each other's, whatever they are called. */
function withFloors(
  fixture: ReadonlyMap<string, string>,
  zone: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  const floors = [...zone].map(([b, a]) => [`${b}-floor`, `${a}-floor`] as const);
  return new Map([...fixture, ...floors]);
}

const isFloor = ({ id, zone }: { readonly id: string; readonly zone: string }): boolean =>
  id === `${zone}-floor`;

export function matchOf(a: Procedure, b: Procedure): Match {
  const sideOf = (procedure: Procedure, zone: string): string =>
    procedure.zones.find(({ id }) => id === zone)?.side ?? '';
  const zone = paired(a.zones, b.zones, ({ side }) => side);
  const fixture = paired(
    a.fixtures.filter((one) => !isFloor(one)),
    b.fixtures.filter((one) => !isFloor(one)),
    ({ kind, clean, zone: where }, of) => `${kind} ${clean} ${sideOf(of === 'a' ? a : b, where)}`,
  );
  return {
    person: paired(a.people, b.people, ({ role }) => role),
    zone,
    fixture: withFloors(fixture, zone),
  };
}

/** A surface of the second procedure by its name in the first; undefined where its owner has no counterpart there. */
export function surfaceIn(match: Match, surface: string): string | undefined {
  const [owner = '', ...rest] = surface.split('.');
  if (owner !== 'room') {
    const person = match.person.get(owner);
    return person === undefined ? undefined : [person, ...rest].join('.');
  }
  const [id = '', ...part] = rest;
  const fixture = match.fixture.get(id);
  return fixture === undefined ? undefined : ['room', fixture, ...part].join('.');
}

/** What is in one procedure alone: it cannot be compared. */
export interface Gap {
  readonly what: 'person' | 'fixture' | 'kind';
  readonly only: 'a' | 'b';
  readonly id: string;
}

/** People, and the fixtures kept clean, that only one of the two has; and that the two are not of one kind. */
export function gapsOf(a: Procedure, b: Procedure, match: Match): readonly Gap[] {
  const lone = (
    what: 'person' | 'fixture',
    ones: readonly Named[],
    others: readonly Named[],
  ): readonly Gap[] => {
    const known = new Set(match[what].values());
    return [
      ...ones.filter(({ id }) => !known.has(id)).map(({ id }): Gap => ({ what, only: 'a', id })),
      ...others.filter(({ id }) => !match[what].has(id)).map(({ id }): Gap => ({ what, only: 'b', id })),
    ];
  };
  const clean = ({ fixtures }: Procedure): readonly Named[] => fixtures.filter((fixture) => fixture.clean);
  return [
    ...(a.kind === b.kind ? [] : [{ what: 'kind', only: 'b', id: b.kind } as const]),
    ...lone('person', a.people, b.people),
    ...lone('fixture', clean(a), clean(b)),
  ];
}
