// What changed around the steps, and what a departure that was accepted is about, put together: names are found here, in
// the same way for every language; how it is said stands in the language's table.
import type { AroundChange, FixtureField, Only, Rewritten } from '../compare/around.ts';
import type { Finding } from '../check/finding.ts';
import type { ItemId } from '../domain/items.ts';
import type { Side } from '../domain/places.ts';
import type { Acceptance, Dependence, Policy, StartingState } from '../domain/procedure.ts';
import { type Agent, type ProductId, PRODUCT_IDS } from '../domain/products.ts';
import { type Fixture, type FixtureKindId, workedBy } from '../domain/room.ts';
import { type EvidenceId, evidenceIds } from '../evidence/index.ts';
import { foundAt } from './accepted.ts';
import type { AcceptedPlace, AroundWords } from './compare.ts';
import { oneOf } from './given.ts';
import type { Setting } from './setting.ts';
import type { Explained } from './words.ts';
import { capital } from './capital.ts';

/** The first lost it, the second gained it. */
type Sides<Said> = Readonly<Record<Only, Said>>;
type YesNo = Readonly<Record<'yes' | 'no', string>>;

/** What a language writes down for it: whole sentences around names, and the few words that stand in them. */
export interface AroundTable {
  readonly fields: Readonly<Record<Rewritten, string>>;
  readonly invented: YesNo;
  readonly agent: Sides<(agent: string) => string>;
  readonly person: Sides<(person: string) => string>;
  readonly worn: Sides<(person: string, item: string) => string>;
  readonly underneath: Sides<(person: string, item: string) => string>;
  readonly layers: (person: string) => string;
  readonly starts: (person: string) => string;
  readonly hand: (person: string, side: Side) => string;
  readonly bare: Sides<(place: string) => string>;
  readonly zone: Sides<(zone: string) => string>;
  readonly fixture: Sides<(fixture: string) => string>;
  readonly fixtureFields: Readonly<Record<FixtureField, string>>;
  /** What it was and what it is: the end of a sentence that names the thing. */
  readonly beforeNow: (what: string, before: string, now: string) => string;
  readonly worked: Readonly<Record<NonNullable<Fixture['worked']>, string>>;
  readonly yesNo: YesNo;
  readonly none: string;
  readonly product: Sides<(product: string) => string>;
  readonly states: Readonly<Record<StartingState['state'], string>>;
  readonly start: (surface: string) => string;
  readonly spraying: YesNo;
  readonly observer: string;
  readonly dependence: (much: string) => string;
  readonly dependences: Readonly<Record<Dependence, string>>;
  readonly accepted: Readonly<Record<Only | 'both', string>>;
  readonly saidBy: (one: Acceptance) => string;
  readonly departureAt: (what: string, step: string) => string;
}

/** Names and sentences of the language that the table leans on. */
export interface AroundGround {
  readonly person: (setting: Setting, id: string) => string;
  readonly surface: (setting: Setting, id: string) => string;
  readonly zone: (setting: Setting, id: string) => string;
  readonly fixture: (setting: Setting, id: string) => string;
  readonly stepAt: (setting: Setting, index: number) => string;
  readonly item: (item: ItemId) => string;
  readonly fixtureKind: (kind: FixtureKindId) => string;
  readonly product: (product: ProductId) => string;
  readonly agent: (agent: Agent) => string;
  readonly evidence: (id: EvidenceId) => string;
  readonly finding: (setting: Setting, finding: Finding) => Explained;
  readonly joined: (texts: readonly string[]) => string;
  readonly quoted: (text: string) => string;
}

interface Tongue {
  readonly table: AroundTable;
  readonly ground: AroundGround;
}

type Of<What extends AroundChange['what']> = Extract<AroundChange, { readonly what: What }>;
type Sayer = {
  readonly [What in AroundChange['what']]: (
    tongue: Tongue,
    a: Setting,
    b: Setting,
    change: Of<What>,
  ) => string;
};

const yes = (is: boolean): 'yes' | 'no' => (is ? 'yes' : 'no');
const side = (only: Only, a: Setting, b: Setting): Setting => (only === 'a' ? a : b);

function departure({ table, ground }: Tongue, setting: Setting, place: AcceptedPlace): string {
  const found = foundAt(setting, place);
  const { title } = ground.finding(setting, found);
  const [at] = found.steps;
  return at === undefined ? title : table.departureAt(title, ground.stepAt(setting, at));
}

function fieldText({ table, ground }: Tongue, setting: Setting, one: Fixture, field: FixtureField): string {
  if (field === 'kind') return ground.fixtureKind(one.kind);
  if (field === 'zone') return ground.zone(setting, one.zone);
  if (field === 'clean') return table.yesNo[yes(one.clean)];
  const worked = workedBy(one);
  if (field === 'worked') return worked === undefined ? table.none : table.worked[worked];
  const product = oneOf(PRODUCT_IDS, one.product);
  return product === undefined ? table.none : ground.product(product);
}

