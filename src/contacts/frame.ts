// The frame of one step while it is interpreted: who acts, on whom, with what, and the operations so far.
import type { ItemId } from '../domain/items.ts';
import { otherSide, type Side, SIDES } from '../domain/places.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Which, Whose } from '../domain/moves.ts';
import type { Agent } from '../domain/products.ts';
import type { SlipId } from '../domain/slips.ts';
import type { Technique } from '../domain/techniques/index.ts';
import type { Body, Layer } from './body.ts';
import { itemKind } from '../domain/items.ts';
import type { Guard, Operation } from './plan.ts';
import type { Problem, ProblemCode } from './problem.ts';
import type { Registry } from './registry.ts';
import { bodyIn, type Scene, withBody } from './scene.ts';

export interface Frame {
  readonly procedure: Procedure;
  readonly registry: Registry;
  readonly agent: Agent;
  readonly step: Step;
  readonly index: number;
  readonly technique: Technique;
  /** As the step begins. */
  readonly before: Scene;
  scene: Scene;
  readonly operations: Operation[];
  readonly problems: Problem[];
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
export const present = (frame: Frame): readonly string[] => [
  ...new Set([frame.step.who, frame.step.of ?? frame.step.who, frame.step.helper ?? frame.step.who]),
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
  frame.problems.push({ code, step: frame.index, params });
}

export function replace(frame: Frame, body: Body): void {
  frame.scene = withBody(frame.scene, body);
}

/** The event of a slip in this step; `apart` keeps two chances of the same slip in one step separate. */
export function slipEvent(frame: Frame, what: SlipId, apart = '', who = frame.step.who): number {
  const key = `${frame.step.id}:${what}${apart && `:${apart}`}`;
  const on = frame.step.items[0] ?? frame.step.fixture;
  return frame.registry.event(key, what, frame.index, who, on);
}

export function contact(frame: Frame, a: number, b: number, when: Guard): void {
  if (a !== b) frame.operations.push({ op: 'contact', a, b, when });
}
