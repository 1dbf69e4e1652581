// A finding, a surface and their routes as text for a terminal. Everything said comes from words/; here is only its place
// on the screen.
import type { Combination, Finding, SurfaceVerdict } from '../check/finding.ts';
import type { Procedure } from '../domain/procedure.ts';
import { CHANCE_STATUS, type Words } from '../words/index.ts';
import { type Paint, wrapped } from './io.ts';
import { labelsFor } from './labels/index.ts';
import { capital } from '../words/capital.ts';

export interface Page {
  readonly words: Words;
  readonly procedure: Procedure;
  readonly paint: Paint;
}

const bullet = (text: string, by: number): string =>
  `${' '.repeat(by)}- ${wrapped(text, by + 2).trimStart()}`;

export function routeText({ words, procedure }: Page, finding: Pick<Finding, 'route' | 'events'>): string[] {
  return words
    .route(procedure, finding)
    .map(({ text }, index) => `      ${index + 1}. ${wrapped(text, 9).trimStart()}`);
}

const titled = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length > 0 ? [`    ${title}`, ...lines] : [];

/** What was tried and helped; that nothing did is an answer too. */
function mendText(page: Page, { mends, tried }: Finding): readonly string[] {
  const { words, procedure } = page;
  const labels = labelsFor(words);
  if (mends.length === 0) return tried === undefined ? [] : [wrapped(labels.noMend, 4)];
  const lines = mends.flatMap((mend) => {
    const { sentence, changes } = words.mend(procedure, mend);
    return [bullet(sentence, 4), ...changes.map((change) => wrapped(change, 8))];
  });
  return titled(labels.mends, lines);
}

/** A rule that the finding itself has told is not told again. */
function evidenceText({ words }: Page, { evidence, kind }: Finding): string[] {
  return evidence.map((id) => {
    const { says, source, status } = words.evidence(id);
    return bullet(`${kind === 'practice' ? '' : `${says} `}${source} (${status})`, 4);
  });
}

/** One line: where, what, code. */
export function findingLine({ words, procedure, paint }: Page, finding: Finding): string {
  const [step] = finding.steps;
  const labels = labelsFor(words);
  const nowhere = finding.kind === 'acceptance' ? labels.file : labels.start;
  const where = step === undefined || step < 0 ? nowhere : labels.step(step + 1);
  const title = words.finding(procedure, finding).title;
  const accepted = finding.accepted ? ` (${labels.accepted})` : '';
  return `  ${where.padEnd(8)} ${wrapped(`${title}${accepted}`, 11, 108).trimStart()} ${paint('dim', `[${finding.code}]`)}`;
}

/** All of a finding: what, where, why; its route; its mends; what it rests on. */
export function findingText(page: Page, finding: Finding): string {
  const { words, procedure, paint } = page;
  const { text } = words.finding(procedure, finding);
  const labels = labelsFor(words);
  const agent = finding.agent ? ` ${labels.checkedAgainst(words.agent(finding.agent))}` : '';
  const own = words.isOverridden(procedure, finding) ? ` [${labels.ownWording}]` : '';
  const replay = finding.replay ? [`    ${labels.replay}: ${finding.replay}`] : [];
  return [
    paint(finding.severity === 'error' ? 'red' : 'bold', findingLine(page, finding)),
    wrapped(text + own + agent, 4),
    ...titled(labels.route, routeText(page, finding)),
    ...mendText(page, finding),
    ...titled(labels.restsOn, evidenceText(page, finding)),
    ...replay,
    '',
  ].join('\n');
}

export function combinationText({ words, procedure }: Page, combination: Combination): string {
  const labels = labelsFor(words);
  const events = combination.events.map((key) => words.event(procedure, key)).join(labels.andAlso);
  const said = events === '' ? labels.nobodySlips : events;
  return bullet(
    `${said}. ${capital(labels.chance)} ${words.chance(combination.chance, CHANCE_STATUS)}. ${labels.replay}: ${combination.replay}`,
    4,
  );
}

/** Barriers and chance of one protected surface, in a line of a table. */
export function surfaceLine({ words, procedure }: Page, verdict: SurfaceVerdict): string {
  const { low, high } = verdict.interval;
  const chance = words.chance(verdict.chance, CHANCE_STATUS);
  const between = labelsFor(words).interval(words.percent(low), words.percent(high));
  const barriers = words.barriers(verdict.barriers);
  return `  ${barriers.padEnd(10)} ${`${chance}, ${between}`.padEnd(48)} ${words.surface(procedure, verdict.surface)}`;
}
