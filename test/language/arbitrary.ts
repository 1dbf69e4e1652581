// Random procedures whose names fit together, for the laws of reading and printing. Techniques, parts and sides come
// from the tables, so every action and every technique is met.
import * as fc from 'fast-check';
import { ACTIONS, type ActionId, type StepField } from '../../src/domain/actions.ts';
import { ITEM_IDS, type ItemId, itemKind } from '../../src/domain/items.ts';
import { PLACES, SIDES } from '../../src/domain/places.ts';
import { DEPENDENCES, KINDS, type Procedure, ROLES, type Step } from '../../src/domain/procedure.ts';
import { AGENTS, PRODUCT_IDS } from '../../src/domain/products.ts';
import { FIXTURE_KIND_IDS, type Fixture, fixtureKind, type Zone, ZONE_SIDES } from '../../src/domain/room.ts';
import { LONGEST } from '../../src/domain/lengths.ts';
import { techniquesFor, type TechniqueId, usualTechnique } from '../../src/domain/techniques/index.ts';

/** What may stand in a file: no control characters, nothing at the edges. Signs that YAML gives a meaning are frequent. */
const character = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...'abcdeXYZ0189 -:#\'"[]{},&*!|>%@`?~=<\n\\/.'.split('')) },
  { weight: 1, arbitrary: fc.constantFrom(...'äßéøЖ漢かأ\u00A0\u2028'.split(''), '😀') },
);
const text = fc
  .array(character, { minLength: 1, maxLength: 40 })
  .map((parts) => parts.join('').trim())
  .filter((one) => one !== '');
const oddText = fc.oneof(
  text,
  fc.constantFrom(
    'true',
    'null',
    '~',
    '1',
    '1.10',
    '0x1f',
    '2026-01-01',
    '- a',
    '? b',
    '---',
    '...',
    'a: b',
    '#c',
    "''",
    '"',
  ),
);
/** What stands on every page is one line. */
const oddLine = oddText.filter((one) => !/[\n\u2028]/.test(one));

const name = fc
  .stringMatching(/^[a-zäö][a-z0-9ß-]{0,8}$/u)
  .filter((one) => one !== 'room' && !one.endsWith('-floor'));
const names = (least: number, most: number) => fc.uniqueArray(name, { minLength: least, maxLength: most });
const pick = <T>(from: readonly T[]) => fc.constantFrom(...from);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

type Entries<T> = { [Key in keyof T]?: T[Key] | undefined };
const clean = <T extends object>(value: Entries<T>): T =>
  Object.fromEntries(Object.entries(value).filter(([, inner]) => inner !== undefined)) as T;

interface Room {
  readonly zones: readonly Zone[];
  readonly declared: readonly Fixture[];
}

const fixture = (id: string, zones: readonly Zone[]): fc.Arbitrary<Fixture> =>
  pick(FIXTURE_KIND_IDS).chain((kind) => {
    const ways = fixtureKind(kind).worked;
    return fc
      .record({ zone: pick(zones), clean: fc.boolean(), worked: ways ? pick(ways) : fc.constant(undefined) })
      .map(({ zone, clean: kept, worked }) =>
        clean<Fixture>({ id, kind, zone: zone.id, clean: kept, worked }),
      );
  });

const room: fc.Arbitrary<Room> = names(3, 6).chain((ids) =>
  fc
    .tuple(
      ...ids.map((_, index) =>
        pick(ZONE_SIDES).map((side) => (index < 3 ? (ZONE_SIDES[index] ?? side) : side)),
      ),
    )
    .chain((sides) => {
      const zones = ids.map((id, index): Zone => ({ id, side: sides[index] ?? 'doffing' }));
      return names(0, 4).chain((fixtures) =>
        fc.tuple(...fixtures.map((id) => fixture(id, zones))).map((declared) => ({ zones, declared })),
      );
    }),
);

const floor = ({ id, side }: Zone): Fixture => ({
  id: `${id}-floor`,
  kind: 'floor',
  zone: id,
  clean: side === 'clean',
});

/** Items of one step, per action: one, or one with another that a technique takes off together. */
const ITEMS_FOR: ReadonlyMap<ActionId, readonly (readonly ItemId[])[]> = new Map(
  ACTIONS.map(({ id: action }) => {
    const alone = ITEM_IDS.map((id) => [id]);
    const pairs = ITEM_IDS.flatMap((id) => ITEM_IDS.map((other) => [id, other]));
    return [action, [...alone, ...pairs].filter((items) => techniquesFor(action, items).length > 0)];
  }),
);
const itemsFor = (action: ActionId): fc.Arbitrary<readonly ItemId[]> => pick(ITEMS_FOR.get(action) ?? []);

function techniqueFor(action: ActionId, items: readonly ItemId[]): fc.Arbitrary<TechniqueId | undefined> {
  const ways = techniquesFor(action, items).map(({ id }) => id as TechniqueId);
  return usualTechnique(action, items) ? maybe(pick(ways)) : pick(ways);
}

interface Names {
  readonly people: readonly string[];
  readonly fixtures: readonly string[];
  readonly zones: readonly string[];
}

