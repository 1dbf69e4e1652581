// What stands around the steps of two procedures, and differs: title, agents, people and what they wear, room, products,
// stated start, the unit's own rules, what it accepts in writing. Data only; ids are those of the side that has them.
import type { ItemId } from '../domain/items.ts';
import type { Place, Side } from '../domain/places.ts';
import type { Acceptance, Person, Policy, Procedure, StartingState } from '../domain/procedure.ts';
import { AGENTS, type Agent, type ProductId } from '../domain/products.ts';
import { type Fixture, workedBy } from '../domain/room.ts';
import { type Match, surfaceIn } from './match.ts';

/** Which of the two has it: the first lost it, the second gained it. */
export type Only = 'a' | 'b';

const REWRITTEN = ['title', 'about', 'source', 'donning'] as const;
export type Rewritten = (typeof REWRITTEN)[number];

const FIXTURE_FIELDS = ['kind', 'zone', 'clean', 'worked', 'product'] as const;
export type FixtureField = (typeof FIXTURE_FIELDS)[number];

export type AroundChange =
  | {
      readonly what: 'rewritten';
      readonly field: Rewritten;
      /** Empty where it was not said. */
      readonly before: string;
      readonly now: string;
    }
  | { readonly what: 'invented'; readonly now: boolean }
  | { readonly what: 'agent'; readonly only: Only; readonly agent: Agent }
  | { readonly what: 'person'; readonly only: Only; readonly person: string }
  | {
      readonly what: 'worn';
      readonly where: 'over' | 'underneath';
      readonly only: Only;
      readonly person: string;
      readonly item: ItemId;
    }
  | {
      readonly what: 'layers';
      readonly person: string;
      readonly before: readonly ItemId[];
      readonly now: readonly ItemId[];
    }
  | { readonly what: 'starts'; readonly person: string; readonly before: string; readonly now: string }
  | { readonly what: 'hand'; readonly person: string; readonly now: Side }
  | { readonly what: 'bare'; readonly only: Only; readonly person: string; readonly place: Place }
  | { readonly what: 'zone'; readonly only: Only; readonly zone: string }
  | { readonly what: 'fixture'; readonly only: Only; readonly fixture: string }
  | {
      readonly what: 'fixture-field';
      readonly field: FixtureField;
      readonly before: Fixture;
      readonly now: Fixture;
    }
  | { readonly what: 'product'; readonly only: Only; readonly product: ProductId }
  | {
      readonly what: 'start';
      readonly surface: string;
      /** Null where that side states nothing of it. */
      readonly before: StartingState | null;
      readonly now: StartingState | null;
    }
  | { readonly what: 'spraying'; readonly now: boolean }
  | {
      readonly what: 'observer';
      readonly before: NonNullable<Policy['observer']> | null;
      readonly now: NonNullable<Policy['observer']> | null;
    }
  | { readonly what: 'accepted'; readonly before: Acceptance | null; readonly now: Acceptance | null };

const sourceText = ({ source }: Procedure): string =>
  source
    ? [source.title, source.publisher, source.year, source.where]
        .filter((part) => part !== undefined)
        .join(', ')
    : '';

const textsOf = (procedure: Procedure): Readonly<Record<Rewritten, string>> => ({
  title: procedure.title,
  about: procedure.about ?? '',
  source: sourceText(procedure),
  donning: procedure.donning ?? '',
});

function rewritten(a: Procedure, b: Procedure): readonly AroundChange[] {
  const [before, now] = [textsOf(a), textsOf(b)];
  return REWRITTEN.filter((field) => before[field] !== now[field]).map((field) => ({
    what: 'rewritten',
    field,
    before: before[field],
    now: now[field],
  }));
}

/** Members that only one of two lists has, in their order. */
function alone<Member>(
  a: readonly Member[],
  b: readonly Member[],
): readonly { readonly only: Only; readonly one: Member }[] {
  return [
    ...a.filter((one) => !b.includes(one)).map((one) => ({ only: 'a' as const, one })),
    ...b.filter((one) => !a.includes(one)).map((one) => ({ only: 'b' as const, one })),
  ];
}

/** The same things, over one another in another order. */
function layers(before: Person, now: Person): readonly AroundChange[] {
  const kept = before.wears.filter((item) => now.wears.includes(item));
  const order = now.wears.filter((item) => before.wears.includes(item));
  return kept.join() === order.join()
    ? []
    : [{ what: 'layers', person: now.id, before: before.wears, now: now.wears }];
}

function personChanges(before: Person, now: Person, match: Match): readonly AroundChange[] {
  const person = now.id;
  const worn = (where: 'over' | 'underneath', a: readonly ItemId[], b: readonly ItemId[]) =>
    alone(a, b).map(({ only, one }): AroundChange => ({ what: 'worn', where, only, person, item: one }));
  return [
    ...worn('over', before.wears, now.wears),
    ...layers(before, now),
    ...worn('underneath', before.underneath, now.underneath),
    ...(match.zone.get(now.starts) === before.starts
      ? []
      : [{ what: 'starts', person, before: before.starts, now: now.starts } as const]),
    ...(before.hand === now.hand ? [] : [{ what: 'hand', person, now: now.hand } as const]),
    ...alone(before.leavesBare, now.leavesBare).map(
      ({ only, one }): AroundChange => ({ what: 'bare', only, person, place: one }),
    ),
  ];
}

const fieldOf = (fixture: Fixture, field: FixtureField, zone: string): string => {
  if (field === 'zone') return zone;
  if (field === 'worked') return workedBy(fixture) ?? '';
  return String(fixture[field] ?? '');
};

