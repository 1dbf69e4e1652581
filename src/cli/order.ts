// `doffline order`: the best doffing order for what a file's people wear, as sentences with reasons, or the least rewriting
// with one thing in place of another; on request written as a procedure file.
import { access, writeFile } from 'node:fs/promises';
import type { Measure } from '../check/finding.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { printProcedure } from '../language/index.ts';
import { type OrderOptions, type OrderResult, searchOrder, whyNot } from '../order/index.ts';
import { substitute, type Substitution, whyNoSubstitute } from '../order/substitute.ts';
import {
  changeSentence,
  choiceSentence,
  differenceWords,
  proofSentence,
  REFUSALS,
  retrainingSentence,
  rewritingSentence,
} from '../words/en/order.ts';
import { wordsFor } from '../words/index.ts';
import { cautionsText, type Status } from './check.ts';
import { type Io, painter, type Paint, printable, wrapped } from './io.ts';
import { nothingFound, orderReportOf, substitutionReportOf } from './orderReport.ts';
import type { OrderReport } from './orderSchema.ts';
import { isUnreadable, loadSubject, printComplaint, type Subject } from './subject.ts';

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

const words = wordsFor('en');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const optionsOf = ({ agent, seconds, free = false }: OrderRequest): OrderOptions => ({
  ...(agent ? { agent } : {}),
  milliseconds: seconds * 1000,
  free,
});

function stepsText({ procedure, choices }: OrderResult, paint: Paint): readonly string[] {
  return procedure.steps.flatMap((step, index) => {
    const who = capital(words.person(procedure, step.who));
    const number = String(index + 1).padStart(3);
    const said = wrapped(`${who}: ${words.step(procedure, step)}`, 5).trimStart();
    const own = choices.filter((choice) => choice.step === step.id && choice.outcome !== 'same');
    return [
      `${number}. ${said}`,
      ...own.map((choice) => paint('dim', wrapped(choiceSentence(procedure, choice), 7))),
    ];
  });
}

function measuresText(before: Measure, after: Measure): readonly string[] {
  const [old, now] = [words.measure(before), words.measure(after)];
  return old.map((line, at) => {
    const next = now[at] ?? '';
    const value = next.slice(next.indexOf(':') + 2);
    return line === next ? `  ${line}` : `  ${line} -> ${value}`;
  });
}

const heading = ({ title }: Procedure, { file }: Subject, agent: Agent, paint: Paint): readonly string[] => [
  paint('bold', title),
  `${file}: searched against: ${words.agent(agent)}`,
  '',
];

function orderText(subject: Subject, result: OrderResult, paint: Paint): string {
  return [
    ...heading(result.procedure, subject, result.agent, paint),
    paint('bold', result.kept ? 'The given order stands' : 'The order found'),
    ...stepsText(result, paint),
    '',
    paint('bold', 'Measure, as given -> as found'),
    ...measuresText(result.before, result.measure),
    '',
    wrapped(proofSentence(result)),
    ...(result.free
      ? [wrapped('Departures from practice that the given steps do not make were admitted.')]
      : []),
    '',
  ].join('\n');
}

function substitutionText(subject: Subject, before: Procedure, done: Substitution, paint: Paint): string {
  const { procedure, rewriting, changes, retraining, lost, kept } = done;
  return [
    ...heading(procedure, subject, done.agent, paint),
    `${rewritingSentence(rewriting)} ${kept ? 'Nothing but time is worse than before.' : 'Something is lost:'}`,
    ...lost.map((one) => wrapped(differenceWords(one), 2)),
    '',
    paint('bold', 'What changes'),
    ...changes.map((change) => wrapped(changeSentence(before, procedure, change), 2)),
    '',
    paint('bold', 'Who has to learn it'),
    ...retraining.map((one) => `  ${retrainingSentence(procedure, one)}`),
    '',
    paint('bold', 'Measure, before -> after'),
    ...measuresText(done.before, done.measure),
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

const refused = (subject: Subject, why: keyof typeof REFUSALS): Answer => ({
  text: '',
  report: nothingFound(subject, REFUSALS[why]),
});

function substituted(
  subject: Subject,
  given: Procedure,
  request: OrderRequest,
  instead: string,
  paint: Paint,
): Answer {
  const [from = '', to = ''] = instead.split('=');
  const why = whyNoSubstitute(given, from, to);
  if (why) return refused(subject, why);
  const done = substitute(given, from, to, optionsOf(request));
  const report = substitutionReportOf(subject, given, [from, to], done, statusOf(done.measure));
  return { text: substitutionText(subject, given, done, paint), report, procedure: done.procedure };
}

function answerTo(subject: Subject, request: OrderRequest, paint: Paint): Answer {
  const given = subject.read?.procedure;
  if (!given || isUnreadable(subject)) return { text: '', report: nothingFound(subject, null) };
  const why = whyNot(given);
  if (why) return refused(subject, why);
  if (request.instead !== undefined) return substituted(subject, given, request, request.instead, paint);
  const result = searchOrder(given, optionsOf(request));
  const report = orderReportOf(subject, result, statusOf(result.measure));
  return { text: orderText(subject, result, paint), report, procedure: result.procedure };
}

/** Whether it could be written; says on the error stream why not. */
async function written(io: Io, procedure: Procedure, { out, force = false }: OrderRequest): Promise<boolean> {
  if (out === undefined) return true;
  const there = await access(out).then(
    () => true,
    () => false,
  );
  if (there && !force) {
    io.err(`error: ${printable(out)} is there already; --force overwrites it.\n`);
    return false;
  }
  try {
    await writeFile(out, printProcedure(procedure));
    return true;
  } catch {
    io.err(`error: ${printable(out)} cannot be written.\n`);
    return false;
  }
}

/**
 * Searches and prints. Status 0, 1 where the result still has an open route or cannot be done, 2 where something could not be
 * read, searched or written.
 */
export async function order(io: Io, path: string, request: OrderRequest): Promise<Status> {
  const subject = await loadSubject(io, path);
  const { text, report, procedure } = answerTo(subject, request, painter(io));
  const stored = procedure === undefined || (await written(io, procedure, request));
  const status: Status = stored ? report.status : 2;
  if (request.json) {
    io.out(`${JSON.stringify({ ...report, status }, null, 2)}\n`);
    return status;
  }
  for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  if (report.refusal !== null) io.err(`error: ${report.refusal}\n`);
  if (text !== '') io.out(`${text}\n${cautionsText()}`);
  return status;
}
