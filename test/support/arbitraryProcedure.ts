// Random procedures that speak the vocabulary: three people in random ensembles, a random room, up to 30 steps, most of
// them possible, some not. Names always exist (the language sees to that); whether a step can be done is left to
// chance. Weighted towards what real procedures hold: hands are cleaned often, items come off from the top.
import * as fc from 'fast-check';
import { ACTIONS, type ActionId } from '../../src/domain/actions.ts';
import { ITEM_IDS, type ItemId, itemKind } from '../../src/domain/items.ts';
import { PLACES, SIDES } from '../../src/domain/places.ts';
import {
  KINDS,
  type Person,
  type Procedure,
  type StartingState,
  type Step,
} from '../../src/domain/procedure.ts';
import { PRODUCT_IDS } from '../../src/domain/products.ts';
import { FIXTURE_KIND_IDS, type Fixture, fixtureKind, type FixtureKindId } from '../../src/domain/room.ts';
import { techniquesFor, type TechniqueId } from '../../src/domain/techniques/index.ts';
import { person, procedure as procedureFrom, ZONES } from './procedure.ts';

const pick = <T>(from: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...from);
/** `odds` in a hundred that there is one. */
const maybe = <T>(arbitrary: fc.Arbitrary<T>, odds = 50): fc.Arbitrary<T | undefined> =>
  fc.oneof({ weight: odds, arbitrary }, { weight: 100 - odds, arbitrary: fc.constant(undefined) });

type Entries<T> = { [Key in keyof T]?: T[Key] | undefined };
const defined = <T extends object>(value: Entries<T>): T =>
  Object.fromEntries(Object.entries(value).filter(([, inner]) => inner !== undefined)) as T;

const PEOPLE = ['wearer', 'observer', 'assistant'] as const;
const ZONE_IDS = ZONES.map(({ id }) => id);
const EQUIPMENT = ITEM_IDS.filter((id) => !['scrubs', 'shoes'].includes(id));

/** Ensembles as they are worn, besides any subset in any order. */
const ENSEMBLES: readonly (readonly ItemId[])[] = [
  ['gown', 'surgical-mask', 'goggles', 'gloves'],
  [
    'boot-covers',
    'inner-gloves',
    'gown',
    'n95-respirator',
    'surgical-hood',
    'apron',
    'face-shield',
    'outer-gloves',
  ],
  ['inner-gloves', 'ffp3-respirator', 'hooded-coverall', 'rubber-boots', 'goggles', 'apron', 'outer-gloves'],
  ['inner-gloves', 'coverall', 'boot-covers', 'blower', 'powered-hood', 'outer-gloves'],
  ['shoe-covers', 'inner-gloves', 'gown', 'face-shield', 'outer-gloves'],
];

const worn: fc.Arbitrary<readonly ItemId[]> = fc.oneof(
  { weight: 3, arbitrary: pick(ENSEMBLES) },
  { weight: 1, arbitrary: fc.uniqueArray(pick(EQUIPMENT), { maxLength: 7 }) },
);

const people: fc.Arbitrary<readonly Person[]> = fc.tuple(
  ...PEOPLE.map((id) =>
    fc
      .record({ wears: worn, hand: pick(SIDES), starts: pick(['anteroom', 'anteroom', ...ZONE_IDS]) })
      .map((fields) => person({ id, role: id, ...fields })),
  ),
);

function fixture(id: string, kind: FixtureKindId): fc.Arbitrary<Fixture> {
  const { worked, underfoot } = fixtureKind(kind);
  return fc
    .record({
      zone: pick(['anteroom', 'anteroom', ...ZONE_IDS]),
      clean: fc.boolean(),
      worked: worked ? pick(worked) : fc.constant(undefined),
      product: underfoot ? maybe(pick(PRODUCT_IDS)) : fc.constant(undefined),
    })
    .map((fields) => defined<Fixture>({ id, kind, ...fields }));
}

const FLOORS: readonly Fixture[] = ZONES.map(({ id, side }) => ({
  id: `${id}-floor`,
  kind: 'floor',
  zone: id,
  clean: side === 'clean',
}));

