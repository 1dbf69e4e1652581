// The vocabulary of a guided exit: what is answered, recorded beside the plan's own slips, asked at the end, timed and
// signalled. Lists of names only; what they mean for the exit stands in guide/, how they are said in words/.

/** What an observer records that no slip of the step covers. */
export const DEVIATIONS = [
  'touched-face',
  'touched-clean-thing',
  'touched-floor',
  'lost-balance',
  'out-of-order',
  'left-out',
  'ran-ahead',
  'item-torn',
  'soil-seen',
  'line-crossed',
  'something-else',
] as const;
export type DeviationId = (typeof DEVIATIONS)[number];

/** Why a timer was not waited for. */
export const EARLY_REASONS = [
  'wearer-unwell',
  'label-says-less',
  'emergency',
  'product-ran-out',
  'other',
] as const;
export type EarlyReason = (typeof EARLY_REASONS)[number];

/** Asked of the wearer at the end of an exit; the emergency it opens when the answer is yes. */
export const QUESTIONS = [
  { id: 'tear', opens: 'glove-tear' },
  { id: 'sting', opens: 'sharps' },
  { id: 'splash', opens: 'splash-skin' },
  { id: 'faint', opens: 'faint' },
  { id: 'touch', opens: undefined },
] as const;
export type QuestionId = (typeof QUESTIONS)[number]['id'];

export const REPLIES = ['no', 'yes', 'not-sure'] as const;
export type Reply = (typeof REPLIES)[number];

/**
 * contact: a surface stays wet. rub: hands are rubbed or washed. dry: hands dry. rinse: eyes, a wound. wear: in the suit.
 * wear-warning: some time before that ends.
 */
export const TIMER_KINDS = ['contact', 'rub', 'dry', 'rinse', 'wear', 'wear-warning'] as const;
export type TimerKind = (typeof TIMER_KINDS)[number];

/** Hand signals for what has to be said while a powered respirator drowns the voice. */
export const SIGNALS = ['done', 'again', 'stop', 'unwell'] as const;
export type SignalId = (typeof SIGNALS)[number];

/** What is said of a whole exit; never that somebody is clean. */
export const OUTCOMES = ['no-deviation-seen', 'not-all-seen', 'deviation-recorded'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** What stands on the screen all the time, where it holds. */
export const NOTICES = [
  'drill',
  'unapproved',
  'invented',
  'no-unit-plan',
  'no-rescuer',
  'no-wear-limit',
  'holds-not-worked-out',
  'does-not-fit',
  'left-bare',
] as const;
export type NoticeId = (typeof NOTICES)[number];

/** Why a press did nothing. */
export const REFUSALS = [
  'observer-only',
  'not-now',
  'saving',
  'unsaved',
  'stopped',
  'timer-running',
  'reason-missing',
  'offer-open',
  'other-line',
  'ended',
] as const;
export type RefusalId = (typeof REFUSALS)[number];

/** Why an exit does not begin. */
export const BARS = [
  'not-approved',
  'approved-other-text',
  'approval-ended',
  'no-observer',
  'no-assistant',
] as const;
export type BarId = (typeof BARS)[number];

/** Why the large text does not fit a screen. */
export const FIT_FAULTS = ['too-low', 'too-narrow'] as const;
export type FitFault = (typeof FIT_FAULTS)[number];
