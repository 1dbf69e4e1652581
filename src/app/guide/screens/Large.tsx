// The large text: at most two short rows, each as large as the width allows, so that it is read from where people stand.
import type { CSSProperties } from 'react';
import type { Screen } from '../../../guide/index.ts';
import type { Procedure } from '../../../domain/procedure.ts';

type Text = Screen['large'][number];

interface RowsProps {
  readonly rows: readonly string[];
  readonly language: string;
  /** Further away, or beside the one that is read. */
  readonly small?: boolean;
}

const LEAST = 12;

export function Rows({ rows, language, small = false }: RowsProps) {
  const most = Math.max(LEAST, ...rows.map((row) => row.length));
  return (
    <p
      className={small ? 'g-rows small' : 'g-rows'}
      lang={language}
      style={{ '--most': most, '--rows': rows.length } as CSSProperties}
    >
      {rows.map((row, index) => (
        // Two rows may say the same.
        <span key={`${index}-${row}`} className="g-row">
          {row}
        </span>
      ))}
    </p>
  );
}

/** Whoever acts on what is shown: of a line that is watched, those who do its step. */
export function actorsOf({ line }: Pick<Screen, 'line'>, { steps }: Procedure): readonly string[] {
  const step = steps[line.step];
  if (line.kind !== 'look' || !step) return line.for;
  return [step.who, ...(step.helper === undefined ? [] : [step.helper])];
}

const sameText = (a: Text, b: Text): boolean =>
  a.language === b.language && a.rows.join('\n') === b.rows.join('\n');

/** One text per language, for the first of those who act on it. */
export function textsFor(large: readonly Text[], people: readonly string[]): readonly Text[] {
  const theirs = people.flatMap((person) => large.filter((one) => one.person === person));
  return theirs.filter((one, index) => theirs.findIndex((other) => sameText(one, other)) === index);
}
