// The chance of every node of a growing diagram, worked out once per node: children are made before their parents, so each
// new node is one step.
import { type Diagram, TRUE } from './diagram.ts';

export class ChanceTable {
  readonly #diagram: Diagram;
  #p: ArrayLike<number>;
  #chance = new Float64Array(1 << 12);
  #known = 2;

  constructor(diagram: Diagram, p: ArrayLike<number>) {
    this.#diagram = diagram;
    this.#p = p;
    this.#chance[TRUE] = 1;
  }

  /** Takes in events that came up since; the chances of those known before must be the same. */
  know(p: ArrayLike<number>): void {
    this.#p = p;
  }

  /** Chance of a condition all of whose events are known. */
  of(root: number): number {
    if (root >= this.#known) this.#learn();
    return this.#chance[root]!;
  }

  #learn(): void {
    const { low, high, variable, count } = this.#diagram;
    if (this.#chance.length < count) {
      const more = new Float64Array(count * 2);
      more.set(this.#chance);
      this.#chance = more;
    }
    const chance = this.#chance;
    for (let id = this.#known; id < count; id += 1) {
      const without = chance[low[id]!]!;
      chance[id] = without + this.#p[variable[id]!]! * (chance[high[id]!]! - without);
    }
    this.#known = count;
  }
}