/** Two chairs, a bin, a dispenser, a mat, and a few of any kind. */
const fixtures: fc.Arbitrary<readonly Fixture[]> = fc
  .tuple(
    ...(['chair', 'chair', 'bin', 'dispenser', 'mat'] as const).map((kind, at) =>
      fixture(`${kind}-${at}`, kind),
    ),
    fc
      .array(pick(FIXTURE_KIND_IDS), { maxLength: 3 })
      .chain((kinds) => fc.tuple(...kinds.map((kind, at) => fixture(`more-${at}`, kind)))),
  )
  .map((declared) => [...declared.flat(), ...FLOORS]);

const ALONE = new Map(
  ACTIONS.map(({ id }) => [id, ITEM_IDS.filter((item) => techniquesFor(id, [item]).length > 0)] as const),
);
const TOGETHER: readonly (readonly ItemId[])[] = ITEM_IDS.flatMap((one) =>
  ITEM_IDS.map((other) => [one, other] as const),
).filter((items) => techniquesFor('remove', items).length > 0);

/** Mostly something that somebody wears. */
function itemsFor(action: ActionId, wears: readonly ItemId[]): fc.Arbitrary<readonly ItemId[]> {
  const able = ALONE.get(action) ?? [];
  const theirs = able.filter((item) => wears.includes(item));
  const one = theirs.length > 0 ? fc.oneof({ weight: 5, arbitrary: pick(theirs) }, pick(able)) : pick(able);
  const alone = one.map((item) => [item]);
  return action === 'remove' ? fc.oneof({ weight: 12, arbitrary: alone }, pick(TOGETHER)) : alone;
}

function equipmentStep(action: ActionId, wears: readonly ItemId[]): fc.Arbitrary<Partial<Step>> {
  return itemsFor(action, wears).chain((items) => {
    const [first] = items;
    const kind = first && itemKind(first);
    const ways = techniquesFor(action, items).map(({ id }) => id as TechniqueId);
    return fc
      .record({
        items: fc.constant(items),
        technique: maybe(pick(ways), 75),
        side: kind?.pair ? maybe(pick(SIDES), 25) : fc.constant(undefined),
        part:
          kind && action === 'wipe'
            ? maybe(pick(kind.parts.map(({ id }) => id)), 25)
            : fc.constant(undefined),
        product: action === 'wipe' ? pick(PRODUCT_IDS) : fc.constant(undefined),
      })
      .map((fields) => defined<Partial<Step>>(fields));
  });
}

const sanitise = fc
  .record({
    product: fc.oneof({ weight: 4, arbitrary: fc.constant('alcohol-hand-rub' as const) }, pick(PRODUCT_IDS)),
    technique: maybe(pick<TechniqueId>(['rub-until-dry', 'rub-not-dried', 'spray-hands']), 30),
  })
  .map((fields) => defined<Partial<Step>>(fields));

const inspect = fc
  .record({
    items: fc.oneof(
      fc.constant<readonly ItemId[]>([]),
      pick<readonly ItemId[]>([['inner-gloves'], ['outer-gloves']]),
    ),
  })
  .map((fields): Partial<Step> => fields);

function roomStep(action: ActionId, ids: readonly string[]): fc.Arbitrary<Partial<Step>> {
  const any = pick(ids);
  switch (action) {
    case 'move':
      return pick(ZONE_IDS).map((zone) => ({ zone }));
    case 'sit':
      return fc
        .oneof({ weight: 6, arbitrary: pick(['chair-0', 'chair-1']) }, any)
        .map((on) => ({ fixture: on }));
    case 'step-on':
      return fc.oneof({ weight: 3, arbitrary: fc.constant('mat-4') }, any).map((on) => ({ fixture: on }));
    case 'stand':
      return maybe(pick(['mat-4', ...ZONE_IDS.map((id) => `${id}-floor`)])).map((on) =>
        defined<Partial<Step>>({ fixture: on }),
      );
    case 'wipe':
      return fc.record({ fixture: any, product: pick(PRODUCT_IDS) });
    case 'touch':
      return fc.oneof(
        any.map((on) => ({ fixture: on })),
        pick(PLACES).map((place) => ({ place })),
        pick(EQUIPMENT).chain((item) =>
          maybe(pick(itemKind(item).parts.map(({ id }) => id))).map((part) =>
            defined<Partial<Step>>({ items: [item], part }),
          ),
        ),
      );
    default:
      return fc.constant({});
  }
}

