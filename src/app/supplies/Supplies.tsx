// What a run takes: time and people, equipment, wipes, products, mats, waste; for as many runs a day as asked, and at the
// user's own prices. Every number says what it rests on.
import { Input, Label, NumberField } from 'react-aria-components';
import { useSearchParams } from 'wouter';
import type { Cost } from '../../costing/cost.ts';
import { groundsOf, weakestOf } from '../../costing/grounds.ts';
import type { ItemFlow } from '../../costing/items.ts';
import { type Quantity, supplyKey, times } from '../../costing/supply.ts';
import type { Spell } from '../../costing/time.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { duration } from '../../words/index.ts';
import { StatusBadge } from '../parts/Badge.tsx';
import { EvidenceLine } from '../parts/EvidenceLine.tsx';
import { Scroll } from '../parts/Scroll.tsx';
import type { ViewProps } from '../view.ts';
import { words } from '../words.ts';
import { Prices } from './Prices.tsx';

interface PartProps {
  readonly cost: Cost;
  readonly runs: number;
}

const range = ({ interval }: Spell, runs: number): string =>
  `${duration(interval.low * runs)} to ${duration(interval.high * runs)}`;

function People({ cost, runs, procedure }: PartProps & { readonly procedure: Procedure }) {
  return (
    <section aria-labelledby="people-title">
      <h3 id="people-title">
        Time of people <StatusBadge status={weakestOf(cost.evidence.times)} />
      </h3>
      <p>
        {runs === 1 ? 'The run' : `${runs} runs`}: <b>{duration(cost.run.seconds * runs)}</b>{' '}
        <span className="quiet">(90 % interval {range(cost.run, runs)})</span>
      </p>
      <Scroll label="Time of people" className="table-scroll">
        <table className="compare-table">
          <thead>
            <tr>
              <th scope="col">Who</th>
              <th scope="col">Tied up</th>
              <th scope="col">Hands on</th>
              <th scope="col">Needed in</th>
            </tr>
          </thead>
          <tbody>
            {cost.people.map(({ person, tiedUp, handsOn, steps }) => (
              <tr key={person}>
                <th scope="row">{words.person(procedure, person)}</th>
                <td>
                  {duration(tiedUp.seconds * runs)} <span className="quiet">({range(tiedUp, runs)})</span>
                </td>
                <td>{duration(handsOn.seconds * runs)}</td>
                <td>{steps ? `steps ${steps[0] + 1} to ${steps[1] + 1}` : 'no step'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

const FLOWS = [
  ['needed', 'Needed'],
  ['opened', 'Put on fresh'],
  ['discarded', 'Into waste'],
  ['reprocessed', 'To reprocess'],
  ['leftOn', 'Left on'],
] as const satisfies readonly (readonly [keyof ItemFlow, string])[];

function Equipment({ cost, runs }: PartProps) {
  const cell = (quantity: Quantity): string =>
    quantity.count === 0 ? '–' : words.compare.quantity(times(quantity, runs));
  return (
    <section aria-labelledby="equipment-title">
      <h3 id="equipment-title">Equipment, of everybody together</h3>
      <p className="quiet">
        Needed: worn at the start or put on. What helpers keep on is taken off elsewhere. Which items are used
        again is <StatusBadge status={weakestOf([cost.evidence.items])} />.
      </p>
      <Scroll label="Equipment" className="table-scroll">
        <table className="compare-table">
          <thead>
            <tr>
              <th scope="col">Item</th>
              {FLOWS.map(([key, name]) => (
                <th key={key} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {cost.items.map((flow) => (
              <tr key={flow.item}>
                <th scope="row">{words.item(flow.item)}</th>
                {FLOWS.map(([key]) => (
                  <td key={key}>{cell(flow[key])}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

function volumeText(millilitres: number | null | undefined, runs: number): string {
  if (millilitres === undefined) return '';
  return millilitres === null ? 'no figure for the volume' : `${millilitres * runs} mL`;
}

function Uses({ cost, runs }: PartProps) {
  return (
    <section aria-labelledby="uses-title">
      <h3 id="uses-title">Wipes, products and mats</h3>
      {cost.uses.length === 0 && <p>None.</p>}
      <ul className="plain">
        {cost.uses.map(({ supply, quantity, millilitres, evidence }) => (
          <li key={supplyKey(supply)}>
            {words.compare.supply(supply)}: <b>{words.compare.quantity(times(quantity, runs))}</b>
            {millilitres !== undefined && `, ${volumeText(millilitres, runs)}`}{' '}
            <StatusBadge status={weakestOf(evidence)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Waste({ cost, runs }: PartProps) {
  const pieces = cost.waste.pieces * runs;
  return (
    <section aria-labelledby="waste-title">
      <h3 id="waste-title">Waste</h3>
      <p>
        <b>
          {pieces} {pieces === 1 ? 'piece' : 'pieces'}
        </b>
        . There is no figure for its volume and mass: none is published per item or run.
      </p>
    </section>
  );
}

const MOST_RUNS = 1000;

/** Runs a day stand in the address. */
function useRuns(): readonly [number, (runs: number) => void] {
  const [params, setParams] = useSearchParams();
  const wanted = Number(params.get('runs') ?? 1);
  const runs = Number.isInteger(wanted) && wanted >= 1 && wanted <= MOST_RUNS ? wanted : 1;
  const set = (next: number) =>
    setParams(
      (before) => {
        before.set('runs', String(next));
        return before;
      },
      { replace: true },
    );
  return [runs, set];
}

export function Supplies({ judged }: ViewProps) {
  const { cost, procedure } = judged;
  const [runs, setRuns] = useRuns();
  if (!cost) return <p>Not counted yet.</p>;
  return (
    <div className="supplies">
      <h2>Supplies, minutes and waste</h2>
      <NumberField
        className="search runs"
        value={runs}
        minValue={1}
        maxValue={MOST_RUNS}
        onChange={(next) => setRuns(Number.isFinite(next) ? next : 1)}
      >
        <Label>Runs a day</Label>
        <Input />
      </NumberField>
      <Equipment cost={cost} runs={runs} />
      <Uses cost={cost} runs={runs} />
      <People cost={cost} runs={runs} procedure={procedure} />
      <Waste cost={cost} runs={runs} />
      <Prices cost={cost} runs={runs} />
      <details>
        <summary>What these numbers rest on</summary>
        {groundsOf(cost).map((id) => (
          <EvidenceLine key={id} id={id} />
        ))}
      </details>
    </div>
  );
}
