// The graph of worn scenes: a node is a scene with its flags, an arc is one move carried out, with the operations it comes
// to. It holds no conditions: whether a move can be done, and what it touches, does not depend on what is contaminated.
import type { Performed } from '../contacts/interpret.ts';
import { bodyIn, type Scene } from '../contacts/scene.ts';
import type { Body } from '../contacts/body.ts';
import { type ItemId, itemKind } from '../domain/items.ts';
import { type Side, SIDES } from '../domain/places.ts';
import type { Step } from '../domain/procedure.ts';
import type { Material } from '../domain/products.ts';
import { evidenceNumber } from '../evidence/index.ts';
import { type Conducts, conductsOf } from './conduct.ts';
import { beginning, type Draft, draftsAt, type Place } from './drafts.ts';
import { FIRST, type Flags, flagsKey, rankOf } from './flags.ts';
import type { Arc, Node } from './nodes.ts';
import { handsOf, productsFor, type Setting } from './setting.ts';

export interface Graph {
  readonly setting: Setting;
  readonly nodes: readonly Node[];
  /** False when there were more scenes than may be kept. */
  readonly whole: boolean;
}

const GLOVES_AND_HANDS = new Map<string, boolean>();

/** Whether a surface is a hand or a glove. */
function isGloveOrHand(id: string): boolean {
  const known = GLOVES_AND_HANDS.get(id);
  if (known !== undefined) return known;
  const part = id.split('.')[1];
  const found = part === 'hand' || part?.endsWith('gloves') === true;
  GLOVES_AND_HANDS.set(id, found);
  return found;
}

const takesGlovesOff = ({ action, items }: Step): boolean =>
  action === 'remove' && items.some((item) => itemKind(item).group === 'glove');

/** A step's contact in which the hands of somebody meet anything but themselves, by a slip or without one. */
function handMeets(setting: Setting, { step, operations, before, after }: Performed, who: string): boolean {
  if (step.action === 'sanitise' || step.action === 'put-on') return false;
  const { registry } = setting.machine;
  const { surfaces } = registry;
  const hands = new Set(
    [before, after].flatMap((scene) => handsOf(bodyIn(scene, who)).map((id) => registry.surface(id))),
  );
  const own = (at: number): boolean => {
    const id = surfaces[at]?.id ?? '';
    return isGloveOrHand(id) && id.startsWith(`${who}.`);
  };
  return operations.some(
    (one) =>
      one.op === 'contact' &&
      (hands.has(one.a) || hands.has(one.b)) &&
      (takesGlovesOff(step) || !(own(one.a) && own(one.b))),
  );
}

const MET = new WeakMap<Performed, Map<string, boolean>>();

/** Whether somebody's hands meet anything in these steps; steps come back in many moves and are looked at once. */
const handsMet = (setting: Setting, performed: readonly Performed[], who: string): boolean =>
  performed.some((one) => {
    const known = MET.get(one) ?? new Map<string, boolean>();
    MET.set(one, known);
    const found = known.get(who) ?? handMeets(setting, one, who);
    known.set(who, found);
    return found;
  });

/** A move while it is carried out. */
class Course {
  readonly performed: Performed[] = [];
  scene: Scene;
  readonly #setting: Setting;

  constructor(setting: Setting, scene: Scene) {
    this.#setting = setting;
    this.scene = scene;
  }

  /** False where the step cannot be done; nothing is done then. */
  act(step: Step): boolean {
    const done = this.#setting.machine.perform(this.scene, step, 0);
    if (done.problems.length > 0) return false;
    this.performed.push(done);
    this.scene = done.after;
    return true;
  }

