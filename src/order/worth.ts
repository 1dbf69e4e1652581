// Which way on is better. First that it can be done, then no open route, then as few places as can be that are one slip away,
// then the chances and the time: after a breach it is the distance that counts, and a small chance is no reason to wait.
import type { Four, Rest, Worth } from './rest.ts';

const SAME = 1e-9;

function compareFour(a: Four, b: Four): number {
  for (const [at, value] of a.entries()) if (Math.abs(value - b[at]!) > SAME) return value - b[at]!;
  return 0;
}

/** Negative when `a` is better. */
export function compareWorth(a: Worth, b: Worth): number {
  return (
    a.problems - b.problems ||
    compareFour(a.open, b.open) ||
    compareFour(a.single, b.single) ||
    compareFour(a.chance, b.chance) ||
    a.seconds - b.seconds
  );
}

/** Whether a way on is worth an interruption: it closes a route, or leaves fewer places one slip away. */
export const gains = (before: Worth, after: Worth): boolean =>
  (compareFour(after.open, before.open) || compareFour(after.single, before.single)) < 0;

/** Whether it gains, can be done, and brings no surface nearer to contamination than the rest as written. */
export function safer(written: Rest, rest: Rest): boolean {
  if (rest.worth.problems > 0 || !gains(written.worth, rest.worth)) return false;
  return [...rest.barriers].every(
    ([surface, events]) => events >= (written.barriers.get(surface) ?? Infinity),
  );
}
