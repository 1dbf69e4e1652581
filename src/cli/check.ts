// `doffline check`: reads every file, checks those that can be read, and prints what was found as text or as one object.
// The worst file decides the exit status; a bad file never keeps the others from being checked.
import { type Finding, FINDING_KINDS, type FindingKind, type SurfaceVerdict } from '../check/finding.ts';
import type { Agent } from '../domain/products.ts';
import { type Verdict, type VerifyOptions, verifyProcedure } from '../verify.ts';
import { CAUTIONS, type Words } from '../words/index.ts';
import { findingLine, findingText, type Page, surfaceLine } from './findingText.ts';
import { type Io, painter, wrapped } from './io.ts';
import { labelsFor } from './labels/index.ts';
import { reportOf } from './report.ts';
import { type CheckReport, CHECKS_FORMAT } from './reportSchema.ts';
import { isUnreadable, loadSubject, printComplaint, type Subject } from './subject.ts';
import { VERSION } from './version.ts';
import { type Speech, tellUnused } from './wording.ts';

/** 0 nothing above a note, 1 findings of severity error, 2 something could not be read. */
export type Status = 0 | 1 | 2;

export interface CheckOptions {
  readonly json: boolean;
  readonly how: CheckedHow;
}

/** Agents: the procedure's own when absent. Day: on which accepted departures must not be overdue. */
export type CheckedHow = Pick<VerifyOptions, 'agents' | 'day'>;

export function verdictOf({ read, donning }: Subject, how: CheckedHow): Verdict | undefined {
  return read?.procedure && verifyProcedure(read.procedure, how, donning);
}

function statusOf(subject: Subject, verdict: Verdict | undefined): Status {
  if (isUnreadable(subject)) return 2;
  return verdict?.findings.some(({ severity }) => severity === 'error') ? 1 : 0;
}

function heading({ words, procedure, paint }: Page, { file }: Subject, { agents }: Verdict): string {
  const { title, kind, version, invented, steps } = procedure;
  const labels = labelsFor(words);
  const about = [
    words.kind(kind),
    labels.version(version),
    ...(invented ? [labels.invented] : []),
    labels.steps(steps.length),
    labels.against(agents.map((agent) => words.agent(agent))),
  ];
  return [paint('bold', title), `${file}: ${about.join(', ')}`, ''].join('\n');
}

/** Errors in full. */
function errorsText(page: Page, findings: readonly Finding[]): string {
  const errors = findings.filter(({ severity }) => severity === 'error');
  if (errors.length === 0) return '';
  return [
    page.paint('red', labelsFor(page.words).errors(errors.length)),
    ...errors.map((one) => findingText(page, one)),
  ].join('\n');
}

/** Notes one line each, by kind; `explain` tells the rest. */
function notesText(page: Page, findings: readonly Finding[]): string {
  const { words } = page;
  const ofKind = (kind: FindingKind): readonly string[] => {
    const found = findings.filter((one) => one.kind === kind && one.severity === 'note');
    if (found.length === 0) return [];
    const title = `${words.findingKind(kind)} (${labelsFor(words).notes(found.length)})`;
    return [page.paint('yellow', title), ...found.map((one) => findingLine(page, one)), ''];
  };
  return FINDING_KINDS.flatMap(ofKind).join('\n');
}

/** Surfaces that something can reach, a line each; the others are counted. */
function agentText(page: Page, surfaces: readonly SurfaceVerdict[], agent: Agent): readonly string[] {
  const { words } = page;
  const labels = labelsFor(words);
  const own = surfaces.filter((one) => one.agent === agent);
  const reached = own.filter(({ barriers }) => barriers !== null);
  const rest = own.length - reached.length;
  return [
    page.paint('bold', labels.reachable(words.agent(agent))),
    ...(reached.length > 0
      ? [`  ${labels.barriers.padEnd(10)} ${labels.chance.padEnd(48)} ${labels.surface}`]
      : [`  ${labels.none}`]),
    ...reached.map((one) => surfaceLine(page, one)),
    ...(rest > 0 ? [`  ${labels.others(words.barriers(null), rest)}`] : []),
    '',
  ];
}

const surfacesText = (page: Page, { surfaces, agents }: Verdict): string =>
  agents.flatMap((agent) => agentText(page, surfaces, agent)).join('\n');

const limitsText = (words: Words, { limits }: Verdict): string =>
  limits.map((limit) => wrapped(words.limit(limit))).join('\n');

function verdictText(io: Io, words: Words, subject: Subject, verdict: Verdict): string {
  const labels = labelsFor(words);
  const page: Page = { words, procedure: verdict.procedure, paint: painter(io) };
  const errors = verdict.findings.filter(({ severity }) => severity === 'error').length;
  const notes = verdict.findings.length - errors;
  return [
    heading(page, subject, verdict),
    errorsText(page, verdict.findings),
    notesText(page, verdict.findings),
    surfacesText(page, verdict),
    limitsText(words, verdict),
    `${labels.errors(errors)}, ${labels.notes(notes)}. ${labels.more}`,
    '',
  ]
    .filter((part, index) => part !== '' || index === 6)
    .join('\n');
}

const lines = (texts: readonly string[]): string => `${texts.map((text) => wrapped(text)).join('\n')}\n`;

/** The cautions in English, as help shows them; with words, in their language and with how far that may be trusted. */
export const cautionsText = (words?: Words): string =>
  lines(words ? [...words.cautions, ...words.reviewNote] : CAUTIONS);

interface Checked {
  readonly subject: Subject;
  readonly verdict: Verdict | undefined;
  readonly status: Status;
}

async function checkOne(io: Io, path: string, how: CheckedHow): Promise<Checked> {
  const subject = await loadSubject(io, path);
  const verdict = verdictOf(subject, how);
  return { subject, verdict, status: statusOf(subject, verdict) };
}

function printText(io: Io, words: Words, { subject, verdict }: Checked): void {
  for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  if (verdict) io.out(`${verdictText(io, words, subject, verdict)}\n`);
}

function asJson(reports: readonly CheckReport[]): string {
  const value =
    reports.length === 1 ? reports[0] : { format: CHECKS_FORMAT, version: VERSION, results: reports };
  return `${JSON.stringify(value, null, 2)}\n`;
}

/** Checks the files one after the other and prints as it goes; `--json` prints once, at the end. */
export async function check(
  io: Io,
  speech: Speech,
  paths: readonly string[],
  options: CheckOptions,
): Promise<Status> {
  const { words } = speech;
  const reports: CheckReport[] = [];
  let worst: Status = 0;
  let told = false;
  for (const path of paths) {
    const checked = await checkOne(io, path, options.how);
    const { subject, verdict, status } = checked;
    if (options.json) reports.push(reportOf(words, subject, verdict, status));
    else printText(io, words, checked);
    tellUnused(io, speech, subject.read?.procedure);
    told ||= verdict !== undefined;
    worst = Math.max(worst, status) as Status;
  }
  if (options.json) io.out(asJson(reports));
  else if (told) io.out(cautionsText(words));
  return worst;
}
