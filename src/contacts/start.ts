// Where contamination starts. In a doffing the outside of whatever faced the patient is contaminated, what looked away
// may be (a circumstance), what something encloses is not; the patient's floor and fixtures are, a cleaned
// doffing area is not until the first sole steps on it. The file's own statements win.
import { itemKind, type Part } from '../domain/items.ts';
import { PLACES, placeName, SIDES, TISSUE } from '../domain/places.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Fixture, Zone } from '../domain/room.ts';
import { fixtureKind, workedBy } from '../domain/room.ts';
import type { SlipId } from '../domain/slips.ts';
import { type Body, enclosed, type Layer, partSurface, withLayers } from './body.ts';
import { circumstance, type Frame, surface } from './frame.ts';
import { ALWAYS, type Guard } from './plan.ts';
import { fixtureSurface } from './resolve.ts';
import { withBody } from './scene.ts';
import { footing, leaks } from './settle.ts';

/** Taints by rule, unless the file states how the surface starts. */
function taint(frame: Frame, id: string, when: Guard): void {
  if (!frame.procedure.start.some((entry) => entry.surface === id)) soil(frame, id, when);
}

function soil(frame: Frame, id: string, when: Guard): void {
  frame.operations.push({ op: 'taint', a: surface(frame, id), when });
}

function taintPart(frame: Frame, body: Body, index: number, layer: Layer, part: Part): void {
  if (part.exposure === 'covered' || enclosed(body, index, part)) return;
  const id = partSurface(body.id, layer, part);
  const what = part.id === 'back' || part.id === 'seat' ? 'soiled-back' : 'soiled-strap';
  taint(frame, id, part.exposure === 'faces' ? ALWAYS : circumstance(frame, what, id));
}

/**
 * Whether somebody comes out of care: every wearer, and whoever else starts on the patient's side. A colleague who was in the
 * room and then helps is no less contaminated for being called an assistant.
 */
export const facedPatient = ({ kind, zones }: Procedure, { role, zone }: Body): boolean =>
  role === 'wearer' ||
  (kind === 'doffing' && zones.some(({ id, side }) => id === zone && side === 'patient'));

/**
 * Gloves worn in care may have worn through; gloves worn by helpers may have a pinhole. One event for a pair: the
 * published share is of pairs (Huebner 2013), and taking both hands as holed errs to 'may be contaminated'.
 */
function holed(frame: Frame, body: Body): Body {
  const what: SlipId = facedPatient(frame.procedure, body) ? 'worn-through' : 'pinhole';
  const change = (layer: Layer): Layer =>
    itemKind(layer.item).group === 'glove'
      ? { ...layer, hole: circumstance(frame, what, `${body.id}.${layer.item}`) }
      : layer;
  return withLayers(body, body.layers.map(change));
}

function startBody(frame: Frame, body: Body): void {
  if (frame.procedure.kind === 'donning') {
    for (const side of SIDES)
      taint(frame, `${body.id}.hand.${side}`, circumstance(frame, 'unclean-hands', body.id));
    return;
  }
  frame.scene = withBody(frame.scene, holed(frame, body));
  if (!facedPatient(frame.procedure, body)) return;
  body.layers.forEach((layer, index) => {
    for (const part of itemKind(layer.item).parts) taintPart(frame, body, index, layer, part);
  });
}

/** Dirty by use: what stands with the patient, the seat that is not the clean one, a lever worked by hand. */
function startFixture(frame: Frame, fixture: Fixture, zone: Zone | undefined): void {
  if (fixture.clean || frame.procedure.kind === 'donning') return;
  const id = fixtureSurface(fixture);
  if (zone?.side === 'patient')
    for (const part of fixtureKind(fixture.kind).parts) taint(frame, fixtureSurface(fixture, part), ALWAYS);
  else if (fixture.kind === 'chair') taint(frame, id, ALWAYS);
  else if (workedBy(fixture) === 'hand') taint(frame, id, circumstance(frame, 'dirty-lever', id));
}

function stated(frame: Frame): void {
  for (const { surface: id, state } of frame.procedure.start) {
    if (state === 'uncontaminated') continue;
    soil(frame, id, state === 'contaminated' ? ALWAYS : circumstance(frame, 'stated-maybe', id));
  }
}

/** Every protected surface is known from the start, so that 'nothing reaches it' can be said of it. */
function protectedOf(body: Body): readonly string[] {
  const skin = PLACES.filter((place) => TISSUE[placeName(place)]).map((place) => `${body.id}.${place}`);
  const underneath = body.layers.filter((layer) => itemKind(layer.item).underneath);
  const clothes = underneath.flatMap((layer) =>
    itemKind(layer.item).parts.map((part) => partSurface(body.id, layer, part)),
  );
  return [...skin, ...clothes];
}

function know(frame: Frame): void {
  const cleanSide = frame.procedure.fixtures.filter((fixture) => fixture.clean);
  const people = Object.values(frame.scene.bodies).flatMap((body) => protectedOf(body));
  for (const id of [...people, ...cleanSide.map((fixture) => fixtureSurface(fixture))]) surface(frame, id);
}

/** Fills the frame with the operations of the start, and its scene with worn-through gloves. */
export function begin(frame: Frame): void {
  know(frame);
  const zones = new Map(frame.procedure.zones.map((zone) => [zone.id, zone]));
  for (const body of Object.values(frame.scene.bodies)) startBody(frame, body);
  for (const fixture of frame.procedure.fixtures) startFixture(frame, fixture, zones.get(fixture.zone));
  stated(frame);
  for (const body of Object.values(frame.scene.bodies)) {
    leaks(frame, body);
    footing(frame, body);
  }
}
