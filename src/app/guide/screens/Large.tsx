// The large text: at most two short rows, so that it is read from where people stand; and for whom it is.
import type { Core, Screen } from '../../../guide/index.ts';
import type { Language } from '../../../words/index.ts';

type Text = Screen['large'][number];
type Line = Screen['line'];

interface RowsProps {
  readonly rows: readonly string[];
  readonly language: string;
}

/** Size: see useLargest.ts. */
export function Rows({ rows, language }: RowsProps) {
  return (
    <p className="g-rows" lang={language}>
      {rows.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows are never reordered, and two may say the same
        <span key={`${index}-${row}`} className="g-row">
          {row}
        </span>
      ))}
    </p>
  );
}

/** A line in a language, or in whichever it was made where nobody is read to in that one. */
export const rowsIn = (line: Line | undefined, language: Language): readonly string[] =>
  line?.texts[language] ?? Object.values(line?.texts ?? {})[0] ?? [];

/** Index of the step whose words stand there: after an interruption that of the line that is read again. */
export function stepShown(
  { phase, line }: Pick<Screen, 'phase' | 'line'>,
  { lastAnswered, script }: Core,
): number {
  const again = phase === 'recap' && lastAnswered !== null ? script.lines[lastAnswered] : undefined;
  return again?.step ?? line.step;
}

/** Whoever acts on what is shown: of a line that is watched or read again, those who do its step. */
export function actorsOf(screen: Pick<Screen, 'phase' | 'line'>, core: Core): readonly string[] {
  const { phase, line } = screen;
  const step = core.script.setup.procedure.steps[stepShown(screen, core)];
  if ((line.kind !== 'look' && phase !== 'recap') || !step) return line.for;
  return [step.who, ...(step.helper === undefined ? [] : [step.helper])];
}

const sameText = (a: Text, b: Text): boolean =>
  a.language === b.language && a.rows.join('\n') === b.rows.join('\n');

/** One text per language, for the first of those who act on it; a procedure may name no observer. */
export function shownTo(large: readonly Text[], people: readonly string[]): readonly Text[] {
  const theirs = people.flatMap((person) => large.filter((one) => one.person === person));
  const texts = theirs.length > 0 ? theirs : large.slice(0, 1);
  return texts.filter((one, index) => texts.findIndex((other) => sameText(one, other)) === index);
}
