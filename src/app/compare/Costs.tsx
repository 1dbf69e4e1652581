// What the second takes more or less of: time, people and supplies of one run.
import { weakestOf } from '../../costing/grounds.ts';
import { supplyKey } from '../../costing/supply.ts';
import { duration } from '../../words/index.ts';
import { StatusBadge } from '../parts/Badge.tsx';
import { Scroll } from '../parts/Scroll.tsx';
import { words } from '../words.ts';
import type { Compared } from './result.ts';

const millilitres = (value: number | null | undefined): string =>
  typeof value === 'number' && value > 0 ? `, ${value} mL` : '';

const signedCount = (difference: number): string =>
  difference === 0 ? 'same' : difference > 0 ? `+${difference}` : `−${-difference}`;

export function CostChanges({ compared }: { readonly compared: Compared }) {
  const { a, b, time, supplies } = compared.comparison.costs;
  const status = weakestOf([...a.evidence.times, ...b.evidence.times]);
  const changed = supplies.filter((one) => one.a.count !== one.b.count);
  return (
    <section aria-labelledby="costs-title">
      <h2 id="costs-title">Minutes and supplies of one run</h2>
      <p>
        <b>
          {duration(a.run.seconds)} → {duration(b.run.seconds)}
        </b>{' '}
        <StatusBadge status={status} /> {words.compare.time({ ...time, value: time.seconds, status })}
      </p>
      {changed.length > 0 && (
        <Scroll label="Supplies of both" className="table-scroll">
          <table className="compare-table">
            <thead>
              <tr>
                <th scope="col">Supply</th>
                <th scope="col">First</th>
                <th scope="col">Second</th>
                <th scope="col">Difference</th>
              </tr>
            </thead>
            <tbody>
              {changed.map((one) => (
                <tr key={supplyKey(one.supply)}>
                  <th scope="row">{words.compare.supply(one.supply)}</th>
                  <td>
                    {words.compare.quantity(one.a)}
                    {millilitres(one.millilitresA)}
                  </td>
                  <td>
                    {words.compare.quantity(one.b)}
                    {millilitres(one.millilitresB)}
                  </td>
                  <td>{signedCount(one.b.count - one.a.count)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      <p className="quiet">
        {supplies.length - changed.length} of {supplies.length} supplies do not differ. What each rests on
        stands under Supplies of the procedure.
      </p>
    </section>
  );
}
