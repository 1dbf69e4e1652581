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
  /** Of each contact its two surfaces, how many events it takes, and those: one array, for it crosses at every edit. */
  readonly contacts: Int32Array;
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

/** A condition stays until its surface changes: each change is filled in from there to the end. */
function leastOf({ plan, diagram, rows, changed }: Conditions): Board['least'] {
  const width = plan.surfaces.length;
  const table = new LeastTable(diagram);
  const least = plan.surfaces.map(() => new Int32Array(changed.length).fill(NOTHING));
  changed.forEach((surfaces, row) => {
    for (const surface of surfaces) {
      const events = table.of(rows[row * width + surface]!);
      least[surface]!.fill(events === Infinity ? NOTHING : events, row);
    }
  });
  return Object.fromEntries(plan.surfaces.map(({ id }, surface) => [id, least[surface]!]));
}

function contactsIn(operations: readonly Operation[]): Int32Array {
  const flat: number[] = [];
  for (const one of operations)
    if (one.op === 'contact') flat.push(one.a, one.b, one.when.length, ...one.when);
  return Int32Array.from(flat);
}

/** The contacts of a step of the board. */
export function contactsOf({ surfaces, steps }: Board, step: number): readonly BoardContact[] {
  const flat = steps[step]?.contacts ?? new Int32Array();
  const name = (at: number): string => surfaces[flat[at]!]?.id ?? '';
  const contacts: BoardContact[] = [];
  for (let at = 0; at < flat.length; at += 3 + flat[at + 2]!) {
    const events = [...flat.subarray(at + 3, at + 3 + flat[at + 2]!)];
    contacts.push({ a: name(at), b: name(at + 1), events });
  }
  return contacts;
}

function cleanedIn(operations: readonly Operation[], name: (at: number) => string): BoardStep['cleaned'] {
  const cleaned: BoardStep['cleaned'][number][] = [];
  for (const one of operations) {
    if (one.op !== 'sanitise') continue;
    cleaned.push({ surface: name(one.a), credited: !one.failure.some((guard) => guard.length === 0) });
  }
  return cleaned;
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
      contacts: contactsIn(operations),
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
  // The first one's surfaces come first: its contacts go by their numbers.
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
