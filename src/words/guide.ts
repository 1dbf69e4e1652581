// What the guide says beside the sentences of a procedure: large lines, what is pressed, what is timed, asked, refused and
// done in an emergency. One record per language, whole sentences; large lines are short, verb and object first, because
// they are read from two or three metres away. Nothing here says that anything or anybody is clean or safe.
import type { EmergencyActionId, EmergencyId } from '../domain/emergencies.ts';
import type {
  BarId,
  DeviationId,
  EarlyReason,
  FitFault,
  NoticeId,
  Outcome,
  QuestionId,
  RefusalId,
  Reply,
  SignalId,
  TimerKind,
} from '../domain/guiding.ts';
import type { GuideLabels } from './guideLabels.ts';

/** What can be pressed, as its button says. */
export const PRESS_NAMES = [
  'forward',
  'seen',
  'not-seen',
  'slip',
  'deviation',
  'start-timer',
  'go-early',
  'stop',
  'resume',
  'emergency',
  'return',
  'accept',
  'decline',
  'hand-over',
  'take-over',
  'keep',
  'answer',
  'note',
  'leave',
  'end',
  'break-off',
  'go-on',
  'retry',
] as const;
export type PressName = (typeof PRESS_NAMES)[number];

/** A hand signal: how it looks, and what it says. */
export interface SignalWords {
  readonly shows: string;
  readonly says: string;
}

export interface GuideWords {
  /** Large lines. */
  readonly hold: string;
  readonly look: string;
  readonly sayBack: (label: string) => string;
  readonly allRound: string;
  readonly inside: string;
  readonly finish: string;
  readonly stopped: string;
  readonly questions: Readonly<Record<QuestionId, string>>;
  readonly actions: Readonly<Record<EmergencyActionId, string>>;
  /** Beside them. */
  readonly presses: Readonly<Record<PressName, string>>;
  readonly replies: Readonly<Record<Reply, string>>;
  readonly signals: Readonly<Record<SignalId, SignalWords>>;
  readonly timers: Readonly<Record<TimerKind, string>>;
  readonly early: Readonly<Record<EarlyReason, string>>;
  readonly deviations: Readonly<Record<DeviationId, string>>;
  readonly emergencies: Readonly<Record<EmergencyId, string>>;
  readonly outcomes: Readonly<Record<Outcome, string>>;
  readonly notices: Readonly<Record<NoticeId, string>>;
  readonly refusals: Readonly<Record<RefusalId, string>>;
  readonly bars: Readonly<Record<BarId, string>>;
  readonly fits: Readonly<Record<FitFault, string>>;
  readonly lastConfirmed: string;
  readonly planFirst: string;
  readonly published: string;
  /** The unit's rescuer as its plan names them; undefined where it names none. */
  readonly rescuer: (named: string | undefined) => string;
  readonly saving: string;
  readonly unsaved: (entries: number) => string;
  readonly timeUp: string;
  readonly contaminated: string;
  readonly suspect: string;
  /** Why a step is followed by a hold: its place among the steps, and its share of the chance, written out. */
  readonly holdWhy: (rank: number, share: string) => string;
  readonly searching: string;
  readonly offer: (before: string, after: string) => string;
  /** What stands around the lines. */
  readonly labels: GuideLabels;
}
