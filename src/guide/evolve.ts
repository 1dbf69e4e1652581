// What an entry means for where an exit stands: the only way in which `Core` changes, live and in a replay alike.
import type { TimerKind } from '../domain/guiding.ts';
import type { EntryBodies, EntryKind, GuideEntry } from './entries.ts';
import { OTHER } from './entries.ts';
import type { Answer, Script } from './script.ts';
import { type Core, doneOf, type Timer } from './state.ts';
import { withSteps } from './makeScript.ts';

/** Kinds of timers by the ends of their ids: `s12-rub`, `sharps-rinse`, `wear`. */
const KINDS_BY_END: readonly (readonly [end: string, kind: TimerKind])[] = [
  ['wear-warning', 'wear-warning'],
  ['wear', 'wear'],
  ['-contact', 'contact'],
  ['-rub', 'rub'],
  ['-dry', 'dry'],
  ['-rinse', 'rinse'],
];

export const timerKind = (timer: string): TimerKind =>
  KINDS_BY_END.find(([end]) => timer.endsWith(end))?.[1] ?? 'contact';

/** An exit that has just begun, at its first line. */
export const startCore = (script: Script, body: EntryBodies['exit.started']): Core => ({
  exit: body.exit,
  drill: body.drill,
  room: body.room,
  script,
  people: { wearer: body.wearer, observer: body.observer, assistants: body.assistants },
  line: 0,
  answered: {},
  lastAnswered: null,
  recap: false,
  stopped: null,
  emergencies: [],
  timers: [],
  deviations: [],
  happened: [],
  taints: [],
  offer: null,
  offers: 0,
  unsought: false,
  replies: {},
  entered: null,
  left: false,
  ended: null,
  opened: {},
  entries: 1,
});

function answer(core: Core, line: number, given: Answer): Core {
  const { group = '', kind } = core.script.lines[line] ?? {};
  // What was said back is not yet done.
  const lastAnswered = kind === 'back' ? core.lastAnswered : line;
  return { ...core, answered: { ...core.answered, [group]: given }, lastAnswered };
}

type Handler<Kind extends EntryKind> = (
  core: Core,
  body: EntryBodies[Kind],
  entry: { readonly at: number; readonly by: string | null },
) => Core;

function recordSlip(core: Core, body: EntryBodies['exit.slip-recorded']): Core {
  const step = core.script.lines[body.line]?.step ?? -1;
  const { slip, line, surfaces, text } = body;
  const listed = !slip.startsWith(OTHER) && !core.happened.includes(slip);
  return {
    ...core,
    deviations: [...core.deviations, { slip, line, step, surfaces, text }],
    happened: listed ? [...core.happened, slip] : core.happened,
    unsought: true,
    taints: [...core.taints, ...surfaces.map((surface) => ({ step, surface }))],
  };
}

function endTimer(
  timers: readonly Timer[],
  { timer, how }: EntryBodies['exit.timer-ended'],
  at: number,
): readonly Timer[] {
  return timers.map((one) => (one.id === timer && one.ended === null ? { ...one, ended: { how, at } } : one));
}

/** Of two interruptions the later is returned from first. */
function resume(core: Core): Core {
  const recap = core.lastAnswered !== null && core.ended === null;
  if (core.emergencies.length > 0) {
    return { ...core, emergencies: core.emergencies.slice(0, -1), recap: core.stopped === null && recap };
  }
  return { ...core, stopped: null, recap };
}

const HANDLERS: { readonly [Kind in EntryKind]: Handler<Kind> } = {
  'exit.started': (core) => core,
  'exit.line-shown': (core, { line }) => ({ ...core, line, recap: false }),
  'exit.line-confirmed': (core, { line }) => answer(core, line, 'seen'),
  'exit.not-seen': (core, { line }) => answer(core, line, 'not-seen'),
  'exit.slip-recorded': recordSlip,
  'exit.continuation-offered': (core, { offer, continuation }) => ({
    ...core,
    offer: { id: offer, continuation, done: doneOf(core) },
    offers: core.offers + 1,
  }),
  'exit.continuation-answered': (core, { choice }) => {
    const { offer } = core;
    const script =
      offer && choice ? withSteps(core.script, offer.done, offer.continuation.steps) : core.script;
    return { ...core, script, offer: null, unsought: false };
  },
  'exit.stopped': (core, _body, { by }) => ({ ...core, stopped: { by } }),
  'exit.resumed': resume,
  'exit.timer-started': (core, { timer, seconds }, { at }) => ({
    ...core,
    timers: [...core.timers, { id: timer, kind: timerKind(timer), seconds, startedAt: at, ended: null }],
  }),
  'exit.timer-ended': (core, body, { at }) => ({ ...core, timers: endTimer(core.timers, body, at) }),
  'exit.handed-over': (core, { to }) => ({ ...core, people: { ...core.people, observer: to } }),
  'exit.ended': (core, { how, deviations, linesNotSeen }, { at }) => ({
    ...core,
    ended: { how, deviations, linesNotSeen, at },
  }),
  'exit.question-answered': (core, { question, answer: reply }) => ({
    ...core,
    replies: { ...core.replies, [question]: reply },
  }),
  'room.entered': (core, _body, { at }) => ({ ...core, entered: at }),
  'room.left': (core) => ({ ...core, left: true }),
  'emergency.opened': (core, { emergency }) => ({
    ...core,
    emergencies: [...core.emergencies, emergency],
    opened: { ...core.opened, [emergency]: core.deviations.length },
  }),
  'note.added': (core) => core,
};

/** The exit after one more entry. */
export function evolve(core: Core, entry: Pick<GuideEntry, 'kind' | 'body' | 'at' | 'by'>): Core {
  const handle = HANDLERS[entry.kind] as Handler<EntryKind>;
  const told = handle(core, entry.body, { at: Date.parse(entry.at), by: entry.by });
  return { ...told, entries: told.entries + 1 };
}
