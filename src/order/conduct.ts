// What each move departs from published practice. A rule may ask of the past, but the flags keep what rules ask, so that a
// move costs the same on every way to its scene: it is asked on one of them.
import { isAccepted } from '../check/acceptance.ts';
import type { Compiled, Performed } from '../contacts/interpret.ts';
import { departures } from '../practice/index.ts';
import type { Node } from './nodes.ts';
import type { Setting } from './setting.ts';

/**
 * Rules that speak of the whole: what they miss in the middle may still come, so they are asked when
 * somebody is through; a technique that departs from one of them does so at once.
 */
const OF_THE_WHOLE: ReadonlySet<string> = new Set([
  'practice.inspect-at-end',
  'practice.final-hand-hygiene',
  'practice.shoes-wiped-with-soles',
  'practice.assistant-for-hood-or-coverall',
  'practice.observer-for-every-step',
]);

export interface Conduct {
  /** Rules departed from, one for each time. */
  readonly rules: readonly string[];
  /** Those that the unit has not accepted. */
  readonly unaccepted: number;
}

const NONE: Conduct = { rules: [], unaccepted: 0 };

/** Departures of these steps from the first on, `ended` subjects being through. */
function conductOf(setting: Setting, performed: readonly Performed[], ended: number): Conduct {
  const { procedure, machine, agent } = setting;
  const steps = performed.map(({ step }) => step);
  const { surfaces, events } = machine.registry;
  const compiled: Compiled = {
    procedure: { ...procedure, steps },
    agent,
    performed,
    problems: [],
    interpreter: machine,
    plan: { surfaces, events, start: [], steps: [] },
  };
  const through = new Set(setting.subjects.slice(0, ended).map(({ id }) => id));
  const found = departures(compiled).filter(
    ({ rule, params }) =>
      !OF_THE_WHOLE.has(rule) || params.technique !== undefined || through.has(params.person ?? ''),
  );
  const open = found.filter(({ rule, step }) => !isAccepted(procedure.accepted, rule, steps[step]?.id));
  return { rules: found.map(({ rule }) => rule), unaccepted: open.length };
}

/** The steps by which a node was first reached. */
function pathTo(node: Node): readonly Performed[] {
  const back: (readonly Performed[])[] = [];
  for (let arc = node.via; arc; arc = arc.from.via) back.push(arc.performed);
  return back.reverse().flat();
}

/** How many times each rule is in the first list beyond the second. */
function beyond(rules: readonly string[], known: readonly string[]): readonly string[] {
  const left = [...known];
  return rules.filter((rule) => {
    const at = left.indexOf(rule);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

export interface Conducts {
  /** What this move adds when made in this scene, after which `ended` subjects are through. */
  adds(node: Node, performed: readonly Performed[], ended: number): Conduct;
}

export function conductsOf(setting: Setting): Conducts {
  const known = new Map<Node, Conduct>();
  const paths = new Map<Node, readonly Performed[]>();
  const upTo = (node: Node): Conduct => {
    const found = known.get(node) ?? (node.via ? conductOf(setting, pathOf(node), node.flags.subject) : NONE);
    known.set(node, found);
    return found;
  };
  const pathOf = (node: Node): readonly Performed[] => {
    const found = paths.get(node) ?? pathTo(node);
    paths.set(node, found);
    return found;
  };
  return {
    adds(node, performed, ended) {
      const before = upTo(node);
      const after = conductOf(setting, [...pathOf(node), ...performed], ended);
      return {
        rules: beyond(after.rules, before.rules),
        unaccepted: after.unaccepted - before.unaccepted,
      };
    },
  };
}
