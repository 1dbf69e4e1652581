// Every protected surface: how many things must go wrong, how many combinations there are, the chance with its interval
// and what it rests on, and the smallest combinations themselves.
import { useState } from 'react';
import type { Combination, SurfaceVerdict } from '../../check/finding.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { StatusBadge } from '../parts/Badge.tsx';
import type { ViewProps } from '../view.ts';
import { byWorst, chanceRange, statusOf } from '../model/verdicts.ts';
import { words } from '../words.ts';

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

function One({ verdict, procedure }: { readonly verdict: SurfaceVerdict; readonly procedure: Procedure }) {
  const { surface, barriers, agent } = verdict;
  const events = verdict.importance.map((one) => one.event);
  const grade = barriers === null ? 'none' : String(Math.min(barriers, 3));
  return (
    <li className={`verdict grade-${grade}`}>
      <details>
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
            <h3>Minimal combinations by size: {verdict.combinationCount} in all, counted exactly</h3>
            <Orders verdict={verdict} />
            <h3>Smallest combinations</h3>
            <Combinations all={verdict.combinations} procedure={procedure} />
            <Importance verdict={verdict} procedure={procedure} />
          </>
        )}
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
      <h3>What carries the chance</h3>
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

export function Surfaces({ judged, choice }: ViewProps) {
  const { procedure } = judged;
  const verdicts = byWorst(judged.surfaces.filter((one) => choice === 'all' || one.agent === choice));
  return (
    <section aria-labelledby="surfaces-title">
      <h2 id="surfaces-title">Protected surfaces</h2>
      <p>
        The number is how many slips and circumstances must come together at least. 0 is an open route. A dash
        means that this check found no route, not that there is none. Chances compare procedures; they promise
        nothing.
      </p>
      <ul className="verdicts">
        {verdicts.map((verdict) => (
          <One key={`${verdict.surface} ${verdict.agent}`} verdict={verdict} procedure={procedure} />
        ))}
      </ul>
    </section>
  );
}
