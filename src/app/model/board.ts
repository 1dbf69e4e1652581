// The board: everything the screens show of one procedure against one agent, as plain data that can cross from the
// worker. For every surface and moment it holds the least number of slips and circumstances that contaminate it.
import { LeastTable } from '../../check/leastTable.ts';
import type { Compiled } from '../../contacts/interpret.ts';
import type { BasicEvent, Operation, Surface } from '../../contacts/plan.ts';
import type { Problem } from '../../contacts/problem.ts';
import type { Scene } from '../../contacts/scene.ts';
import type { Agent } from '../../domain/products.ts';
import { ledgerOf, type LedgerTurn } from '../../engine/ledger.ts';
import type { Conditions } from '../../engine/propagate.ts';

/** Nothing is known to contaminate it. */
export const NOTHING = -1;

/** Two surfaces touch; `events` are the slips it takes, none when the step always does it. */
export interface BoardContact {
  readonly a: string;
  readonly b: string;
  readonly events: readonly number[];
}

export interface BoardStep {
  readonly technique: string;
  readonly before: Scene;
  readonly after: Scene;
  readonly contacts: readonly BoardContact[];
  /** Surfaces wiped or rubbed in this step, and whether that is credited at all. */
  readonly cleaned: readonly { readonly surface: string; readonly credited: boolean }[];
  readonly problems: readonly Problem[];
}

export interface BoardTurn {
  readonly step: number;
  readonly surface: string;
  readonly turn: LedgerTurn;
}

export interface Board {
  readonly agents: readonly Agent[];
  readonly surfaces: readonly Surface[];
  readonly events: readonly BasicEvent[];
  /** Per surface id: entry k+1 is the end of step k, entry 0 the start. -1 nothing known, 0 contaminated, n slips. */
  readonly least: Readonly<Record<string, Int32Array>>;
  readonly steps: readonly BoardStep[];
  readonly turns: readonly BoardTurn[];
}

/** Most cells hold the same few conditions: each is worked out once, and a cell only looked up. */
function leastOf({ plan, diagram, rows }: Conditions): Board['least'] {
  const width = plan.surfaces.length;
  const moments = plan.steps.length + 1;
  const table = new LeastTable(diagram);
  return Object.fromEntries(
    plan.surfaces.map(({ id }, surface) => {
      const least = new Int32Array(moments);
      for (let row = 0; row < moments; row += 1) {
        const events = table.of(rows[row * width + surface]!);
        least[row] = events === Infinity ? NOTHING : events;
      }
      return [id, least];
    }),
  );
}

const contactsIn = (operations: readonly Operation[], name: (at: number) => string): BoardContact[] =>
  operations.flatMap((one) =>
    one.op === 'contact' ? [{ a: name(one.a), b: name(one.b), events: [...one.when] }] : [],
  );

function cleanedIn(operations: readonly Operation[], name: (at: number) => string): BoardStep['cleaned'] {
  return operations.flatMap((one) =>
    one.op === 'sanitise'
      ? [{ surface: name(one.a), credited: !one.failure.some((guard) => guard.length === 0) }]
      : [],
  );
}

/** The board of one analysis. */
export function boardOf({ agent, plan, performed }: Compiled, conditions: Conditions): Board {
  const name = (at: number): string => plan.surfaces[at]?.id ?? '';
  return {
    agents: [agent],
    surfaces: [...plan.surfaces],
    events: [...plan.events],
    least: leastOf(conditions),
    steps: performed.map(({ operations, problems, technique, before, after }) => ({
      technique: technique.id,
      before,
      after,
      contacts: contactsIn(operations, name),
      cleaned: cleanedIn(operations, name),
      problems: [...problems],
    })),
    turns: ledgerOf(conditions).map(({ step, surface, turn }) => ({ step, surface: name(surface), turn })),
  };
}

/** The more contaminated of two entries: 0 before 1 before 2 ... before nothing known. */
export function worse(one: number, other: number): number {
  if (one === NOTHING) return other;
  return other === NOTHING ? one : Math.min(one, other);
}

/** What a row of moments turns into, step by step; as the ledger of the engine says it. */
function turnsOf(surface: string, row: Int32Array): BoardTurn[] {
  return [...row].flatMap((now, at) => {
    const before = at === 0 ? NOTHING : (row[at - 1] ?? NOTHING);
    const turn = turnOf(before, now);
    return turn === undefined ? [] : [{ step: at - 1, surface, turn }];
  });
}

function turnOf(before: number, now: number): LedgerTurn | undefined {
  if (before === now) return undefined;
  if (now === NOTHING) return 'cleared';
  if (now === 0) return 'certain';
  if (before === 0) return 'lessened';
  return before === NOTHING ? 'suspect' : undefined;
}

/** Several agents at once: each surface as the worst of them leaves it. Scenes and contacts are the same for all. */
export function worstOf(boards: readonly Board[]): Board | undefined {
  const [first, ...others] = boards;
  if (!first || others.length === 0) return first;
  const surfaces = [
    ...new Map(boards.flatMap((board) => board.surfaces).map((one) => [one.id, one])).values(),
  ];
  const least = Object.fromEntries(
    surfaces.map(({ id }) => {
      const rows = boards.map((board) => board.least[id]).filter((row) => row !== undefined);
      const length = rows[0]?.length ?? 0;
      const worst = (at: number) => rows.reduce((sum, row) => worse(sum, row[at] ?? NOTHING), NOTHING);
      return [id, Int32Array.from({ length }, (_, at) => worst(at))] as const;
    }),
  );
  return {
    ...first,
    agents: boards.flatMap((board) => board.agents),
    surfaces,
    least,
    steps: first.steps.map((step, at) => worstStep(step, others, at)),
    turns: Object.entries(least)
      .flatMap(([surface, row]) => turnsOf(surface, row))
      .sort((a, b) => a.step - b.step),
  };
}

/** Cleaning counts only where it counts against every agent. */
function worstStep(step: BoardStep, others: readonly Board[], at: number): BoardStep {
  const cleaned = step.cleaned.map(({ surface, credited }, index) => ({
    surface,
    credited: credited && others.every((board) => board.steps[at]?.cleaned[index]?.credited ?? true),
  }));
  return { ...step, cleaned };
}
