// The committee dossier: what the procedure is, what was found and why, which mends were tried, what was accepted and by
// whom, how the numbers stand, where they come from, and what the method cannot see.
import { isUnmatched } from '../check/acceptance.ts';
import type { Finding, SurfaceVerdict } from '../check/finding.ts';
import type { Acceptance } from '../domain/procedure.ts';
import { CHANCE_STATUS } from '../words/events.ts';
import { ruleOf } from '../words/figures.ts';
import type { Block } from './model.ts';
import { type Paper, peopleBlock, standing, whoOf, zoneName } from './paper.ts';
import { capital } from '../words/capital.ts';
import { sourceBlocks } from './sources.ts';

function procedureBlocks(paper: Paper): readonly Block[] {
  const { procedure, print, words } = paper;
  const { dossier, script } = print;
  const listed = (names: readonly string[]): string => print.set(names.join('; '));
  const people = procedure.people.map(
    (person) => `${words.role(person.role)}: ${zoneName(paper, person.starts)}`,
  );
  const room = procedure.fixtures.map(
    ({ id, zone }) => `${words.fixture(procedure, id)} (${zoneName(paper, zone)})`,
  );
  return [
    { is: 'heading', level: 2, text: dossier.procedure },
    ...(procedure.about === undefined ? [] : [{ is: 'text', tone: 'plain', text: procedure.about } as const]),
    peopleBlock(paper),
    {
      is: 'facts',
      facts: [
        [dossier.starts, listed(people)],
        [dossier.fixtures, listed(room)],
        [dossier.products, listed(procedure.products.map((id) => words.product(id)))],
        [dossier.agents, listed(paper.verdict.agents.map((agent) => words.agent(agent)))],
      ],
    },
    {
      is: 'table',
      widths: [0, 0, 1],
      head: [script.step, print.who, print.what],
      rows: procedure.steps.map((step, index) => [
        String(index + 1),
        whoOf(paper, step),
        [words.step(procedure, step), ...(step.note === undefined ? [] : [`(${step.note})`])].join(' '),
      ]),
    },
  ];
}

function mendItems({ words, procedure }: Paper, { mends }: Finding): readonly string[] {
  return mends.map((mend) => {
    const { sentence, changes } = words.mend(procedure, mend);
    return changes.length === 0 ? sentence : `${sentence} (${changes.join('. ')})`;
  });
}

function findingBlocks(paper: Paper, finding: Finding, number: number): readonly Block[] {
  const { words, procedure, print } = paper;
  const { title, text } = words.finding(procedure, finding);
  const route = words.route(procedure, finding).map((sentence) => sentence.text);
  const mends = mendItems(paper, finding);
  const evidence = finding.evidence.map((id) => {
    const { says, source, status } = words.evidence(id);
    return print.set(`${says} (${source}; ${status})`);
  });
  const { dossier } = print;
  const list = (name: string, items: readonly string[], numbered: boolean): readonly Block[] =>
    items.length === 0 ? [] : [{ is: 'list', title: name, items, numbered }];
  return [
    {
      is: 'heading',
      level: 3,
      text: print.set(`${number}. ${capital(words.severity(finding.severity))}: ${title}`),
    },
    { is: 'text', tone: 'lead', text },
    ...list(dossier.route, route, true),
    ...(mends.length === 0 && finding.severity === 'error'
      ? [{ is: 'text', tone: 'small', text: dossier.noMend(finding.tried) } as const]
      : list(dossier.mends, mends, false)),
    ...list(dossier.practiceSource, evidence, false),
  ];
}

/** Errors first; within a grade as the check orders them. */
function ordered(findings: readonly Finding[]): readonly Finding[] {
  const grade = (wanted: Finding['severity']) => findings.filter(({ severity }) => severity === wanted);
  return [...grade('error'), ...grade('note')];
}

