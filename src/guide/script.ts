// A script: the procedure as lines, each one screen, read from top to bottom. Of each step: what is read to whoever does
// it, at steps with a hold what they say back, then what the observer looks for and answers. The lines are numbered, and
// a number never changes its meaning within one exit: what is done stays, only what lies ahead can be replaced.
import type { NoticeId, QuestionId } from '../domain/guiding.ts';
import type { Finding } from '../check/finding.ts';
import type { Language } from '../words/index.ts';
import type { Fit } from './fit.ts';
import type { Hold } from './holds.ts';
import type { Screenful } from './rows.ts';
import type { Setup } from './setup.ts';
import type { TimerSpec } from './timers.ts';

/**
 * read: aloud, to those who do it. back: they say it back before they move. look: the observer watches and answers. hold:
 * everybody still. all-round: coverage before an entry. inside: in the patient's room. question: to the wearer at the
 * end. finish: nothing is left to read.
 */
export const LINE_KINDS = [
  'read',
  'back',
  'look',
  'hold',
  'all-round',
  'inside',
  'question',
  'finish',
] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** The observer saw it done as read, or did not see it: an answer like any other. */
export const ANSWERS = ['seen', 'not-seen'] as const;
export type Answer = (typeof ANSWERS)[number];

export interface Line {
  /** Its group and its place in it: `s12/read.2`. */
  readonly id: string;
  /** One thing to be answered or read: all screens of a step's reading are one group. */
  readonly group: string;
  readonly kind: LineKind;
  /** Index of the step; the number of steps for what comes after the last. */
  readonly step: number;
  readonly part: number;
  readonly parts: number;
  /** Names in the procedure of those it is for, whoever does it first. */
  readonly for: readonly string[];
  readonly texts: Readonly<Partial<Record<Language, Screenful>>>;
  /** What is expected in answer, where something is. */
  readonly answers?: Readonly<Partial<Record<Language, string>>>;
  /** Somebody it is for wears a powered respirator and may not hear: signals stand beside the words. */
  readonly drowned: boolean;
  readonly question?: QuestionId;
}

export interface TooWide {
  readonly line: string;
  readonly language: Language;
}

export interface Script {
  readonly setup: Setup;
  readonly fit: Fit;
  readonly lines: readonly Line[];
  /** By step. */
  readonly timers: readonly (readonly TimerSpec[])[];
  readonly holds: readonly Hold[];
  /** Rows that are too wide for the screen at its distance. */
  readonly tooWide: readonly TooWide[];
  /** Of a donning: what its coverage check finds. */
  readonly bare: readonly Finding[];
  readonly notices: readonly NoticeId[];
}

const ANSWERED: readonly LineKind[] = ['back', 'look', 'hold', 'all-round'];

/** Whether the line waits for an answer: the last screen of a group that asks for one. */
const isAnswered = ({ kind, part, parts }: Line): boolean => ANSWERED.includes(kind) && part === parts;

/** What can be answered. A hold or a say-back that was not seen is an answer as well. */
export const answersTo = (line: Line): readonly Answer[] => (isAnswered(line) ? ['seen', 'not-seen'] : []);
