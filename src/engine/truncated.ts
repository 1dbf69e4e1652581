// Conditions cut off at an order: of each, the minimal cut sets of up to so many events, and nothing of the longer ones but
// that there are some (truncation by order: Vesely et al. 1981, Fault Tree Handbook, NUREG-0492). What is left is exact, for
// what lies beyond the order never comes back. Equal conditions are the same number here too, and as most are equal, a
// step is a few look-ups. An event that no later step asks about may be forgotten by name; it still counts.
import { PairCache, Tangled } from './nodeTable.ts';

/** Nothing opens it. */
export const NEVER = 0;
/** Open though nothing happens. */
export const CERTAIN = 1;
/** Opened, but by more events than the order allows. */
const BEYOND = 2;

/** Names from here on stay; smaller ones are a step's own and are forgotten when it ends. */
export const LASTING = 1 << 16;

/** A cut set: how many events have lost their name, and the names of the others, ascending. */
interface CutSet {
  readonly nameless: number;
  readonly names: readonly number[];
  readonly key: string;
}

/** More cut sets than one condition may have, and more conditions than there may be: enough for orders up to three. */
const MOST = { sets: 200, conditions: 1 << 16 } as const;

/** What a condition costs that was not known, in look-ups: for each of its cut sets, and for each pair that is compared. */
const COST = { set: 10, pair: 1 / 4 } as const;

const sizeOf = ({ nameless, names }: CutSet): number => nameless + names.length;

const cutSet = (nameless: number, names: readonly number[]): CutSet => ({
  nameless,
  names,
  key: `${nameless}:${names.join(',')}`,
});

/** Whether whatever the second one goes on to need, the first needs no more. */
const covers = (one: CutSet, other: CutSet): boolean =>
  one.nameless <= other.nameless && one.names.every((name) => other.names.includes(name));

/** Without those that others cover; in an order of their own. */
function minimal(sets: readonly CutSet[]): readonly CutSet[] {
  let kept: CutSet[] = [];
  for (const set of sets) {
    if (kept.some((one) => covers(one, set))) continue;
    kept = kept.filter((one) => !covers(set, one));
    kept.push(set);
  }
  return kept.sort((a, b) => (a.key < b.key ? -1 : 1));
}

const joined = ({ nameless, names }: CutSet, more: readonly number[]): CutSet =>
  cutSet(
    nameless,
    [...new Set([...names, ...more])].sort((a, b) => a - b),
  );

function lasting(set: CutSet): CutSet {
  const kept = set.names.filter((name) => name >= LASTING);
  return kept.length === set.names.length ? set : cutSet(set.nameless + set.names.length - kept.length, kept);
}

export class Truncated {
  /** Conditions known. */
  count = 3;
  /** Work done so far, one for each look-up. */
  work = 0;
  readonly #order: number;
  readonly #sets: (readonly CutSet[])[] = [[], [cutSet(0, [])], []];
  readonly #numbers = new Map<string, number>();
  readonly #guards: (readonly number[])[] = [];
  readonly #guardNumbers = new Map<string, number>();
  readonly #or = new PairCache(this);
  readonly #under = new PairCache(this);
  readonly #forgot: number[] = [NEVER, CERTAIN, BEYOND];

  /** `order`: the most events of a cut set that is kept. Throws `Tangled` where even those are too many. */
  constructor(order: number) {
    this.#order = order;
    this.guard([]);
  }

  /** The number of a guard, all of whose events it takes; 0 is the empty one. */
  guard(names: readonly number[]): number {
    const key = names.join(',');
    const known = this.#guardNumbers.get(key) ?? this.#guards.push(names) - 1;
    this.#guardNumbers.set(key, known);
    return known;
  }

  or(a: number, b: number): number {
    if (a === b || b === NEVER) return a;
    if (a === NEVER) return b;
    if (a === CERTAIN || b === CERTAIN) return CERTAIN;
    if (a === BEYOND) return b;
    if (b === BEYOND) return a;
    if (a > b) return this.or(b, a);
    const kept = this.#or.get(a, b);
    if (kept >= 0) return kept;
    const result = this.#number([...this.#sets[a]!, ...this.#sets[b]!]);
    this.#or.set(a, b, result);
    return result;
  }

  /** The condition and the guard. */
  under(condition: number, guard: number): number {
    if (guard === 0 || condition === NEVER || condition === BEYOND) return condition;
    const kept = this.#under.get(condition, guard);
    if (kept >= 0) return kept;
    const names = this.#guards[guard]!;
    const result = this.#number(this.#sets[condition]!.map((set) => joined(set, names)));
    this.#under.set(condition, guard, result);
    return result;
  }

  /** The condition once the events of the step that ends are forgotten by name. */
  forget(condition: number): number {
    const known = this.#forgot[condition]!;
    if (known >= 0) return known;
    const result = this.#number(this.#sets[condition]!.map(lasting));
    this.#forgot[condition] = result;
    return result;
  }

  /** The least number of events; Infinity for none, and for more than the order. */
  least(condition: number): number {
    return this.#sets[condition]!.reduce((least, set) => Math.min(least, sizeOf(set)), Infinity);
  }

  #number(sets: readonly CutSet[]): number {
    if (sets.length > MOST.sets) throw new Tangled();
    this.work += sets.length * COST.set + sets.length ** 2 * COST.pair;
    const kept = minimal(sets.filter((set) => sizeOf(set) <= this.#order));
    if (kept.length === 0) return BEYOND;
    const key = kept.map((set) => set.key).join(' ');
    const known = this.#numbers.get(key) ?? (key === '0:' ? CERTAIN : this.#add(kept));
    this.#numbers.set(key, known);
    return known;
  }

  #add(sets: readonly CutSet[]): number {
    if (this.count === MOST.conditions) throw new Tangled();
    this.#sets.push(sets);
    this.#forgot.push(-1);
    this.count += 1;
    return this.count - 1;
  }
}
