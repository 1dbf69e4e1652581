// The pocket card: the steps in a few words each, on quarters of a sheet to be cut out.
import { type Paper, roleOf } from './paper.ts';
import { capital } from '../words/capital.ts';
import type { Block, CardLine } from './model.ts';

function lineOf(paper: Paper, index: number): readonly CardLine[] {
  const { procedure, words, moments } = paper;
  const step = procedure.steps[index];
  if (!step) return [];
  const role = procedure.people.find(({ id }) => id === step.who)?.role;
  return [
    {
      number: index + 1,
      who: role === 'wearer' ? null : roleOf(paper, step.who),
      text: capital(words.stepLabel(procedure, step)),
      hold: (moments[index]?.holds.length ?? 0) > 0,
    },
  ];
}

export const cardBlocks = (paper: Paper): readonly Block[] => [
  {
    is: 'cards',
    lines: paper.procedure.steps.flatMap((_, index) => lineOf(paper, index)),
    foot: [...paper.words.cautions, ...paper.words.reviewNote],
  },
];
