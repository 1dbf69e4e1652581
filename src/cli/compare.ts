// `doffline compare`: two procedures or versions side by side, what changed in the steps first, then what that changes in
// findings, barriers, chances, time and supplies.
import type { Finding } from '../check/finding.ts';
import { happenedTo } from '../compare/align.ts';
import type { ClassChange, Difference, SurfaceChange } from '../compare/chances.ts';
import { agentsOfBoth, compareChecked } from '../compare/compare.ts';
import type { SupplyChange } from '../compare/costs.ts';
import { weakestOf } from '../costing/grounds.ts';
import type { Agent } from '../domain/products.ts';
import { type Verdict, verifyProcedure } from '../verify.ts';
import { CHANCE_STATUS, duration, wordsFor } from '../words/index.ts';
import { cautionsText, type Status } from './check.ts';
import { type Compared, compareReportOf, unreadComparison } from './compareReport.ts';
import { findingLine } from './findingText.ts';
import { type Io, painter, type Paint, wrapped } from './io.ts';
import { isUnreadable, loadSubject, printComplaint, type Subject } from './subject.ts';

const words = wordsFor('en');

export interface CompareOptions {
  readonly json: boolean;
  /** All that either names when absent. */
  readonly agents?: readonly Agent[];
}

interface Page {
  readonly paint: Paint;
  readonly compared: Compared;
}

function headText({ paint }: Page, which: string, { file }: Subject, { procedure }: Verdict): string {
  const { title, kind, version, invented, steps } = procedure;
  const said = `${words.kind(kind)}, version ${version}${invented ? ', invented' : ''}, ${steps.length} steps`;
  return `${paint('bold', `${which}: ${title}`)}\n  ${file}: ${said}`;
}

const HAPPENED = [
  ['new', 'new'],
  ['gone', 'left out'],
  ['moved', 'moved'],
  ['moved-and-changed', 'moved and changed'],
  ['changed', 'changed'],
  ['same', 'unchanged'],
] as const;
const SIGNS = { new: '+', gone: '-', moved: '>', 'moved-and-changed': '>', changed: '~', same: ' ' } as const;

function stepsText({ paint, compared }: Page): readonly string[] {
  const { a, b, comparison } = compared;
  const counts = HAPPENED.map(
    ([what, name]) => [comparison.steps.filter((row) => happenedTo(row) === what).length, name] as const,
  ).filter(([count]) => count > 0);
  const lines = comparison.steps.flatMap((row) => {
    const what = happenedTo(row);
    if (what === 'same') return [];
    return [`  ${SIGNS[what]} ${wrapped(words.compare.step(a.procedure, b.procedure, row), 4).trimStart()}`];
  });
  return [
    paint('bold', `Steps: ${counts.map(([count, name]) => `${count} ${name}`).join(', ')}`),
    ...lines,
    '',
  ];
}

function findingsText(
  { paint }: Page,
  title: string,
  { procedure }: Verdict,
  findings: readonly Finding[],
): readonly string[] {
  if (findings.length === 0) return [];
  return [
    paint('bold', `${title} (${findings.length})`),
    ...findings.map((one) => findingLine({ words, procedure, paint }, one)),
    '',
  ];
}

function allFindings(page: Page): readonly string[] {
  const { a, b, comparison } = page.compared;
  const { gone, gained, noLongerOpen, newErrors, kept } = comparison.findings;
  const notes = gained.filter((one) => !newErrors.includes(one) && !noLongerOpen.includes(one));
  return [
    ...findingsText(page, 'Errors that the second has and the first has not', b, newErrors),
    ...findingsText(page, 'Findings of the first that the second has not', a, gone),
    ...findingsText(page, 'No longer open, but one slip away', b, noLongerOpen),
    ...findingsText(page, 'New notes in the second', b, notes),
    `${kept.length} findings are in both.`,
    '',
  ];
}

const differenceText = (difference: Difference | undefined): string =>
  difference === undefined
    ? 'only in one of them'
    : words.compare.chance({ ...difference, value: difference.chance, status: CHANCE_STATUS });

const arrow = (before: string, after: string): string =>
  before === after ? before : `${before} -> ${after}`;

const differs = ({ barriersA, barriersB, difference }: SurfaceChange): boolean =>
  barriersA !== barriersB || difference === undefined || difference.chance !== 0;

const barrierText = (barriers: number | null | undefined): string =>
  barriers === undefined ? 'not there' : words.barriers(barriers);

function surfaceText({ compared: { a, b } }: Page, change: SurfaceChange): string {
  const name =
    change.b === undefined
      ? words.surface(a.procedure, change.a ?? '')
      : words.surface(b.procedure, change.b);
  const barriers = arrow(barrierText(change.barriersA), barrierText(change.barriersB));
  return `  ${barriers.padEnd(26)} ${name}\n${' '.repeat(29)}${differenceText(change.difference)}`;
}

