// Partial orders that stand in the same scene, and which of them need not be followed: one that in every surface, in everything
// reached so far, in departures and in time is no better than another. Whatever follows follows both alike, and
// operations are monotone, so it can never win.
import type { Measure } from '../check/finding.ts';
import type { Reached, World } from './conditions.ts';
import type { Arc } from './nodes.ts';

/** The moves made, the last first. */
export interface Link {
  readonly arc: Arc;
  readonly before: Link | undefined;
}

/** A partial order: how it got here, what it came to and what it cost. */
export interface Begun extends Reached {
  readonly link: Link | undefined;
  /** The least that it can end with. */
  readonly least: Measure;
  readonly seconds: number;
  readonly departures: number;
}

/** Whether whatever contaminates `a` contaminates `b`; asked of chances first, which is cheap and mostly says no. */
export function implies(world: World, a: number, b: number): boolean {
  if (a === b || a === 0 || b === 1) return true;
  if (b === 0 || a === 1) return false;
  const { chances } = world;
  return chances.of(a) <= chances.of(b) + SLACK && below(world, a, b);
}

const SLACK = 1e-12;

/** Monotone conditions: one lies below the other where it does so with the event on top and without it. */
function below(world: World, a: number, b: number): boolean {
  if (a === b || a === 0 || b === 1) return true;
  if (b === 0 || a === 1) return false;
  const { diagram, implied } = world;
  const kept = implied.get(a, b);
  if (kept >= 0) return kept === 1;
  const [top, other] = [diagram.level[a]!, diagram.level[b]!];
  const [one, two] = [top >= other ? a : -1, other >= top ? b : -1];
  const found =
    below(world, one < 0 ? a : diagram.low[a]!, two < 0 ? b : diagram.low[b]!) &&
    below(world, one < 0 ? a : diagram.high[a]!, two < 0 ? b : diagram.high[b]!);
  implied.set(a, b, found ? 1 : 0);
  return found;
}

/** Whether `b` need not be followed, because of `a`. `live` lists the surfaces that still matter. */
export function dominates(world: World, a: Begun, b: Begun, live: Int32Array): boolean {
  if (a.seconds > b.seconds || a.departures > b.departures || (a.open & ~b.open) !== 0n) return false;
  for (let at = 0; at < 4; at += 1)
    if (world.chances.of(a.ever[at]!) > world.chances.of(b.ever[at]!) + SLACK) return false;
  for (const surface of live) {
    const [one, other] = [a.state[surface]!, b.state[surface]!];
    if (one !== other && world.chances.of(one) > world.chances.of(other) + SLACK) return false;
  }
  for (let at = 0; at < 4; at += 1) if (!implies(world, a.ever[at]!, b.ever[at]!)) return false;
  for (const surface of live) if (!implies(world, a.state[surface]!, b.state[surface]!)) return false;
  return true;
}

/** Adds it to the front, unless it is dominated; what it dominates leaves. */
export function join(world: World, front: Begun[], added: Begun, live: Int32Array): boolean {
  for (const one of front) if (dominates(world, one, added, live)) return false;
  let kept = 0;
  for (const one of front) if (!dominates(world, added, one, live)) front[kept++] = one;
  front.length = kept;
  front.push(added);
  return true;
}