const stateText = ({ table, ground }: Tongue, one: StartingState | null): string => {
  if (!one) return table.none;
  const reason = one.reason === undefined ? '' : ` (${ground.quoted(one.reason)})`;
  return `${table.states[one.state]}${reason}`;
};

function observerText({ table, ground }: Tongue, one: Policy['observer'] | null): string {
  if (!one) return table.none;
  const record = oneOf(evidenceIds, one.misses);
  const says = record === undefined ? ground.quoted(one.misses) : ground.evidence(record).replace(/\.$/, '');
  return `${says} (${table.dependence(table.dependences[one.dependence])})`;
}

function acceptedText(tongue: Tongue, a: Setting, b: Setting, { before, now }: Of<'accepted'>): string {
  const { accepted, saidBy, beforeNow } = tongue.table;
  const one = now ?? before;
  if (!one) return '';
  const kind = now && before ? 'both' : now ? 'b' : 'a';
  const what = `${accepted[kind]}: ${departure(tongue, now ? b : a, one)}`;
  return now && before ? beforeNow(what, saidBy(before), saidBy(now)) : `${what}, ${saidBy(one)}`;
}

const textOrNone = ({ table, ground }: Tongue, text: string): string =>
  text === '' ? table.none : ground.quoted(text);

const SAY: Sayer = {
  rewritten: (tongue, _a, _b, { field, before, now }) =>
    tongue.table.beforeNow(tongue.table.fields[field], textOrNone(tongue, before), textOrNone(tongue, now)),
  invented: ({ table }, _a, _b, { now }) => table.invented[yes(now)],
  agent: ({ table, ground }, _a, _b, { only, agent }) => table.agent[only](ground.agent(agent)),
  person: ({ table, ground }, a, b, { only, person }) =>
    table.person[only](ground.person(side(only, a, b), person)),
  worn: ({ table, ground }, _a, b, { where, only, person, item }) =>
    table[where === 'over' ? 'worn' : 'underneath'][only](ground.person(b, person), ground.item(item)),
  layers: ({ table, ground }, _a, b, { person, before, now }) =>
    table.beforeNow(
      table.layers(ground.person(b, person)),
      ground.joined(before.map(ground.item)),
      ground.joined(now.map(ground.item)),
    ),
  starts: ({ table, ground }, a, b, { person, before, now }) =>
    table.beforeNow(table.starts(ground.person(b, person)), ground.zone(a, before), ground.zone(b, now)),
  hand: ({ table, ground }, _a, b, { person, now }) => table.hand(ground.person(b, person), now),
  // Both sides' people are the same person; the second's name is the one on the screen.
  bare: ({ table, ground }, _a, b, { only, person, place }) =>
    table.bare[only](ground.surface(b, `${person}.${place}`)),
  zone: ({ table, ground }, a, b, { only, zone }) => table.zone[only](ground.zone(side(only, a, b), zone)),
  fixture: ({ table, ground }, a, b, { only, fixture }) =>
    table.fixture[only](ground.fixture(side(only, a, b), fixture)),
  'fixture-field': (tongue, a, b, { field, before, now }) =>
    tongue.table.beforeNow(
      `${tongue.ground.fixture(b, now.id)} (${tongue.table.fixtureFields[field]})`,
      fieldText(tongue, a, before, field),
      fieldText(tongue, b, now, field),
    ),
  product: ({ table, ground }, _a, _b, { only, product }) => table.product[only](ground.product(product)),
  start: (tongue, a, b, { surface, before, now }) =>
    tongue.table.beforeNow(
      tongue.table.start(tongue.ground.surface(now ? b : a, surface)),
      stateText(tongue, before),
      stateText(tongue, now),
    ),
  spraying: ({ table }, _a, _b, { now }) => table.spraying[yes(now)],
  observer: (tongue, _a, _b, { before, now }) =>
    tongue.table.beforeNow(tongue.table.observer, observerText(tongue, before), observerText(tongue, now)),
  accepted: acceptedText,
};

const ended = (text: string): string => (/[.!?]\s*[»”"]?$/.test(text) ? text : `${text}.`);

/** The words of a language for it; `set` is its typesetting. */
export function aroundWords(tongue: Tongue, set: (text: string) => string = (text) => text): AroundWords {
  return {
    around: (a, b, change) => {
      const say = SAY[change.what] as (
        tongue: Tongue,
        a: Setting,
        b: Setting,
        change: AroundChange,
      ) => string;
      return set(ended(capital(say(tongue, a, b, change))));
    },
    departure: (setting, place) => set(capital(departure(tongue, setting, place))),
  };
}
