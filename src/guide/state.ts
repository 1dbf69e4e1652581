// Where an exit stands. `Core` is all that entries say: it is rebuilt from them exactly. Around it lies what is volatile and
// may be lost in a crash without harm: entries on their way to the store, a search that runs, a hand-over not yet taken.
import type { EmergencyId } from '../domain/emergencies.ts';
import type { QuestionId, RefusalId, Reply, TimerKind } from '../domain/guiding.ts';
import type { Continuation } from './continuation.ts';
import type { GuideEntry } from './entries.ts';
import type { Effect } from './events.ts';
import type { Taint } from './known.ts';
import type { Answer, Line, Script } from './script.ts';

/** Ids of the staff list. Assistants in the order of the procedure. */
export interface People {
  readonly wearer: string;
  readonly observer: string;
  readonly assistants: readonly string[];
}

export interface Timer {
  readonly id: string;
  readonly kind: TimerKind;
  readonly seconds: number;
  /** Milliseconds since 1970. */
  readonly startedAt: number;
  readonly ended: null | { readonly how: 'elapsed' | 'cut-short' | 'cancelled'; readonly at: number };
}

/** Something recorded that was not as read. */
export interface Deviation {
  readonly slip: string;
  readonly line: number;
  readonly step: number;
  readonly surfaces: readonly string[];
  readonly text: string | null;
}

export interface Offer {
  readonly id: string;
  readonly continuation: Continuation;
  /** Steps that were done when it was offered; it replaces what comes after them. */
  readonly done: number;
}

export interface Ended {
  readonly how: 'finished' | 'broken-off';
  readonly deviations: number;
  readonly linesNotSeen: number;
  /** Milliseconds since 1970. */
  readonly at: number;
}

export interface Core {
  readonly exit: string;
  readonly drill: boolean;
  readonly room: string;
  readonly script: Script;
  readonly people: People;
  /** Index of the line that is read. */
  readonly line: number;
  /** By group of lines. */
  readonly answered: Readonly<Record<string, Answer>>;
  /** Line that was answered last: read again after an interruption. */
  readonly lastAnswered: number | null;
  /** It is being read again, before reading goes on. */
  readonly recap: boolean;
  readonly stopped: null | { readonly by: string | null };
  /** Opened and not returned from, the last one on top. */
  readonly emergencies: readonly EmergencyId[];
  readonly timers: readonly Timer[];
  readonly deviations: readonly Deviation[];
  readonly happened: readonly string[];
  readonly taints: readonly Taint[];
  readonly offer: Offer | null;
  readonly offers: number;
  /** Something went wrong since another way on was last answered. */
  readonly unsought: boolean;
  readonly replies: Readonly<Partial<Record<QuestionId, Reply>>>;
  /** When the wearer entered the room. */
  readonly entered: number | null;
  readonly left: boolean;
  readonly ended: Ended | null;
  /** Of each emergency that was opened, how many deviations were recorded before that: for those its card led to the unit's plan. */
  readonly opened: Readonly<Partial<Record<EmergencyId, number>>>;
  /** Entries so far. */
  readonly entries: number;
}

/** What a search for another way on answered where it found none, after so many steps. */
export interface Sought {
  readonly is: 'nothing-better' | 'not-worked-out';
  readonly done: number;
}

export interface State {
  /** All that was recorded, whether the store has said so or not. */
  readonly core: Core;
  /** What the screen shows; behind `core` while entries are being stored. */
  readonly shown: Core;
  /** Handed to the store and not yet acknowledged. */
  readonly saving: readonly GuideEntry[];
  /** Not stored; handed over again with whatever comes next, or when asked to. */
  readonly unsaved: readonly GuideEntry[];
  /** The observer has said to go on though nothing is stored: until something is, failures do not stop the screen. */
  readonly adrift: boolean;
  /** Due once what is being saved is stored. */
  readonly held: readonly Effect[];
  readonly search: null | { readonly id: string; readonly done: number };
  readonly searches: number;
  /** Null while nothing was searched for, while it runs and where it found a way. */
  readonly sought: Sought | null;
  /** Who was asked to take over. */
  readonly handover: string | null;
  /** Action of the open emergency that is shown. */
  readonly card: number;
  readonly refusal: RefusalId | null;
  /** Visit of the wearer to the room, for the log of a donning. */
  readonly visit: string;
  readonly approved: boolean;
}

export const currentLine = ({ script, line }: Core): Line => {
  const found = script.lines[line];
  if (!found) throw new Error(`no line ${line}`);
  return found;
};

export const stepIdAt = (core: Core, line = core.line): string => {
  const step = core.script.lines[line]?.step ?? -1;
  return core.script.setup.procedure.steps[step]?.id ?? 'end';
};

/** Steps that count as done: those answered, and the one whose doing is being watched. */
export function doneOf(core: Core): number {
  const { kind, step } = currentLine(core);
  return kind === 'look' || kind === 'hold' ? step + 1 : step;
}

/** The next line to show from here: groups that were answered are not shown again. */
export function nextLine({ script, answered, line }: Core): number {
  const next = script.lines.findIndex(
    ({ group, kind }, index) => index > line && (kind === 'read' || answered[group] === undefined),
  );
  return next < 0 ? script.lines.length - 1 : next;
}

/** Where reading goes on after an interruption: the first line of the step that was not answered yet. */
export function rewound(core: Core): number {
  const { step, kind, group } = currentLine(core);
  const { lines } = core.script;
  const first = ['read', 'back', 'look'].includes(kind)
    ? lines.findIndex((line) => line.step === step)
    : lines.findIndex((line) => line.group === group);
  return Math.max(0, first);
}

export const running = ({ timers }: Core): readonly Timer[] => timers.filter(({ ended }) => ended === null);
export const dueAt = ({ startedAt, seconds }: Timer): number => startedAt + seconds * 1000;

/** Steps that were seen done as read. */
export const seenSteps = ({ script, answered }: Core): readonly number[] => [
  ...new Set(
    script.lines.flatMap(({ kind, group, step }) =>
      kind === 'look' && answered[group] === 'seen' ? [step] : [],
    ),
  ),
];

export const notSeenCount = ({ answered }: Core): number =>
  Object.values(answered).filter((answer) => answer === 'not-seen').length;

/** What was recorded, and what the wearer said yes to at the end. */
export const deviationCount = ({ deviations, replies }: Core): number =>
  deviations.length + Object.values(replies).filter((reply) => reply === 'yes').length;
