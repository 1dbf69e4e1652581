// Coverage: which places an ensemble leaves bare where it faces the patient, what a donning leaves open and a doffing
// leaves on, and whether a doffing undoes what its donning did. A place left bare on purpose is declared in the file and
// stays a note.
import type { Compiled } from '../contacts/interpret.ts';
import type { Performed } from '../contacts/performed.ts';
import { type Body, barePlaces, type Layer, overlap } from '../contacts/body.ts';
import { facedPatient } from '../contacts/start.ts';
import { type ItemId, itemKind } from '../domain/items.ts';
import { type Place, PLACES, placeName } from '../domain/places.ts';
import { techniquesFor } from '../domain/techniques/index.ts';
import { acceptanceFor } from './acceptance.ts';
import type { Finding, FindingCode } from './finding.ts';

/** Shoes are wiped, not covered, in some ensembles: feet and soles are judged as surfaces instead. */
const MEANT: readonly Place[] = PLACES.filter((place) => !['foot', 'sole'].includes(placeName(place)));

const EMPTY = { events: [], route: [], mends: [] } as const;

interface Facing {
  readonly body: Body;
  readonly step: number;
}

/** Walks into a zone on the patient's side, or about in it. */
const entersTo = ({ procedure }: Compiled, { step, before, after }: Performed, person: string): boolean => {
  const zone = after.bodies[person]?.zone;
  const moved = zone !== before.bodies[person]?.zone || (step.action === 'move' && step.who === person);
  return moved && procedure.zones.some(({ id, side }) => id === zone && side === 'patient');
};

/**
 * When a wearer, or who else starts on the patient's side, faces the patient: at a doffing's start, a donning's end, and
 * whenever a step takes them there.
 */
function facing(compiled: Compiled): readonly Facing[] {
  const { performed, procedure, interpreter } = compiled;
  const last = performed.length - 1;
  const { bodies } = interpreter.start.scene;
  return procedure.people
    .filter(({ id }) => bodies[id] && facedPatient(procedure, bodies[id]))
    .flatMap(({ id }) => {
      const entries = performed.flatMap((one, step) =>
        entersTo(compiled, one, id) || (procedure.kind === 'donning' && step === last)
          ? [{ body: one.after.bodies[id], step }]
          : [],
      );
      const start = { body: bodies[id], step: 0 };
      return procedure.kind === 'doffing' || last < 0 ? [start, ...entries] : entries;
    })
    .flatMap(({ body, step }) => (body ? [{ body, step }] : []));
}

/** One finding per wearer and place left bare, where it is first bare. */
function bare(compiled: Compiled): readonly Finding[] {
  const { people, accepted, steps } = compiled.procedure;
  const seen = new Set<string>();
  return facing(compiled).flatMap(({ body, step }) => {
    const declared = people.find((person) => person.id === body.id)?.leavesBare ?? [];
    return barePlaces(body, MEANT).flatMap((place): readonly Finding[] => {
      const surface = `${body.id}.${place}`;
      if (seen.has(surface)) return [];
      seen.add(surface);
      const acceptance = acceptanceFor(accepted, 'coverage.bare', steps[step]?.id, surface);
      return [
        {
          ...EMPTY,
          code: 'coverage.bare',
          kind: 'coverage',
          severity: declared.includes(place) || acceptance ? 'note' : 'error',
          steps: [step],
          surface,
          surfaces: [surface],
          params: { place, person: body.id, declared: declared.includes(place) ? 'yes' : 'no' },
          evidence: ['practice.donning.no-skin-visible'],
          ...(acceptance ? { accepted: acceptance } : {}),
        },
      ];
    });
  });
}

/** People whom the procedure dresses or undresses; wearers always, helpers only where it does. */
const subjects = ({ procedure }: Compiled, action: 'remove' | 'put-on'): readonly string[] =>
  procedure.people
    .filter(
      ({ id, role }) =>
        role === 'wearer' ||
        procedure.steps.some((step) => step.action === action && (step.of ?? step.who) === id),
    )
    .map(({ id }) => id);