function stepFor(action: (typeof ACTIONS)[number], id: string, known: Names): fc.Arbitrary<Step> {
  const needs: readonly StepField[] = action.needs;
  const fields: readonly StepField[] = [...needs, ...action.may];
  const field = <T>(key: StepField, arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
    needs.includes(key) ? arbitrary : fields.includes(key) ? maybe(arbitrary) : fc.constant(undefined);
  const some = needs.includes('items') || action.id === 'wipe' || action.id === 'touch';
  const items: fc.Arbitrary<readonly ItemId[]> = some ? itemsFor(action.id) : fc.constant([]);
  return items.chain((worn) => {
    const [first] = worn;
    const kind = first && itemKind(first);
    return fc
      .record({
        who: pick(known.people),
        side: kind?.pair ? field('side', pick(SIDES)) : fc.constant(undefined),
        part: kind ? field('part', pick(kind.parts.map((part) => part.id))) : fc.constant(undefined),
        of: field('of', pick(known.people)),
        helper: field('helper', pick(known.people)),
        technique: fields.includes('technique') ? techniqueFor(action.id, worn) : fc.constant(undefined),
        product: field('product', pick(PRODUCT_IDS)),
        fixture: field('fixture', pick(known.fixtures)),
        zone: field('zone', pick(known.zones)),
        place: field('place', pick(PLACES)),
        pinned: maybe(fc.constant(true as const)),
        note: maybe(text),
      })
      .map(({ who, of, helper, ...rest }) =>
        clean<Step>({
          id,
          who,
          action: action.id,
          items: worn,
          ...rest,
          of: of === who ? undefined : of,
          helper: helper === who ? undefined : helper,
        }),
      );
  });
}

const stepsFor = (known: Names): fc.Arbitrary<readonly Step[]> =>
  fc.array(pick(ACTIONS), { minLength: 1, maxLength: 8 }).chain((actions) =>
    fc
      .uniqueArray(fc.stringMatching(/^t[a-z0-9-]{1,5}$/), {
        minLength: actions.length,
        maxLength: actions.length,
      })
      .chain((ids) =>
        fc.tuple(
          ...actions.map((action, index) =>
            fc.boolean().chain((own) => stepFor(action, own ? (ids[index] ?? '') : `s${index + 1}`, known)),
          ),
        ),
      ),
  );

const worn = fc.uniqueArray(pick(ITEM_IDS.filter((id) => !['scrubs', 'shoes'].includes(id))), {
  maxLength: 6,
});

const peopleFor = (ids: readonly string[], zones: readonly Zone[]) =>
  fc.tuple(
    ...ids.map((id) =>
      fc.record({
        id: fc.constant(id),
        role: pick(ROLES),
        wears: worn,
        underneath: pick<readonly ItemId[]>([['scrubs', 'shoes'], ['scrubs'], ['shoes', 'scrubs'], []]),
        starts: pick(zones).map((zone) => zone.id),
        hand: pick(SIDES),
        leavesBare: fc.uniqueArray(pick(PLACES), { maxLength: 5 }),
      }),
    ),
  );

const date = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2039-12-31'), noInvalidDate: true })
  .map((one) => one.toISOString().slice(0, 10));

const accepted = fc
  .record({ finding: text, reason: oddText, by: oddText, dates: fc.tuple(date, date) })
  .map(({ dates, ...rest }) => {
    const [first = '', last = ''] = [...dates].sort();
    return { ...rest, date: first, review: last };
  });

const around = fc.record({
  title: oddLine,
  kind: pick(KINDS),
  // Half of it, since a sign may take two code units.
  version: oddLine.map(
    (line) =>
      Array.from(line)
        .slice(0, LONGEST.version / 2)
        .join('')
        .trim() || '1',
  ),
  invented: fc.boolean(),
  about: maybe(text),
  source: maybe(
    fc
      .record({ title: text, publisher: oddText, seen: text, year: maybe(oddLine) })
      .map((one) => clean<NonNullable<Procedure['source']>>(one)),
  ),
  agents: fc.uniqueArray(pick(AGENTS), { minLength: 1 }),
  policy: fc
    .record({
      creditSpraying: fc.boolean(),
      observer: maybe(pick(DEPENDENCES).map((dependence) => ({ misses: 'hep.checker.written', dependence }))),
    })
    .map((one) => clean<Procedure['policy']>(one)),
  accepted: fc.array(accepted, { maxLength: 2 }),
  donning: maybe(oddText),
});

/** Procedures as reading gives them: floors last, nothing undefined, names that exist. */
export const procedure: fc.Arbitrary<Procedure> = fc
  .tuple(room, names(1, 3), around)
  .chain(([{ zones, declared }, ids, rest]) => {
    const fixtures = [...declared, ...zones.map(floor)];
    const known = { people: ids, fixtures: fixtures.map(({ id }) => id), zones: zones.map(({ id }) => id) };
    return fc
      .tuple(peopleFor(ids, zones), stepsFor(known))
      .map(([people, steps]) =>
        clean<Procedure>({ ...rest, people, zones, fixtures, products: PRODUCT_IDS, start: [], steps }),
      );
  });
