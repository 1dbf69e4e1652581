// The ledger: when each surface became suspect and when it was cleaned. One grid, walked with the arrow keys; a cell
// leads to the picture of that step with that surface ringed.
import { type KeyboardEvent, memo, type MouseEvent, useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { Procedure } from '../../domain/procedure.ts';
import { type Cell, type Grid, gridOf, type Row } from '../model/ledger.ts';
import { namesBeside } from '../model/names.ts';
import { Tick } from '../parts/Choices.tsx';
import type { ViewProps } from '../view.ts';
import { words } from '../words.ts';
import { cellAt, moveIn } from './keys.ts';
import { LedgerLegend, saidOf, signOf } from './signs.tsx';

interface CellViewProps {
  readonly cell: Cell;
  readonly name: string;
  readonly row: number;
  readonly column: number;
}

function CellView({ cell, name, row, column }: CellViewProps) {
  return (
    <td
      tabIndex={row === 0 && column === 0 ? 0 : -1}
      data-row={row}
      data-column={column}
      aria-label={saidOf(cell, name)}
      className={`cell mark-${cell.mark}${cell.turn ? ` turn-${cell.turn}` : ''}`}
    >
      <span className="sign" aria-hidden="true">
        {signOf(cell)}
      </span>
    </td>
  );
}

const RowView = memo(function RowView({ row, name }: { readonly row: Row; readonly name: string }) {
  return (
    <tr>
      <th scope="row" className={row.protected ? 'protected' : ''}>
        {name}
        {row.protected && <span className="quiet"> {words.surfaceClass(row.class)}</span>}
      </th>
      {row.cells.map((cell, column) => (
        <CellView key={cell.step} cell={cell} name={name} row={row.index} column={column} />
      ))}
    </tr>
  );
});

function Head({ procedure }: { readonly procedure: Procedure }) {
  return (
    <thead>
      <tr>
        <th scope="col" className="corner">
          Surface
        </th>
        <th scope="col" title="The start">
          <span aria-hidden="true">St</span>
          <span className="visually-hidden">Start</span>
        </th>
        {procedure.steps.map((step, index) => (
          <th key={step.id} scope="col" title={words.stepLabel(procedure, step)}>
            {index + 1}
          </th>
        ))}
      </tr>
    </thead>
  );
}

function Groups({ grid, procedure }: { readonly grid: Grid; readonly procedure: Procedure }) {
  return grid.groups.map((group) => (
    <tbody key={group.person ?? 'room'}>
      <tr className="group">
        <th colSpan={procedure.steps.length + 2} scope="rowgroup">
          <span className="group-name">
            {group.person === undefined ? 'The room' : words.person(procedure, group.person)}
          </span>
        </th>
      </tr>
      {group.rows.map((row) => (
        <RowView
          key={row.surface}
          row={row}
          name={namesBeside(procedure, group.person, words)(row.surface)}
        />
      ))}
    </tbody>
  ));
}

interface TableProps {
  readonly grid: Grid;
  readonly procedure: Procedure;
  /** `step` counts from 1; the start leads to the first. */
  readonly open: (surface: string, step: number) => void;
}

function Table({ grid, procedure, open }: TableProps) {
  const table = useRef<HTMLTableElement>(null);
  const rows = grid.groups.flatMap((group) => group.rows);
  const enter = (cell: HTMLElement): void => {
    const row = rows[Number(cell.dataset.row)];
    if (row) open(row.surface, Math.max(1, Number(cell.dataset.column)));
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const cell = cellAt(event.target);
    if (!cell || !table.current) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      enter(cell);
    } else if (moveIn(table.current, cell, event)) event.preventDefault();
  };
  const onClick = (event: MouseEvent): void => {
    const cell = cellAt(event.target);
    if (cell) enter(cell);
  };
  // A table that is walked by arrow keys is a grid, and the grid's cells share its handlers.
  const controls = { role: 'grid', onKeyDown, onClick } as const;
  return (
    <table ref={table} {...controls} aria-labelledby="ledger-title" className="ledger">
      <Head procedure={procedure} />
      <Groups grid={grid} procedure={procedure} />
    </table>
  );
}

interface LedgerProps extends ViewProps {
  /** Where a cell leads; to the steps of the procedure's own page unless told. */
  readonly lead?: (surface: string, step: number) => void;
}

export function Ledger({ id, judged, board, choice, lead }: LedgerProps) {
  const { procedure } = judged;
  const [all, setAll] = useState(false);
  const grid = useMemo(() => gridOf(procedure, board, all), [procedure, board, all]);
  const [, go] = useLocation();
  const open = (surface: string, step: number): void => {
    if (lead) lead(surface, step);
    else go(`/procedure/${id}/steps?agent=${choice}&step=${step}&surface=${surface}`);
  };
  return (
    <section aria-labelledby="ledger-title">
      <h2 id="ledger-title">Ledger</h2>
      <p>
        Each cell is a surface as a step ends. Arrow keys move; Enter, a click or a tap shows the step’s
        picture with the surface ringed.
      </p>
      <LedgerLegend />
      <Tick on={all} set={setAll}>
        Show surfaces of which nothing is ever known{all ? '' : ` (${grid.quiet})`}
      </Tick>
      <div className="ledger-scroll">
        <Table grid={grid} procedure={procedure} open={open} />
      </div>
    </section>
  );
}
