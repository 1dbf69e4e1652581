// What of the moves still matters. Contamination that can reach nothing judged any more need not be carried along, so per
// scene the surfaces are listed from which it still can (as a compiler finds dead variables, from the end backwards), and
// of each move only the operations are kept that change one of them or something judged.
import type { Operation } from '../contacts/plan.ts';
import type { Arc, Node } from './nodes.ts';

/** Which surfaces are judged, as the search's world has it. */
interface Judged {
  readonly width: number;
  readonly group: Int8Array;
  readonly endGroup: Int8Array;
}

/** One move as it is carried out on conditions. */
export interface Flow {
  readonly operations: readonly Operation[];
  /** How many of the first are hygiene owed to the move before. */
  readonly owed: number;
  /** Surfaces judged at any moment that it touches. */
  readonly judged: Int32Array;
  /** Surfaces that matter after it, ascending; the others are forgotten. */
  readonly live: Int32Array;
}

export interface Flows {
  /** Per node: the surfaces that matter there. */
  readonly live: readonly (Int32Array | undefined)[];
  readonly of: ReadonlyMap<Arc, Flow>;
}

const indices = (marked: Uint8Array): Int32Array =>
  Int32Array.from([...marked.keys()].filter((at) => marked[at] === 1));

/** Whether an operation matters, given what does after it; marks what matters before it. */
function matters({ group }: Judged, live: Uint8Array, operation: Operation): boolean {
  const { a } = operation;
  if (operation.op === 'contact') {
    const { b } = operation;
    const [here, there] = [live[a] === 1 || group[a]! >= 0, live[b] === 1 || group[b]! >= 0];
    if (here) live[b] = 1;
    if (there) live[a] = 1;
    return here || there;
  }
  if (operation.op === 'taint') return live[a] === 1 || group[a]! >= 0;
  if (live[a] === 0) return false;
  if (operation.op !== 'sanitise') live[a] = 0;
  return true;
}

/** Operations of the hygiene owed to the move before. */
export const owedOf = ({ performed, owed }: Arc): readonly Operation[] =>
  performed.slice(0, owed).flatMap(({ operations }) => operations);

/** The move with `live` mattering after it; what matters before it is marked in `live`. */
function flowOf(world: Judged, live: Uint8Array, after: Int32Array, arc: Arc): Flow {
  const { operations: all } = arc;
  const hygiene = owedOf(arc).length;
  const operations: Operation[] = [];
  const met = new Set<number>();
  let owed = 0;
  for (let at = all.length - 1; at >= 0; at -= 1) {
    const operation = all[at]!;
    if (!matters(world, live, operation)) continue;
    operations.push(operation);
    if (at < hygiene) owed += 1;
    for (const surface of operation.op === 'contact' ? [operation.a, operation.b] : [operation.a])
      if (world.group[surface]! >= 0) met.add(surface);
  }
  return { operations: operations.reverse(), owed, judged: Int32Array.from(met), live: after };
}

/** From the ends backwards; `arcs` are those that lead to an end. At a node that was not grown everything may matter. */
export function flowsOf(
  world: Judged,
  inOrder: readonly Node[],
  arcs: (node: Node) => readonly Arc[],
  grown: ReadonlySet<Node>,
): Flows {
  const live: (Int32Array | undefined)[] = [];
  const of = new Map<Arc, Flow>();
  const end = indices(Uint8Array.from(world.endGroup, (group) => (group < 0 ? 0 : 1)));
  const everything = Int32Array.from(world.group.keys());
  for (const node of inOrder.toReversed()) {
    const before = new Uint8Array(world.width);
    for (const arc of arcs(node)) {
      const after = live[arc.to.index];
      if (!after) continue;
      const mark = new Uint8Array(world.width);
      for (const surface of after) mark[surface] = 1;
      of.set(arc, flowOf(world, mark, after, arc));
      for (let at = 0; at < mark.length; at += 1) if (mark[at] === 1) before[at] = 1;
    }
    if (node.done) live[node.index] = end;
    else live[node.index] = grown.has(node) ? indices(before) : everything;
  }
  return { live, of };
}
