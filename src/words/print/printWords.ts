// What the papers say beside the sentences of a procedure: headings, columns, boxes, blanks and the method. One record per
// language, whole sentences, so that a language keeps its grammar to itself. Nothing here says that anything is clean or safe.
import type { ZoneSide } from '../../domain/room.ts';

export const DOCUMENT_KINDS = ['chart', 'script', 'card', 'sign-off', 'dossier'] as const;
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];

/** The three results an observer may tick; none is ever ticked beforehand. */
export const RESULTS = ['no-deviation', 'not-seen', 'deviation'] as const;
export type Result = (typeof RESULTS)[number];

/** What the unit's journal says of a version; not recorded where it says nothing. */
export const PAPER_STAGES = ['not-recorded', 'draft', 'review', 'approved', 'retired'] as const;

/** What is written by hand beside names of roles, which have words of their own. */
export const BLANKS = ['assessor', 'date', 'begun', 'ended', 'validUntil', 'signature', 'remarks'] as const;
export type Blank = (typeof BLANKS)[number];

export interface ScriptWords {
  readonly rules: readonly string[];
  readonly step: string;
  readonly call: string;
  readonly answer: string;
  /** What the one addressed says when it is done, when something was looked over, and to a call. */
  readonly done: string;
  readonly looked: string;
  readonly ready: string;
  readonly note: string;
  /** The first word of a hold, for short places. */
  readonly holdMark: string;
  /** `who` as 'the wearer'; `next` the number of the step that cleans those hands, if there is one. */
  readonly hold: (who: string, next: number | undefined) => string;
}

export interface SignOffWords {
  readonly statement: string;
  readonly results: readonly string[];
  readonly assessed: string;
  readonly signatures: string;
}

export interface DossierWords {
  readonly procedure: string;
  readonly people: string;
  readonly starts: string;
  readonly fixtures: string;
  readonly agents: string;
  readonly products: string;
  readonly steps: string;
  readonly findings: string;
  readonly noFindings: string;
  readonly route: string;
  readonly mends: string;
  readonly noMend: (tried: number | undefined) => string;
  readonly practiceSource: string;
  readonly departures: string;
  readonly noDepartures: string;
  /** Beside an accepted departure that the check does not find: so that nobody takes it for one that there is. */
  readonly unmatched: string;
  readonly finding: string;
  readonly where: string;
  readonly everywhere: string;
  readonly reason: string;
  readonly acceptedBy: string;
  readonly review: string;
  readonly surfaces: string;
  readonly surfacesNote: string;
  readonly surface: string;
  readonly barriers: string;
  readonly combinations: string;
  readonly chance: string;
  readonly interval: string;
  readonly status: string;
  readonly unreached: (count: number) => string;
  readonly sources: string;
  readonly ownSource: string;
  readonly seen: string;
  readonly memory: string;
  readonly interpreted: string;
  readonly numbers: string;
  readonly method: string;
  readonly methodLines: readonly string[];
  readonly limits: string;
  readonly limitLines: readonly string[];
}

export interface PrintWords {
  readonly document: Readonly<Record<DocumentKind, string>>;
  /** What was put together of several words, with the spaces of the language's print; the same again changes nothing. */
  readonly set: (text: string) => string;
  readonly version: (version: string) => string;
  readonly hash: (hash: string) => string;
  readonly undated: string;
  /** On every page where it is given. */
  readonly stage: Readonly<Record<(typeof PAPER_STAGES)[number], string>>;
  readonly approvedOn: (day: string) => string;
  readonly invented: string;
  /** With {page} and {pages}. */
  readonly page: string;
  /** On every page. */
  readonly defers: string;
  readonly cautions: string;
  readonly errors: (count: number) => string;
  /** Where to read on, on every paper but the dossier. */
  readonly seeDossier: string;
  readonly who: string;
  readonly what: string;
  readonly unfinished: string;
  readonly zone: Readonly<Record<ZoneSide, string>>;
  readonly standing: string;
  readonly sitting: (fixture: string) => string;
  readonly part: (part: number, parts: number, from: number, to: number) => string;
  readonly stepsOf: (from: number, to: number) => string;
  readonly wears: (who: string) => string;
  readonly hatched: string;
  readonly outlined: string;
  readonly helps: string;
  /** Alternative text of a picture. */
  readonly picture: (label: string, worn: string, contaminated: string) => string;
  readonly result: Readonly<Record<Result, string>>;
  /** Blanks: label of each, left empty. */
  readonly blanks: Readonly<Record<Blank, string>>;
  readonly script: ScriptWords;
  readonly signOff: SignOffWords;
  readonly dossier: DossierWords;
}