const canBeClosed = (item: ItemId): boolean => techniquesFor('fasten', [item]).length > 0;

const isLeft = (layer: Layer, donning: boolean): boolean =>
  donning
    ? !layer.fastened && itemKind(layer.item).closure !== 'none' && canBeClosed(layer.item)
    : !itemKind(layer.item).underneath;

/** What a doffing leaves on at its end, and what a donning put on and never closed. */
function left(compiled: Compiled): readonly Finding[] {
  const { procedure, performed, interpreter } = compiled;
  const donning = procedure.kind === 'donning';
  const code: FindingCode = donning ? 'coverage.left-open' : 'coverage.left-on';
  const bodies = performed.at(-1)?.after.bodies ?? interpreter.start.scene.bodies;
  const acceptance = acceptanceFor(procedure.accepted, code, procedure.steps.at(-1)?.id);
  return subjects(compiled, donning ? 'put-on' : 'remove').flatMap((person) => {
    const layers = bodies[person]?.layers.filter((layer) => isLeft(layer, donning)) ?? [];
    return [...new Set(layers.map(({ item }) => item))].map(
      (item): Finding => ({
        ...EMPTY,
        code,
        kind: 'coverage',
        severity: acceptance ? 'note' : 'error',
        steps: [Math.max(0, performed.length - 1)],
        surfaces: [],
        params: { item, person },
        evidence: [],
        ...(acceptance ? { accepted: acceptance } : {}),
      }),
    );
  });
}

/** Places left bare, one finding per wearer and place; then items left on or left open, one per person and item. */
export const coverage = (compiled: Compiled): readonly Finding[] => [...bare(compiled), ...left(compiled)];

const name = (layer: Layer): string => (layer.side ? `${layer.item} (${layer.side})` : layer.item);
const equipment = (body: Body): readonly Layer[] =>
  body.layers.filter((layer) => !itemKind(layer.item).underneath);

/** Items of one that the other lacks, and overlapping pairs whose order of putting on differs. */
function contradictions(donned: Body, doffing: Body): readonly Readonly<Record<string, string>>[] {
  const [put, assumed] = [equipment(donned), equipment(doffing)];
  const [putNames, assumedNames] = [put.map(name), assumed.map(name)];
  const position = (layer: Layer): number => assumedNames.indexOf(name(layer));
  const missing = assumedNames
    .filter((item) => !putNames.includes(item))
    .map((item) => ({ item, what: 'never-put-on' }));
  const extra = putNames
    .filter((item) => !assumedNames.includes(item))
    .map((item) => ({ item, what: 'never-taken-off' }));
  const common = put.filter((layer) => position(layer) >= 0);
  const swapped = common.flatMap((layer, index) =>
    common
      .slice(index + 1)
      .filter((later) => overlap(layer, later) && position(later) < position(layer))
      .map((later) => ({ item: name(layer), by: name(later), what: 'other-way-round' })),
  );
  return [...missing, ...extra, ...swapped];
}

/** What a doffing assumes against what its donning left, for everybody the donning dresses. Both against any agent. */
export function layering(doffing: Compiled, donning: Compiled): readonly Finding[] {
  const start = doffing.interpreter.start.scene.bodies;
  const end = donning.performed.at(-1)?.after.bodies ?? {};
  const dressed = subjects(donning, 'put-on').flatMap((id) => end[id] ?? []);
  return Object.values(start)
    .flatMap((body) => {
      const donned =
        dressed.find((other) => other.id === body.id) ?? dressed.find((other) => other.role === body.role);
      return donned ? contradictions(donned, body) : [];
    })
    .map(
      (params): Finding => ({
        ...EMPTY,
        code: 'impossible.layering',
        kind: 'impossible',
        severity: 'error',
        steps: [0],
        surfaces: [],
        params,
        evidence: [],
      }),
    );
}
