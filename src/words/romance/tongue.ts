// What a language of this family writes down, all of it: tables over the ids of the domain, and whole sentences over
// phrases that carry their gender and number. A missing entry does not compile, so nothing falls back to another
// language.
import type { FindingKind, Severity } from '../../check/finding.ts';
import type { Limit } from '../../check/limits.ts';
import type { SurfaceClass } from '../../contacts/plan.ts';
import type { ProblemCode } from '../../contacts/problem.ts';
import type { ActionId } from '../../domain/actions.ts';
import type { Closure, ItemId, PartId } from '../../domain/items.ts';
import type { PlaceName } from '../../domain/places.ts';
import type { ProcedureKind, Role } from '../../domain/procedure.ts';
import type { Agent, ProductId } from '../../domain/products.ts';
import type { FIXTURE_KINDS, FixtureKindId, ZoneSide } from '../../domain/room.ts';
import type { SlipId, SLIPS } from '../../domain/slips.ts';
import type { TechniqueId } from '../../domain/techniques/index.ts';
import type { ComparedField } from '../../compare/steps.ts';
import type { Quantity } from '../../costing/supply.ts';
import type { LedgerTurn } from '../../engine/ledger.ts';
import type { EvidenceStatus, PracticeRuleId } from '../../evidence/index.ts';
import type { Contact, StartReason } from '../contact.ts';
import type { FigureGroup } from '../figures.ts';
import type { Hands } from '../gloved.ts';
import type { GuideWords } from '../guide.ts';
import type { AcceptanceTable } from '../accepted.ts';
import type { AroundTable } from '../aroundWords.ts';
import type { OrderTable } from '../orderWords.ts';
import type { Explained, WrongAndMend } from '../words.ts';
import type { Grammar, Noun, Phrase } from './grammar.ts';

export type FixturePart = (typeof FIXTURE_KINDS)[number]['parts'][number];

export interface Nouns {
  readonly items: Readonly<Record<ItemId, Noun>>;
  readonly parts: Readonly<Record<PartId, Noun>>;
  readonly places: Readonly<Record<PlaceName, Noun>>;
  readonly fixtures: Readonly<Record<FixtureKindId, Noun>>;
  readonly fixtureParts: Readonly<Record<FixturePart, Noun>>;
  readonly zones: Readonly<Record<ZoneSide, Noun>>;
  readonly roles: Readonly<Record<Role, Noun>>;
  /** Names that many files give their fixtures and zones; others are quoted as they stand. */
  readonly own: Readonly<Record<string, Noun>>;
  /** A zone, a thing, an item, a surface of which nothing more is known; the equipment as a whole. */
  readonly zone: Noun;
  readonly thing: Noun;
  readonly item: Noun;
  readonly surface: Noun;
  readonly equipment: Noun;
  /** 'step', to which its number is added, and 'start'. */
  readonly step: Noun;
  readonly start: Noun;
  /** Said of a hand without a glove. */
  readonly bareHand: string;
}

/** Short texts of lists and headings. */
export interface Labels {
  readonly kinds: Readonly<Record<ProcedureKind, string>>;
  readonly products: Readonly<Record<ProductId, string>>;
  readonly agents: Readonly<Record<Agent, string>>;
  readonly classes: Readonly<Record<SurfaceClass, string>>;
  readonly severities: Readonly<Record<Severity, string>>;
  readonly findingKinds: Readonly<Record<FindingKind, string>>;
  readonly statuses: Readonly<Record<EvidenceStatus, string>>;
  readonly actions: Readonly<Record<ActionId, string>>;
  readonly techniques: Readonly<Record<TechniqueId, string>>;
  readonly slips: Readonly<Record<SlipId, string>>;
  /** Why an end of a route matters: a sentence. */
  readonly why: Readonly<Record<SurfaceClass, string>>;
  readonly limits: Readonly<Record<Limit['code'], (params: Limit['params']) => string>>;
  readonly noRoute: string;
  readonly open: string;
}

/** What a step speaks of. */
export interface StepTold {
  /** The form it is named in, or the form it is read aloud in: picks one of the two. */
  readonly verb: (named: string, aloud: string) => string;
  /** Its items, or the part of them that it names. */
  readonly object: Phrase;
  /** How the item closes; absent where a part is named. */
  readonly closure: Closure | undefined;
  /** Whether the part that is named is tied. */
  readonly tied: boolean;
  /** Everything it is done to: items, place and fixture. */
  readonly target: Phrase;
  readonly hasItems: boolean;
  /** Done to somebody else's things: Spanish and others then drop the reflexive. */
  readonly toAnother: boolean;
  readonly fixture?: Phrase;
  readonly zone?: Phrase;
  readonly helper?: Phrase;
  /** Who is looked over. */
  readonly looked?: Phrase;
  readonly product?: ProductId;
  readonly hands: Hands;
}

export interface Steps {
  readonly verbs: Readonly<Record<ActionId, (told: StepTold) => string>>;
  /** How it is done, read aloud after a colon; empty where the action says it all. */
  readonly how: Readonly<Record<TechniqueId, string>>;
  readonly helped: (helper: Phrase) => string;
  readonly discarded: (object: Phrase, fixture: Phrase) => string;
}

export interface SlipTold {
  /** The first item of the step, the fixture, or for the start the surface or layer. */
  readonly on: Phrase;
  readonly who: Phrase;
  readonly helper: Phrase;
  readonly glove: boolean;
}

export type SlipClauses = Readonly<Record<SlipId, (told: SlipTold) => string>>;

export interface ProblemTold {
  readonly item: Phrase;
  readonly by: Phrase;
  readonly who: Phrase;
  readonly fixture: Phrase;
  /** Name of the product, without article. */
  readonly product: string;
  readonly surface: Phrase;
  readonly hand: Phrase;
  /** The action's short name; undefined where none is known. */
  readonly action: string | undefined;
}

