// Small doffings for the order search, and what the tests ask of its inner parts: the whole graph of a doffing, every order in
// it, and random ways through it.
import * as fc from 'fast-check';
import type { Measure } from '../../src/check/finding.ts';
import type { ItemId } from '../../src/domain/items.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { type Ahead, type Bounds, boundsOf, leastMeasure } from '../../src/order/bounds.ts';
import { beginningOf, ended, openPerClass, reach, type World, worldOf } from '../../src/order/conditions.ts';
import type { Begun } from '../../src/order/front.ts';
import { type Graph, graphOf, growWhole } from '../../src/order/graph.ts';
import type { Arc, Node } from '../../src/order/nodes.ts';
import { type Setting, settingOf, type SettingOptions } from '../../src/order/setting.ts';
import { blocksOf, withSteps } from '../../src/order/written.ts';
import { person, procedure } from '../support/procedure.ts';

/** A wearer in these items in the doffing area, with or without an assistant. */
export const dressed = (wears: readonly ItemId[], more: Partial<Procedure> = {}, helped = false): Procedure =>
  procedure({
    agents: ['enveloped'],
    products: ['alcohol-hand-rub', 'disinfectant-wipe'],
    people: [
      person({ id: 'wearer', role: 'wearer', wears }),
      ...(helped
        ? [person({ id: 'assistant', role: 'assistant', wears: ['shoe-covers', 'inner-gloves', 'gown'] })]
        : []),
    ],
    steps: [],
    ...more,
  });

export interface Ground {
  readonly setting: Setting;
  readonly graph: Graph;
  readonly world: World;
  readonly bounds: Bounds;
}

/** Everything the search stands on. */
export function groundOf(given: Procedure, options: Partial<SettingOptions> = {}): Ground {
  const setting = settingOf(given, { agent: 'enveloped', free: true, gloveChanges: 0, ...options });
  const graph = graphOf(setting);
  growWhole(graph, 20_000);
  const world = worldOf(graph);
  const bounds = boundsOf(world, graph);
  if (!bounds) throw new Error('it stopped, though nothing told it to');
  return { setting, graph, world, bounds };
}

/** Every order that comes to an end, as its moves. */
export function* ordersFrom(ground: Ground, node: Node, so: readonly Arc[] = []): Generator<readonly Arc[]> {
  if (node.done) yield so;
  else for (const arc of ground.bounds.arcs(node)) yield* ordersFrom(ground, arc.to, [...so, arc]);
}

/** The procedure of an order, before anything idle is left out. */
export const procedureOf = ({ setting }: Ground, arcs: readonly Arc[]): Procedure =>
  withSteps(
    setting.procedure,
    blocksOf(setting, arcs).flatMap(({ steps }) => steps),
  );

const aheadOf = ({ bounds }: Ground, node: Node): Ahead => {
  const ahead = bounds.ahead(node);
  if (!ahead) throw new Error('no way to an end from here');
  return ahead;
};

/** Surfaces that matter at a node. */
export const liveAt = ({ bounds }: Ground, node: Node): Int32Array => bounds.live(node);

export function begin(ground: Ground): Begun {
  const [first] = ground.graph.nodes;
  if (!first) throw new Error('no scene');
  const reached = beginningOf(ground.world, liveAt(ground, first));
  const cost = { seconds: 0, departures: 0 };
  const least = leastMeasure(ground.world, reached, cost, aheadOf(ground, first));
  return { ...reached, ...cost, link: undefined, least };
}

export function follow(ground: Ground, begun: Begun, arc: Arc): Begun {
  const flow = ground.bounds.flow(arc);
  if (!flow) throw new Error('not a move that leads to an end');
  const reached = reach(ground.world, begun, flow);
  const cost = {
    seconds: begun.seconds + arc.seconds,
    departures: begun.departures + arc.departures,
  };
  const least = leastMeasure(ground.world, reached, cost, aheadOf(ground, arc.to));
  return { ...reached, ...cost, link: { arc, before: begun.link }, least };
}

/** What a whole order comes to. */
export function measureOf({ world }: Ground, begun: Begun): Measure {
  const { ever, open } = ended(world, begun);
  const [a = 0, b = 0, c = 0, d = 0] = ever.map((condition) => world.chances.of(condition));
  return {
    impossible: 0,
    open: openPerClass(world, open),
    chance: [a, b, c, d],
    departures: begun.departures,
    seconds: begun.seconds,
  };
}

/** Numbers by which a random way is chosen, one per move. */
export const turns = fc.array(fc.nat({ max: 1000 }), { minLength: 30, maxLength: 30 });

/** A way through the graph, move by move, up to a number of moves. */
export function walk(
  ground: Ground,
  choices: readonly number[],
  from?: Node,
  most = Infinity,
): readonly Arc[] {
  const way: Arc[] = [];
  let node = from ?? ground.graph.nodes[0];
  while (node && !node.done && way.length < most) {
    const arcs = ground.bounds.arcs(node);
    const arc: Arc | undefined = arcs[(choices[way.length] ?? 0) % arcs.length];
    if (!arc) throw new Error('no way on');
    way.push(arc);
    node = arc.to;
  }
  return way;
}