const WEIGHTED: readonly (readonly [ActionId, number, 'equipment' | 'hands' | 'look' | 'room'])[] = [
  ['remove', 10, 'equipment'],
  ['sanitise', 7, 'hands'],
  ['put-on', 3, 'equipment'],
  ['unfasten', 3, 'equipment'],
  ['fasten', 1, 'equipment'],
  ['wipe', 2, 'equipment'],
  ['wipe', 1, 'room'],
  ['inspect', 2, 'look'],
  ['say', 1, 'room'],
  ['move', 2, 'room'],
  ['step-on', 1, 'room'],
  ['sit', 2, 'room'],
  ['stand', 2, 'room'],
  ['touch', 2, 'room'],
];

/** A step; people are mostly the wearer alone. */
function stepFor(crew: readonly Person[], ids: readonly string[], id: string): fc.Arbitrary<Step> {
  const who = fc.oneof({ weight: 4, arbitrary: fc.constant('wearer') }, pick(PEOPLE));
  const others = fc.record({ who, of: maybe(pick(PEOPLE), 20), helper: maybe(pick(PEOPLE), 35) });
  return others.chain(({ who: doer, of, helper }) => {
    const owner = of ?? doer;
    const wears = crew.find((one) => one.id === owner)?.wears ?? [];
    const kinds = WEIGHTED.map(([action, weight, kind]) => {
      const fields = {
        equipment: () => equipmentStep(action, wears),
        hands: () => sanitise,
        look: () => inspect,
        room: () => roomStep(action, ids),
      }[kind]();
      const owned = action === 'sanitise' || kind === 'room';
      return {
        weight,
        arbitrary: fields.map((rest) =>
          defined<Step>({
            id,
            who: doer,
            action,
            items: [],
            of: owned || of === doer ? undefined : of,
            helper: helper === doer || kind === 'room' || kind === 'hands' ? undefined : helper,
            ...rest,
          }),
        ),
      };
    });
    return fc.oneof(...kinds);
  });
}

function startFor(crew: readonly Person[], room: readonly Fixture[]): fc.Arbitrary<readonly StartingState[]> {
  const parts = crew.flatMap(({ id, wears }) =>
    wears.flatMap((item) =>
      itemKind(item).parts.flatMap((part) =>
        itemKind(item).pair
          ? SIDES.map((side) => `${id}.${item}.${side}.${part.id}`)
          : [`${id}.${item}.${part.id}`],
      ),
    ),
  );
  const fixed = room.flatMap(({ id, kind }) => fixtureKind(kind).parts.map((part) => `room.${id}.${part}`));
  const surface = pick([...parts, ...fixed, 'wearer.hand.left', 'wearer.scrubs.front']);
  const state = pick(['contaminated', 'uncontaminated', 'maybe'] as const);
  return fc.uniqueArray(fc.record({ surface, state }), { maxLength: 3, selector: (entry) => entry.surface });
}

/** Procedures with one to `most` steps, three people, and names that all exist. Steps are s1, s2 ... */
export function procedures(most = 30): fc.Arbitrary<Procedure> {
  return fc.tuple(people, fixtures).chain(([crew, room]) => {
    const ids = room.map(({ id }) => id);
    return fc
      .record({
        kind: fc.oneof({ weight: 5, arbitrary: fc.constant('doffing' as const) }, pick(KINDS)),
        steps: fc
          .integer({ min: 1, max: most })
          .chain((count) =>
            fc.tuple(...Array.from({ length: count }, (_, at) => stepFor(crew, ids, `s${at + 1}`))),
          ),
        start: startFor(crew, room),
        creditSpraying: fc.boolean(),
      })
      .map(({ creditSpraying, ...rest }) =>
        procedureFrom({ people: crew, fixtures: room, policy: { creditSpraying }, ...rest }),
      );
  });
}
