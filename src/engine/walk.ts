// Reading a diagram: which nodes a condition reaches, on which events it depends, what it says under one
// set of events, and what is left of it once some events are known. None of this builds more than it must.

import { type Diagram, FALSE, type Node, TRUE } from './diagram.ts';
import type { NodeTable } from './nodeTable.ts';

/** The inner nodes under these roots, children before parents. */
export function reachable(diagram: NodeTable, roots: ArrayLike<Node>): Int32Array {
  let top = 1;
  for (let i = 0; i < roots.length; i++) top = Math.max(top, roots[i]!);
  const seen = new Uint8Array(top + 1);
  for (let i = 0; i < roots.length; i++) seen[roots[i]!] = 1;
  let count = 0;
  for (let id = top; id > TRUE; id--) {
    if (seen[id] === 0) continue;
    seen[diagram.low[id]!] = 1;
    seen[diagram.high[id]!] = 1;
    count++;
  }
  const nodes = new Int32Array(count);
  for (let id = 2, at = 0; id <= top; id++) if (seen[id] === 1) nodes[at++] = id;
  return nodes;
}

/** The events a condition depends on, ascending. */
export function support(diagram: Diagram, ...roots: Node[]): number[] {
  const events = new Set<number>();
  for (const id of reachable(diagram, roots)) events.add(diagram.variable[id]!);
  return [...events].sort((a, b) => a - b);
}

/** Number of inner nodes the conditions share. */
export const size = (diagram: Diagram, ...roots: Node[]): number => reachable(diagram, roots).length;

/** Whether the condition holds when exactly these events are true. */
export function evaluate(diagram: Diagram, root: Node, isTrue: (event: number) => boolean): boolean {
  let node = root;
  while (node > TRUE) node = isTrue(diagram.variable[node]!) ? diagram.high[node]! : diagram.low[node]!;
  return node === TRUE;
}

/** The events that open a monotone condition alone, in the order of the diagram; none where it stands open. */
export function aloneIn(diagram: Diagram, root: Node): number[] {
  const opens = (node: Node): boolean => evaluate(diagram, node, () => false);
  const found: number[] = [];
  if (opens(root)) return found;
  for (let node = root; node > TRUE; node = diagram.low[node]!)
    if (opens(diagram.high[node]!)) found.push(diagram.variable[node]!);
  return found;
}

/** The union of many conditions, halves first so that intermediate results stay small. */
export function union(diagram: Diagram, roots: readonly Node[]): Node {
  if (roots.length === 0) return FALSE;
  if (roots.length === 1) return roots[0]!;
  const half = roots.length >> 1;
  return diagram.or(union(diagram, roots.slice(0, half)), union(diagram, roots.slice(half)));
}

/**
 * What is left of a condition once some events are known to have happened or not.
 * `known(event)` is true, false, or undefined for what nobody saw.
 */
export function restrict(diagram: Diagram, root: Node, known: (event: number) => boolean | undefined): Node {
  const left = new Map<Node, Node>([
    [FALSE, FALSE],
    [TRUE, TRUE],
  ]);
  for (const id of reachable(diagram, [root])) {
    const [low, high] = [left.get(diagram.low[id]!)!, left.get(diagram.high[id]!)!];
    const event = diagram.variable[id]!;
    const value = known(event);
    left.set(id, value === undefined ? diagram.choice(event, low, high) : value ? high : low);
  }
  return left.get(root)!;
}

/** Whether whatever opens `a` opens `b` as well. */
export const implies = (diagram: Diagram, a: Node, b: Node): boolean => diagram.or(a, b) === b;
