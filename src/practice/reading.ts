// A compiled procedure read step by step the way a practice rule asks: whose hands meet something, whose hands are
// cleaned, what comes off whom. Contacts are taken from the plan, so a new technique needs no new rule.
import type { Compiled, Performed } from '../contacts/interpret.ts';
import { type Body, outermost } from '../contacts/body.ts';
import { bodyIn, type Scene } from '../contacts/scene.ts';
import type { ActionId } from '../domain/actions.ts';
import { type ItemGroup, type ItemId, itemKind } from '../domain/items.ts';
import { type Side, SIDES } from '../domain/places.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Technique } from '../domain/techniques/index.ts';

/** One step, performed. */
export interface Moment {
  readonly index: number;
  readonly step: Step;
  readonly technique: Technique;
  /** Whose items it is done to. */
  readonly owner: string;
  readonly before: Scene;
  readonly after: Scene;
  /** People whose hands meet something in it though nobody slips. */
  readonly touching: ReadonlySet<string>;
  /** Whose hands it cleans, bare or gloved. */
  readonly cleans: string | undefined;
}

export interface Reading {
  readonly procedure: Procedure;
  readonly moments: readonly Moment[];
  /** Those that are asked about: the last of `moments`, or all. A rule about the whole is asked of all of them anyway. */
  readonly asked: readonly Moment[];
}

/** Actions done by the doer's hands whatever the technique. */
const BY_HAND: ReadonlySet<ActionId> = new Set(['remove', 'put-on', 'unfasten', 'fasten', 'wipe', 'touch']);

/** Face covers with straps and a seal; a surgical mask has neither. */
export const RESPIRATORS: readonly ItemId[] = ['n95-respirator', 'ffp2-respirator', 'ffp3-respirator'];

export const groupOf = (item: ItemId): ItemGroup => itemKind(item).group;

/** The outermost glove on a hand; undefined when it is bare. */
export const gloveOn = (body: Body, side: Side): ItemId | undefined =>
  body.layers.findLast((layer) => layer.side === side && groupOf(layer.item) === 'glove')?.item;

export const bareHands = (body: Body): boolean => SIDES.every((side) => gloveOn(body, side) === undefined);

/** Surface ids of a person's hands as they are before or after a step. */
const handsOf = (scene: Scene, person: string): readonly (string | undefined)[] =>
  SIDES.map((side) => outermost(bodyIn(scene, person), `hand.${side}`));

type Surfaces = Compiled['plan']['surfaces'];

/** Surfaces that the step brings into contact though nobody slips. */
function metIn(surfaces: Surfaces, performed: Performed): ReadonlySet<string | undefined> {
  const met = new Set<string | undefined>();
  for (const operation of performed.operations) {
    if (operation.op !== 'contact' || operation.when.length > 0) continue;
    met.add(surfaces[operation.a]?.id);
    met.add(surfaces[operation.b]?.id);
  }
  return met;
}

function touchingIn(surfaces: Surfaces, step: Step, performed: Performed): ReadonlySet<string> {
  const met = metIn(surfaces, performed);
  const { before, after } = performed;
  const people = [step.who, step.of, step.helper].filter((person) => person !== undefined);
  const touching = people.filter((person) =>
    [...handsOf(before, person), ...handsOf(after, person)].some(
      (hand) => hand !== undefined && met.has(hand),
    ),
  );
  return new Set(BY_HAND.has(step.action) ? [step.who, ...touching] : touching);
}

/** Variants of a procedure share most of their performed steps, and each is read only once. */
const KNOWN = new WeakMap<Performed, ReadonlySet<string>>();

function touchingOnce(surfaces: Surfaces, step: Step, performed: Performed): ReadonlySet<string> {
  const touching = KNOWN.get(performed) ?? touchingIn(surfaces, step, performed);
  KNOWN.set(performed, touching);
  return touching;
}

