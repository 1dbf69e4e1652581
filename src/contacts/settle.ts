// What happens at the end of a step without being told: gloves with a hole leak, soles stand on something, soaked mats
// clean them, and what was taken off leaves.
import { SIDES } from '../domain/places.ts';
import { type Body, outermost, partSurface } from './body.ts';
import { itemKind } from '../domain/items.ts';
import { type ProductId, works } from '../domain/products.ts';
import { contact, type Frame, present, slipEvent } from './frame.ts';
import { ALWAYS, type Guard } from './plan.ts';
import { fixtureSurface } from './resolve.ts';
import { bodyIn } from './scene.ts';

/** Outside of a holed glove to the layer beneath the hand, outer layers first. */
export function leaks(frame: Frame, body: Body): void {
  for (let index = body.layers.length - 1; index >= 0; index -= 1) {
    const layer = body.layers[index];
    if (!layer?.hole || !layer.side) continue;
    const outside = itemKind(layer.item).parts[0];
    const below = outermost(body, `hand.${layer.side}`, index);
    if (outside && below) {
      const surface = frame.registry.surface(partSurface(body.id, layer, outside));
      contact(frame, surface, frame.registry.surface(below), layer.hole);
    }
  }
}

/** Feet on the floor or the mat; lifted while seated. */
export function footing(frame: Frame, body: Body): void {
  if (body.seated !== undefined) return;
  const fixture = frame.procedure.fixtures.find((candidate) => candidate.id === body.standing);
  if (!fixture) return;
  const ground = frame.registry.surface(fixtureSurface(fixture));
  for (const side of SIDES) {
    const sole = outermost(body, `sole.${side}`);
    if (sole === undefined) continue;
    contact(frame, frame.registry.surface(sole), ground, ALWAYS);
    if (fixture.product) soak(frame, frame.registry.surface(sole), fixture.product as ProductId, body);
  }
}

function soak(frame: Frame, sole: number, productId: ProductId, body: Body): void {
  const credited = works(productId, frame.agent, 'equipment');
  const slip = slipEvent(frame, 'wipe-too-short', `${body.id}-mat`);
  const failure: readonly Guard[] = credited ? [[slip]] : [ALWAYS];
  frame.operations.push({ op: 'sanitise', a: sole, failure });
}

/** Ends the step for everybody who took part. */
export function settle(frame: Frame): void {
  for (const person of present(frame)) {
    const body = bodyIn(frame.scene, person);
    leaks(frame, body);
    footing(frame, body);
  }
  for (const surface of frame.gone) frame.operations.push({ op: 'retire', a: surface });
}
