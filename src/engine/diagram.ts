// A shared reduced ordered binary decision diagram for monotone functions of basic events. Equal functions
// are the same number, so comparing two conditions costs nothing (Bryant 1986, IEEE Trans Comput C-35:677).
// The variable is the event's index; of two, the one with the higher rank stands on top. Ranks follow the
// procedure (order.ts), the LATEST on top: a step then mostly adds nodes above the conditions it finds
// (`when and b` is one node), and seldom rebuilds them.

import { NodeTable, PairCache } from './nodeTable.ts';

/** A node of the diagram: an index into its arrays. 0 is false, 1 is true. */
export type Node = number;

export const FALSE: Node = 0;
export const TRUE: Node = 1;

export class Diagram extends NodeTable {
  /** Number of events known. */
  variables: number;
  #and = new PairCache(this);
  #or = new PairCache(this);

  constructor(variables: number) {
    super();
    this.variables = variables;
  }

  /** Sets the order of the events; only before any node is made. */
  order(ranks: Int32Array): void {
    if (this.count > 2) throw new Error('the diagram has its order already');
    this.ranks = ranks;
  }

  /** Makes room for more events; they stand above all earlier ones. */
  extend(variables: number): void {
    this.variables = Math.max(this.variables, variables);
  }

  /** The event alone. */
  event(index: number): Node {
    if (index < 0 || index >= this.variables) throw new RangeError(`no event ${index}`);
    return this.node(index, FALSE, TRUE);
  }

  /** All of these events together; true for none of them. */
  conjunction(events: readonly number[]): Node {
    if (events.length === 0) return TRUE;
    if (events.length === 1) return this.event(events[0]!);
    return events.reduce<Node>((all, one) => this.and(all, this.event(one)), TRUE);
  }

  /** The node `if variable then high else low`; both children must lie below the variable. */
  choice(variable: number, low: Node, high: Node): Node {
    return low === high ? low : this.node(variable, low, high);
  }

  and(a: Node, b: Node): Node {
    if (a === b || b === TRUE) return a;
    if (a === FALSE || b === FALSE) return FALSE;
    if (a === TRUE) return b;
    if (a > b) return this.and(b, a);
    const kept = this.#and.get(a, b);
    if (kept >= 0) return kept;
    this.spend(1);
    const top = this.level[a]!;
    const other = this.level[b]!;
    const variable = top >= other ? this.variable[a]! : this.variable[b]!;
    const low = this.and(top >= other ? this.low[a]! : a, other >= top ? this.low[b]! : b);
    const high = this.and(top >= other ? this.high[a]! : a, other >= top ? this.high[b]! : b);
    const result = this.choice(variable, low, high);
    this.#and.set(a, b, result);
    return result;
  }

  or(a: Node, b: Node): Node {
    if (a === b || b === FALSE) return a;
    if (a === TRUE || b === TRUE) return TRUE;
    if (a === FALSE) return b;
    if (a > b) return this.or(b, a);
    const kept = this.#or.get(a, b);
    if (kept >= 0) return kept;
    this.spend(1);
    const top = this.level[a]!;
    const other = this.level[b]!;
    const variable = top >= other ? this.variable[a]! : this.variable[b]!;
    const low = this.or(top >= other ? this.low[a]! : a, other >= top ? this.low[b]! : b);
    const high = this.or(top >= other ? this.high[a]! : a, other >= top ? this.high[b]! : b);
    const result = this.choice(variable, low, high);
    this.#or.set(a, b, result);
    return result;
  }

  /**
   * Forgets every node from `mark` (an earlier `count`) on. For trying variants: what they built goes, what
   * stood before keeps its number.
   */
  rollback(mark: number): void {
    if (mark === this.count) return;
    this.forgetFrom(mark);
    this.#and.clear();
    this.#or.clear();
  }
}
