// `doffline order`: the best doffing order for what a file's people wear, as sentences with reasons, or the least rewriting
// with one thing in place of another; on request written as a procedure file.
import { alignSteps } from '../compare/align.ts';
import { matchOf } from '../compare/match.ts';
import type { Measure } from '../check/finding.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { printProcedure } from '../language/index.ts';
import { type OrderOptions, type OrderResult, searchOrder, whyNot } from '../order/index.ts';
import { substitute, type Substitution, whyNoSubstitute } from '../order/substitute.ts';
import type { FigureWords, Refusal, Words } from '../words/index.ts';
import { cautionsText, type Status } from './check.ts';
import { type Io, painter, type Paint, wrapped } from './io.ts';
import { labelsFor } from './labels/index.ts';
import { nothingFound, orderReportOf, substitutionReportOf } from './orderReport.ts';
import type { OrderReport } from './orderSchema.ts';
import { save } from './save.ts';
import { isUnreadable, loadSubject, printComplaint, type Subject } from './subject.ts';
import { type Speech, tellUnused } from './wording.ts';
import { capital } from '../words/capital.ts';

export interface OrderRequest {
  readonly agent?: Agent;
  readonly seconds: number;
  readonly free?: boolean;
  /** `from=to`, ids of items or products. */
  readonly instead?: string;
  readonly out?: string;
  readonly force?: boolean;
  readonly json?: boolean;
}

/** What every part of the text needs. */
interface Page {
  readonly subject: Subject;
  readonly words: Words;
  readonly paint: Paint;
}

const optionsOf = ({ agent, seconds, free = false }: OrderRequest): OrderOptions => ({
  ...(agent ? { agent } : {}),
  milliseconds: seconds * 1000,
  free,
});

function stepsText({ words, paint }: Page, { procedure, choices }: OrderResult): readonly string[] {
  return procedure.steps.flatMap((step, index) => {
    const who = capital(words.person(procedure, step.who));
    const number = String(index + 1).padStart(3);
    const said = wrapped(labelsFor(words).doer(who, words.step(procedure, step)), 5).trimStart();
    const own = choices.filter((choice) => choice.step === step.id && choice.outcome !== 'same');
    return [
      `${number}. ${said}`,
      ...own.map((choice) => paint('dim', wrapped(words.order.choice(procedure, choice), 7))),
    ];
  });
}

/** What the given order has and this one has not: nobody should have to find out by counting. */
const leftOutText = ({ words }: Page, given: Procedure, found: Procedure): readonly string[] =>
  alignSteps(given, found, matchOf(given, found)).flatMap(({ a, b }) => {
    const step = a === null || b !== null ? undefined : given.steps[a];
    if (a === null || !step) return [];
    const said = words.order.change(given, found, { what: 'gone', step });
    return [
      `  ${labelsFor(words)
        .step(a + 1)
        .padEnd(8)} ${wrapped(said, 11).trimStart()}`,
    ];
  });

function readingOf({ turn, before, after, slight }: FigureWords): string {
  if (turn === 'same') return before;
  return slight === undefined ? `${before} -> ${after}` : `${before}, ${slight}`;
}

const measuresText = ({ words }: Page, before: Measure, after: Measure): readonly string[] =>
  words.order.figures(before, after).map((one) => {
    const value = readingOf(one);
    return labelsFor(words).doer(
      `  ${one.name}`,
      `${value}${one.status ? ` (${words.status(one.status)})` : ''}`,
    );
  });

const heading = ({ words, paint, subject }: Page, { title }: Procedure, agent: Agent): readonly string[] => [
  paint('bold', title),
  `${subject.file}: ${labelsFor(words).searchedAgainst(words.agent(agent))}`,
  '',
];

/** The given order stands only where a better one is ruled out. */
const headingOf = ({ kept, proved }: OrderResult): 'orderFound' | 'orderStands' | 'orderNotBettered' =>
  kept ? (proved ? 'orderStands' : 'orderNotBettered') : 'orderFound';