function fixtureChanges(before: Fixture, now: Fixture, match: Match): readonly AroundChange[] {
  const zone = match.zone.get(now.zone) ?? `other ${now.zone}`;
  return FIXTURE_FIELDS.filter(
    (field) => fieldOf(before, field, before.zone) !== fieldOf(now, field, zone),
  ).map((field) => ({ what: 'fixture-field', field, before, now }));
}

interface Named {
  readonly id: string;
}

/** Pairs by the match, then what only one side has. */
function matched<Thing extends Named>(
  a: readonly Thing[],
  b: readonly Thing[],
  match: ReadonlyMap<string, string>,
  pair: (before: Thing, now: Thing) => readonly AroundChange[],
  lone: (only: Only, id: string) => AroundChange,
): readonly AroundChange[] {
  const byId = new Map(a.map((one) => [one.id, one]));
  const used = new Set(b.map(({ id }) => match.get(id)));
  return [
    ...b.flatMap((now) => {
      const before = byId.get(match.get(now.id) ?? '');
      return before ? pair(before, now) : [lone('b', now.id)];
    }),
    ...a.filter(({ id }) => !used.has(id)).map(({ id }) => lone('a', id)),
  ];
}

const isFloor = ({ id, zone }: Fixture): boolean => id === `${zone}-floor`;
const furniture = ({ fixtures }: Procedure): readonly Fixture[] => fixtures.filter((one) => !isFloor(one));

/** A fixture of the same name is the same one, whatever else became of it. */
function fixturePairs(a: Procedure, b: Procedure, { fixture }: Match): ReadonlyMap<string, string> {
  const used = new Set(fixture.values());
  const free = new Set(furniture(a).flatMap(({ id }) => (used.has(id) ? [] : [id])));
  const byName = furniture(b).flatMap(({ id }) =>
    fixture.has(id) || !free.has(id) ? [] : [[id, id] as const],
  );
  return new Map([...fixture, ...byName]);
}

const stateText = (one: StartingState | undefined): string => (one ? `${one.state} ${one.reason ?? ''}` : '');

function startChanges(a: Procedure, b: Procedure, match: Match): readonly AroundChange[] {
  const before = new Map(a.start.map((one) => [one.surface, one]));
  const met = new Set<string>();
  const changed = b.start.flatMap((now): readonly AroundChange[] => {
    const surface = surfaceIn(match, now.surface) ?? `other ${now.surface}`;
    met.add(surface);
    const was = before.get(surface);
    return stateText(was) === stateText(now)
      ? []
      : [{ what: 'start', surface: now.surface, before: was ?? null, now }];
  });
  const gone = a.start.filter(({ surface }) => !met.has(surface));
  return [
    ...changed,
    ...gone.map((was): AroundChange => ({ what: 'start', surface: was.surface, before: was, now: null })),
  ];
}

function policyChanges(a: Policy, b: Policy): readonly AroundChange[] {
  const observer = ({ observer: one }: Policy): string => (one ? `${one.misses} ${one.dependence}` : '');
  return [
    ...(a.creditSpraying === b.creditSpraying ? [] : [{ what: 'spraying', now: b.creditSpraying } as const]),
    ...(observer(a) === observer(b)
      ? []
      : [{ what: 'observer', before: a.observer ?? null, now: b.observer ?? null } as const]),
  ];
}

const placeOf = ({ finding, step = '', surface = '' }: Acceptance): string => `${finding} ${step} ${surface}`;
const contentOf = ({ reason, by, date, review }: Acceptance): string => [reason, by, date, review].join('\n');

/** The same departure at the same step is the same one; its words, days or role may have changed. */
function acceptedChanges(a: Procedure, b: Procedure): readonly AroundChange[] {
  const before = new Map(a.accepted.map((one) => [placeOf(one), one]));
  const now = new Set(b.accepted.map(placeOf));
  return [
    ...b.accepted.flatMap((one): readonly AroundChange[] => {
      const was = before.get(placeOf(one));
      return was && contentOf(was) === contentOf(one)
        ? []
        : [{ what: 'accepted', before: was ?? null, now: one }];
    }),
    ...a.accepted
      .filter((one) => !now.has(placeOf(one)))
      .map((was): AroundChange => ({ what: 'accepted', before: was, now: null })),
  ];
}

/** Everything that differs around the steps, in the order of the file. Empty where nothing does. */
export function aroundChanges(a: Procedure, b: Procedure, match: Match): readonly AroundChange[] {
  const agents = alone(a.agents, b.agents);
  return [
    ...rewritten(a, b),
    ...(a.invented === b.invented ? [] : [{ what: 'invented', now: b.invented } as const]),
    ...AGENTS.flatMap((agent) =>
      agents.filter(({ one }) => one === agent).map(({ only }) => ({ what: 'agent', only, agent }) as const),
    ),
    ...matched(
      a.people,
      b.people,
      match.person,
      (before, now) => personChanges(before, now, match),
      (only, person) => ({ what: 'person', only, person }),
    ),
    ...matched(
      a.zones,
      b.zones,
      match.zone,
      () => [],
      (only, zone) => ({ what: 'zone', only, zone }),
    ),
    ...matched(
      furniture(a),
      furniture(b),
      fixturePairs(a, b, match),
      (before, now) => fixtureChanges(before, now, match),
      (only, fixture) => ({ what: 'fixture', only, fixture }),
    ),
    ...alone(a.products, b.products).map(
      ({ only, one }) => ({ what: 'product', only, product: one }) as const,
    ),
    ...startChanges(a, b, match),
    ...policyChanges(a.policy, b.policy),
    ...acceptedChanges(a, b),
  ];
}
