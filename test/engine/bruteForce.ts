// Brute force: every set of events up to an order, smallest first, keeping those that open a route and hold no
// smaller one. Slow and plain, so that it can judge the cut sets of the engine.

/** All sets of at most `order` of this many events, smallest first. */
function* setsTo(order: number, events: number): Generator<number[]> {
  function* exactly(size: number, from: number): Generator<number[]> {
    if (size === 0) {
      yield [];
      return;
    }
    for (let event = from; event <= events - size; event++) {
      for (const rest of exactly(size - 1, event + 1)) yield [event, ...rest];
    }
  }
  for (let size = 0; size <= order; size++) yield* exactly(size, 0);
}

/** The minimal sets of at most `order` events for which `opens` holds. */
export function minimalSets(
  events: number,
  order: number,
  opens: (set: readonly number[]) => boolean,
): number[][] {
  const found: number[][] = [];
  for (const set of setsTo(order, events)) {
    const known = found.some((smaller) => smaller.every((event) => set.includes(event)));
    if (!known && opens(set)) found.push(set);
  }
  return found;
}

/** Sum over every set of events of its chance, where `opens` holds: the chance by its definition. */
export function weighedChance(
  p: readonly number[],
  opens: (isTrue: (event: number) => boolean) => boolean,
): number {
  let sum = 0;
  for (let bits = 0; bits < 1 << p.length; bits++) {
    const isTrue = (event: number): boolean => ((bits >> event) & 1) === 1;
    if (opens(isTrue)) sum += p.reduce((all, q, event) => all * (isTrue(event) ? q : 1 - q), 1);
  }
  return sum;
}