/** Rubbed, washed, or wiped as the gloves that are outermost. */
function cleanedIn(step: Step, before: Scene): string | undefined {
  if (step.action === 'sanitise') return step.who;
  const owner = step.of ?? step.who;
  const [item] = step.items;
  if (step.action !== 'wipe' || item === undefined || step.side !== undefined) return undefined;
  return SIDES.every((side) => gloveOn(bodyIn(before, owner), side) === item) ? owner : undefined;
}

/** `step` as the procedure has it, `performed` as it was worked out, at this index. */
export function momentOf(surfaces: Surfaces, step: Step, performed: Performed, index: number): Moment {
  const { technique, before, after } = performed;
  const touching = touchingOnce(surfaces, step, performed);
  const cleans = cleanedIn(step, before);
  return { index, step, technique, owner: step.of ?? step.who, before, after, touching, cleans };
}

export function read({ procedure, performed, plan }: Compiled): Reading {
  const moments = procedure.steps.flatMap((step, index): readonly Moment[] => {
    const done = performed[index];
    return done ? [momentOf(plan.surfaces, step, done, index)] : [];
  });
  return { procedure, moments, asked: moments };
}

/** Pairs of gloves a person starts with. Two mark the ensembles for viral haemorrhagic fever. */
export function glovePairs(reading: Reading, person: string): number {
  const worn = reading.procedure.people.find((candidate) => candidate.id === person)?.wears ?? [];
  return worn.filter((item) => groupOf(item) === 'glove').length;
}

/** People in two pairs of gloves, for rules published for that ensemble only. */
export const inTwoPairs = (reading: Reading): readonly string[] =>
  reading.procedure.people.map((person) => person.id).filter((id) => glovePairs(reading, id) > 1);

/** Items of these groups that the step takes off. */
export function takenOff(moment: Moment, groups?: readonly ItemGroup[]): readonly ItemId[] {
  if (moment.step.action !== 'remove') return [];
  return moment.step.items.filter((item) => !groups || groups.includes(groupOf(item)));
}

export const putOn = (moment: Moment, groups: readonly ItemGroup[]): readonly ItemId[] =>
  moment.step.action === 'put-on' ? moment.step.items.filter((item) => groups.includes(groupOf(item))) : [];

const handAct = (moment: Moment, person: string): boolean =>
  moment.cleans === person || moment.touching.has(person);

/** The first moment after step `from` that fits; moments stand at their step's index. */
export function nextMoment(
  { moments }: Reading,
  from: number,
  fits: (moment: Moment) => boolean,
): Moment | undefined {
  for (let at = from + 1; at < moments.length; at += 1) if (fits(moments[at]!)) return moments[at];
  return undefined;
}

/** The next step in which the person's hands touch anything or are cleaned. */
export const nextHandAct = (reading: Reading, from: number, person: string): Moment | undefined =>
  nextMoment(reading, from, (moment) => handAct(moment, person));

export const lastHandAct = (reading: Reading, before: number, person: string): Moment | undefined =>
  reading.moments.findLast((moment) => moment.index < before && handAct(moment, person));

/** Left then right of the same item: one act in two steps. */
export const otherSideOf = (one: Moment, two: Moment | undefined): boolean =>
  two !== undefined &&
  one.step.action === two.step.action &&
  one.owner === two.owner &&
  one.step.side !== undefined &&
  two.step.side !== undefined &&
  one.step.side !== two.step.side &&
  one.step.items[0] === two.step.items[0];

const POWERED: readonly ItemGroup[] = ['blower', 'powered-hood'];

/** Same item, or parts of one powered respirator, which the training module takes off in one step (page 10). */
export function sameAct(one: Moment, two: Moment): boolean {
  const powered = (moment: Moment) => moment.step.items.some((item) => POWERED.includes(groupOf(item)));
  const shared = one.step.items.some((item) => two.step.items.includes(item));
  return one.owner === two.owner && (shared || (powered(one) && powered(two)));
}
