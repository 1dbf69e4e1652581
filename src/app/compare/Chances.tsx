// Chances by class and barriers by surface. Each difference is drawn with its 90 % interval about nought: filled where the
// interval leaves nought out, hollow where it does not.
import { useState } from 'react';
import type { ClassChange, Difference, SurfaceChange } from '../../compare/chances.ts';
import { CHANCE_STATUS } from '../../words/index.ts';
import type { AgentChoice } from '../model/findings.ts';
import { StatusBadge } from '../parts/Badge.tsx';
import { Tick } from '../parts/Choices.tsx';
import { Scroll } from '../parts/Scroll.tsx';
import { words } from '../words.ts';
import type { Compared } from './result.ts';

const said = (difference: Difference): string =>
  words.compare.chance({ ...difference, value: difference.chance, status: CHANCE_STATUS });

const [WIDTH, HEIGHT] = [180, 24];

/** The largest move of any interval, so that all share one scale. */
const spanOf = (changes: readonly { readonly difference?: Difference }[]): number =>
  Math.max(
    1e-9,
    ...changes.flatMap(({ difference }) =>
      difference ? [Math.abs(difference.interval.low), Math.abs(difference.interval.high)] : [],
    ),
  );

function Whisker({ difference, span }: { readonly difference: Difference; readonly span: number }) {
  const x = (value: number): number => WIDTH / 2 + (value / span) * (WIDTH / 2 - 8);
  const { low, high } = difference.interval;
  const dot = Math.min(Math.max(difference.chance, -span), span);
  return (
    <svg
      className="whisker"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      width={WIDTH}
      height={HEIGHT}
      aria-hidden="true"
    >
      <line className="whisker-zero" x1={WIDTH / 2} x2={WIDTH / 2} y1="1" y2={HEIGHT - 1} />
      <line className="whisker-range" x1={x(low)} x2={x(high)} y1={HEIGHT / 2} y2={HEIGHT / 2} />
      <circle
        className={difference.excludesZero ? 'whisker-dot' : 'whisker-dot hollow'}
        cx={x(dot)}
        cy={HEIGHT / 2}
        r="5"
      />
    </svg>
  );
}

const classNames = ({ classes }: ClassChange): string =>
  classes.map((one) => words.surfaceClass(one)).join(', ');

interface ChancesProps {
  readonly compared: Compared;
  readonly choice: AgentChoice;
}

const figureText = ({ figureA, figureB }: ClassChange, side: 'a' | 'b'): string => {
  const { chance, interval } = side === 'a' ? figureA : figureB;
  return `${words.percent(chance)} (${words.percent(interval.low)} to ${words.percent(interval.high)})`;
};

export function ClassChances({ compared, choice }: ChancesProps) {
  const classes = compared.comparison.classes.filter(({ agent }) => choice === 'all' || agent === choice);
  const span = spanOf(classes);
  return (
    <section aria-labelledby="chances-title">
      <h2 id="chances-title">
        Chance of reaching a protected surface <StatusBadge status={CHANCE_STATUS} />
      </h2>
      <p className="quiet">
        With 90 % intervals. Slips that rest on the same record share their draws in both, so the interval of
        a difference is its own. A filled dot: the interval leaves nought out. A hollow one: the two cannot be
        told apart. Left is lower in the second.
      </p>
      <Scroll label="Chances of both" className="table-scroll">
        <table className="compare-table">
          <thead>
            <tr>
              <th scope="col">Surfaces</th>
              <th scope="col">First</th>
              <th scope="col">Second</th>
              <th scope="col">Difference</th>
            </tr>
          </thead>
          <tbody>
            {classes.map((change) => (
              <tr key={`${change.agent} ${classNames(change)}`}>
                <th scope="row">
                  {classNames(change)}
                  {choice === 'all' && <span className="quiet"> {words.agent(change.agent)}</span>}
                </th>
                <td>{figureText(change, 'a')}</td>
                <td>{figureText(change, 'b')}</td>
                <td>
                  <Whisker difference={change.difference} span={span} />
                  <span className="quiet">{said(change.difference)}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

const least = (barriers: number | null | undefined): number =>
  barriers === undefined || barriers === null ? Infinity : barriers;

/** Fewer barriers in the second is worse; what only one has is neither. */
function directionOf({ barriersA, barriersB }: SurfaceChange): '▲ fewer' | '▽ more' | '' {
  if (barriersA === undefined || barriersB === undefined || barriersA === barriersB) return '';
  return least(barriersB) < least(barriersA) ? '▲ fewer' : '▽ more';
}

const barrierText = (barriers: number | null | undefined): string =>
  barriers === undefined ? 'not there' : words.barriers(barriers);

const nameOf = ({ a, b }: Compared, change: SurfaceChange): string =>
  change.b === undefined ? words.surface(a, change.a ?? '') : words.surface(b, change.b);

const differs = ({ barriersA, barriersB, difference }: SurfaceChange): boolean =>
  barriersA !== barriersB || difference === undefined || difference.excludesZero;

interface SurfaceRowProps {
  readonly compared: Compared;
  readonly change: SurfaceChange;
  readonly withAgent: boolean;
}

function SurfaceRow({ compared, change, withAgent }: SurfaceRowProps) {
  const direction = directionOf(change);
  return (
    <tr>
      <th scope="row">
        {nameOf(compared, change)}
        {withAgent && <span className="quiet"> {words.agent(change.agent)}</span>}
      </th>
      <td className="whole">{barrierText(change.barriersA)}</td>
      <td className="whole">
        {barrierText(change.barriersB)}{' '}
        <b className={direction.startsWith('▲') ? 'wrong' : ''}>{direction}</b>
      </td>
      <td>{change.difference ? said(change.difference) : 'only in one of them'}</td>
    </tr>
  );
}

export function Barriers({ compared, choice }: ChancesProps) {
  const [all, setAll] = useState(false);
  const own = compared.comparison.surfaces.filter(({ agent }) => choice === 'all' || agent === choice);
  // Barriers that changed come first; the order of worry decides among them.
  const changed = ({ barriersA, barriersB }: SurfaceChange): boolean => barriersA !== barriersB;
  const rows = (all ? own : own.filter(differs)).toSorted((x, y) => Number(changed(y)) - Number(changed(x)));
  return (
    <section aria-labelledby="barriers-title">
      <h2 id="barriers-title">Barriers of each protected surface</h2>
      <div className="picture-bar">
        <p className="quiet">
          Slips and circumstances that it takes at least; 0 is an open route.{' '}
          {own.length - own.filter(differs).length} of {own.length} do not differ.
        </p>
        <Tick on={all} set={setAll}>
          Show these too
        </Tick>
      </div>
      {rows.length > 0 && (
        <Scroll label="Barriers of both" className="table-scroll">
          <table className="compare-table">
            <thead>
              <tr>
                <th scope="col">Surface</th>
                <th scope="col">First</th>
                <th scope="col">Second</th>
                <th scope="col">Chance, second less first</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((change) => (
                <SurfaceRow
                  key={`${change.agent} ${change.a ?? ''} ${change.b ?? ''}`}
                  compared={compared}
                  change={change}
                  withAgent={choice === 'all'}
                />
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </section>
  );
}
