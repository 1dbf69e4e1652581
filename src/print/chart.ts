// The wall chart: a picture and a sentence per step, read from across the room.
import type { Block, ChartCell } from './model.ts';
import { holdOf, type Paper, peopleBlock, standing, whoOf } from './paper.ts';
import { stepPicture } from './picture.ts';

function cellOf(paper: Paper, index: number): readonly ChartCell[] {
  const step = paper.procedure.steps[index];
  if (!step) return [];
  return [
    {
      number: index + 1,
      who: whoOf(paper, step),
      picture: stepPicture(paper, index),
      sentence: paper.words.step(paper.procedure, step),
      note: step.note ?? null,
      hold: holdOf(paper, index),
    },
  ];
}

export const chartBlocks = (paper: Paper): readonly Block[] => [
  ...standing(paper),
  { is: 'list', numbered: false, title: null, items: [paper.print.outlined, paper.print.hatched] },
  peopleBlock(paper),
  { is: 'heading', level: 2, text: paper.print.dossier.steps },
  { is: 'chart', cells: paper.procedure.steps.flatMap((_, index) => cellOf(paper, index)) },
];
