// What a cell of the ledger shows and says: a sign and a pattern for how contaminated, a corner mark for what happened.
import type { LedgerTurn } from '../../engine/ledger.ts';
import type { Cell } from '../model/ledger.ts';

/** Contaminated: a filled disc. Takes slips: how many at least. Nothing known: a middle dot. */
export function signOf({ mark, least }: Cell): string {
  if (mark === 'contaminated') return '⬤';
  return mark === 'slips' ? String(least) : '·';
}

const TURNS: Readonly<Record<LedgerTurn, string>> = {
  suspect: 'became suspect here',
  certain: 'became contaminated here',
  lessened: 'cleaned here, unless something went wrong',
  cleared: 'cleaned, replaced or gone here',
};

/** The cell for those who cannot see it. */
export function saidOf({ step, mark, least, turn }: Cell, name: string): string {
  const when = step < 0 ? 'at the start' : `after step ${step + 1}`;
  const state =
    mark === 'contaminated'
      ? 'contaminated though nobody slips'
      : mark === 'slips'
        ? `takes at least ${least} ${least === 1 ? 'slip or circumstance' : 'slips or circumstances'}`
        : 'nothing known';
  return `${name}, ${when}: ${state}${turn ? `; ${TURNS[turn]}` : ''}`;
}

export function LedgerLegend() {
  return (
    <ul className="legend ledger-legend" aria-label="Legend of the ledger">
      <li>
        <span className="cell mark-contaminated" aria-hidden="true">
          <span className="sign">⬤</span>
        </span>
        contaminated though nobody slips
      </li>
      <li>
        <span className="cell mark-slips" aria-hidden="true">
          <span className="sign">2</span>
        </span>
        takes at least so many slips or circumstances
      </li>
      <li>
        <span className="cell mark-nothing" aria-hidden="true">
          <span className="sign">·</span>
        </span>
        nothing known
      </li>
      <li>
        <span className="cell mark-slips turn-suspect" aria-hidden="true">
          <span className="sign">1</span>
        </span>
        became suspect or contaminated here
      </li>
      <li>
        <span className="cell mark-nothing turn-cleared" aria-hidden="true">
          <span className="sign">·</span>
        </span>
        cleaned, replaced or gone here
      </li>
    </ul>
  );
}