function orderText(page: Page, given: Procedure, result: OrderResult): string {
  const { words, paint } = page;
  const labels = labelsFor(words);
  return [
    ...heading(page, result.procedure, result.agent),
    paint('bold', labels[headingOf(result)]),
    ...stepsText(page, result),
    ...leftOutText(page, given, result.procedure),
    '',
    paint('bold', labels.givenAndFound),
    ...measuresText(page, result.before, result.measure),
    '',
    wrapped(words.order.proof(result)),
    ...(result.free ? [wrapped(labels.departuresAdmitted)] : []),
    '',
  ].join('\n');
}

function substitutionText(page: Page, before: Procedure, done: Substitution): string {
  const { procedure, rewriting, changes, retraining, lost, kept } = done;
  const { words, paint } = page;
  const labels = labelsFor(words);
  return [
    ...heading(page, procedure, done.agent),
    `${words.order.rewriting(rewriting)} ${words.order.kept(kept)}`,
    ...lost.map((one) => wrapped(`${capital(words.order.difference(one))}.`, 2)),
    '',
    paint('bold', labels.whatChanges),
    ...changes.map((change) => wrapped(words.order.change(before, procedure, change), 2)),
    '',
    paint('bold', labels.whoLearns),
    ...retraining.map((one) => `  ${words.order.retraining(procedure, one)}`),
    '',
    paint('bold', labels.beforeAndAfter),
    ...measuresText(page, done.before, done.measure),
    '',
  ].join('\n');
}

interface Answer {
  readonly text: string;
  readonly report: OrderReport;
  /** Absent where there is none to write. */
  readonly procedure?: Procedure;
}

const statusOf = ({ impossible, open }: Measure): 0 | 1 =>
  impossible > 0 || open.some((count) => count > 0) ? 1 : 0;

const refused = ({ words, subject }: Page, why: Refusal): Answer => ({
  text: '',
  report: nothingFound(words, subject, words.order.refusal(why)),
});

function substituted(page: Page, given: Procedure, request: OrderRequest, instead: string): Answer {
  const [from = '', to = ''] = instead.split('=');
  const why = whyNoSubstitute(given, from, to);
  if (why) return refused(page, why);
  const done = substitute(given, from, to, optionsOf(request));
  const { words, subject } = page;
  const report = substitutionReportOf(words, subject, given, [from, to], done, statusOf(done.measure));
  return { text: substitutionText(page, given, done), report, procedure: done.procedure };
}

function answerTo(page: Page, request: OrderRequest): Answer {
  const { words, subject } = page;
  const given = subject.read?.procedure;
  if (!given || isUnreadable(subject)) return { text: '', report: nothingFound(words, subject, null) };
  const why = whyNot(given);
  if (why) return refused(page, why);
  if (request.instead !== undefined) return substituted(page, given, request, request.instead);
  const result = searchOrder(given, optionsOf(request));
  const report = orderReportOf(words, subject, result, statusOf(result.measure));
  return { text: orderText(page, given, result), report, procedure: result.procedure };
}

/** Whether it could be written; says on the error stream why not. */
async function written(io: Io, procedure: Procedure, { out, force = false }: OrderRequest): Promise<boolean> {
  if (out === undefined) return true;
  const wrong = await save(out, force, () => printProcedure(procedure));
  if (wrong !== undefined) io.err(`error: ${wrong}\n`);
  return wrong === undefined;
}

/**
 * Searches and prints. Status 0, 1 where the result still has an open route or cannot be done, 2 where something could not be
 * read, searched or written.
 */
export async function order(io: Io, speech: Speech, path: string, request: OrderRequest): Promise<Status> {
  const { words } = speech;
  const subject = await loadSubject(io, path);
  const { text, report, procedure } = answerTo({ subject, words, paint: painter(io) }, request);
  const stored = procedure === undefined || (await written(io, procedure, request));
  const status: Status = stored ? report.status : 2;
  tellUnused(io, speech, subject.read?.procedure);
  if (request.json) {
    io.out(`${JSON.stringify({ ...report, status }, null, 2)}\n`);
    return status;
  }
  for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  if (report.refusal !== null) io.err(`error: ${report.refusal}\n`);
  if (text !== '') io.out(`${text}\n${cautionsText(words)}`);
  return status;
}
