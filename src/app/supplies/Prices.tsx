// What a run costs at the user's own prices: a price for each line, and the sum of what has one.
import type { Cost } from '../../costing/cost.ts';
import { type PricedBy, type PricedLine, priced } from '../../costing/prices.ts';
import { supplyKey } from '../../costing/supply.ts';
import { words } from '../words.ts';
import { priceIn, useOwnPrices } from './prices.ts';

const BY: Readonly<Record<PricedBy, string>> = {
  piece: 'a piece',
  reprocessing: 'a reprocessing',
  litre: 'a litre',
  use: 'a use',
};

interface LineProps {
  readonly line: PricedLine;
  readonly runs: number;
  readonly typed: string;
  readonly type: (text: string) => void;
  readonly money: (value: number) => string;
}

function Line({ line, runs, typed, type, money }: LineProps) {
  const wrong = typed.trim() !== '' && priceIn(typed) === undefined;
  const name = words.compare.supply(line.supply);
  return (
    <li className="price">
      <label>
        <span>
          {name}, {BY[line.by]}
        </span>
        <input
          inputMode="decimal"
          value={typed}
          aria-invalid={wrong}
          onChange={(event) => type(event.target.value)}
        />
      </label>
      <span className={wrong ? 'wrong' : 'quiet'}>
        {wrong
          ? 'This is no price: write a number from 0.'
          : line.sum === null
            ? 'no price'
            : `× ${Number((line.amount * runs).toFixed(3))} = ${money(line.sum * runs)}`}
      </span>
    </li>
  );
}

export function Prices({ cost, runs }: { readonly cost: Cost; readonly runs: number }) {
  const [{ currency, typed }, keep] = useOwnPrices();
  const known = Object.entries(typed).flatMap(([key, text]) => {
    const price = priceIn(text);
    return price === undefined ? [] : [[key, price] as const];
  });
  const { lines, total, unpriced } = priced(cost, { currency, prices: new Map(known) });
  const money = (value: number): string => `${value.toFixed(2)}${currency && ` ${currency}`}`;
  return (
    <details className="prices">
      <summary>Your own prices{known.length > 0 && ` (sum ${money(total * runs)})`}</summary>
      <p className="quiet">
        There is no default price. What you write stays in this browser and is used for every procedure.
      </p>
      <div className="price">
        <label>
          <span>Currency</span>
          <input
            value={currency}
            maxLength={8}
            onChange={(event) => keep({ currency: event.target.value, typed })}
          />
        </label>
      </div>
      <ul className="plain">
        {lines.map((line) => {
          const key = supplyKey(line.supply);
          return (
            <Line
              key={key}
              line={line}
              runs={runs}
              typed={typed[key] ?? ''}
              type={(text) => keep({ currency, typed: { ...typed, [key]: text } })}
              money={money}
            />
          );
        })}
      </ul>
      <p>
        <b>Sum: {money(total * runs)}</b>
        {unpriced.length > 0 && `; ${unpriced.length} of ${lines.length} have no price and are not in it.`}
      </p>
    </details>
  );
}
