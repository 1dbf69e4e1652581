// The frame of one step while it is interpreted: who acts, on whom, with what, and the operations so far.
import type { ItemId } from '../domain/items.ts';
import { otherSide, type Side, SIDES } from '../domain/places.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Which, Whose } from '../domain/moves.ts';
import type { ProductId } from '../domain/products.ts';
import type { SlipId } from '../domain/slips.ts';
import type { Technique } from '../domain/techniques/index.ts';
import type { Body, Layer } from './body.ts';
import { itemKind } from '../domain/items.ts';
import type { Asked, Credit } from './performed.ts';
import { ALWAYS, type Guard, type Operation } from './plan.ts';
import type { Problem, ProblemCode } from './problem.ts';
import type { Names } from './names.ts';
import { bodyIn, type Scene, withBody } from './scene.ts';

export interface Frame {
  readonly procedure: Procedure;
  readonly names: Names;
  readonly step: Step;
  readonly technique: Technique;
  /** As the step begins. */
  readonly before: Scene;
  scene: Scene;
  readonly operations: Operation[];
  readonly credits: [Operation, Credit][];
  readonly problems: Omit<Problem, 'step'>[];
  /** Surfaces, once each, and events, again and again, in the order in which the step asks about them. */
  readonly surfaces: number[];
  readonly events: Asked[];
  /** Surfaces of items that left in this step; retired at its end. */
  readonly gone: Set<number>;
}

export const actor = (frame: Frame): Body => bodyIn(frame.scene, frame.step.who);
export const owner = (frame: Frame): Body => bodyIn(frame.scene, frame.step.of ?? frame.step.who);
export const helper = (frame: Frame): Body | undefined =>
  frame.step.helper === undefined ? undefined : bodyIn(frame.scene, frame.step.helper);

export function bodyFor(frame: Frame, whose: Whose): Body | undefined {
  if (whose === 'helper') return helper(frame);
  return whose === 'owner' ? owner(frame) : actor(frame);
}

export const itemAt = (frame: Frame, item: number): ItemId | undefined => frame.step.items[item];

/** Everybody who takes part in the step. */
export const presentIn = ({ who, of, helper: helping }: Step): readonly string[] => [
  ...new Set([who, of ?? who, helping ?? who]),
];

/**
 * Sides of hands and items: of a pair, the side of the other hand goes first. Where the step names one side, that is the
 * first and there is no second to take off; the second hand is the one that works.
 */
export function sides(frame: Frame, which: Which, of: 'hand' | 'item', body: Body): readonly Side[] {
  const named = frame.step.side;
  const first = named ?? otherSide(owner(frame).hand);
  if (which === 'first') return [first];
  if (which === 'second') return named && of === 'item' ? [] : [otherSide(first)];
  if (which === 'dominant') return [body.hand];
  if (which === 'other') return [otherSide(body.hand)];
  return named && of === 'item' ? [named] : SIDES;
}

/** Sides of one of the step's items: a single `undefined` where it is no pair. */
export function itemSides(frame: Frame, which: Which, item: ItemId): readonly (Side | undefined)[] {
  return itemKind(item).pair ? sides(frame, which, 'item', owner(frame)) : [undefined];
}

/** Whether a layer is what the step works: its first item, of a pair only the side that the step names. */
export const isWorked = ({ step: { items, side } }: Frame, layer: Layer): boolean =>
  layer.item === items[0] && (side === undefined || layer.side === undefined || layer.side === side);

export function problem(frame: Frame, code: ProblemCode, params: Problem['params'] = {}): void {
  frame.problems.push({ code, params });
}

export function replace(frame: Frame, body: Body): void {
  frame.scene = withBody(frame.scene, body);
}

/** The number of a surface. */
export function surface(frame: Frame, id: string): number {
  const number = frame.names.surface(id);
  if (frame.names.isFirst(number, frame)) frame.surfaces.push(number);
  return number;
}

interface SlipOptions {
  /** Keeps two chances of the same slip in one step separate. */
  readonly apart?: string;
  readonly who?: string;
  /** A slip of a cleaning, which is none where the product does not work. */
  readonly credit?: Credit;
}

/** The event of a slip in this step. */
export function slipEvent(frame: Frame, what: SlipId, { apart = '', who, credit }: SlipOptions = {}): number {
  const on = frame.step.items[0] ?? frame.step.fixture;
  const event = frame.names.event(frame.step, {
    key: `${frame.step.id}:${what}${apart && `:${apart}`}`,
    what,
    who: who ?? frame.step.who,
    ...(on === undefined ? {} : { on }),
  });
  frame.events.push(credit ? { event, credit } : { event });
  return event;
}

/** The event of a circumstance: it is there from the start. */
export function circumstance(frame: Frame, what: SlipId, on: string): Guard {
  const event = frame.names.event(undefined, { key: `start:${what}:${on}`, what, on });
  frame.events.push({ event });
  return [event];
}

/** What a product does on a surface that it suits; nothing is credited to none. */
export const creditFor = (frame: Frame, target: number, product: ProductId): Credit => ({
  product,
  material: frame.names.material(target),
});

/** Cleans a surface; without credit, it may have failed whatever happened. */
export function clean(
  frame: Frame,
  target: number,
  credit: Credit | undefined,
  fails: () => readonly Guard[],
): void {
  const operation: Operation = { op: 'sanitise', a: target, failure: credit ? fails() : [ALWAYS] };
  frame.operations.push(operation);
  if (credit) frame.credits.push([operation, credit]);
}

export function contact(frame: Frame, a: number, b: number, when: Guard): void {
  if (a !== b) frame.operations.push({ op: 'contact', a, b, when });
}
