// One protected surface: how many things must go wrong, how many combinations there are, the chance with its interval and
// what it rests on, and the smallest combinations themselves.
import { useEffect, useRef, useState } from 'react';
import type { Combination, SurfaceVerdict } from '../../check/finding.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { StatusBadge } from '../parts/Badge.tsx';
import { chanceRange, statusOf } from '../model/verdicts.ts';
import { words } from '../words.ts';
import { anchorOf, gradeOf } from './grades.ts';

const FIRST = 5;

function Combinations({ all, procedure }: { all: readonly Combination[]; procedure: Procedure }) {
  const [more, setMore] = useState(false);
  const shown = more ? all : all.slice(0, FIRST);
  return (
    <>
      <ol className="combinations">
        {shown.map((one) => (
          <li key={one.replay}>
            <ul>
              {one.events.map((event) => (
                <li key={event}>{words.event(procedure, event)}</li>
              ))}
            </ul>
            <p className="quiet">
              Chance {words.chance(one.chance, statusOf(one.events))}; replay <code>{one.replay}</code>
            </p>
          </li>
        ))}
      </ol>
      {all.length > FIRST && (
        <button type="button" className="button" onClick={() => setMore(!more)} aria-expanded={more}>
          {more ? 'Show fewer' : `Show all ${all.length} listed`}
        </button>
      )}
    </>
  );
}

function Orders({ verdict }: { readonly verdict: SurfaceVerdict }) {
  const orders = Object.entries(verdict.combinationsByOrder).filter(([, count]) => count !== '0');
  return (
    <table className="orders">
      <thead>
        <tr>
          <th scope="row">Slips and circumstances in it</th>
          {orders.map(([order]) => (
            <th key={order} scope="col">
              {order}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Combinations</th>
          {orders.map(([order, count]) => (
            <td key={order}>{count}</td>
          ))}
        </tr>
      </tbody>
    </table>
  );
}

function barrierText(verdict: SurfaceVerdict): string {
  const { barriers } = verdict;
  if (barriers === null) return 'No route found by this check';
  if (barriers === 0) return 'Open route: contaminated though nobody slips';
  return `At least ${barriers} ${barriers === 1 ? 'slip or circumstance' : 'slips or circumstances'}`;
}

interface VerdictProps {
  readonly verdict: SurfaceVerdict;
  readonly procedure: Procedure;
  readonly isTarget: boolean;
}

export function Verdict({ verdict, procedure, isTarget }: VerdictProps) {
  const { surface, barriers, agent } = verdict;
  const events = verdict.importance.map((one) => one.event);
  const details = useRef<HTMLDetailsElement>(null);
  // Opened where the address points to it; whoever folds it again finds it folded.
  useEffect(() => {
    if (isTarget && details.current) details.current.open = true;
  }, [isTarget]);
  return (
    <li className={`verdict grade-${gradeOf(verdict)}`} id={anchorOf(verdict)} tabIndex={-1}>
      <details ref={details}>
        <summary>
          <span className="barriers" aria-hidden="true">
            {barriers ?? '–'}
          </span>
          <span className="verdict-name">
            <b>{words.surface(procedure, surface)}</b>
            <span className="quiet">
              {words.surfaceClass(verdict.class)}, {words.agent(agent)}
            </span>
          </span>
          <span className="verdict-text">{barrierText(verdict)}</span>
          <span className="verdict-chance">
            {barriers === null ? '' : chanceRange(verdict)}
            {barriers !== null && <StatusBadge status={statusOf(events)} />}
          </span>
        </summary>
        {barriers !== null && (
          <>
            <p>
              Chance that it is reached: {chanceRange(verdict)} (90 % interval from the uncertainty of the
              slips’ chances; rests on {words.status(statusOf(events))}). As the procedure ends:{' '}
              {words.barriers(verdict.barriersAtEnd)}.
            </p>
            <h4>Minimal combinations by size: {verdict.combinationCount} in all, counted exactly</h4>
            <Orders verdict={verdict} />
            <h4>Smallest combinations</h4>
            <Combinations all={verdict.combinations} procedure={procedure} />
            <Importance verdict={verdict} procedure={procedure} />
          </>
        )}
        <p>
          <a className="inline-link" href={`#${anchorOf(verdict)}`}>
            Link to this surface
          </a>
        </p>
      </details>
    </li>
  );
}

function Importance({
  verdict,
  procedure,
}: {
  readonly verdict: SurfaceVerdict;
  readonly procedure: Procedure;
}) {
  if (verdict.importance.length === 0) return null;
  return (
    <>
      <h4>What carries the chance</h4>
      <p className="quiet">Share of the chance that goes if it never happens (Fussell-Vesely importance).</p>
      <ul className="shares">
        {verdict.importance.map(({ event, fussellVesely }) => (
          <li key={event}>
            <b>{Math.round(fussellVesely * 100)} %</b>
            <span>
              {words.event(procedure, event)} <StatusBadge status={statusOf([event])} />
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
