// What the print panel says, in plain English.
import type { Outcome, PaperSize, Reach } from './paper.ts';

export const PRINT = {
  title: 'Print',
  paper: 'Which paper',
  size: 'Size of the sheets',
  language: 'Language of the paper',
  typeset: 'Typeset paper (PDF)',
  plain: 'Print this page as it stands',
  again: 'Ask the server again',
  about:
    'A typeset paper is a tagged PDF, made for paper and black-and-white printers. The server that this page came from makes it: the procedure’s text is sent there and not kept.',
  making: 'Setting the paper …',
  saved: (name: string): string => `Saved as ${name}.`,
  faults: 'What has to be mended first',
  where: { procedure: 'Procedure', donning: 'Donning', wording: 'The unit’s own sentences' },
  place: (line: number, column: number): string => `line ${line}, column ${column}`,
} as const;

export const SIZES: Readonly<Record<PaperSize, string>> = { a4: 'A4', letter: 'Letter' };

/** Whether the server sets papers, and what to do where it does not. */
export const REACH: Readonly<Record<Reach, string>> = {
  asking: 'Asking the server …',
  can: '',
  none: 'No server answers, so there is no typeset paper now. Printing this page as it stands works without one.',
  stranger:
    'The server sets papers for devices of its unit. Join the unit under “This device”. Printing this page as it stands works without.',
  cannot:
    'The server cannot set papers: tell its administrator. Printing this page as it stands works without.',
};

export const OUTCOMES: Readonly<Record<Exclude<Outcome['is'], 'saved'>, string>> = {
  faults: 'The paper was not made: the text has errors.',
  busy: 'The server is setting other papers. Try again in a moment.',
  slow: 'The server gave up: the paper took too long. Try again, or take another paper.',
  failed: 'The server could not set this paper.',
  lost: 'The server did not answer. Printing this page as it stands works without it.',
};
