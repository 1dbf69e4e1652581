// The least number of events of every node of a growing diagram, worked out once per node: children are made before
// their parents, so each new node is one step.
import { type Diagram, FALSE, TRUE } from '../engine/diagram.ts';

/** More than any combination. */
const NEVER = 1 << 30;

export class LeastTable {
  readonly #diagram: Diagram;
  #least = new Int32Array(1 << 12);
  #known = 2;

  constructor(diagram: Diagram) {
    this.#diagram = diagram;
    this.#least[FALSE] = NEVER;
    this.#least[TRUE] = 0;
  }

  /** The least number of events that makes the condition true; Infinity where nothing does. */
  of(root: number): number {
    if (root >= this.#known) this.#learn();
    const least = this.#least[root]!;
    return least >= NEVER ? Infinity : least;
  }

  /** Drops what is known of nodes from `mark` on: the diagram has forgotten them. */
  forget(mark: number): void {
    this.#known = Math.min(this.#known, mark);
  }

  #learn(): void {
    const { low, high, count } = this.#diagram;
    if (this.#least.length < count) {
      const more = new Int32Array(count * 2);
      more.set(this.#least);
      this.#least = more;
    }
    const least = this.#least;
    for (let id = this.#known; id < count; id += 1) {
      least[id] = Math.min(least[low[id]!]!, least[high[id]!]! + 1, NEVER);
    }
    this.#known = count;
  }
}