  /** Hand hygiene with the first product that can be had; none where the unit has none. */
  rub(who: string, number: string): void {
    const body = bodyIn(this.scene, who);
    const bare = (side: Side): boolean => gloveOn(body, side) === undefined;
    const materials = [...new Set(SIDES.map((side): Material => (bare(side) ? 'skin' : 'glove')))];
    for (const product of productsFor(this.#setting, materials)) {
      const step = { id: `rub-${who}-${number}`, who, action: 'sanitise', items: [], product } as const;
      if (this.act(this.#setting.step(step))) return;
    }
  }

  /** Gloves that came into sight are looked over. */
  look(who: string, { name, kind }: Draft): void {
    const body = bodyIn(this.scene, who);
    const [glove, other] = SIDES.map((side) => gloveOn(body, side));
    if (glove === undefined || other !== glove) return;
    const step = { who, action: 'inspect', items: [glove] } as const;
    const base = `look-${name}`;
    const id = kind === 'off' ? this.#setting.named(base, step) : { id: this.#setting.unused(base) };
    this.act(this.#setting.step({ ...id, ...step }));
  }
}

const gloveOn = (body: Body, side: Side): ItemId | undefined =>
  body.layers.findLast((layer) => layer.side === side && itemKind(layer.item).group === 'glove')?.item;

/** Garments and foot covers on the chairs where they sat down, for the rule of the two chairs. */
function chairsAfter(chairs: string, performed: readonly Performed[]): string {
  const sat = performed.flatMap(({ step, after }) => {
    const body = after.bodies[step.who];
    const fouled = body?.layers.some(({ item }) =>
      ['gown', 'coverall', 'apron', 'foot-cover'].includes(itemKind(item).group),
    );
    return step.action === 'sit' && fouled ? [step.fixture ?? ''] : [];
  });
  return sat.length === 0 ? chairs : [...chairs.split(' ').filter(Boolean), ...sat].sort().join(' ');
}

/** The move's own steps; undefined where one of them cannot be done. */
function bodyOf(setting: Setting, node: Node, draft: Draft, who: string): Course | undefined {
  const course = new Course(setting, node.scene);
  for (const [at, step] of draft.steps.entries()) {
    if (step === 'rub') {
      if (at < draft.steps.length - 1) course.rub(who, draft.name);
    } else if (step === 'look') course.look(who, draft);
    else if (!course.act(step)) return undefined;
  }
  return course;
}

/** Hygiene after it: of each helper whose hands met something, and of the one who is undressed. */
function rubAfter(setting: Setting, course: Course, draft: Draft, who: string, number: string): void {
  const doers = course.performed.flatMap(({ step }) => [step.who, step.helper ?? step.who]);
  const last = (person: string): number =>
    course.performed.findLastIndex(({ step }) => step.action === 'sanitise' && step.who === person);
  for (const person of new Set([...doers.filter((one) => one !== who), who])) {
    const asked = person === who && draft.steps.at(-1) === 'rub';
    if (asked || handsMet(setting, course.performed.slice(last(person) + 1), person))
      course.rub(person, number);
  }
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

/** Whose hands are clean since, and did nothing after it. */
function cleanAfter(setting: Setting, clean: string, performed: readonly Performed[]): string {
  const people = new Set(clean.split(' ').filter(Boolean));
  for (const { id } of setting.procedure.people) {
    const last = performed.findLastIndex(({ step }) => step.action === 'sanitise' && step.who === id);
    const since = performed.slice(last + 1);
    const dressed = since.some(({ step }) => step.action === 'put-on' && step.who === id);
    if (dressed || handsMet(setting, since, id)) people.delete(id);
    else if (last >= 0) people.add(id);
  }
  return [...people].sort().join(' ');
}

function flagsAfter({ flags }: Node, draft: Draft, performed: readonly Performed[]): Flags {
  const ended = draft.kind === 'end';
  return {
    ...flags,
    ...draft.after,
    begun: draft.kind === 'begin' || (flags.begun && !ended),
    chairs: ended ? '' : chairsAfter(flags.chairs, performed),
  };
}

function arcFor(growing: Growing, node: Node, draft: Draft, who: string): void {
  const { setting } = growing;
  const course = bodyOf(setting, node, draft, who);
  if (!course) return;
  const flags = flagsAfter(node, draft, course.performed);
  const rank = rankOf(course.scene, flags, setting.subjects[flags.subject]);
  rubAfter(setting, course, draft, who, String(rank));
  const { performed } = course;
  const after = { ...flags, clean: cleanAfter(setting, node.flags.clean, performed) };
  const conduct = growing.conducts.adds(node, performed, flags.subject);
  const { allowed } = setting;
  if (allowed && conduct.rules.some((rule) => !allowed.has(rule))) return;
  const arc: { -readonly [Key in keyof Arc]: Arc[Key] } = {
    draft,
    from: node,
    to: node,
    performed,
    operations: performed.flatMap((one) => one.operations),
    seconds: secondsOf(performed),
    departures: conduct.unaccepted,
  };
  arc.to = nodeFor(growing, course.scene, after, arc);
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

/** All scenes that admissible moves lead to, breadth first, up to `most` of them. */
export function graphOf(setting: Setting, most: number): Graph {
  const growing: Growing = {
    setting,
    nodes: [],
    known: new Map(),
    scenes: new Map(),
    conducts: conductsOf(setting),
  };
  nodeFor(growing, setting.machine.start.scene, FIRST, undefined);
  for (let at = 0; at < growing.nodes.length; at += 1) {
    if (growing.nodes.length > most) return { setting, nodes: growing.nodes, whole: false };
    const node = growing.nodes[at];
    if (node && !node.done) grow(growing, node);
  }
  return { setting, nodes: growing.nodes, whole: true };
}