function findingsBlocks(paper: Paper): readonly Block[] {
  const { dossier } = paper.print;
  const found = ordered(paper.verdict.findings);
  return [
    { is: 'heading', level: 2, text: dossier.findings },
    ...standing(paper, false),
    ...(found.length === 0
      ? [{ is: 'text', tone: 'plain', text: dossier.noFindings } as const]
      : found.flatMap((finding, index) => findingBlocks(paper, finding, index + 1))),
    ...paper.verdict.limits.map(
      (limit): Block => ({
        is: 'text',
        tone: 'boxed',
        text: paper.words.limit(limit),
      }),
    ),
  ];
}

function acceptedRow(paper: Paper, accepted: Acceptance): readonly string[] {
  const { procedure, words, print, verdict } = paper;
  const finding = isUnmatched(accepted, procedure, verdict.findings)
    ? undefined
    : verdict.findings.find((one) => one.code === accepted.finding && one.accepted !== undefined);
  const rule = ruleOf(accepted.finding);
  const named = rule ? words.evidence(rule).says : accepted.finding;
  const title = finding ? words.finding(procedure, finding).title : `${named} (${print.dossier.unmatched})`;
  const at = procedure.steps.findIndex(({ id }) => id === accepted.step);
  const step = procedure.steps[at];
  const where = step
    ? print.set(`${at + 1}: ${words.stepLabel(procedure, step)}`)
    : accepted.surface === undefined
      ? print.dossier.everywhere
      : words.surface(procedure, accepted.surface);
  return [title, where, accepted.reason, `${accepted.by}, ${accepted.date}`, accepted.review];
}

function departureBlocks(paper: Paper): readonly Block[] {
  const { dossier } = paper.print;
  const { accepted } = paper.procedure;
  return [
    { is: 'heading', level: 2, text: dossier.departures },
    accepted.length === 0
      ? { is: 'text', tone: 'plain', text: dossier.noDepartures }
      : {
          is: 'table',
          widths: [3, 3, 4, 3, 0],
          head: [dossier.finding, dossier.where, dossier.reason, dossier.acceptedBy, dossier.review],
          rows: accepted.map((one) => acceptedRow(paper, one)),
        },
  ];
}

function surfaceRow({ words, procedure }: Paper, one: SurfaceVerdict): readonly string[] {
  return [
    words.surface(procedure, one.surface),
    words.barriers(one.barriers),
    one.combinationCount,
    words.percent(one.chance),
    `${words.percent(one.interval.low)} – ${words.percent(one.interval.high)}`,
    words.status(CHANCE_STATUS),
  ];
}

function surfaceBlocks(paper: Paper): readonly Block[] {
  const { verdict, words } = paper;
  const { dossier } = paper.print;
  return [
    { is: 'heading', level: 2, text: dossier.surfaces },
    { is: 'text', tone: 'plain', text: dossier.surfacesNote },
    ...verdict.agents.flatMap((agent): readonly Block[] => {
      const own = verdict.surfaces.filter((one) => one.agent === agent);
      const reached = own.filter(({ barriers }) => barriers !== null);
      return [
        { is: 'heading', level: 3, text: capital(words.agent(agent)) },
        {
          is: 'table',
          widths: [4, 0, 0, 0, 0, 0],
          head: [
            dossier.surface,
            dossier.barriers,
            dossier.combinations,
            dossier.chance,
            dossier.interval,
            dossier.status,
          ],
          rows: reached.map((one) => surfaceRow(paper, one)),
        },
        { is: 'text', tone: 'small', text: dossier.unreached(own.length - reached.length) },
      ];
    }),
  ];
}

function methodBlocks({ print: { dossier } }: Paper): readonly Block[] {
  return [
    { is: 'heading', level: 2, text: dossier.method },
    { is: 'list', numbered: false, title: null, items: dossier.methodLines },
    { is: 'heading', level: 2, text: dossier.limits },
    { is: 'list', numbered: false, title: null, items: dossier.limitLines },
  ];
}

export const dossierBlocks = (paper: Paper): readonly Block[] => [
  ...procedureBlocks(paper),
  ...findingsBlocks(paper),
  ...departureBlocks(paper),
  ...surfaceBlocks(paper),
  ...sourceBlocks(paper),
  ...methodBlocks(paper),
];
