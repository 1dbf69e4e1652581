// The picture: the steps of both procedures in two columns, joined where they are the same step. What happened to a step is
// told by sign, outline and line first, by colour last.
import { useState } from 'react';
import { type Happening, happenedTo } from '../../compare/align.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { alignedOf, type Join, type Slot } from '../model/slots.ts';
import { wrapped } from '../model/wrap.ts';
import { Tick } from '../parts/Choices.tsx';
import { useWide } from '../parts/useWide.ts';
import { words } from '../words.ts';
import type { Compared } from './result.ts';

interface Geometry {
  readonly column: number;
  readonly middle: number;
  readonly row: number;
  readonly characters: number;
  readonly lines: number;
}

const WIDE: Geometry = { column: 430, middle: 120, row: 27, characters: 56, lines: 1 };
const NARROW: Geometry = { column: 156, middle: 44, row: 50, characters: 21, lines: 3 };
const GAP = 4;

const SIGNS: Readonly<Record<Happening, string>> = {
  same: '',
  new: '+',
  gone: '−',
  moved: '⤨',
  changed: '≠',
  'moved-and-changed': '⤨≠',
};

const NAMES: Readonly<Record<Happening, string>> = {
  new: 'new',
  gone: 'left out',
  moved: 'moved',
  'moved-and-changed': 'moved and changed',
  changed: 'changed',
  same: 'unchanged',
};
const ORDER: readonly Happening[] = ['new', 'gone', 'moved', 'moved-and-changed', 'changed', 'same'];

const middleOf = ({ row }: Geometry, slot: number): number => slot * row + row / 2;

interface BoxProps {
  readonly geometry: Geometry;
  readonly procedure: Procedure;
  readonly step: number;
  readonly slot: number;
  readonly what: Happening;
  readonly right: boolean;
}

/** A step: number, what is done in a few words, and its sign. */
function Box({ geometry, procedure, step, slot, what, right }: BoxProps) {
  const { column, middle, row, characters, lines } = geometry;
  const one = procedure.steps[step];
  if (!one) return null;
  const x = right ? column + middle : 0;
  const doer = procedure.people.find(({ id }) => id === one.who);
  const who = doer && doer.role !== 'wearer' ? `${words.person(procedure, doer.id)}: ` : '';
  const text = wrapped(`${step + 1}  ${who}${words.stepLabel(procedure, one)}`, characters, lines);
  const top = middleOf(geometry, slot) - ((text.length - 1) * 13) / 2 + 4;
  return (
    <g className={`aligned-step is-${what}`}>
      <rect x={x + 1} y={slot * row + GAP / 2} width={column - 2} height={row - GAP} rx={4} />
      <text>
        {text.map((line, at) => (
          <tspan key={line} x={x + 8} y={top + at * 13}>
            {line}
          </tspan>
        ))}
      </text>
      {what !== 'same' && (
        <text className="aligned-sign" x={x + column - 8} y={middleOf(geometry, slot) + 5} textAnchor="end">
          {SIGNS[what]}
        </text>
      )}
    </g>
  );
}

function Line({ geometry, join }: { readonly geometry: Geometry; readonly join: Join }) {
  const { column, middle } = geometry;
  const [y1, y2] = [middleOf(geometry, join.from), middleOf(geometry, join.to)];
  const [x1, x2, bend] = [column, column + middle, middle / 2];
  const path = `M ${x1} ${y1} C ${x1 + bend} ${y1} ${x2 - bend} ${y2} ${x2} ${y2}`;
  return <path className={`aligned-line is-${join.what}`} d={path} />;
}

interface SlotProps {
  readonly geometry: Geometry;
  readonly compared: Compared;
  readonly slot: Slot;
  readonly at: number;
}

function One({ geometry, compared: { a, b }, slot, at }: SlotProps) {
  const { column, middle } = geometry;
  if (slot.is === 'fold') {
    return (
      <text
        className="aligned-fold"
        x={column + middle / 2}
        y={middleOf(geometry, at) + 4}
        textAnchor="middle"
      >
        {`${slot.count} unchanged steps`}
      </text>
    );
  }
  return (
    <>
      {slot.a !== null && (
        <Box geometry={geometry} procedure={a} step={slot.a} slot={at} what={slot.what} right={false} />
      )}
      {slot.b !== null && (
        <Box geometry={geometry} procedure={b} step={slot.b} slot={at} what={slot.what} right />
      )}
    </>
  );
}

const countsOf = ({ comparison }: Compared, what: Happening): number =>
  comparison.steps.filter((row) => happenedTo(row) === what).length;

/** '4 new, 1 left out, 31 unchanged'. */
const countsText = (compared: Compared): string =>
  ORDER.map((what) => [countsOf(compared, what), NAMES[what]] as const)
    .filter(([count]) => count > 0)
    .map(([count, name]) => `${count} ${name}`)
    .join(', ');

function Legend({ compared }: { readonly compared: Compared }) {
  return (
    <ul className="legend">
      {ORDER.filter((what) => countsOf(compared, what) > 0).map((what) => (
        <li key={what}>
          <svg
            width="34"
            height="22"
            viewBox="0 0 34 22"
            aria-hidden="true"
            className={`aligned-step is-${what}`}
          >
            <rect x="1" y="1" width="32" height="20" rx="4" />
            <text className="aligned-sign" x="17" y="16" textAnchor="middle">
              {SIGNS[what]}
            </text>
          </svg>
          {countsOf(compared, what)} {NAMES[what]}
        </li>
      ))}
    </ul>
  );
}

export function AlignedSteps({ compared }: { readonly compared: Compared }) {
  const [whole, setWhole] = useState(false);
  const geometry = useWide() ? WIDE : NARROW;
  const { slots, joins } = alignedOf(compared.comparison.steps, whole);
  const [width, height] = [2 * geometry.column + geometry.middle, slots.length * geometry.row];
  return (
    <section aria-labelledby="aligned-title">
      <h2 id="aligned-title">Steps side by side</h2>
      <div className="picture-scroll">
        <p className="aligned-heads">
          <b>First: version {compared.a.version}</b>
          <b>Second: version {compared.b.version}</b>
        </p>
        <svg
          className="aligned"
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={`Steps of the first on the left, of the second on the right: ${countsText(compared)}. The list below says the same in words.`}
        >
          {joins.map((join) => (
            <Line key={`${join.from}-${join.to}`} geometry={geometry} join={join} />
          ))}
          {slots.map((slot, at) => (
            <One
              key={`${slot.is} ${slot.a ?? ''} ${slot.b ?? ''}`}
              geometry={geometry}
              compared={compared}
              slot={slot}
              at={at}
            />
          ))}
        </svg>
      </div>
      <div className="picture-bar">
        <Legend compared={compared} />
        <Tick on={whole} set={setWhole}>
          Every step
        </Tick>
      </div>
    </section>
  );
}

/** The same in words: every step that is not as it was. */
export function StepSentences({ compared: { a, b, comparison } }: { readonly compared: Compared }) {
  const rows = comparison.steps.filter((row) => happenedTo(row) !== 'same');
  return (
    <section aria-labelledby="changes-title">
      <h2 id="changes-title">What changed, in words</h2>
      {rows.length === 0 && <p>Every step is as it was.</p>}
      <ul className="plain">
        {rows.map((row) => (
          <li key={`${row.a ?? ''} ${row.b ?? ''}`} className="step-change">
            {words.compare.step(a, b, row)}
          </li>
        ))}
      </ul>
    </section>
  );
}
