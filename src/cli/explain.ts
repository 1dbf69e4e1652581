// `doffline explain`: all of what the check says about one finding code, or about one surface: its route, its smallest
// combinations, when it became suspect and when it was cleared, and what would mend it.
import type { Analysis } from '../check/analysis.ts';
import type { Finding, SurfaceVerdict } from '../check/finding.ts';
import { routeTo } from '../check/routes.ts';
import { ledgerOf } from '../engine/ledger.ts';
import { nearest } from '../language/nearest.ts';
import type { Verdict } from '../verify.ts';
import { CHANCE_STATUS, type Words } from '../words/index.ts';
import { cautionsText, type CheckedHow, type Status, verdictOf } from './check.ts';
import { combinationText, findingLine, findingText, type Page, routeText } from './findingText.ts';
import { type Io, painter, saidBack, wrapped } from './io.ts';
import { type CliLabels, labelsFor } from './labels/index.ts';
import { matchSurface, type NamedSurface } from './match.ts';
import { loadSubject, printComplaint } from './subject.ts';
import { type Speech, tellUnused } from './wording.ts';
import { capital } from '../words/capital.ts';

const SHOWN = 12;

/** Codes match whole, or from the left up to a dot: `one-slip`, `practice`. */
const ofCode = (findings: readonly Finding[], code: string): readonly Finding[] =>
  findings.filter(
    (finding) => finding.code === code || finding.code.startsWith(`${code.replace(/\.$/, '')}.`),
  );

function namedSurfaces(words: Words, { analyses, procedure }: Verdict): readonly NamedSurface[] {
  const ids = new Set(analyses.flatMap(({ compiled }) => compiled.plan.surfaces.map(({ id }) => id)));
  const wearers = procedure.people.filter(({ role }) => role === 'wearer').map(({ id }) => `${id}.`);
  return [...ids].map((id) => ({
    id,
    name: words.surface(procedure, id),
    ofWearer: wearers.some((start) => id.startsWith(start)),
  }));
}

function countsText(labels: CliLabels, { combinationCount, combinationsByOrder }: SurfaceVerdict): string {
  const orders = Object.entries(combinationsByOrder).map(([order, count]) => `${order}: ${count}`);
  return labels.combinations(combinationCount, orders.join(', '));
}

function verdictLines(page: Page, verdict: SurfaceVerdict): readonly string[] {
  const { words } = page;
  const labels = labelsFor(words);
  const { low, high } = verdict.interval;
  const chance = `${words.chance(verdict.chance, CHANCE_STATUS)}, ${labels.interval(words.percent(low), words.percent(high))}`;
  return [
    `    ${labels.barriersNow(words.barriers(verdict.barriers), words.barriers(verdict.barriersAtEnd))}`,
    `    ${capital(labels.chance)}: ${chance}`,
    `    ${countsText(labels, verdict)}`,
    ...verdict.combinations.slice(0, SHOWN).map((combination) => combinationText(page, combination)),
    ...(verdict.combinations.length > SHOWN ? [`    ${labels.theRest}`] : []),
  ];
}

/** The route of the smallest combination; of a surface that is not protected, when nobody slips. */
function routeLines(
  page: Page,
  analysis: Analysis,
  index: number,
  verdict: SurfaceVerdict | undefined,
): readonly string[] {
  const { plan } = analysis.compiled;
  const keys = verdict?.combinations[0]?.events ?? [];
  const events = keys.map((key) => plan.events.findIndex((event) => event.key === key));
  const route = routeTo(analysis, index, events);
  if (route.length === 0) return [];
  const labels = labelsFor(page.words);
  const which = keys.length > 0 ? labels.routeOfFirst : labels.routeThough;
  return [`    ${which}`, ...routeText(page, { route, events: keys })];
}

function ledgerLines({ words, procedure }: Page, analysis: Analysis, index: number): readonly string[] {
  const turns = ledgerOf(analysis.conditions).filter(({ surface }) => surface === index);
  const labels = labelsFor(words);
  if (turns.length === 0) return [`    ${labels.neverSuspect}`];
  return [
    `    ${labels.whenChanged}`,
    ...turns.map(({ turn, step }) => wrapped(words.turn(procedure, turn, step), 6)),
  ];
}

function surfaceText(page: Page, { analyses, surfaces, findings }: Verdict, id: string): string {
  const { words } = page;
  const labels = labelsFor(words);
  const about = findings.filter((finding) => finding.surfaces.includes(id));
  const perAgent = analyses.flatMap((analysis) => {
    const index = analysis.compiled.plan.surfaces.findIndex((surface) => surface.id === id);
    if (index < 0) return [];
    const verdict = surfaces.find((one) => one.surface === id && one.agent === analysis.agent);
    return [
      page.paint('cyan', `  ${words.agent(analysis.agent)}`),
      ...(verdict ? verdictLines(page, verdict) : [`    ${labels.notProtected}`]),
      ...routeLines(page, analysis, index, verdict),
      ...ledgerLines(page, analysis, index),
      '',
    ];
  });
  const named = about.filter((finding) => finding.surface === id);
  return [
    page.paint('bold', `${words.surface(page.procedure, id)} (${id})`),
    ...perAgent,
    ...(about.length > 0 ? [labels.about] : []),
    ...named.map((finding) => findingText(page, finding)),
    ...about.filter((finding) => !named.includes(finding)).map((finding) => findingLine(page, finding)),
    '',
  ].join('\n');
}

function missText(asked: string, candidates: readonly string[], { findings }: Verdict): string {
  const codes = [...new Set(findings.map(({ code }) => code))].sort();
  const near = nearest(asked, codes);
  const all = [...(near === undefined ? [] : [near]), ...candidates];
  const meant = all.length > 0 ? `Did you mean: ${all.join(', ')}\n` : '';
  return `error: no finding and no single surface is called "${saidBack(asked)}".\n${meant}Codes found here: ${codes.join(', ') || 'none'}\n`;
}

/** Prints everything about a code or a surface of one file. */
export async function explain(
  io: Io,
  speech: Speech,
  path: string,
  asked: string,
  how: CheckedHow,
): Promise<Status> {
  const subject = await loadSubject(io, path);
  for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  const verdict = verdictOf(subject, how);
  if (!verdict) return 2;
  const { words } = speech;
  tellUnused(io, speech, verdict.procedure);
  const page: Page = { words, procedure: verdict.procedure, paint: painter(io) };
  const findings = ofCode(verdict.findings, asked);
  const match = findings.length > 0 ? undefined : matchSurface(asked, namedSurfaces(words, verdict));
  if (match && !('found' in match)) {
    io.err(missText(asked, match.candidates, verdict));
    return 2;
  }
  const text = match
    ? surfaceText(page, verdict, match.found)
    : findings.map((one) => findingText(page, one)).join('\n');
  io.out(`${text}\n${cautionsText(words)}`);
  return 0;
}
