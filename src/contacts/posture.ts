// How a person sits, stands, walks and bends: where the feet are, and what an open garment's edge meets.
import { itemKind } from '../domain/items.ts';
import { coveredBy, outermost, partSurface } from './body.ts';
import { actor, contact, type Frame, problem, replace, slipEvent, surface } from './frame.ts';
import type { Guard } from './plan.ts';
import { fixtureFor, resolve } from './resolve.ts';

/** Bending down, an open garment's edge meets what is beneath it. */
export function bend(frame: Frame): void {
  const body = actor(frame);
  body.layers.forEach((layer, index) => {
    const kind = itemKind(layer.item);
    if (layer.fastened || kind.closure !== 'zip') return;
    const when: Guard = [slipEvent(frame, 'edge-curls')];
    for (const part of kind.parts.filter(
      (candidate) => candidate.id === 'front' || candidate.id === 'collar',
    )) {
      const edge = surface(frame, partSurface(body.id, layer, part));
      for (const place of coveredBy(layer, part)) {
        const below = outermost(body, place, index);
        if (below) contact(frame, edge, surface(frame, below), when);
      }
      for (const id of resolve(frame, { at: 'hand', whose: 'actor', which: 'both' })) {
        contact(frame, edge, surface(frame, id), when);
      }
    }
  });
}

export function sitDown(frame: Frame): void {
  const fixture = fixtureFor(frame, undefined);
  if (fixture?.kind !== 'chair') problem(frame, 'not-a-seat', { fixture: frame.step.fixture ?? '' });
  else replace(frame, { ...actor(frame), seated: fixture.id });
}

export function standUp(frame: Frame): void {
  const { seated: _, ...body } = actor(frame);
  const standing = frame.step.fixture ?? `${body.zone}-floor`;
  const zone = frame.procedure.fixtures.find((fixture) => fixture.id === standing)?.zone ?? body.zone;
  replace(frame, { ...body, standing, zone });
}

/** Into another zone, or onto a mat: the feet's contact follows at the end of the step. */
export function go(frame: Frame): void {
  const { seated: _, ...body } = actor(frame);
  const target = frame.procedure.fixtures.find((fixture) => fixture.id === frame.step.fixture);
  const onto = target && (target.kind === 'mat' || target.kind === 'floor') ? target : undefined;
  const zone = onto?.zone ?? frame.step.zone ?? body.zone;
  replace(frame, { ...body, zone, standing: onto?.id ?? `${zone}-floor` });
}