function classText({ classes, figureA, figureB, difference }: ClassChange): string {
  const name = classes.map((one) => words.surfaceClass(one)).join(', ');
  const chances = arrow(words.percent(figureA.chance), words.percent(figureB.chance));
  return `  ${name.padEnd(34)} ${chances}\n${' '.repeat(37)}${differenceText(difference)}`;
}

function agentText(page: Page, agent: Agent): readonly string[] {
  const { surfaces, classes } = page.compared.comparison;
  const own = surfaces.filter((one) => one.agent === agent);
  const changed = own.filter(differs);
  return [
    page.paint('bold', `Chance of reaching, ${words.agent(agent)} (${words.status(CHANCE_STATUS)})`),
    ...classes.filter((one) => one.agent === agent).map(classText),
    page.paint('bold', `Barriers, ${words.agent(agent)}`),
    ...changed.map((one) => surfaceText(page, one)),
    `  The other ${own.length - changed.length} protected surfaces: no difference.`,
    '',
  ];
}

function supplyText({ supply, a, b, millilitresA, millilitresB }: SupplyChange): string {
  const volume = (value: number | null | undefined): string =>
    typeof value === 'number' ? `, ${value} mL` : '';
  const said = arrow(
    `${words.compare.quantity(a)}${volume(millilitresA)}`,
    `${words.compare.quantity(b)}${volume(millilitresB)}`,
  );
  return `  ${words.compare.supply(supply).padEnd(42)} ${said}`;
}

function costsText({ paint, compared: { comparison } }: Page): readonly string[] {
  const { a, b, time, supplies } = comparison.costs;
  const status = weakestOf([...a.evidence.times, ...b.evidence.times]);
  const changed = supplies.filter((one) => one.a.count !== one.b.count);
  const seconds = words.compare.time({ ...time, value: time.seconds, status });
  return [
    paint('bold', `Time: ${arrow(duration(a.run.seconds), duration(b.run.seconds))}, ${seconds}`),
    paint('bold', 'Supplies of a run'),
    ...changed.map(supplyText),
    `  ${changed.length === 0 ? 'No difference' : `The other ${supplies.length - changed.length}: no difference`}. More: doffline cost FILE`,
    '',
  ];
}

function gapsText({ paint, compared: { a, b, comparison } }: Page): readonly string[] {
  const sentences = [
    ...comparison.gaps.map((gap) => words.compare.gap(a.procedure, b.procedure, gap)),
    ...(comparison.exact ? [] : ['One of them was not worked out exactly: nothing is said of surfaces.']),
  ];
  if (sentences.length === 0) return [];
  return [
    paint('yellow', 'What cannot be compared'),
    ...sentences.map((text) => `  - ${wrapped(text, 4).trimStart()}`),
    '',
  ];
}

function compareText(page: Page, subjects: readonly [Subject, Subject]): string {
  const { a, b, comparison } = page.compared;
  return [
    headText(page, 'First', subjects[0], a),
    headText(page, 'Second', subjects[1], b),
    '',
    ...stepsText(page),
    ...allFindings(page),
    ...comparison.agents.flatMap((agent) => agentText(page, agent)),
    ...costsText(page),
    ...gapsText(page),
    cautionsText(),
  ].join('\n');
}

function comparedOf(
  subjects: readonly [Subject, Subject],
  wanted: readonly Agent[] | undefined,
): Compared | undefined {
  const [one, other] = subjects;
  const [first, second] = [one.read?.procedure, other.read?.procedure];
  if (!first || !second) return undefined;
  const agents = wanted ?? agentsOfBoth(first, second);
  const a = verifyProcedure(first, { agents, mends: false }, one.donning);
  const b = verifyProcedure(second, { agents, mends: false }, other.donning);
  return { a, b, comparison: compareChecked(a, b) };
}

/** 0 nothing worse, 1 the second has an error that the first has not, 2 something could not be read. */
export async function compare(
  io: Io,
  [first, second]: readonly [string, string],
  { json, agents }: CompareOptions,
): Promise<Status> {
  const subjects = [await loadSubject(io, first), await loadSubject(io, second)] as const;
  if (!json)
    for (const complaint of subjects.flatMap(({ complaints }) => complaints))
      io.err(printComplaint(complaint));
  const compared = comparedOf(subjects, agents);
  if (!compared) {
    if (json) io.out(`${JSON.stringify(unreadComparison(subjects), null, 2)}\n`);
    return 2;
  }
  const worse = compared.comparison.findings.newErrors.length > 0 ? 1 : 0;
  const status: Status = subjects.some(isUnreadable) ? 2 : worse;
  io.out(
    json
      ? `${JSON.stringify(compareReportOf(words, subjects, compared, status), null, 2)}\n`
      : compareText({ paint: painter(io), compared }, subjects),
  );
  return status;
}
