// Shadows of conditions, in which bounds are worked out: of a condition only the combinations of few events. A shadow never holds
// where the condition does not, so what is left out only makes a bound lower, and it stays small where the exact
// intersection over thousands of orders would not.
import type { Guard, Operation } from '../contacts/plan.ts';
import { type Diagram, FALSE, type Node as Condition, TRUE } from '../engine/diagram.ts';
import { PairCache } from '../engine/nodeTable.ts';

export interface Shadows {
  readonly diagram: Diagram;
  /** Events in a combination at most. */
  readonly order: number;
  /** Per order: intersections by their two sides. */
  readonly known: readonly PairCache[];
}

export const shadowsOf = (diagram: Diagram, order: number): Shadows => ({
  diagram,
  order,
  known: Array.from({ length: order + 1 }, () => new PairCache(diagram)),
});

/** Whether it holds though no event happens. */
function standsOpen({ low }: Diagram, condition: Condition): boolean {
  let node = condition;
  while (node > TRUE) node = low[node]!;
  return node === TRUE;
}

/** Both, in combinations of at most `order` events; either may be TRUE to cut the other down. */
export function both(shadows: Shadows, a: Condition, b: Condition, order = shadows.order): Condition {
  if (a === FALSE || b === FALSE) return FALSE;
  if (a === TRUE && b === TRUE) return TRUE;
  if (a > b) return both(shadows, b, a, order);
  const { diagram } = shadows;
  if (order === 0) return standsOpen(diagram, a) && standsOpen(diagram, b) ? TRUE : FALSE;
  const cache = shadows.known[order]!;
  const kept = cache.get(a, b);
  if (kept >= 0) return kept;
  const [top, other] = [diagram.level[a]!, diagram.level[b]!];
  const variable = top >= other ? diagram.variable[a]! : diagram.variable[b]!;
  const [first, second] = [top >= other, other >= top];
  const low = both(shadows, first ? diagram.low[a]! : a, second ? diagram.low[b]! : b, order);
  const high = both(shadows, first ? diagram.high[a]! : a, second ? diagram.high[b]! : b, order - 1);
  const result = diagram.choice(variable, low, diagram.or(low, high));
  cache.set(a, b, result);
  return result;
}

const anyOf = ({ diagram }: Shadows, guards: readonly Guard[]): Condition =>
  guards.reduce<Condition>((any, guard) => diagram.or(any, diagram.conjunction(guard)), FALSE);

/**
 * Performs the operations on shadows, in place; `was` hears what stood on a surface before it is cleaned. `orders` says per
 * surface how many events a combination may have there, where that is fewer than elsewhere.
 */
export function stepShadows(
  shadows: Shadows,
  state: Int32Array,
  was: (surface: number, shadow: Condition) => void,
  operations: readonly Operation[],
  orders?: Uint8Array,
): void {
  const { diagram, order } = shadows;
  const orderAt = (surface: number): number => orders?.[surface] ?? order;
  for (const operation of operations) {
    const { a } = operation;
    const own = state[a]!;
    if (operation.op === 'contact') {
      const other = state[operation.b]!;
      if (own === other) continue;
      const [when, either] = [diagram.conjunction(operation.when), diagram.or(own, other)];
      const [here, there] = [orderAt(a), orderAt(operation.b)];
      const passed = both(shadows, when, either, here);
      state[a] = diagram.or(own, passed);
      state[operation.b] = diagram.or(other, here === there ? passed : both(shadows, when, either, there));
    } else if (operation.op === 'taint')
      state[a] = diagram.or(own, both(shadows, diagram.conjunction(operation.when), TRUE, orderAt(a)));
    else {
      was(a, own);
      state[a] =
        operation.op === 'sanitise'
          ? both(shadows, own, anyOf(shadows, operation.failure), orderAt(a))
          : FALSE;
    }
  }
}
