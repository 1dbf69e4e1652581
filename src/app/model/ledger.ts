// The ledger as a grid: surfaces down, grouped by person with the protected ones first, moments across. Each cell says
// how contaminated the surface is as the step ends, and whether it became so or was cleaned there.
import type { SurfaceClass } from '../../contacts/plan.ts';
import type { Procedure } from '../../domain/procedure.ts';
import type { LedgerTurn } from '../../engine/ledger.ts';
import type { Board } from './board.ts';
import { leastAt, type Mark, markOf } from './marks.ts';

export interface Cell {
  readonly step: number;
  readonly least: number;
  readonly mark: Mark;
  readonly turn?: LedgerTurn;
}

export interface Row {
  /** Place among the rows shown, from 0. */
  readonly index: number;
  readonly surface: string;
  readonly class: SurfaceClass;
  readonly protected: boolean;
  readonly cells: readonly Cell[];
}

export interface Group {
  /** Person id, or undefined for the room. */
  readonly person?: string;
  readonly rows: readonly Row[];
}

const CLASS_ORDER: readonly SurfaceClass[] = [
  'mucosa',
  'skin',
  'clothes',
  'shoes',
  'clean-side',
  'equipment',
  'fixture',
];

type Loose = Omit<Row, 'index'>;

function rowsOf(board: Board): readonly Loose[] {
  const turns = new Map(board.turns.map(({ step, surface, turn }) => [`${surface} ${step}`, turn]));
  return board.surfaces.map((surface) => ({
    surface: surface.id,
    class: surface.class,
    protected: surface.protected,
    cells: Array.from({ length: board.steps.length + 1 }, (_, at): Cell => {
      const step = at - 1;
      const least = leastAt(board, surface.id, step);
      const turn = turns.get(`${surface.id} ${step}`);
      return { step, least, mark: markOf(least), ...(turn ? { turn } : {}) };
    }),
  }));
}

const isQuiet = (row: Loose): boolean => row.cells.every((cell) => cell.mark === 'nothing');

const byClass = (a: Loose, b: Loose): number =>
  Number(b.protected) - Number(a.protected) || CLASS_ORDER.indexOf(a.class) - CLASS_ORDER.indexOf(b.class);

export interface Grid {
  readonly groups: readonly Group[];
  /** Rows left out because nothing is ever known of them. */
  readonly quiet: number;
}

/** The grid; `all` keeps the surfaces of which nothing is ever known. */
export function gridOf(procedure: Procedure, board: Board, all: boolean): Grid {
  const every = rowsOf(board);
  const rows = all ? every : every.filter((row) => !isQuiet(row));
  const owners = new Map(board.surfaces.map((surface) => [surface.id, surface.person]));
  let index = 0;
  const group = (person: string | undefined): Group => ({
    ...(person === undefined ? {} : { person }),
    rows: rows
      .filter((row) => owners.get(row.surface) === person)
      .toSorted(byClass)
      .map((row) => ({ ...row, index: index++ })),
  });
  const groups = [...procedure.people.map(({ id }) => id), undefined].map(group);
  return { groups: groups.filter((one) => one.rows.length > 0), quiet: every.length - rows.length };
}
