// Timers of an exit: which are still owed at a line, how they start, and what it means that one is not waited for. A time
// cut short is never silent: it is recorded with its reason, and as the step's own slip 'too short' where it has one.
import type { EarlyReason } from '../domain/guiding.ts';
import { evidenceNumber } from '../evidence/index.ts';
import { type Draft, type EntryBodies, type EntryKind, TOO_SHORT } from './entries.ts';
import { rinseOf } from './emergency.ts';
import { tooShortAt } from './slips.ts';
import { type Core, currentLine, running, stepIdAt } from './state.ts';
import type { TimerSpec } from './timers.ts';

const draft = <Kind extends EntryKind>(kind: Kind, body: EntryBodies[Kind]): Draft =>
  ({ kind, body }) as Draft;

const MINUTE = 60;

/** The timers of the step that is read. */
const owedAt = (core: Core): readonly TimerSpec[] => core.script.timers[currentLine(core).step] ?? [];

/** Those of the step that have neither elapsed nor been cut short. */
export const pendingAt = (core: Core): readonly TimerSpec[] =>
  owedAt(core).filter(({ id }) => !core.timers.some((timer) => timer.id === id && timer.ended !== null));

/** A rinse may be needed a second time. */
const isStarted = ({ timers }: Core, { id, kind }: TimerSpec): boolean =>
  timers.some((timer) => timer.id === id && (kind !== 'rinse' || timer.ended === null));

/** What an open emergency times. */
function rinse(core: Core): readonly TimerSpec[] {
  const open = core.emergencies.at(-1);
  const spec = open && rinseOf(core.script.setup, open);
  return spec ? [spec] : [];
}

/** What can be started now: the emergency's, else the step's, where reading is not stopped. */
export function startable(core: Core): readonly TimerSpec[] {
  const specs = core.emergencies.length > 0 ? rinse(core) : core.stopped || core.ended ? [] : owedAt(core);
  return specs.filter((spec) => !isStarted(core, spec));
}

/** What can be cut short now. */
export function cuttable(core: Core): readonly TimerSpec[] {
  const open = running(core).map(({ id }) => id);
  if (core.emergencies.length > 0) return rinse(core).filter(({ id }) => open.includes(id));
  const rinsing = running(core).filter(({ kind }) => kind === 'rinse');
  const kept = rinsing.map(({ id, kind, seconds }): TimerSpec => ({ id, kind, seconds }));
  return core.stopped || core.ended ? kept : [...pendingAt(core), ...kept];
}

const started = (core: Core, { id, seconds }: TimerSpec): Draft =>
  draft('exit.timer-started', { exit: core.exit, timer: id, step: stepIdAt(core), seconds });

export const startAll = (core: Core): readonly Draft[] => startable(core).map((spec) => started(core, spec));

/** The times in the suit, from the moment of entering. */
export function startWear(core: Core, already = 0): readonly Draft[] {
  const { wear } = core.script.setup.unit;
  if (!wear) return [];
  const limit = wear.limitMinutes * MINUTE - already;
  const warn = limit - (wear.warnMinutes ?? evidenceNumber('guide.wear-warning')) * MINUTE;
  const specs: readonly TimerSpec[] = [
    { id: 'wear-warning', kind: 'wear-warning', seconds: Math.max(0, warn) },
    { id: 'wear', kind: 'wear', seconds: Math.max(0, limit) },
  ];
  return specs.map((spec) => started(core, spec));
}

function ended(core: Core, spec: TimerSpec, at: number): readonly Draft[] {
  const timer = core.timers.find(({ id }) => id === spec.id);
  const seconds = timer ? Math.max(0, Math.round((at - timer.startedAt) / 1000)) : 0;
  const end = draft('exit.timer-ended', { exit: core.exit, timer: spec.id, how: 'cut-short', seconds });
  return timer ? [end] : [started(core, spec), end];
}

/** The slips that it amounts to: the plan's own, else one without a place in the plan. */
function slipsOf(core: Core, specs: readonly TimerSpec[]): readonly string[] {
  const own = specs.some(({ kind }) => kind === 'contact' || kind === 'rub')
    ? tooShortAt(core.script.setup.procedure, currentLine(core).step)
    : [];
  const fresh = own.filter((key) => !core.happened.includes(key));
  return fresh.length > 0 ? fresh : [TOO_SHORT];
}

/** Entries for going on before the time is up; none where nothing runs or is owed. */
export function cutShort(
  core: Core,
  reason: EarlyReason,
  text: string | undefined,
  at: number,
): readonly Draft[] {
  const specs = cuttable(core);
  if (specs.length === 0) return [];
  const why = text === undefined ? reason : `${reason}: ${text}`;
  const slips = slipsOf(core, specs).map((slip) =>
    draft('exit.slip-recorded', {
      exit: core.exit,
      line: core.line,
      step: stepIdAt(core),
      slip,
      surfaces: [],
      text: why,
    }),
  );
  return [...specs.flatMap((spec) => ended(core, spec, at)), ...slips];
}
