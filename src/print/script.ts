// The read-aloud script: what the observer says, what is answered, one box to tick per step, a hold where hands have just
// become contaminated. Parts end where the wearer moves or sits down.
import type { Step } from '../domain/procedure.ts';
import type { Block, ScriptLine } from './model.ts';
import { boxLabels, holdOf, roleNames, type Paper, standing, whoOf, zoneName } from './paper.ts';
import { type Part, partsOf } from './parts.ts';

/** A sentence in its parts, one action per line; joined by blanks it is the sentence again. */
export const linesOf = (sentence: string): readonly string[] =>
  sentence.split(/(?<=[:;])\s+(?!\))/).filter((line) => line !== '');

function answerTo({ print }: Paper, { action }: Step): string {
  if (action === 'say') return print.script.ready;
  return action === 'inspect' ? print.script.looked : print.script.done;
}

function lineOf(paper: Paper, index: number): readonly ScriptLine[] {
  const step = paper.procedure.steps[index];
  if (!step) return [];
  return [
    {
      number: index + 1,
      who: whoOf(paper, step),
      lines: linesOf(paper.words.step(paper.procedure, step)),
      note: step.note ?? null,
      answer: answerTo(paper, step),
      hold: holdOf(paper, index),
    },
  ];
}

const once = (names: readonly string[]): string => [...new Set(names)].join(' / ');

/** 'Part 2 of 4: steps 9 to 16 – doffing area – standing / sitting (boot chair)'. */
function headingOf(paper: Paper, part: Part, index: number, count: number): string {
  const { print, words, procedure } = paper;
  const postures = part.stands.map(({ seated }) =>
    seated === undefined ? print.standing : print.sitting(words.fixture(procedure, seated)),
  );
  const zones = part.stands.map(({ zone }) => zoneName(paper, zone));
  return `${print.part(index + 1, count, part.from + 1, part.to)} – ${once(zones)} – ${once(postures)}`;
}

function partBlock(paper: Paper, part: Part, index: number, count: number): Block {
  const { script } = paper.print;
  const steps = Array.from({ length: part.to - part.from }, (_, at) => part.from + at);
  return {
    is: 'script',
    heading: headingOf(paper, part, index, count),
    head: [script.step, script.call, script.answer],
    boxes: boxLabels(paper),
    together: index > 0,
    lines: steps.flatMap((step) => lineOf(paper, step)),
  };
}

export function scriptBlocks(paper: Paper): readonly Block[] {
  const { blanks, script } = paper.print;
  const [wearer, observer, assistant] = roleNames(paper);
  const parts = partsOf(paper.procedure, paper.moments);
  return [
    ...standing(paper),
    { is: 'list', numbered: true, title: null, items: script.rules },
    {
      is: 'blanks',
      labels: [blanks.date, blanks.begun, blanks.ended, wearer, observer, assistant],
    },
    ...parts.map((part, index) => partBlock(paper, part, index, parts.length)),
    { is: 'blanks', labels: [blanks.remarks] },
  ];
}
