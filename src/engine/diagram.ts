// A shared reduced ordered binary decision diagram for monotone functions of basic events. Equal functions
// are the same number, so comparing two conditions costs nothing (Bryant 1986, IEEE Trans Comput C-35:677).
// The variable is the event's index, and the LATEST event stands on top: a step then only adds nodes above
// the conditions it finds (`when and b` is one node), and never rebuilds them. Children are made before
// their parents, so going through the ids upwards is a bottom-up pass.

/** A node of the diagram: an index into its arrays. 0 is false, 1 is true. */
export type Node = number;

export const FALSE: Node = 0;
export const TRUE: Node = 1;

const AND = 0;
const OR = 1;
const FIRST_NODES = 1 << 12;

const mix = (a: number, b: number, c: number): number => {
  const h = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b) ^ Math.imul(c, 0xc2b2ae35);
  return (h ^ (h >>> 15)) >>> 0;
};

const grown = (from: Int32Array): Int32Array<ArrayBuffer> => {
  const to = new Int32Array(from.length * 2);
  to.set(from);
  return to;
};

export class Diagram {
  /** Number of events known; `variable`, `low`, `high` are per node and replaced when they grow. */
  variables: number;
  variable = new Int32Array(FIRST_NODES);
  low = new Int32Array(FIRST_NODES);
  high = new Int32Array(FIRST_NODES);
  /** Nodes made so far, the two terminals included. */
  count = 2;
  #unique = new Int32Array(FIRST_NODES * 2);
  #keys = new Int32Array(FIRST_NODES * 4);
  #results = new Int32Array(FIRST_NODES * 2);

  constructor(variables: number) {
    this.variables = variables;
    this.variable[FALSE] = -1;
    this.variable[TRUE] = -1;
    this.low[TRUE] = TRUE;
    this.high[TRUE] = TRUE;
  }

  /** Makes room for more events; they stand above all earlier ones. */
  extend(variables: number): void {
    this.variables = Math.max(this.variables, variables);
  }

  /** The event alone. */
  event(index: number): Node {
    if (index < 0 || index >= this.variables) throw new RangeError(`no event ${index}`);
    return this.make(index, FALSE, TRUE);
  }

  /** All of these events together; true for none of them. */
  conjunction(events: readonly number[]): Node {
    if (events.length === 0) return TRUE;
    if (events.length === 1) return this.event(events[0]!);
    return events.map((event) => this.event(event)).reduce((all, one) => this.and(all, one), TRUE);
  }

  and(a: Node, b: Node): Node {
    if (a === b || b === TRUE) return a;
    if (a === FALSE || b === FALSE) return FALSE;
    if (a === TRUE) return b;
    return a < b ? this.#apply(AND, a, b) : this.#apply(AND, b, a);
  }

  or(a: Node, b: Node): Node {
    if (a === b || b === FALSE) return a;
    if (a === TRUE || b === TRUE) return TRUE;
    if (a === FALSE) return b;
    return a < b ? this.#apply(OR, a, b) : this.#apply(OR, b, a);
  }

  /** The node `if variable then high else low`; both children must lie below the variable. */
  make(variable: number, low: Node, high: Node): Node {
    if (low === high) return low;
    const mask = this.#unique.length - 1;
    let slot = mix(variable, low, high) & mask;
    for (let found = this.#unique[slot]!; found !== 0; found = this.#unique[slot]!) {
      if (this.variable[found] === variable && this.low[found] === low && this.high[found] === high)
        return found;
      slot = (slot + 1) & mask;
    }
    return this.#add(slot, variable, low, high);
  }

  /**
   * Forgets every node from `mark` (an earlier `count`) on. For trying variants: what they built goes, what
   * stood before keeps its number.
   */
  rollback(mark: number): void {
    if (mark === this.count) return;
    this.count = Math.max(2, mark);
    this.#keys.fill(0);
    this.#rehash();
  }

  #apply(operation: number, a: Node, b: Node): Node {
    const slot = mix(a, b, operation) & (this.#results.length - 1);
    const key = (a << 1) | operation;
    if (this.#keys[slot * 2] === key && this.#keys[slot * 2 + 1] === b) return this.#results[slot]!;
    const top = this.variable[a]!;
    const other = this.variable[b]!;
    const variable = top > other ? top : other;
    const lowA = top === variable ? this.low[a]! : a;
    const highA = top === variable ? this.high[a]! : a;
    const lowB = other === variable ? this.low[b]! : b;
    const highB = other === variable ? this.high[b]! : b;
    const low = operation === AND ? this.and(lowA, lowB) : this.or(lowA, lowB);
    const high = operation === AND ? this.and(highA, highB) : this.or(highA, highB);
    const result = this.make(variable, low, high);
    this.#remember(mix(a, b, operation) & (this.#results.length - 1), key, b, result);
    return result;
  }

  #remember(slot: number, key: number, b: Node, result: Node): void {
    this.#keys[slot * 2] = key;
    this.#keys[slot * 2 + 1] = b;
    this.#results[slot] = result;
  }

  #add(slot: number, variable: number, low: Node, high: Node): Node {
    const id = this.count;
    if (id === this.variable.length) {
      this.#grow();
      return this.make(variable, low, high);
    }
    this.variable[id] = variable;
    this.low[id] = low;
    this.high[id] = high;
    this.#unique[slot] = id;
    this.count = id + 1;
    return id;
  }

  /** Doubles every table; the computed table is only a cache and starts anew. */
  #grow(): void {
    this.variable = grown(this.variable);
    this.low = grown(this.low);
    this.high = grown(this.high);
    this.#unique = new Int32Array(this.variable.length * 2);
    this.#keys = new Int32Array(this.variable.length * 4);
    this.#results = new Int32Array(this.variable.length * 2);
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
