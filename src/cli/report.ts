// From a verdict to the object that `--json` prints: the same data in plain values, with the sentences beside them, and
// step numbers from 1 as people count.
import type { Edit } from '../check/edit.ts';
import type { Combination, Finding, Measure, Mend, SurfaceVerdict } from '../check/finding.ts';
import type { Procedure } from '../domain/procedure.ts';
import { slipOf } from '../domain/slips.ts';
import { evidence, type EvidenceId } from '../evidence/index.ts';
import type { Verdict } from '../verify.ts';
import { CHANCE_STATUS, readEvent, type Words } from '../words/index.ts';
import { CHECK_FORMAT, type CheckReport, type FindingReport } from './reportSchema.ts';
import type { Subject } from './subject.ts';
import { VERSION } from './version.ts';

type EventReport = FindingReport['events'][number];
type MendReport = FindingReport['mends'][number];

const numbered = (index: number): number => index + 1;

function eventReport(words: Words, procedure: Procedure, key: string): EventReport {
  const read = readEvent(procedure, key);
  const slip = read === undefined ? undefined : slipOf(read.what);
  return {
    key,
    slip: slip?.id ?? '',
    kind: slip?.kind ?? 'slip',
    step: numbered(read?.index ?? -1),
    sentence: words.event(procedure, key),
    visible: slip?.visible ?? false,
    evidence: slip?.prior ?? '',
    status: slip === undefined ? 'judgement' : evidence(slip.prior).status,
  };
}

function groups<Value>([mucosa, skin, clothesAndShoes, cleanSide]: readonly [Value, Value, Value, Value]) {
  return { mucosa, skin, clothesAndShoes, cleanSide };
}

export const measureReport = ({
  impossible,
  open,
  chance,
  departures,
  seconds,
}: Measure): MendReport['before'] => ({
  impossible,
  open: groups(open),
  chance: groups(chance),
  departures,
  seconds,
  status: CHANCE_STATUS,
});

function editReport(edit: Edit): MendReport['edit'] {
  return edit.do === 'move'
    ? { ...edit, from: numbered(edit.from), to: numbered(edit.to) }
    : { ...edit, at: numbered(edit.at) };
}

/** `event surface`: neither holds a blank. */
function slipReport(key: string): MendReport['newSlips'][number] {
  const [event = '', surface = ''] = key.split(' ');
  return { event, surface };
}

const mendReport = (words: Words, procedure: Procedure, mend: Mend): MendReport => ({
  ...words.mend(procedure, mend),
  changes: [...words.mend(procedure, mend).changes],
  edit: editReport(mend.edit),
  barriers: mend.barriers ?? null,
  before: measureReport(mend.before),
  after: measureReport(mend.after),
  gone: [...mend.gone],
  added: [...mend.added],
  newSlips: (mend.newSlips ?? []).map(slipReport),
});

function evidenceReport(words: Words, id: EvidenceId): FindingReport['evidence'][number] {
  const { says, source } = words.evidence(id);
  return { id, says, source, status: evidence(id).status };
}

const routeReport = (words: Words, procedure: Procedure, finding: Finding): FindingReport['route'] =>
  words.route(procedure, finding).map(({ text, step, from, to, events }) => ({
    sentence: text,
    step: numbered(step),
    from: from ?? null,
    to: to ?? null,
    events: [...events],
  }));

function acceptedReport({ accepted }: Finding): FindingReport['accepted'] {
  if (!accepted) return null;
  const { reason, by, date, review } = accepted;
  return { reason, by, date, review };
}

function findingReport(words: Words, procedure: Procedure, finding: Finding): FindingReport {
  const { title, text } = words.finding(procedure, finding);
  return {
    code: finding.code,
    severity: finding.severity,
    kind: finding.kind,
    title,
    message: text,
    ownWording: words.isOverridden(procedure, finding),
    steps: finding.steps.map(numbered),
    surface: finding.surface ?? null,
    surfaces: [...finding.surfaces],
    agent: finding.agent ?? null,
    events: finding.events.map((key) => eventReport(words, procedure, key)),
    route: routeReport(words, procedure, finding),
    mends: finding.mends.map((mend) => mendReport(words, procedure, mend)),
    tried: finding.tried ?? null,
    evidence: finding.evidence.map((id) => evidenceReport(words, id)),
    replay: finding.replay ?? null,
    accepted: acceptedReport(finding),
  };
}

function surfaceReport(
  words: Words,
  procedure: Procedure,
  verdict: SurfaceVerdict,
): CheckReport['surfaces'][number] {
  const said = (key: string): string => words.event(procedure, key);
  const combination = ({ events, chance, replay }: Combination) => ({
    events: [...events],
    sentences: events.map(said),
    chance,
    replay,
  });
  return {
    ...verdict,
    name: words.surface(procedure, verdict.surface),
    combinations: verdict.combinations.map(combination),
    interval: [verdict.interval.low, verdict.interval.high],
    status: CHANCE_STATUS,
    importance: verdict.importance.map((one) => ({ ...one, sentence: said(one.event) })),
  };
}

function procedureReport(
  words: Words,
  { read }: Subject,
  verdict: Verdict,
): NonNullable<CheckReport['procedure']> {
  const { procedure, hash, agents } = verdict;
  const { title, kind, version, invented } = procedure;
  return {
    title,
    kind,
    version,
    invented,
    hash,
    agents: [...agents],
    steps: procedure.steps.map((step, index) => ({
      number: numbered(index),
      id: step.id,
      line: read?.positions.steps.get(step.id)?.line ?? null,
      who: step.who,
      role: procedure.people.find((person) => person.id === step.who)?.role ?? 'wearer',
      action: step.action,
      sentence: words.step(procedure, step),
      ownWording: words.isOverridden(procedure, step),
      note: step.note ?? null,
    })),
  };
}

/** The report of one file; without a verdict only what is wrong with the file. */
export function reportOf(
  words: Words,
  subject: Subject,
  verdict: Verdict | undefined,
  status: 0 | 1 | 2,
): CheckReport {
  const procedure = verdict?.procedure;
  return {
    format: CHECK_FORMAT,
    version: VERSION,
    file: subject.file,
    status,
    procedure: verdict ? procedureReport(words, subject, verdict) : null,
    findings: procedure ? verdict.findings.map((finding) => findingReport(words, procedure, finding)) : [],
    surfaces: procedure ? verdict.surfaces.map((surface) => surfaceReport(words, procedure, surface)) : [],
    measures:
      verdict?.measures.map(({ agent, measure }) => ({ agent, measure: measureReport(measure) })) ?? [],
    diagnostics: [...subject.complaints],
    limits: (verdict?.limits ?? []).map((limit) => ({
      code: limit.code,
      agent: limit.agent ?? null,
      sentence: words.limit(limit),
    })),
    cautions: [...words.cautions],
    language: words.language,
    review: [...words.reviewNote],
  };
}
