// What an event means, as entries to be recorded; nothing changes here. A press that cannot be done now is refused with
// its reason. Anybody may say stop and open an emergency; everything else is the observer's.
import type { RefusalId } from '../domain/guiding.ts';
import { type Draft, type EntryBodies, type EntryKind, OTHER } from './entries.ts';
import type { Event, Press } from './events.ts';
import { isEvent } from './known.ts';
import { answersTo, type Line } from './script.ts';
import type { WearLimit } from './setup.ts';
import {
  type Core,
  currentLine,
  deviationCount,
  dueAt,
  nextLine,
  notSeenCount,
  rewound,
  running,
  stepIdAt,
  type State,
} from './state.ts';
import { cutShort, pendingAt, startAll, startWear } from './timing.ts';

export type Decision = { readonly drafts: readonly Draft[] } | { readonly refused: RefusalId };

const NOTHING: Decision = { drafts: [] };
const refuse = (refused: RefusalId): Decision => ({ refused });

const draft = <Kind extends EntryKind>(kind: Kind, body: EntryBodies[Kind]): Draft =>
  ({ kind, body }) as Draft;

type OfLine = EntryBodies['exit.line-shown'];

const ofLine = (core: Core, line = core.line): OfLine => ({
  exit: core.exit,
  line,
  step: stepIdAt(core, line),
});

const show = (core: Core, line: number): Draft => draft('exit.line-shown', ofLine(core, line));

const iso = (at: number): string => new Date(at).toISOString();

type Handler<Is extends Press['is']> = (
  state: State,
  event: Extract<Press, { is: Is }> & Pick<Event, 'at' | 'by'>,
) => Decision;

/** Where reading stands still: stopped, or an emergency or an offer lies over it. */
function blocked({ stopped, emergencies, recap }: Core): RefusalId | undefined {
  if (emergencies.length > 0) return 'not-now';
  if (stopped) return 'stopped';
  return recap ? 'not-now' : undefined;
}

/** The next screen; of an emergency's card nothing is recorded but that it was opened. */
const forward: Handler<'forward'> = ({ core }) => {
  if (core.emergencies.length > 0) return NOTHING;
  if (core.stopped) return refuse('stopped');
  if (core.recap) return { drafts: [show(core, rewound(core))] };
  const line = currentLine(core);
  if (answersTo(line).length > 0 || ['inside', 'question', 'finish'].includes(line.kind))
    return refuse('not-now');
  return { drafts: [show(core, nextLine(core))] };
};

/** Whether a line may be answered now, and if so how it is said that reading goes on. */
function answerable(core: Core, line: Line): RefusalId | undefined {
  const block = blocked(core);
  if (block) return block;
  if (answersTo(line).length === 0) return 'not-now';
  if (core.offer && line.kind !== 'back') return 'offer-open';
  return pendingAt(core).length > 0 && line.kind === 'look' ? 'timer-running' : undefined;
}

function goesOn(core: Core): readonly Draft[] {
  const answered = { ...core, answered: { ...core.answered, [currentLine(core).group]: 'seen' as const } };
  return [show(core, nextLine(answered))];
}

/** Before an entry: something bare, or not seen, needs a reason and is recorded. */
/** Longest text that the journal takes for where a limit is written. */
const MOST_SOURCE = 300;

/** The unit's limit as the journal takes it: whole minutes, and where they are written. */
function limitOf(wear: WearLimit | undefined): EntryBodies['room.entered']['limit'] {
  const minutes = Math.max(1, Math.round(wear?.limitMinutes ?? 0));
  const source = (wear?.source ?? '').trim().slice(0, MOST_SOURCE);
  return wear && source !== '' && Number.isSafeInteger(minutes) ? { minutes, source } : null;
}

function enter(
  state: State,
  answer: Draft,
  isSeen: boolean,
  reason: string | undefined,
  at: number,
): Decision {
  const { core, visit } = state;
  const { identity, unit } = core.script.setup;
  const bare = core.script.bare.some(({ severity }) => severity === 'error');
  const needsReason = bare || !isSeen;
  if (needsReason && !reason) return refuse('reason-missing');
  const why = needsReason
    ? [
        draft('exit.slip-recorded', {
          ...ofLine(core),
          slip: `${OTHER}something-else`,
          surfaces: [],
          text: reason ?? null,
        }),
      ]
    : [];
  const entered = draft('room.entered', {
    visit,
    person: core.people.wearer,
    room: core.room,
    happened: iso(at),
    role: 'wearer',
    worn: { ...identity },
    ensemble: null,
    items: unit.packs ?? [],
    observer: core.people.observer,
    limit: limitOf(unit.wear),
    drill: core.drill,
    late: null,
  });
  return { drafts: [answer, ...why, ...goesOn(core), entered, ...startWear(core)] };
}

