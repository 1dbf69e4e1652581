// A graph that there is no time to see whole: nodes are grown as a search comes to them, nothing is known of what lies ahead, and
// everything may matter. Enough to find some order to its end; it proves nothing.
import type { Ahead, Bounds } from './bounds.ts';
import { type World, widen } from './conditions.ts';
import type { Graph } from './graph.ts';

const NOTHING: Ahead = { ever: [0, 0, 0, 0], open: 0n, seconds: 0, departures: 0 };

export function boundsAsNeeded(world: World, graph: Graph): Bounds {
  const surfaces = (): Int32Array => Int32Array.from(world.group.keys());
  return {
    inOrder: graph.nodes.slice(0, 1),
    arcs(node) {
      graph.grow(node);
      widen(world);
      return node.arcs;
    },
    ahead: () => NOTHING,
    flow: ({ operations }) => ({
      operations,
      owed: 0,
      judged: surfaces().filter((surface) => world.group[surface]! >= 0),
      live: surfaces(),
    }),
    live: surfaces,
    held: [],
  };
}
