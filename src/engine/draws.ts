// The interval of a chance from the uncertainty of the slips' chances: thousands of draws, each run through the same
// exact pass. Uncertainty belongs to the prior record, not to the event: all events that lean on one record share
// its draw, so what is not known is not averaged away (state-of-knowledge correlation; Apostolakis and
// Kaplan 1981, Reliab Eng 2:135). Draws go through the diagram in blocks, one row per node, to stay in the cache.

import type { BasicEvent } from '../contacts/plan.ts';
import { type CatchSetting, effectiveChance } from './dependence.ts';
import type { Diagram, Node } from './diagram.ts';
import type { Distribution } from './distributions.ts';
import { randomOf, sample } from './random.ts';
import { reachable } from './walk.ts';

export interface DrawQuestion {
  readonly diagram: Diagram;
  readonly roots: ArrayLike<Node>;
  /** The plan's events, by variable. */
  readonly events: readonly Pick<BasicEvent, 'prior' | 'visible'>[];
  readonly distributionOf: (prior: string) => Distribution;
  /** What the observer is credited with, or null. */
  readonly setting: CatchSetting | null;
  readonly draws: number;
  readonly seed: number;
}

/** Of one root's chance: mean, 5th percentile, median, 95th percentile of its draws. */
export interface Spread {
  readonly mean: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

export type Draws = readonly Spread[];

const BLOCK = 128;

/** Spread of each root's chance. */
export const drawChances = (question: DrawQuestion): Draws => drawColumns(question).map(spreadOf);

/** The draws themselves, one column per root; draw i is the same draw of every prior in all of them. */
export function drawColumns(question: DrawQuestion): Float64Array[] {
  const { diagram, roots, draws } = question;
  const nodes = reachable(diagram, roots);
  const columns = Array.from(roots, () => new Float64Array(draws));
  const inputs = inputColumns(question, nodes);
  const program = programOf(diagram, nodes, inputs.indexOf);
  const rows = new Float64Array((nodes.length + 2) * BLOCK);
  rows.fill(1, BLOCK, 2 * BLOCK);
  for (let from = 0; from < draws; from += BLOCK) {
    const width = Math.min(BLOCK, draws - from);
    passBlock(program, inputs.columns, rows, from, width);
    columns.forEach((column, at) => {
      const row = program.rowOf(roots[at]!) * BLOCK;
      column.set(rows.subarray(row, row + width), from);
    });
  }
  return columns;
}

/** Mean and percentiles of a column. */
export function spreadOf(column: Float64Array): Spread {
  const sorted = column.toSorted();
  const at = (p: number): number => sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!;
  const sum = column.reduce((all, next) => all + next, 0);
  return { mean: sum / column.length, low: at(0.05), median: at(0.5), high: at(0.95) };
}

/** Draw by draw, the second less the first: for two plans drawn with the same seed. */
export const differencesOf = (first: Float64Array, second: Float64Array): Float64Array =>
  first.map((value, at) => second[at]! - value);

interface Inputs {
  readonly columns: readonly Float64Array[];
  readonly indexOf: (event: number) => number;
}

/** One column per prior and visibility, however many events share it. */
function inputColumns(question: DrawQuestion, nodes: Int32Array): Inputs {
  const { diagram, events, setting, distributionOf, draws, seed } = question;
  const columns: Float64Array[] = [];
  const known = new Map<string, number>();
  const indices = new Map<number, number>();
  for (const event of new Set(Array.from(nodes, (id) => diagram.variable[id]!))) {
    const { prior, visible } = events[event]!;
    const key = `${visible && setting !== null ? 'seen' : 'own'} ${prior}`;
    if (!known.has(key)) {
      const own = sample(distributionOf(prior), randomOf(seed, prior), draws);
      known.set(key, columns.length);
      columns.push(own.map((chance) => effectiveChance({ visible }, chance, setting)));
    }
    indices.set(event, known.get(key)!);
  }
  return { columns, indexOf: (event) => indices.get(event)! };
}

interface Program {
  /** Four numbers per node: rows of its two children, its input column, its own row. */
  readonly code: Int32Array;
  readonly rowOf: (node: Node) => number;
}

function programOf(diagram: Diagram, nodes: Int32Array, columnOf: (event: number) => number): Program {
  const rows = new Int32Array(Math.max(2, (nodes.at(-1) ?? 0) + 1));
  rows[1] = 1;
  const code = new Int32Array(nodes.length * 4);
  nodes.forEach((id, at) => {
    rows[id] = at + 2;
    code.set(
      [rows[diagram.low[id]!]!, rows[diagram.high[id]!]!, columnOf(diagram.variable[id]!), at + 2],
      at * 4,
    );
  });
  return { code, rowOf: (node) => rows[node]! };
}

function passBlock(
  { code }: Program,
  columns: readonly Float64Array[],
  rows: Float64Array,
  from: number,
  width: number,
): void {
  for (let at = 0; at < code.length; at += 4) {
    const low = code[at]! * BLOCK;
    const high = code[at + 1]! * BLOCK;
    const own = code[at + 3]! * BLOCK;
    const chance = columns[code[at + 2]!]!;
    for (let i = 0; i < width; i++) {
      const without = rows[low + i]!;
      rows[own + i] = without + chance[from + i]! * (rows[high + i]! - without);
    }
  }
}