const seen: Handler<'seen'> = (state, { means = 'other', reason, at }) => {
  const { core } = state;
  const line = currentLine(core);
  const no = answerable(core, line);
  if (no) return refuse(no);
  const answer = draft('exit.line-confirmed', { ...ofLine(core), means });
  if (line.kind === 'all-round') return enter(state, answer, true, reason, at);
  return { drafts: [answer, ...goesOn(core)] };
};

const notSeen: Handler<'not-seen'> = (state, { reason, at }) => {
  const { core } = state;
  const line = currentLine(core);
  const no = answerable(core, line);
  if (no) return refuse(no);
  const answer = draft('exit.not-seen', ofLine(core));
  if (line.kind === 'all-round') return enter(state, answer, false, reason, at);
  return { drafts: [answer, ...goesOn(core)] };
};

/** A slip of the step that is being read means that somebody moved already: from here it is watched. */
function recorded(
  core: Core,
  slip: string,
  step: number,
  surfaces: readonly string[],
  text?: string,
): Decision {
  const here = currentLine(core);
  const { lines } = core.script;
  const own =
    step === here.step
      ? core.line
      : lines.findLastIndex((line) => line.step === step && line.kind === 'look');
  const line = own < 0 ? core.line : own;
  const entry = draft('exit.slip-recorded', { ...ofLine(core, line), slip, surfaces, text: text ?? null });
  const look = lines.findIndex((one) => one.step === here.step && one.kind === 'look');
  const moves = step === here.step && ['read', 'back'].includes(here.kind) && look >= 0 && !blocked(core);
  return { drafts: moves ? [entry, show(core, look)] : [entry] };
}

const slip: Handler<'slip'> = ({ core }, { event, text }) => {
  const { procedure } = core.script.setup;
  if (!isEvent(procedure, event)) return refuse('not-now');
  const id = event.split(':')[0] ?? '';
  const step = procedure.steps.findIndex((one) => one.id === id);
  const at = step < 0 ? currentLine(core).step : step;
  return at > currentLine(core).step ? refuse('not-now') : recorded(core, event, at, [], text);
};

const deviation: Handler<'deviation'> = ({ core }, { category, surfaces = [], text }) =>
  recorded(core, `${OTHER}${category}`, currentLine(core).step, surfaces, text);

const startTimer: Handler<'start-timer'> = ({ core }) => {
  const drafts = startAll(core);
  return drafts.length === 0 ? refuse('not-now') : { drafts };
};

const goEarly: Handler<'go-early'> = ({ core }, { reason, text, at }) => {
  const drafts = cutShort(core, reason, text, at);
  return drafts.length === 0 ? refuse('not-now') : { drafts };
};

const stop: Handler<'stop'> = ({ core }, { text }) =>
  core.stopped ? NOTHING : { drafts: [draft('exit.stopped', { ...ofLine(core), text: text ?? null })] };

/** Reads the last answered line again; where there is none, the exit's first lines. */
function interruptionOver(core: Core): readonly Draft[] {
  const resumed = draft('exit.resumed', ofLine(core, core.lastAnswered ?? core.line));
  const stillStopped = core.emergencies.length > 0 && core.stopped !== null;
  const readsOn = core.ended === null && !stillStopped;
  return core.lastAnswered === null && readsOn ? [resumed, show(core, rewound(core))] : [resumed];
}

const resume: Handler<'resume'> = ({ core }) =>
  core.emergencies.length > 0 || !core.stopped ? refuse('not-now') : { drafts: interruptionOver(core) };

const back: Handler<'return'> = ({ core }) =>
  core.emergencies.length === 0 ? refuse('not-now') : { drafts: interruptionOver(core) };

const emergency: Handler<'emergency'> = ({ core }, { emergency: id, at }) =>
  core.emergencies.at(-1) === id
    ? NOTHING
    : {
        drafts: [
          draft('emergency.opened', { emergency: id, room: core.room, exit: core.exit, happened: iso(at) }),
        ],
      };

const choose =
  (take: boolean) =>
  (core: Core, reason: string | null): Decision => {
    const { offer } = core;
    if (!offer) return refuse('not-now');
    const choice = take ? offer.continuation.id : null;
    return {
      drafts: [
        draft('exit.continuation-answered', { exit: core.exit, offer: offer.id, choice, text: reason }),
      ],
    };
  };

const accept: Handler<'accept'> = ({ core }) => choose(true)(core, null);
const decline: Handler<'decline'> = ({ core }, { reason }) =>
  reason.trim() === '' ? refuse('reason-missing') : choose(false)(core, reason);

