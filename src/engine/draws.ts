// The interval of a chance from the uncertainty of the slips' chances: thousands of draws, each run through the same
// exact pass. Uncertainty belongs to the prior record, not to the event: all events that lean on one record share
// its draw, so what is not known is not averaged away (state-of-knowledge correlation; Apostolakis and
// Kaplan 1981, Reliab Eng 2:135). Draws go through the diagram in blocks, one row per node at work, to stay in the cache.

import type { BasicEvent } from '../contacts/plan.ts';
import { type CatchSetting, effectiveChance } from './dependence.ts';
import type { Diagram, Node } from './diagram.ts';
import type { Distribution } from './distributions.ts';
import { drawProgram } from './drawProgram.ts';
import { randomOf, sample } from './random.ts';
import { support } from './walk.ts';

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

/** Draws per block; a multiple of four. */
const BLOCK = 128;

/** Spread of each root's chance. */
export function drawChances(question: DrawQuestion): Draws {
  const spreads = new Map<Float64Array, Spread>();
  return drawColumns(question).map((column) => {
    const spread = spreads.get(column) ?? spreadOf(column);
    spreads.set(column, spread);
    return spread;
  });
}

/**
 * The draws themselves, one column per root (roots that always have the same chance share theirs); draw i is the same draw of every prior in all
 * of them.
 */
export function drawColumns(question: DrawQuestion): Float64Array[] {
  const { diagram, roots, draws } = question;
  const inputs = inputColumns(question);
  const { code, rows: count, outputs } = drawProgram(diagram, roots, inputs.columns.length, inputs.indexOf);
  const columns = new Map(Array.from(outputs.values(), (row) => [row, new Float64Array(draws)]));
  const rows = new Float64Array(count * BLOCK);
  rows.fill(1, BLOCK, 2 * BLOCK);
  for (let from = 0; from < draws; from += BLOCK) {
    const block = Math.min(BLOCK, draws - from);
    inputs.columns.forEach((column, at) => rows.set(column.subarray(from, from + block), (2 + at) * BLOCK));
    run(code, rows);
    for (const [row, column] of columns) column.set(rows.subarray(row * BLOCK, row * BLOCK + block), from);
  }
  return Array.from(roots, (root) => columns.get(outputs.get(root)!)!);
}

/** Mean and percentiles of a column. */
export function spreadOf(column: Float64Array): Spread {
  const work = column.slice();
  const at = (p: number): number => Math.min(work.length - 1, Math.floor(p * work.length));
  const low = select(work, 0, at(0.05));
  const median = select(work, at(0.05), at(0.5));
  const high = select(work, at(0.5), at(0.95));
  let sum = 0;
  for (let i = 0; i < column.length; i++) sum += column[i]!;
  return { mean: sum / column.length, low, median, high };
}

/** The value that sorting from `from` on would put at `rank`; smaller ones end before it, larger ones after. */
function select(values: Float64Array, from: number, rank: number): number {
  let left = from;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1]!;
    let [i, j] = [left, right];
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const value = values[i]!;
      values[i++] = values[j]!;
      values[j--] = value;
    }
    if (rank <= j) right = j;
    else if (rank >= i) left = i;
    else break;
  }
  return values[rank]!;
}

/** Draw by draw, the second less the first: for two plans drawn with the same seed. */
export const differencesOf = (first: Float64Array, second: Float64Array): Float64Array =>
  first.map((value, at) => second[at]! - value);

const SAMPLES = new WeakMap<Distribution, Map<string, Float64Array>>();

/** A prior's draws are the same in every question with this seed, fewer being the first of more: drawn once. */
function sampleOf(prior: string, distribution: Distribution, seed: number, draws: number): Float64Array {
  const samples = SAMPLES.get(distribution) ?? new Map<string, Float64Array>();
  SAMPLES.set(distribution, samples);
  const key = `${seed} ${prior}`;
  const known = samples.get(key);
  if (known && known.length >= draws) return known.subarray(0, draws);
  const drawn = sample(distribution, randomOf(seed, prior), draws);
  samples.set(key, drawn);
  return drawn;
}

interface Inputs {
  readonly columns: readonly Float64Array[];
  readonly indexOf: (event: number) => number;
}

/** One column per prior and visibility, however many events share it. */
function inputColumns(question: DrawQuestion): Inputs {
  const { diagram, roots, events, setting, distributionOf, draws, seed } = question;
  const columns: Float64Array[] = [];
  const known = new Map<string, number>();
  const indices = new Map<number, number>();
  for (const event of support(diagram, ...Array.from(roots))) {
    const { prior, visible } = events[event]!;
    const key = `${visible && setting !== null ? 'seen' : 'own'} ${prior}`;
    if (!known.has(key)) {
      const own = sampleOf(prior, distributionOf(prior), seed, draws);
      known.set(key, columns.length);
      columns.push(own.map((chance) => effectiveChance({ visible }, chance, setting)));
    }
    indices.set(event, known.get(key)!);
  }
  return { columns, indexOf: (event) => indices.get(event)! };
}

function run(code: Int32Array, rows: Float64Array): void {
  for (let at = 0; at < code.length; at += 4) {
    const [low, high, chance, own] = [code[at]!, code[at + 1]!, code[at + 2]!, code[at + 3]!];
    blend(rows, low * BLOCK, high * BLOCK, chance * BLOCK, own * BLOCK);
  }
}

/** own = low + chance * (high - low), four draws at a time: that is nearly twice as fast as one. */
function blend(rows: Float64Array, low: number, high: number, chance: number, own: number): void {
  for (let i = 0; i < BLOCK; i += 4) {
    const a = rows[low + i]!;
    const b = rows[low + i + 1]!;
    const c = rows[low + i + 2]!;
    const d = rows[low + i + 3]!;
    rows[own + i] = a + rows[chance + i]! * (rows[high + i]! - a);
    rows[own + i + 1] = b + rows[chance + i + 1]! * (rows[high + i + 1]! - b);
    rows[own + i + 2] = c + rows[chance + i + 2]! * (rows[high + i + 2]! - c);
    rows[own + i + 3] = d + rows[chance + i + 3]! * (rows[high + i + 3]! - d);
  }
}
