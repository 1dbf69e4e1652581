// The sign-off sheet: one person, one observed run, every step with its three boxes, names and signatures left blank.
import { boxLabels, type Paper, roleNames, roleOf, standing } from './paper.ts';
import { capital } from '../words/capital.ts';
import type { Block } from './model.ts';

export function signOffBlocks(paper: Paper): readonly Block[] {
  const { procedure, words, print } = paper;
  const { blanks, signOff, script } = print;
  const [wearer, observer, assistant] = roleNames(paper);
  const rows = procedure.steps.map(
    (step, index) =>
      [
        String(index + 1),
        `${roleOf(paper, step.who)} – ${capital(words.stepLabel(procedure, step))}`,
      ] as const,
  );
  return [
    { is: 'text', tone: 'plain', text: signOff.statement },
    ...standing(paper),
    {
      is: 'blanks',
      labels: [wearer, blanks.date, observer, assistant, blanks.assessor, blanks.validUntil],
    },
    { is: 'heading', level: 2, text: signOff.assessed },
    { is: 'ticks', head: [script.step, print.what], boxes: boxLabels(paper), rows },
    { is: 'choices', items: signOff.results },
    { is: 'heading', level: 2, text: signOff.signatures },
    {
      is: 'blanks',
      labels: [
        `${wearer} – ${blanks.signature}`,
        `${blanks.assessor} – ${blanks.signature}`,
        `${observer} – ${blanks.signature}`,
        blanks.remarks,
      ],
    },
  ];
}
