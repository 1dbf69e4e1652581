// `doffline replay`: runs the explicit-state reference engine with exactly the slips of a finding or combination, and tells
// step by step what becomes contaminated. It shares nothing with the diagram that found the combination, so it is
// also a second opinion.
import { hashOf, parseReplayId, type ReplayRef } from '../check/replayId.ts';
import { compile } from '../contacts/interpret.ts';
import type { Plan } from '../contacts/plan.ts';
import type { Procedure } from '../domain/procedure.ts';
import { type ReferenceRun, run, type Trace } from '../engine/reference.ts';
import { printProcedure } from '../language/index.ts';
import type { Words } from '../words/index.ts';
import { cautionsText, type Status } from './check.ts';
import { type Io, painter, type Paint, saidBack, wrapped } from './io.ts';
import { labelsFor } from './labels/index.ts';
import { loadSubject, printComplaint } from './subject.ts';
import type { Speech } from './wording.ts';

interface Show {
  readonly words: Words;
  readonly procedure: Procedure;
  readonly plan: Plan;
  readonly paint: Paint;
}

const idOf = ({ plan }: Show, surface: number): string => plan.surfaces[surface]?.id ?? '';
const nameOf = (show: Show, surface: number): string =>
  show.words.surface(show.procedure, idOf(show, surface));

function traceText(show: Show, { step, from, to, guard }: Trace): readonly string[] {
  const { words, procedure, plan } = show;
  const link = {
    step,
    ...(from === undefined ? {} : { from: idOf(show, from) }),
    to: idOf(show, to),
    events: guard.map((event) => plan.events[event]?.key ?? ''),
  };
  return words.route(procedure, { route: [link], events: [] }).map(({ text }) => text);
}

const isSanitised = ({ plan }: Show, { step, operation }: Trace): boolean =>
  plan.steps[step]?.operations[operation]?.op === 'sanitise';

/** New contamination, and what a cleaning took away; what leaves with its item goes without saying. */
function changesIn(show: Show, traces: readonly Trace[]): readonly string[] {
  return traces
    .filter(({ changed }) => changed)
    .flatMap((trace) => {
      if (trace.kind !== 'clear') return traceText(show, trace);
      return isSanitised(show, trace)
        ? [show.words.cleaned(show.procedure, idOf(show, trace.to), trace.step)]
        : [];
    });
}

function startText(show: Show, { traces }: ReferenceRun): readonly string[] {
  const tainted = traces.filter(({ step, kind, changed }) => step === -1 && kind === 'taint' && changed);
  const always = tainted.filter(({ guard }) => guard.length === 0).map(({ to }) => nameOf(show, to));
  const rest = traces.filter(
    ({ step, kind, guard }) => step === -1 && (kind !== 'taint' || guard.length > 0),
  );
  const list = always.length > 0 ? [wrapped(labelsFor(show.words).takenAtStart(always.join(', ')), 2)] : [];
  return [...list, ...changesIn(show, rest).map((text) => wrapped(text, 2))];
}

function stepsText(show: Show, { traces }: ReferenceRun): readonly string[] {
  return show.plan.steps.flatMap((_, step) =>
    changesIn(
      show,
      traces.filter((trace) => trace.step === step),
    ).map((text) => wrapped(text, 2)),
  );
}

/** Protected surfaces that were reached, and whether they still are at the end. */
function endText({ words, procedure, plan }: Show, { ever, after }: ReferenceRun): readonly string[] {
  const labels = labelsFor(words);
  const last = after.at(-1) ?? [];
  const reached = plan.surfaces.flatMap((surface, index) => {
    const now = last[index] ?? false;
    const judged = surface.judged === 'end' ? now : (ever[index] ?? false);
    const then = now ? labels.stillAtEnd : labels.notAtEnd;
    return surface.protected && judged ? [`  - ${words.surface(procedure, surface.id)} (${then})`] : [];
  });
  return reached.length > 0 ? [labels.reached, ...reached] : [labels.notReached];
}

function slipsText({ words, procedure, plan, paint }: Show, { events }: ReplayRef): readonly string[] {
  const labels = labelsFor(words);
  if (events.length === 0) return [paint('bold', labels.nobody)];
  const sentence = (event: number): string => words.event(procedure, plan.events[event]?.key ?? '');
  return [paint('bold', labels.goesWrong), ...events.map((event) => wrapped(`- ${sentence(event)}`, 2))];
}

function replayText(show: Show, ref: ReplayRef): string {
  const result = run(show.plan, new Set(ref.events));
  return [
    ...slipsText(show, ref),
    '',
    ...startText(show, result),
    ...stepsText(show, result),
    '',
    ...endText(show, result),
    '',
    cautionsText(show.words),
  ].join('\n');
}

const NOT_AN_ID =
  'is not the id of a replay. Ids stand beside findings and combinations, like 1a2b3c4-e5.1x.';
const STALE =
  'belongs to another version of this procedure: the file has changed since. Check it again for its new ids.';
const UNKNOWN = 'names a slip that this procedure does not have.';

/** Why an id cannot be replayed here. */
function whyNot(
  ref: ReplayRef | undefined,
  procedure: Procedure,
  plan: Plan | undefined,
): string | undefined {
  if (!ref) return NOT_AN_ID;
  if (ref.hash !== hashOf(printProcedure(procedure))) return STALE;
  return ref.events.some((event) => plan?.events[event] === undefined) ? UNKNOWN : undefined;
}

/** Runs exactly the slips that the id names. */
export async function replay(io: Io, { words }: Speech, path: string, id: string): Promise<Status> {
  const subject = await loadSubject(io, path);
  for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  const procedure = subject.read?.procedure;
  if (!procedure) return 2;
  const ref = parseReplayId(id);
  const plan = ref && compile(procedure, ref.agent === 'n' ? 'non-enveloped' : 'enveloped').plan;
  const reason = whyNot(ref, procedure, plan);
  if (reason !== undefined || !ref || !plan) {
    io.err(`error: "${saidBack(id)}" ${reason ?? NOT_AN_ID}\n`);
    return 2;
  }
  io.out(replayText({ words, procedure, plan, paint: painter(io) }, ref));
  return 0;
}
