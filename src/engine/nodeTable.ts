// The two tables every decision diagram stands on: nodes (variable, low, high) kept once each, on typed
// arrays that double, and a lossy cache of results by pair. Terminals 0 and 1 lie below every variable. Children
// are made before their parents, so going through the ids upwards is a bottom-up pass without recursion.

const FIRST_NODES = 1 << 13;
const FIRST_RESULTS = 1 << 14;
/** What fits the processor's own cache; more only for diagrams that need it. */
const USUAL_RESULTS = 1 << 16;
const MOST_RESULTS = 1 << 22;

const mix = (a: number, b: number, c: number): number => {
  let h = Math.imul(a, 0x9e3779b1) + Math.imul(b, 0x85ebca6b) + Math.imul(c, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  return (h ^ (h >>> 15)) >>> 0;
};

const grown = (from: Int32Array): Int32Array<ArrayBuffer> => {
  const to = new Int32Array(from.length * 2);
  to.set(from);
  return to;
};

/** More nodes than a check may take: about 150 MB. Published procedures stay near 3,000. */
const MOST_NODES = 1 << 22;

/** The conditions grew past what can be worked out exactly; nothing is known beyond this point. */
export class Tangled extends Error {
  constructor() {
    super('the conditions are too tangled to be worked out exactly');
    this.name = 'Tangled';
  }
}

export class NodeTable {
  /** Per node; the arrays are replaced when they grow, so take them anew after making nodes. */
  variable = new Int32Array(FIRST_NODES);
  low = new Int32Array(FIRST_NODES);
  high = new Int32Array(FIRST_NODES);
  /** Per node: the rank of its variable, -1 for terminals; children are always lower. */
  level = new Int32Array(FIRST_NODES);
  /** Per variable: its place in the order; a variable beyond the list stands where its number says. */
  ranks: Int32Array = new Int32Array(0);
  /** Nodes made so far, the two terminals included. */
  count = 2;
  /** Work done so far, one for every pair that had to be worked out: time follows it, the number of nodes does not. */
  work = 0;
  /** The work at which it gives up. */
  enough = Infinity;
  /** Grows by one whenever nodes are forgotten, so that what was remembered about them can be dropped. */
  generation = 0;
  #unique = new Int32Array(FIRST_NODES * 2);

  constructor() {
    this.variable.fill(-1, 0, 2);
    this.level.fill(-1, 0, 2);
    this.low[1] = 1;
    this.high[1] = 1;
  }

  /** The one node with these three; made when it is new. */
  node(variable: number, low: number, high: number): number {
    const mask = this.#unique.length - 1;
    let slot = mix(variable, low, high) & mask;
    for (let found = this.#unique[slot]!; found !== 0; found = this.#unique[slot]!) {
      if (this.variable[found] === variable && this.low[found] === low && this.high[found] === high) {
        return found;
      }
      slot = (slot + 1) & mask;
    }
    return this.#add(slot, variable, low, high);
  }

  /** Allows so much more work from here on, and no more. */
  allow(work: number): void {
    this.enough = this.work + work;
  }

  /** Counts work, also such as was done elsewhere for its sake; throws `Tangled` beyond what is allowed. */
  spend(work: number): void {
    this.work += work;
    if (this.work > this.enough) throw new Tangled();
  }

  rankOf(variable: number): number {
    return this.ranks[variable] ?? variable;
  }

  /** Forgets every node from `mark` (an earlier `count`) on; what stood before keeps its number. */
  forgetFrom(mark: number): void {
    this.count = Math.max(2, mark);
    this.generation++;
    this.#rehash();
  }

  #add(slot: number, variable: number, low: number, high: number): number {
    const id = this.count;
    if (id === this.variable.length) {
      this.#grow();
      return this.node(variable, low, high);
    }
    this.variable[id] = variable;
    this.low[id] = low;
    this.high[id] = high;
    this.level[id] = this.rankOf(variable);
    this.#unique[slot] = id;
    this.count = id + 1;
    return id;
  }

  #grow(): void {
    if (this.variable.length >= MOST_NODES) throw new Tangled();
    this.variable = grown(this.variable);
    this.low = grown(this.low);
    this.high = grown(this.high);
    this.level = grown(this.level);
    this.#unique = new Int32Array(this.variable.length * 2);
    this.#rehash();
  }

  #rehash(): void {
    const mask = this.#unique.length - 1;
    this.#unique.fill(0);
    for (let id = 2; id < this.count; id++) {
      let slot = mix(this.variable[id]!, this.low[id]!, this.high[id]!) & mask;
      while (this.#unique[slot] !== 0) slot = (slot + 1) & mask;
      this.#unique[slot] = id;
    }
  }
}

/** Results by pair of nodes, the first never 0; a later pair may push out an earlier one. */
export class PairCache {
  /** Four places for each result: the pair, the result, and one that keeps the four in one line of the processor's cache. */
  #kept = new Int32Array(FIRST_RESULTS * 4);
  #mask = FIRST_RESULTS - 1;
  #since = 0;
  readonly #nodes: { readonly count: number };

  /** `nodes`: whose nodes they are; a cache far larger than they need is slower than one that forgets. */
  constructor(nodes: { readonly count: number }) {
    this.#nodes = nodes;
  }

  /** The kept result, or -1. */
  get(a: number, b: number): number {
    const kept = this.#kept;
    const at = (mix(a, b, 7) & this.#mask) << 2;
    return kept[at] === a && kept[at + 1] === b ? kept[at + 2]! : -1;
  }

  /** Keeps a result; grows with the work, for the pairs asked about may far outnumber the nodes made. */
  set(a: number, b: number, result: number): void {
    if (++this.#since > this.#mask * 2) this.#grow();
    const kept = this.#kept;
    const at = (mix(a, b, 7) & this.#mask) << 2;
    kept[at] = a;
    kept[at + 1] = b;
    kept[at + 2] = result;
  }

  clear(): void {
    this.#kept.fill(0);
  }

  #grow(): void {
    this.#since = 0;
    const size = this.#mask + 1;
    if (size >= MOST_RESULTS || size >= Math.max(USUAL_RESULTS, this.#nodes.count / 4)) return;
    const before = this.#kept;
    this.#kept = new Int32Array(size * 8);
    this.#mask = size * 2 - 1;
    for (let at = 0; at < before.length; at += 4) {
      if (before[at] !== 0) this.set(before[at]!, before[at + 1]!, before[at + 2]!);
    }
    this.#since = 0;
  }
}
