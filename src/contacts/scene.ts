// The scene: where everybody is and what they wear between two steps. Plain frozen data, so that a variant of a
// procedure can go on from any step, and equal scenes have equal keys.
import type { Procedure } from '../domain/procedure.ts';
import { type Body, bodyOf, type Layer } from './body.ts';

export interface Scene {
  readonly bodies: Readonly<Record<string, Body>>;
}

export function sceneOf(procedure: Procedure): Scene {
  return { bodies: Object.fromEntries(procedure.people.map((person) => [person.id, bodyOf(person)])) };
}

export function bodyIn(scene: Scene, person: string): Body {
  const body = scene.bodies[person];
  if (!body) throw new Error(`nobody called ${person}`);
  return body;
}

export function withBody(scene: Scene, body: Body): Scene {
  return { bodies: { ...scene.bodies, [body.id]: body } };
}

const layerKey = (layer: Layer): string =>
  `${layer.item}${layer.side?.[0] ?? ''}${layer.fastened ? '' : '*'}${layer.hole ? `(${layer.hole.join('&')})` : ''}`;

/** Equal for bodies with whom every step would do the same. */
export const bodyKey = (body: Body): string =>
  `${body.id}@${body.standing}/${body.seated ?? ''}/${body.wet ? 'w' : ''}:${body.layers.map(layerKey).join(' ')}`;
