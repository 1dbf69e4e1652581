// The steps of an order with what happened to each, by sign and words, and why it stands where it does, folded.
import type { Happening } from '../../compare/align.ts';
import type { Procedure } from '../../domain/procedure.ts';
import type { Choice } from '../../order/index.ts';
import { sentenceOf } from '../compose/editing.ts';
import { words } from '../words.ts';
import { countsOf, type Row } from './model/rows.ts';

const SIGNS: Readonly<Record<Happening, string>> = {
  same: '=',
  new: '+',
  gone: '−',
  moved: '⤨',
  changed: '≠',
  'moved-and-changed': '⤨ ≠',
};

const NAMES: Readonly<Record<Happening, string>> = {
  same: 'unchanged',
  new: 'new',
  gone: 'left out',
  moved: 'moved',
  changed: 'changed',
  'moved-and-changed': 'moved and changed',
};

/** What happened, where it was, what of its note became. */
function Mark({ row: { what, was, now, fields, noteLost } }: { readonly row: Row }) {
  const which = fields.length > 0 ? ` (${fields.map(words.compare.field).join(', ')})` : '';
  const elsewhere = was !== now || what.startsWith('moved');
  const from = was !== undefined && elsewhere ? `, was step ${was}` : '';
  const text = `${NAMES[what]}${which}${from}${noteLost ? ', its note is left out' : ''}`;
  if (what === 'same') return <span className="quiet">{text}</span>;
  return (
    <span className="badge">
      <span aria-hidden="true">{SIGNS[what]} </span>
      {text}
    </span>
  );
}

interface WhyProps {
  readonly procedure: Procedure;
  readonly choices: readonly Choice[];
  readonly name: string;
}

function Why({ procedure, choices, name }: WhyProps) {
  return (
    <details className="why">
      <summary>
        Why {choices.length > 1 ? `(${choices.length} reasons)` : ''}
        <span className="visually-hidden"> {name}</span>
      </summary>
      <ul>
        {choices.map((choice) => (
          <li key={`${choice.kind} ${choice.instead}`}>{words.order.choice(procedure, choice)}</li>
        ))}
      </ul>
    </details>
  );
}

interface RowsProps {
  readonly before: Procedure;
  readonly after: Procedure;
  readonly rows: readonly Row[];
  readonly reasons?: ReadonlyMap<string, readonly Choice[]>;
}

function One({ before, after, row, reasons }: Omit<RowsProps, 'rows'> & { readonly row: Row }) {
  const { what, step, now } = row;
  const sentence = sentenceOf(what === 'gone' ? before : after, step);
  const was = row.before && what.endsWith('changed') ? sentenceOf(before, row.before) : sentence;
  const choices = what === 'gone' ? [] : (reasons?.get(step.id) ?? []);
  return (
    <li className={`found-step happened-${what}`}>
      <span className="step-number">{now ?? '−'}</span>
      <div>
        <p>{what === 'gone' ? <s>{sentence}</s> : sentence}</p>
        {was !== sentence && <p className="quiet">Before: {was}</p>}
      </div>
      <p className="marks">
        <Mark row={row} />
        {step.pinned && <span className="badge">kept in place</span>}
      </p>
      {choices.length > 0 && <Why procedure={after} choices={choices} name={`step ${now ?? ''}`} />}
    </li>
  );
}

/** '5 new, 3 moved, 25 unchanged'. */
export const countsText = (rows: readonly Row[]): string =>
  countsOf(rows)
    .toSorted(([a], [b]) => Number(a === 'same') - Number(b === 'same'))
    .map(([what, count]) => `${count} ${NAMES[what]}`)
    .join(', ');

export function StepRows({ before, after, rows, reasons }: RowsProps) {
  return (
    <ol className="found-steps">
      {rows.map((row) => (
        <One
          key={`${row.was ?? ''} ${row.now ?? ''}`}
          before={before}
          after={after}
          row={row}
          {...(reasons ? { reasons } : {})}
        />
      ))}
    </ol>
  );
}