export interface Problems {
  readonly codes: Readonly<Record<ProblemCode, (told: ProblemTold) => WrongAndMend>>;
  readonly layering: Readonly<
    Record<
      'never-put-on' | 'never-taken-off' | 'other-way-round' | 'other',
      (item: Phrase, by: Phrase) => WrongAndMend
    >
  >;
  readonly notWorkedOut: WrongAndMend;
}

export interface Findings {
  /** Whole sentences with a blank before them, added to another; empty where there is nothing to add. */
  readonly also: (surfaces: string) => string;
  readonly moreSurfaces: (count: number) => string;
  readonly open: (told: Told) => Explained;
  readonly byDesign: (told: Told) => Explained;
  readonly oneSlip: (told: Told & { readonly clauses: string }) => Explained;
  readonly seen: Readonly<Record<'circumstance' | 'visible' | 'hidden', string>>;
  readonly practice: (where: Phrase, aside: string, rule: string, compare: string) => string;
  readonly compare: (steps: string) => string;
  readonly when: Readonly<Record<'before' | 'after', string>>;
  /** `target`: number of the place it is moved to; undefined where it is left out. */
  readonly variant: (told: VariantTold) => Explained;
  readonly leftOn: (item: Phrase, who: Phrase) => Explained;
  readonly leftOpen: (item: Phrase, who: Phrase) => Explained;
  readonly bare: (surface: Phrase, who: Phrase, onPurpose: boolean) => Explained;
  readonly accepted: (by: string, date: string, review: string, reason: string) => string;
  readonly acceptance: AcceptanceTable;
}

export interface Told {
  readonly surface: Phrase;
  readonly where: Phrase;
  readonly events: string;
  readonly also: string;
  readonly seen: string;
  readonly why: string;
}

export interface VariantTold {
  readonly label: string;
  readonly where: Phrase;
  readonly target: number | undefined;
  readonly surface: Phrase;
  readonly before: string;
  readonly after: string;
  readonly unseen: boolean;
}

export interface Routes {
  /** 'Étape 9 (...)', 'Au départ': before a colon. */
  readonly atStart: string;
  readonly startEvents: (clauses: string) => string;
  readonly startTaken: (surface: Phrase, reason: StartReason) => string;
  readonly contact: Readonly<Record<Contact['kind'], (one: Phrase, other: Phrase) => string>>;
  readonly mayBe: (surface: Phrase) => string;
  readonly failure: (clause: string) => string;
  readonly turns: Readonly<Record<LedgerTurn, string>>;
  readonly cleaned: (surface: Phrase) => string;
}

export interface Mends {
  readonly insert: (where: string, steps: string) => string;
  readonly beginning: string;
  readonly after: (step: Phrase) => string;
  readonly move: (step: Phrase, where: string) => string;
  readonly leaveOut: (step: Phrase) => string;
  readonly replace: (number: number, sentence: string) => string;
  readonly groups: Readonly<Record<FigureGroup, Phrase>>;
  readonly impossible: string;
  readonly departures: string;
  readonly time: string;
  readonly openTo: (group: Phrase) => string;
  readonly chanceOf: (group: Phrase) => string;
  readonly barriers: string;
  readonly gone: string;
  readonly fresh: string;
  readonly noLongerOpen: string;
  readonly newSlips: (count: number, places: string) => string;
  readonly more: (count: number) => string;
}

/** One and several. */
export type Counted = readonly [one: string, many: string];

export interface Comparing {
  readonly fields: Readonly<Record<ComparedField, string>>;
  readonly mats: string;
  readonly soakedMats: (product: string) => string;
  readonly wettedCloths: (product: string) => string;
  readonly units: Readonly<Record<Exclude<Quantity['unit'], 'piece'>, Counted>>;
  readonly pair: Counted;
  readonly single: Counted;
  readonly added: (step: number, told: string) => string;
  readonly leftOut: (step: number, told: string) => string;
  readonly moved: (from: number, to: number) => string;
  readonly movedAndChanged: (fields: string, from: number, to: number) => string;
  readonly changed: (fields: string, from: number, to: number) => string;
  readonly unchanged: (from: number, to: number) => string;
  readonly beforeAndNow: (before: string, now: string) => string;
  readonly kinds: (a: string, b: string) => string;
  readonly onlyOne: (which: 'a' | 'b', name: Phrase, isPerson: boolean) => string;
  readonly noDifference: string;
  readonly range: (low: string, high: string) => string;
  readonly points: string;
  readonly cannotTell: string;
  readonly chance: readonly [less: string, more: string];
  readonly time: readonly [less: string, more: string];
}

/** Evidence that findings rest on besides the rules: the chances of slips, and what variants rest on. */
export type PriorId = (typeof SLIPS)[number]['prior'] | 'slip.omitted-step' | 'slip.wrong-order';

export interface Tongue {
  readonly language: string;
  readonly cautions: readonly string[];
  /** The space before the percent sign, or none. */
  readonly percentSpace: string;
  readonly grammar: Grammar;
  readonly nouns: Nouns;
  readonly labels: Labels;
  readonly steps: Steps;
  readonly slips: SlipClauses;
  readonly problems: Problems;
  readonly findings: Findings;
  readonly routes: Routes;
  readonly mends: Mends;
  readonly comparing: Comparing;
  readonly around: AroundTable;
  readonly guiding: GuideWords;
  readonly ordering: OrderTable;
  readonly rules: Readonly<Record<PracticeRuleId, Explained>>;
  readonly priors: Readonly<Record<PriorId, string>>;
  /** A text that stands in the evidence in English only, marked as such. */
  readonly inEnglish: (text: string) => string;
}
