// Where a dossier's statements come from: the procedure's own source, and every rule and chance that its check used.
import { type EvidenceId, evidence } from '../evidence/index.ts';
import { slipOf } from '../domain/slips.ts';
import { readEvent } from '../words/events.ts';
import type { Block } from './model.ts';
import type { Paper } from './paper.ts';

/** Ids of the evidence that findings name and that the slips of the procedure rest on. */
function evidenceUsed({ verdict, procedure }: Paper): readonly EvidenceId[] {
  const named = verdict.findings.flatMap((finding) => finding.evidence);
  const keys = verdict.analyses.flatMap(({ compiled }) => compiled.plan.events.map(({ key }) => key));
  const priors = keys.flatMap((key) => {
    const read = readEvent(procedure, key);
    return read ? [slipOf(read.what).prior] : [];
  });
  return [...new Set([...named, ...priors])].toSorted();
}

function ownSource({ procedure, print: { dossier } }: Paper): readonly Block[] {
  const { source } = procedure;
  if (!source) return [];
  const { title, publisher, year, where, seen, memory, interpreted } = source;
  const cited = [title, publisher, year, where].filter((part) => part !== undefined).join('. ');
  return [
    { is: 'heading', level: 3, text: dossier.ownSource },
    { is: 'text', tone: 'plain', text: cited },
    {
      is: 'facts',
      facts: [
        [dossier.seen, seen],
        ...(memory === undefined ? [] : [[dossier.memory, memory] as const]),
        ...(interpreted === undefined ? [] : [[dossier.interpreted, interpreted] as const]),
      ],
    },
  ];
}

function shownValue(paper: Paper, id: EvidenceId): string {
  const { value, unit } = evidence(id);
  if (typeof value !== 'number') return '';
  return unit === 'chance per opportunity' ? paper.words.percent(value) : `${value} ${unit}`;
}

export function sourceBlocks(paper: Paper): readonly Block[] {
  const { print } = paper;
  const { dossier } = print;
  const rows = evidenceUsed(paper).map((id) => {
    const { says, source, status } = paper.words.evidence(id);
    const { note } = evidence(id);
    return [says, shownValue(paper, id), note === undefined ? source : `${source}. ${note}`, status];
  });
  return [
    { is: 'heading', level: 2, text: dossier.sources },
    ...ownSource(paper),
    { is: 'heading', level: 3, text: dossier.numbers },
    {
      is: 'table',
      widths: [4, 0, 4, 0],
      head: [print.what, dossier.chance, dossier.sources, dossier.status],
      rows,
    },
  ];
}
