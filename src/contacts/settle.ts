// What happens at the end of a step without being told: gloves with a hole leak, soles stand on something, soaked mats
// clean them, and what was taken off leaves.
import { SIDES } from '../domain/places.ts';
import { type Body, outermost, partSurface } from './body.ts';
import { itemKind } from '../domain/items.ts';
import { product, type ProductId } from '../domain/products.ts';
import { clean, contact, creditFor, type Frame, presentIn, slipEvent, surface } from './frame.ts';
import { ALWAYS } from './plan.ts';
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
      const holed = surface(frame, partSurface(body.id, layer, outside));
      for (const event of layer.hole) frame.events.push({ event });
      contact(frame, holed, surface(frame, below), layer.hole);
    }
  }
}

/** Feet on the floor or the mat; lifted while seated. */
export function footing(frame: Frame, body: Body): void {
  if (body.seated !== undefined) return;
  const fixture = frame.procedure.fixtures.find((candidate) => candidate.id === body.standing);
  if (!fixture) return;
  const ground = surface(frame, fixtureSurface(fixture));
  for (const side of SIDES) {
    const sole = outermost(body, `sole.${side}`);
    if (sole === undefined) continue;
    contact(frame, surface(frame, sole), ground, ALWAYS);
    if (fixture.product) soak(frame, surface(frame, sole), fixture.product as ProductId, body);
  }
}

function soak(frame: Frame, sole: number, productId: ProductId, body: Body): void {
  const credit = creditFor(frame, sole, productId);
  const suited = product(productId).suits.includes(credit.material);
  clean(frame, sole, suited ? credit : undefined, () => [
    [slipEvent(frame, 'wipe-too-short', { apart: `${body.id}-mat`, who: body.id, credit })],
  ]);
}

/** Who sits touches the seat with what is outermost now: a garment rolled down while seated bares what is under it. */
function seating(frame: Frame, body: Body): void {
  const seat = frame.procedure.fixtures.find((candidate) => candidate.id === body.seated);
  const seated = outermost(body, 'seat');
  if (seat && seated) contact(frame, surface(frame, seated), surface(frame, fixtureSurface(seat)), ALWAYS);
}

/** Ends the step for everybody who took part, and for the soles of those who stand where one of them stands. */
export function settle(frame: Frame): void {
  const bodies = presentIn(frame.step).map((person) => bodyIn(frame.scene, person));
  for (const body of bodies) {
    leaks(frame, body);
    seating(frame, body);
    footing(frame, body);
  }
  const trodden = new Set(bodies.filter((body) => body.seated === undefined).map((body) => body.standing));
  for (const body of Object.values(frame.scene.bodies))
    if (!bodies.includes(body) && trodden.has(body.standing)) footing(frame, body);
  for (const gone of frame.gone) frame.operations.push({ op: 'retire', a: gone });
}
