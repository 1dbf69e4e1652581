// What a language must be able to say. The interface is whole sentences, never nouns to be glued together by a
// caller, so that a language with genders, cases or other plurals keeps all of its grammar to itself. Every
// function takes the procedure (or the part of it in `Setting`) because names of people and fixtures are the file's own.
import type { Edit } from '../check/edit.ts';
import type { Limit } from '../check/limits.ts';
import type { Finding, FindingKind, Measure, Mend, Severity } from '../check/finding.ts';
import type { Problem } from '../contacts/problem.ts';
import type { SurfaceClass } from '../contacts/plan.ts';
import type { ActionId } from '../domain/actions.ts';
import type { ItemId } from '../domain/items.ts';
import type { ProcedureKind, Role, Step } from '../domain/procedure.ts';
import type { Agent, ProductId } from '../domain/products.ts';
import type { SlipId } from '../domain/slips.ts';
import type { TechniqueId } from '../domain/techniques/index.ts';
import type { LedgerTurn } from '../engine/ledger.ts';
import type { EvidenceId, EvidenceStatus } from '../evidence/index.ts';
import type { CompareWords } from './compare.ts';
import type { OrderWords } from './order.ts';
import type { GuideWords } from './guide.ts';
import type { Review } from './review.ts';
import type { Setting } from './setting.ts';

export type { Setting } from './setting.ts';

/** A heading and what it means: what, where, why it matters. */
export interface Explained {
  readonly title: string;
  readonly text: string;
}

/** What is wrong, and how to mend it. */
export interface WrongAndMend {
  readonly wrong: string;
  readonly mend: string;
}

/** One numbered sentence of a route. `step` is an index, -1 for the start. */
export interface RouteSentence {
  readonly text: string;
  readonly step: number;
  readonly from?: string;
  readonly to?: string;
  readonly events: readonly string[];
}

/** A tried edit as a sentence, and what it changes, one line each. */
export interface MendWords {
  readonly sentence: string;
  readonly changes: readonly string[];
}

/** A piece of evidence as it is shown beside a number or a rule. */
export interface EvidenceWords {
  /** What it says, in one sentence; a rule in full. */
  readonly says: string;
  /** Title, body, year and place of the source. */
  readonly source: string;
  /** 'published', 'from memory', 'judgement' ... as shown. */
  readonly status: string;
}

export interface Words {
  /** BCP 47. */
  readonly language: string;
  /** Machine-made until somebody signed it off (review.ts). */
  readonly review: Review;
  /** What must stand wherever the language is shown: a sentence in it, and the same in English. */
  readonly reviewNote: readonly string[];
  /** Whether what is said of this step or finding is the unit's own sentence (overrides.ts). */
  readonly isOverridden: (setting: Setting, what: Step | Finding) => boolean;
  /** What the program must say of itself wherever it shows a result. */
  readonly cautions: readonly string[];

  // Names, as headings and labels show them, without an article.
  readonly kind: (kind: ProcedureKind) => string;
  readonly role: (role: Role) => string;
  readonly item: (item: ItemId) => string;
  readonly action: (action: ActionId) => string;
  readonly technique: (technique: TechniqueId) => string;
  readonly product: (product: ProductId) => string;
  readonly agent: (agent: Agent) => string;
  readonly slip: (slip: SlipId) => string;
  readonly surfaceClass: (surfaceClass: SurfaceClass) => string;
  readonly severity: (severity: Severity) => string;
  readonly findingKind: (kind: FindingKind) => string;
  readonly status: (status: EvidenceStatus) => string;

  // Phrases with the file's own names.
  readonly person: (setting: Setting, person: string) => string;
  readonly surface: (setting: Setting, surface: string) => string;
  /** 'the clean chair' */
  readonly fixture: (setting: Setting, id: string) => string;
  /** The step in a few words, as a reference to it: 'remove the outer gloves'. */
  readonly stepLabel: (setting: Setting, step: Step) => string;

  // Sentences.
  /** An instruction, verb and object first. */
  readonly step: (setting: Setting, step: Step) => string;
  /** A slip or circumstance by its key, with where it happens. */
  readonly event: (setting: Setting, key: string) => string;
  readonly problem: (setting: Setting, problem: Problem) => WrongAndMend;
  readonly finding: (setting: Setting, finding: Finding) => Explained;
  readonly route: (setting: Setting, finding: Pick<Finding, 'route' | 'events'>) => readonly RouteSentence[];
  /** A surface that a step cleaned. */
  readonly cleaned: (setting: Setting, surface: string, step: number) => string;
  readonly turn: (setting: Setting, turn: LedgerTurn, step: number) => string;
  readonly edit: (setting: Setting, edit: Edit) => string;
  readonly mend: (setting: Setting, mend: Mend) => MendWords;
  readonly measure: (measure: Measure) => readonly string[];
  /** What the check left undone, and what that means. */
  readonly limit: (limit: Limit) => string;

  // Numbers, never without where they come from.
  /** `null`: nothing reaches it any more. */
  readonly barriers: (barriers: number | null) => string;
  /** A chance from 0 to 1 where its status stands beside it already: '0.8 %'. */
  readonly percent: (chance: number) => string;
  /** A chance from 0 to 1, with the weakest status of what it rests on. */
  readonly chance: (chance: number, status: EvidenceStatus) => string;
  readonly evidence: (id: EvidenceId) => EvidenceWords;

  /** Two procedures side by side, and what a run uses up. */
  readonly compare: CompareWords;

  /** What the guide says beside the steps. */
  readonly guide: GuideWords;

  /** An order that was found, and one thing in place of another. */
  readonly order: OrderWords;
}
