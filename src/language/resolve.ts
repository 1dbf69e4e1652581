// A file without errors to a procedure: names resolved, defaults filled in. Total: what could go wrong was reported
// before. A technique stays open where the file leaves it open, so that 'the usual one' keeps its meaning.
import { type Place, placesOf, type PlaceName, PLACES } from '../domain/places.ts';
import type { Acceptance, Person, Procedure, Step } from '../domain/procedure.ts';
import { fixtureKind, type Fixture, type Zone } from '../domain/room.ts';
import { stepItems } from './check-steps.ts';
import { defaultDoer, defaultStart, floorOf, roleOf, UNDERNEATH } from './context.ts';
import type { FileShape, FixtureShape, PersonShape } from './shape.ts';
import type { StepShape } from './shape-steps.ts';

type Defined<T> = { [Key in keyof T]: Exclude<T[Key], undefined> };

/** Without the keys that hold nothing: absent and undefined are not the same to a reader of our data. */
export function defined<T extends object>(value: T): Defined<T> {
  return Object.fromEntries(Object.entries(value).filter(([, inner]) => inner !== undefined)) as Defined<T>;
}

const PLACE_SET: ReadonlySet<string> = new Set(PLACES);

const bothSides = (name: string): readonly Place[] =>
  PLACE_SET.has(name) ? [name as Place] : placesOf(name as PlaceName);

function resolvePerson(id: string, person: PersonShape, file: FileShape, zones: readonly Zone[]): Person {
  const role = roleOf(id, person) ?? 'wearer';
  const sides = new Map(zones.map((zone) => [zone.id, zone.side]));
  return {
    id,
    role,
    wears: person.wears ?? [],
    underneath: person.underneath ?? UNDERNEATH,
    starts: person.starts ?? defaultStart(role, file.kind, sides) ?? '',
    hand: person.hand ?? 'right',
    leavesBare: [...new Set((person['leaves-bare'] ?? []).flatMap(bothSides))],
  };
}

/** The floor of a zone, unless the file says otherwise: protected where the zone is. */
export const automaticFloor = (zone: Zone): Fixture => ({
  id: floorOf(zone.id),
  kind: 'floor',
  zone: zone.id,
  clean: zone.side === 'clean',
});

export const defaultWorked = (kind: Fixture['kind']): Fixture['worked'] => fixtureKind(kind).worked?.[0];

function resolveFixture(
  id: string,
  { kind, zone, clean, worked, product }: FixtureShape,
  floor?: Fixture,
): Fixture {
  return defined({
    id,
    kind,
    zone,
    clean: clean ?? floor?.clean ?? false,
    worked: worked ?? defaultWorked(kind),
    product,
  });
}

/** In the order of the file; floors, declared or not, last and in the order of the zones. */
function resolveFixtures(file: FileShape, zones: readonly Zone[]): readonly Fixture[] {
  const declared = new Map(Object.entries(file.room.fixtures ?? {}));
  const floors = new Map(zones.map((zone) => [floorOf(zone.id), automaticFloor(zone)]));
  const others = [...declared]
    .filter(([id]) => !floors.has(id))
    .map(([id, fixture]) => resolveFixture(id, fixture));
  const floorList = [...floors].map(([id, floor]) => {
    const written = declared.get(id);
    return written ? resolveFixture(id, written, floor) : floor;
  });
  return [...others, ...floorList];
}

function resolveStep(step: StepShape, index: number, doer: string): Step {
  const who = step.who ?? doer;
  return defined({
    id: step.id ?? `s${index + 1}`,
    who,
    action: step.do,
    items: stepItems(step),
    side: step.side,
    part: step.part,
    of: step.of === who ? undefined : step.of,
    technique: step.technique,
    product: step.with,
    fixture: step.on,
    zone: step.to,
    helper: step.helper,
    place: step.place,
    pinned: step.pinned === true ? (true as const) : undefined,
    note: step.note,
  });
}

const resolvePolicy = (policy: FileShape['policy']): Procedure['policy'] =>
  defined({ creditSpraying: policy?.['credit-spraying'] ?? false, observer: policy?.observer });

export function resolveProcedure(file: FileShape): Procedure {
  const zones = Object.entries(file.room.zones).map(([id, side]): Zone => ({ id, side }));
  const people = new Map(Object.entries(file.people));
  const doer = defaultDoer(people) ?? '';
  return defined({
    title: file.title,
    kind: file.kind,
    version: file.version,
    invented: file.invented ?? false,
    about: file.about,
    source: file.source && defined(file.source),
    agents: file.agents ?? (['enveloped'] as const),
    people: [...people].map(([id, person]) => resolvePerson(id, person, file, zones)),
    zones,
    fixtures: resolveFixtures(file, zones),
    products: file.products ?? [],
    start: (file.start ?? []).map((entry) => defined(entry)),
    policy: resolvePolicy(file.policy),
    steps: file.steps.map((step, index) => resolveStep(step, index, doer)),
    accepted: (file.accepted ?? []).map((entry): Acceptance => defined(entry)),
    donning: file.donning,
  });
}
