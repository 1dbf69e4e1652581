// What goes on and comes off, opens and closes, and what an inspection is worth.
import { type ItemGroup, type ItemId, itemKind, type Part } from '../domain/items.ts';
import type { Move } from '../domain/moves.ts';
import { placeName, placeOn, type Side } from '../domain/places.ts';
import {
  blockedBy,
  type Body,
  coveredBy,
  covers,
  indexOf,
  type Layer,
  outermost,
  partSurface,
  reach,
  withLayers,
} from './body.ts';
import {
  contact,
  type Frame,
  isWorked,
  itemAt,
  itemSides,
  owner,
  problem,
  replace,
  slipEvent,
  surface,
} from './frame.ts';
import { ALWAYS } from './plan.ts';
import { leaks } from './settle.ts';

const surfacesOf = (
  frame: Frame,
  person: string,
  layer: { item: ItemId; side?: 'left' | 'right' },
): readonly number[] =>
  itemKind(layer.item).parts.map((part) => surface(frame, partSurface(person, layer, part)));

/**
 * A lining touches what it lies on for as long as it is worn; it counts when the item leaves. A part that hangs free
 * does not lie on anything, and of what sticks out (a glove from a cuff, a boot from a leg) the soiled end is not here.
 */
function lining(frame: Frame, index: number): void {
  const body = owner(frame);
  const layer = body.layers[index];
  if (!layer) return;
  const { parts } = itemKind(layer.item);
  const covered = parts.flatMap((part) => coveredBy(layer, part));
  const pressed = parts.filter((part: Part) => !part.loose).flatMap((part) => coveredBy(layer, part));
  const all = pressed.filter((place) => reach(body, place, index).every((spot) => covered.includes(spot)));
  for (const part of parts.filter(({ id }) => id.startsWith('inside'))) {
    const lined = part.lines ? all.filter((place) => part.lines?.includes(placeName(place))) : all;
    const inside = surface(frame, partSurface(body.id, layer, part));
    const below = [...new Set(lined.map((place) => outermost(body, place, index)))].filter(
      (id) => id !== undefined,
    );
    // Twice, because it went on all the time: what the last place gave the lining, the first one gets.
    for (const id of [...below, ...below]) contact(frame, inside, surface(frame, id), ALWAYS);
  }
}

export function takeOff(frame: Frame, move: Extract<Move, { do: 'off' }>): void {
  const item = itemAt(frame, move.item);
  if (!item) return;
  for (const side of itemSides(frame, move.side, item)) {
    const body = owner(frame);
    const index = indexOf(body, item, side);
    if (index < 0) {
      problem(frame, 'not-worn', { item, side: side ?? '', person: body.id });
      continue;
    }
    const holder = blockedBy(body, index, frame.step.items);
    if (holder) problem(frame, 'held-by', { item, by: holder, person: body.id });
    // A holed glove leaks what it met in this very step.
    leaks(frame, body);
    lining(frame, index);
    const layer = body.layers[index];
    if (layer) for (const gone of surfacesOf(frame, body.id, layer)) frame.gone.add(gone);
    replace(
      frame,
      withLayers(
        body,
        body.layers.filter((_, at) => at !== index),
      ),
    );
  }
}

/** Where a layer goes: on top of all, or under the first layer that covers the place where it tucks in. */
function positionOf(body: Body, layer: Layer): number {
  const { tucksAt, group } = itemKind(layer.item);
  if (!tucksAt) return body.layers.length;
  const place = placeOn(tucksAt, layer.side ?? body.hand);
  const over = body.layers.findIndex((other) => itemKind(other.item).group !== group && covers(other, place));
  return over < 0 ? body.layers.length : over;
}

/** Whether somebody wears what this item is meant to lie over. */
const hasBeneath = (body: Body, over: ItemGroup, side: Side | undefined): boolean =>
  body.layers.some((layer) => itemKind(layer.item).group === over && layer.side === side);

export function putOn(frame: Frame, move: Extract<Move, { do: 'on' }>): void {
  const item = itemAt(frame, move.item);
  if (!item) return;
  const { group, over } = itemKind(item);
  for (const side of itemSides(frame, move.side, item)) {
    const body = owner(frame);
    if (indexOf(body, item, side) >= 0) {
      problem(frame, 'already-worn', { item, side: side ?? '', person: body.id });
      continue;
    }
    if (over && !hasBeneath(body, over, side))
      problem(frame, 'no-glove-beneath', { side: side ?? '', person: body.id });
    const hole = group === 'glove' ? [slipEvent(frame, 'pinhole')] : undefined;
    const layer: Layer = { item, ...(side ? { side } : {}), fastened: false, ...(hole ? { hole } : {}) };
    replace(frame, withLayers(body, body.layers.toSpliced(positionOf(body, layer), 0, layer)));
  }
}

/** Opens or closes; of a pair only the side that the step names. A tie named by itself may follow another. */
export function fasten(frame: Frame, fastened: boolean): void {
  const item = itemAt(frame, 0);
  const body = owner(frame);
  if (!item) return;
  const { action, part, side } = frame.step;
  const meant = (layer: Layer): boolean => isWorked(frame, layer);
  if (!body.layers.some(meant)) {
    // A removal says so itself.
    if (action !== 'remove') problem(frame, 'not-worn', { item, side: side ?? '', person: body.id });
    return;
  }
  if (
    action === 'unfasten' &&
    part === undefined &&
    !body.layers.some((layer) => meant(layer) && layer.fastened)
  )
    problem(frame, 'already-open', { item });
  const change = (layer: Layer): Layer => (meant(layer) ? { ...layer, fastened } : layer);
  replace(frame, withLayers(body, body.layers.map(change)));
}

/** Whether the glove is the one that can be seen, and the one looked at where the step names one. */
const inSight = ({ step }: Frame, body: Body, layer: Layer): boolean =>
  layer.side !== undefined &&
  (step.items.length === 0 || step.items.includes(layer.item)) &&
  body.layers.findLast((other) => other.side === layer.side && itemKind(other.item).group === 'glove') ===
    layer;

/** After an inspection a hole matters only if it was missed. A glove under another is not seen. */
export function look(frame: Frame, misses: Extract<Move, { do: 'look' }>['misses']): void {
  const body = owner(frame);
  const change = (layer: Layer): Layer =>
    layer.hole && inSight(frame, body, layer)
      ? { ...layer, hole: [...layer.hole, slipEvent(frame, misses, { apart: layer.item })] }
      : layer;
  replace(frame, withLayers(body, body.layers.map(change)));
}
