// The graph of worn scenes: a node is a scene with its flags, an arc is one move carried out, with the operations it comes
// to. It holds no conditions: whether a move can be done, and what it touches, does not depend on what is contaminated.
import type { Performed } from '../contacts/interpret.ts';
import { bodyIn, type Scene } from '../contacts/scene.ts';
import { evidenceNumber } from '../evidence/index.ts';
import { type Conducts, conductsOf } from './conduct.ts';
import { bodyOf, rubHelpers } from './course.ts';
import { beginning, type Draft, draftsAt, type Place } from './drafts.ts';
import { FIRST, type Flags, flagsKey, rankOf } from './flags.ts';
import { flagsAfter, flagsAhead, nowhereToWipe } from './past.ts';
import type { Arc, Node } from './nodes.ts';
import type { Setting } from './setting.ts';

export interface Graph {
  readonly setting: Setting;
  readonly nodes: readonly Node[];
  /** Nodes whose arcs are known. */
  readonly grown: ReadonlySet<Node>;
  /** Makes the arcs of a node, unless they are known. */
  grow(node: Node): void;
}

const secondsOf = (performed: readonly Performed[]): number =>
  performed.reduce((sum, { technique }) => sum + evidenceNumber(technique.time), 0);

interface Growing {
  readonly setting: Setting;
  readonly nodes: Node[];
  readonly known: Map<string, Node>;
  readonly scenes: Map<Scene, number>;
  readonly conducts: Conducts;
}

function nodeFor(growing: Growing, scene: Scene, flags: Flags, via: Arc | undefined): Node {
  const { setting, nodes, known, scenes } = growing;
  if (!scenes.has(scene)) scenes.set(scene, scenes.size);
  const key = `${scenes.get(scene) ?? 0}|${flagsKey(flags)}`;
  const found = known.get(key);
  if (found) return found;
  const done = flags.subject >= setting.subjects.length && flags.pinned >= setting.pinned.length;
  const rank = rankOf(scene, flags, setting.subjects[flags.subject]);
  const node: Node = { index: nodes.length, scene, flags, rank, arcs: [], via, done };
  nodes.push(node);
  known.set(key, node);
  return node;
}

function arcFor(growing: Growing, node: Node, draft: Draft, who: string): void {
  const { setting } = growing;
  const course = bodyOf(setting, node, draft, who);
  if (!course) return;
  const ahead = flagsAhead(node.flags, draft);
  const rank = rankOf(course.scene, ahead, setting.subjects[ahead.subject]);
  rubHelpers(setting, course, who, String(rank));
  const { performed } = course;
  const flags = flagsAfter(setting, node.flags, draft, who, course.scene, performed);
  if (nowhereToWipe(setting, flags, who)) return;
  const conduct = growing.conducts.adds(node, performed, flags.subject);
  const { allowed } = setting;
  if (allowed && conduct.rules.some((rule) => !allowed.has(rule))) return;
  const arc: { -readonly [Key in keyof Arc]: Arc[Key] } = {
    draft,
    from: node,
    to: node,
    performed,
    owed: course.owed,
    operations: performed.flatMap((one) => one.operations),
    seconds: secondsOf(performed),
    departures: conduct.unaccepted,
  };
  arc.to = nodeFor(growing, course.scene, flags, arc);
  if (arc.to.rank <= node.rank) throw new Error(`${draft.name} leads nowhere`);
  node.arcs.push(arc);
}

function placeAt(setting: Setting, { scene, flags }: Node): { readonly place: Place; readonly who: string } {
  const who = setting.subjects[Math.min(flags.subject, setting.subjects.length - 1)]?.id ?? '';
  return { place: { setting, flags, body: bodyIn(scene, who), bodies: scene.bodies }, who };
}

function grow(growing: Growing, node: Node): void {
  const { setting } = growing;
  const { place, who } = placeAt(setting, node);
  const over = node.flags.subject >= setting.subjects.length;
  const drafts = node.flags.begun || over ? draftsAt(place) : [beginning(place)];
  const wanted = over ? drafts.filter(({ kind }) => kind === 'kept') : drafts;
  for (const draft of wanted) arcFor(growing, node, draft, who);
}

/** The graph of a setting as far as its first scene; the rest is grown from there. */
export function graphOf(setting: Setting): Graph {
  const growing: Growing = {
    setting,
    nodes: [],
    known: new Map(),
    scenes: new Map(),
    conducts: conductsOf(setting),
  };
  const grown = new Set<Node>();
  nodeFor(growing, setting.machine.start.scene, FIRST, undefined);
  return {
    setting,
    nodes: growing.nodes,
    grown,
    grow(node) {
      if (grown.has(node)) return;
      grown.add(node);
      if (!node.done) grow(growing, node);
    },
  };
}

/**
 * Grows all scenes that admissible moves lead to, breadth first, up to `most` of them and until `stop` says so. Whether that is
 * the whole graph.
 */
export function growWhole(graph: Graph, most: number, stop: () => boolean = () => false): boolean {
  const { nodes, grown } = graph;
  for (let at = 0; at < nodes.length && nodes.length <= most && !stop(); at += 1) graph.grow(nodes[at]!);
  return nodes.every((node) => grown.has(node));
}