const takeOver: Handler<'take-over'> = ({ core, handover }, { line, by }) => {
  if (handover === null || by !== handover) return refuse('not-now');
  if (line !== core.lastAnswered) return refuse('other-line');
  const { observer } = core.people;
  return {
    drafts: [draft('exit.handed-over', { ...ofLine(core), role: 'observer', from: observer, to: handover })],
  };
};

const answer: Handler<'answer'> = ({ core }, { question, reply }) => {
  const block = blocked(core);
  if (block) return refuse(block);
  if (currentLine(core).question !== question) return refuse('not-now');
  return {
    drafts: [draft('exit.question-answered', { exit: core.exit, question, answer: reply }), ...goesOn(core)],
  };
};

const note: Handler<'note'> = ({ core }, { text }) =>
  text.trim() === ''
    ? refuse('reason-missing')
    : { drafts: [draft('note.added', { about: 'exit', id: core.exit, text })] };

const seconds = (from: number, to: number): number => Math.max(0, Math.round((to - from) / 1000));

/** Ends what still runs, and the exit. */
function ending(core: Core, how: 'finished' | 'broken-off', at: number): readonly Draft[] {
  const timers = running(core).map(({ id, startedAt }) =>
    draft('exit.timer-ended', {
      exit: core.exit,
      timer: id,
      how: 'cancelled',
      seconds: seconds(startedAt, at),
    }),
  );
  const counts = { deviations: deviationCount(core), linesNotSeen: notSeenCount(core) };
  return [...timers, draft('exit.ended', { exit: core.exit, how, ...counts })];
}

/** Times in the suit end with it; any other has to be waited for or cut short with a reason. */
const isOpen = (core: Core): boolean =>
  running(core).some(({ kind }) => kind !== 'wear' && kind !== 'wear-warning');

const end: Handler<'end'> = ({ core }, { at }) => {
  const block = blocked(core);
  if (block) return refuse(block);
  if (currentLine(core).kind !== 'finish') return refuse('not-now');
  if (core.offer) return refuse('offer-open');
  return isOpen(core) ? refuse('timer-running') : { drafts: ending(core, 'finished', at) };
};

const leave: Handler<'leave'> = ({ core, visit }, { at }) => {
  const block = blocked(core);
  if (block) return refuse(block);
  if (currentLine(core).kind !== 'inside') return refuse('not-now');
  const left = draft('room.left', {
    visit,
    person: core.people.wearer,
    room: core.room,
    happened: iso(at),
    exit: null,
    asked: 'later',
    late: null,
  });
  return { drafts: [left, ...ending(core, 'finished', at)] };
};

/** Only out of a stop or an emergency, with a reason: people's lives go before the order of an exit. */
const breakOff: Handler<'break-off'> = ({ core }, { reason, at }) => {
  if (!core.stopped && core.emergencies.length === 0) return refuse('not-now');
  if (reason.trim() === '') return refuse('reason-missing');
  return {
    drafts: [
      draft('note.added', { about: 'exit', id: core.exit, text: reason }),
      ...ending(core, 'broken-off', at),
    ],
  };
};

const HANDLERS: { readonly [Is in Press['is']]: Handler<Is> } = {
  forward,
  seen,
  'not-seen': notSeen,
  slip,
  deviation,
  'start-timer': startTimer,
  'go-early': goEarly,
  stop,
  resume,
  emergency,
  return: back,
  accept,
  decline,
  'hand-over': () => NOTHING,
  'take-over': takeOver,
  keep: () => NOTHING,
  answer,
  note,
  leave,
  end,
  'break-off': breakOff,
  'go-on': () => NOTHING,
  retry: () => NOTHING,
};

const ANYBODY: readonly Press['is'][] = ['stop', 'emergency', 'take-over'];
/** An emergency may come when the exit is over. */
const AFTER_THE_END: readonly Press['is'][] = ['emergency', 'return', 'start-timer', 'go-early', 'note'];

export const isPress = (event: Event): event is Event & Press => event.is in HANDLERS;

/** Entries of a press, or why it is refused. */
export function decide(state: State, event: Event & Press): Decision {
  const { core } = state;
  if (core.ended && !AFTER_THE_END.includes(event.is)) return refuse('ended');
  if (!ANYBODY.includes(event.is) && event.by !== core.people.observer) return refuse('observer-only');
  return (HANDLERS[event.is] as Handler<Press['is']>)(state, event);
}

/** Timers that are due end by themselves: the one thing that the clock does. */
export const decideTime = (core: Core, at: number): readonly Draft[] =>
  running(core)
    .filter((timer) => dueAt(timer) <= at)
    .map(({ id, seconds: length }) =>
      draft('exit.timer-ended', { exit: core.exit, timer: id, how: 'elapsed', seconds: length }),
    );
