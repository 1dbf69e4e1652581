// Families of event sets as a zero-suppressed decision diagram (Minato 1993), and the minimal cut sets of
// a condition as one such family, exact to any order: MCS(x f1 + f0) = MCS(f0) and x with MCS(f1) less what
// f0 already opens (Rauzy 1993, Reliab Eng Syst Saf 40:203). For a monotone condition that subtraction is plain
// set difference: a minimal set of f1 that opens f0 is minimal for f0 too, since all that opens f0 opens f1.
// Families share their nodes, so 82,000,000,000 sets may be a few hundred nodes: never list to count.

import type { Diagram, Node } from './diagram.ts';
import { NodeTable, PairCache } from './nodeTable.ts';

/** A node of the families' diagram: 0 is no set at all, 1 is the empty set alone. */
export type Family = number;

export const NO_SET: Family = 0;
export const EMPTY_SET: Family = 1;

export class Families extends NodeTable {
  readonly diagram: Diagram;
  #minimal = new Int32Array(0);
  #seen = 0;
  #less = new PairCache(this);

  constructor(diagram: Diagram) {
    super();
    this.diagram = diagram;
    this.#seen = diagram.generation;
  }

  /** The minimal cut sets of a condition. `true` has one, the empty set; `false` has none. */
  minimal(root: Node): Family {
    this.#makeRoom();
    return this.#minimalOf(root);
  }

  #minimalOf(root: Node): Family {
    const found = this.#minimal[root]!;
    if (found !== -1) return found;
    const { diagram } = this;
    const without = this.#minimalOf(diagram.low[root]!);
    const given = this.#minimalOf(diagram.high[root]!);
    const family = this.#set(diagram.variable[root]!, without, this.less(given, without));
    this.#minimal[root] = family;
    return family;
  }

  /** The sets of `a` that are not in `b`. */
  less(a: Family, b: Family): Family {
    if (a === b || a === NO_SET) return NO_SET;
    if (b === NO_SET) return a;
    const kept = this.#less.get(a, b);
    if (kept >= 0) return kept;
    this.spend(1);
    const top = this.level[a]!;
    const other = this.level[b]!;
    let result: Family;
    if (top < other) result = this.less(a, this.low[b]!);
    else if (top > other) result = this.#set(this.variable[a]!, this.less(this.low[a]!, b), this.high[a]!);
    else {
      const low = this.less(this.low[a]!, this.low[b]!);
      result = this.#set(this.variable[a]!, low, this.less(this.high[a]!, this.high[b]!));
    }
    this.#less.set(a, b, result);
    return result;
  }

  #set(variable: number, low: Family, high: Family): Family {
    return high === NO_SET ? low : this.node(variable, low, high);
  }

  /** One place per condition; dropped when the conditions' diagram forgot nodes. */
  #makeRoom(): void {
    const { diagram } = this;
    this.ranks = diagram.ranks;
    const kept = this.#seen === diagram.generation ? this.#minimal : new Int32Array(0);
    this.#seen = diagram.generation;
    if (kept.length >= diagram.count) return;
    this.#minimal = new Int32Array(diagram.variable.length).fill(-1);
    this.#minimal.set([NO_SET, EMPTY_SET]);
    this.#minimal.set(kept);
  }
}
