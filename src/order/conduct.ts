// What each move departs from published practice. A rule may ask of the past, but the flags keep what rules ask, so that a
// move costs the same on every way to its scene: it is asked on one of them. Steps whose answer can change no more are
// not asked again.
import { isAccepted } from '../check/acceptance.ts';
import { SIDES } from '../domain/places.ts';
import { bodyIn } from '../contacts/scene.ts';
import type { Performed } from '../contacts/interpret.ts';
import { departuresIn, gloveOn, type Moment, momentOf, type Rule, RULES } from '../practice/index.ts';
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

const DOFFING = RULES.filter(({ kinds }) => kinds.includes('doffing'));
const ALWAYS = DOFFING.filter(({ id, hangsOn }) => hangsOn === undefined && !OF_THE_WHOLE.has(id));
const SOMETIMES = DOFFING.filter(({ hangsOn }) => hangsOn !== undefined);

const LISTS = new Map<number, readonly Rule[]>();

/** Rules to ask of a move, the same list for the same rules: of those about the whole, the ones whose answer it can change. */
function rulesFor(move: readonly Moment[], ended: number): readonly Rule[] {
  if (ended > 0) return DOFFING;
  const asked = SOMETIMES.map(({ hangsOn }) => move.some((moment) => hangsOn?.(moment) === true));
  const key = asked.reduce((bits, one, at) => bits + (one ? 2 ** at : 0), 0);
  const list = LISTS.get(key) ?? [...ALWAYS, ...SOMETIMES.filter((_, at) => asked[at])];
  LISTS.set(key, list);
  return list;
}

/** Departures of the steps from index `from` on and of the whole, `ended` subjects being through. */
function conductOf(
  { setting, rules }: { readonly setting: Setting; readonly rules: readonly Rule[] },
  moments: readonly Moment[],
  from: number,
  ended: number,
): Conduct {
  const { procedure } = setting;
  const through = new Set(setting.subjects.slice(0, ended).map(({ id }) => id));
  const found = departuresIn({ procedure, moments, asked: moments.slice(from) }, rules).filter(
    ({ rule, params }) =>
      !OF_THE_WHOLE.has(rule) || params.technique !== undefined || through.has(params.person ?? ''),
  );
  const open = found.filter(
    ({ rule, step }) => !isAccepted(procedure.accepted, rule, moments[step]?.step.id),
  );
  return { rules: found.map(({ rule }) => rule), unaccepted: open.length };
}

const IDLE: ReadonlySet<string> = new Set(['inspect', 'say', 'move', 'stand', 'sit', 'step-on']);

/** Cleaned hands leave nothing open, unless they are left wet. */
const settledAtOnce = ({ step, technique }: Moment): boolean =>
  IDLE.has(step.action) ||
  (step.action === 'sanitise' && !technique.moves.some(({ do: what }) => what === 'wet'));

const bares = ({ step, owner, after }: Moment): boolean =>
  step.action !== 'remove' || SIDES.every((side) => gloveOn(bodyIn(after, owner), side) === undefined);

/**
 * Index of the first step whose departures may still change. Rules look on to what the hands of those who take part do
 * next, and from gloves that were taken off to the next item that they meet.
 */
function firstUnsettled(moments: readonly Moment[]): number {
  const acted = new Set<string>();
  const met = new Set<string>();
  let first = moments.length;
  for (let at = moments.length - 1; at >= 0; at -= 1) {
    const moment = moments[at]!;
    const { step, owner, touching, cleans } = moment;
    const people = [step.who, owner, step.helper ?? owner];
    const settled =
      settledAtOnce(moment) ||
      (people.every((person) => acted.has(person)) && (met.has(owner) || bares(moment)));
    if (!settled) first = at;
    for (const person of touching) {
      acted.add(person);
      if (step.items.length > 0 && cleans !== person) met.add(person);
    }
    if (cleans !== undefined) acted.add(cleans);
  }
  return first;
}

/** How a node was first reached, and what is open of it. */
interface Past {
  readonly moments: readonly Moment[];
  readonly from: number;
  /** Departures so far, by the rules that were asked. */
  readonly conducts: Map<readonly Rule[], Conduct>;
}

export interface Conducts {
  /** What this move adds when made in this scene, after which `ended` subjects are through. */
  adds(node: Node, performed: readonly Performed[], ended: number): Conduct;
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

export function conductsOf(setting: Setting): Conducts {
  const known = new Map<Node, Past>();
  const { surfaces } = setting.machine.registry;
  const read = (start: number, performed: readonly Performed[]): readonly Moment[] =>
    performed.map((one, at) => momentOf(surfaces, one.step, one, start + at));
  const made = ({ via }: Node): Past => {
    const before = via ? past(via.from).moments : [];
    const moments = [...before, ...read(before.length, via?.performed ?? [])];
    return { moments, from: firstUnsettled(moments), conducts: new Map() };
  };
  const past = (node: Node): Past => {
    const found = known.get(node) ?? made(node);
    known.set(node, found);
    return found;
  };
  const before = (node: Node, rules: readonly Rule[]): Conduct => {
    const { moments, from, conducts } = past(node);
    const found = conducts.get(rules) ?? conductOf({ setting, rules }, moments, from, node.flags.subject);
    conducts.set(rules, found);
    return found;
  };
  return {
    adds(node, performed, ended) {
      const { moments, from } = past(node);
      const move = read(moments.length, performed);
      const rules = rulesFor(move, ended);
      const conduct = before(node, rules);
      const after = conductOf({ setting, rules }, [...moments, ...move], from, ended);
      return {
        rules: beyond(after.rules, conduct.rules),
        unaccepted: after.unaccepted - conduct.unaccepted,
      };
    },
  };
}
