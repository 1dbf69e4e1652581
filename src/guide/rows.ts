// A sentence broken into screens of at most two short rows. One action per row: a row never holds more than one clause
// (what stands between colons, semicolons, commas and full stops), and a screen never splits a clause that fits it whole.
import { ROWS } from './fit.ts';
import { capital } from '../words/capital.ts';

/** What is shown at once: one or two rows. */
export type Screenful = readonly string[];

/** Breaks that end an action. A comma between digits is a decimal mark, and a hard space belongs to its word. */
const BREAK = /(?<=[:;,.?!])(?<!\d,(?=\d)) +/u;
/** Marks that the end of a row says already. */
const MARKS = /[\s\u00a0]*[:;,]$/u;

/** The clauses of a sentence, without the marks between them; those of commas keep theirs, as they go on. */
export function clausesOf(sentence: string): readonly string[] {
  return sentence
    .split(BREAK)
    .map((clause) => clause.replace(MARKS, '').replace(/\.$/, '').trim())
    .filter((clause) => clause !== '');
}

/** Where a clause goes on upon the next screen. */
const GOES_ON = '… ';

/** A clause in rows of at most so many characters; a longer word stands alone in a row that is too wide. */
function rowsOf(clause: string, characters: number): readonly string[] {
  const rows: string[] = [];
  for (const word of clause.split(' ')) {
    const last = rows.at(-1);
    const isNextScreen = rows.length > 0 && rows.length % ROWS === 0;
    if (last !== undefined && last.length + 1 + word.length <= characters)
      rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(isNextScreen ? `${GOES_ON}${word}` : word);
  }
  return rows;
}

/** Rows into screens; of a clause that needs several screens each is filled before the next. */
function chunks(rows: readonly string[]): readonly Screenful[] {
  return Array.from({ length: Math.ceil(rows.length / ROWS) }, (_, at) =>
    rows.slice(at * ROWS, (at + 1) * ROWS),
  );
}

/** The screens of a text, in the order of reading. */
export function screensOf(text: string, characters: number): readonly Screenful[] {
  const screens: Screenful[] = [];
  for (const clause of clausesOf(text)) {
    const rows = rowsOf(clause, characters);
    const last = screens.at(-1);
    if (last !== undefined && last.length + rows.length <= ROWS)
      screens[screens.length - 1] = [...last, ...rows];
    else screens.push(...chunks(rows));
  }
  return screens.map(([first = '', ...rest]) => [capital(first), ...rest]);
}

/** Whether every row has room. */
export const isWithin = (screen: Screenful, characters: number): boolean =>
  screen.length <= ROWS && screen.every((row) => row.length <= characters);
