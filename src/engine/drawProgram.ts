// What a block of draws works out, as a list of blends: each row of values from two others and a chance. A condition that says
// 'one of these slips, or else the rest' joins its slips first, in the order of their priors: whichever events they are, runs
// over the same priors have the same chance, draw by draw, and are worked out once. So is every other blend that comes twice.

import { type Diagram, FALSE, type Node, TRUE } from './diagram.ts';
import { reachable } from './walk.ts';

/** Rows are numbered: the constants, the inputs, then blends, whose rows serve anew once nothing waits for them. */
export interface DrawProgram {
  /** Four rows per blend: low, high, chance, and its own. */
  readonly code: Int32Array;
  readonly rows: number;
  /** The row of each root, which holds its values when the whole code has run. */
  readonly outputs: ReadonlyMap<Node, number>;
}

/** A value is a constant (0 and 1), an input (from 2 on) or a blend. */
class Blends {
  /** Three values per blend: low, high, chance. */
  readonly code: number[] = [];
  readonly #known = new Map<string, number>();
  readonly #first: number;

  constructor(inputs: number) {
    this.#first = 2 + inputs;
  }

  of(low: number, high: number, chance: number): number {
    if (low === FALSE && high === TRUE) return chance;
    const key = `${low} ${high} ${chance}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const made = this.#first + this.code.length / 3;
    this.code.push(low, high, chance);
    this.#known.set(key, made);
    return made;
  }
}

/** Past the run of slips that begins here, each of which is enough: the first node that is not of it. */
function pastRun({ low, high }: Diagram, from: Node): Node {
  let at = from;
  while (at > TRUE && high[at] === TRUE) at = low[at]!;
  return at;
}

/** Nodes whose values are asked for; those within a run are not. */
function asked(diagram: Diagram, roots: ArrayLike<Node>): Int32Array {
  const wanted = new Set<Node>(Array.from(roots));
  const nodes = reachable(diagram, roots).toReversed();
  for (const id of nodes) {
    if (!wanted.has(id)) continue;
    if (diagram.high[id] === TRUE) wanted.add(pastRun(diagram, id));
    else wanted.add(diagram.low[id]!).add(diagram.high[id]!);
  }
  return nodes.filter((id) => wanted.has(id)).reverse();
}

/** `inputOf` gives the number of a variable's column of chances, from 0. */
export function drawProgram(
  diagram: Diagram,
  roots: ArrayLike<Node>,
  inputs: number,
  inputOf: (variable: number) => number,
): DrawProgram {
  const { low, high, variable } = diagram;
  const blends = new Blends(inputs);
  const values = new Map<Node, number>([
    [FALSE, FALSE],
    [TRUE, TRUE],
  ]);
  const chanceAt = (id: Node): number => 2 + inputOf(variable[id]!);
  const joined = (from: Node, end: Node): number => {
    const chances: number[] = [];
    for (let at = from; at !== end; at = low[at]!) chances.push(chanceAt(at));
    return chances.sort((a, b) => a - b).reduce((any, chance) => blends.of(any, TRUE, chance), FALSE);
  };
  for (const id of asked(diagram, roots)) {
    const rest = high[id] === TRUE ? pastRun(diagram, id) : low[id]!;
    const chance = high[id] === TRUE ? joined(id, rest) : chanceAt(id);
    values.set(id, blends.of(values.get(rest)!, values.get(high[id]!)!, chance));
  }
  const outputs = new Map(Array.from(roots, (root) => [root, values.get(root)!]));
  return inRows(blends.code, 2 + inputs, outputs);
}

/** Gives every blend a row, and takes it back after the last blend that reads it; a root keeps its own to the end. */
function inRows(blends: readonly number[], first: number, outputs: ReadonlyMap<Node, number>): DrawProgram {
  const count = blends.length / 3;
  const lastUse = new Map<number, number>();
  blends.forEach((value, at) => lastUse.set(value, Math.floor(at / 3)));
  for (const value of outputs.values()) lastUse.set(value, count);
  const rowOf = (value: number): number => (value < first ? value : placed[value - first]!);
  const placed = new Int32Array(count);
  const code = new Int32Array(count * 4);
  const free: number[] = [];
  let rows = first;
  for (let at = 0; at < count; at++) {
    const read = blends.slice(at * 3, at * 3 + 3);
    const own = free.pop() ?? rows++;
    placed[at] = own;
    code.set([...read.map(rowOf), own], at * 4);
    for (const value of new Set(read))
      if (value >= first && lastUse.get(value) === at) free.push(rowOf(value));
  }
  return { code, rows, outputs: new Map([...outputs].map(([root, value]) => [root, rowOf(value)])) };
}
