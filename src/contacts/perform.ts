// One move of a technique, performed in a frame: contacts and cleaning here, the rest in dress.ts and posture.ts.
import type { Condition, Move } from '../domain/moves.ts';
import { product, works } from '../domain/products.ts';
import { type Fixture, workedBy } from '../domain/room.ts';
import { fasten, look, putOn, takeOff } from './dress.ts';
import { actor, contact, type Frame, helper, itemAt, owner, problem, replace, slipEvent } from './frame.ts';
import { ALWAYS, type Guard } from './plan.ts';
import { bend, go, sitDown, standUp } from './posture.ts';
import { fixtureFor, partsOf, resolve, under } from './resolve.ts';
import { leaks } from './settle.ts';

function applies(frame: Frame, only: Condition | undefined): boolean {
  if (!only) return true;
  const item = itemAt(frame, 0);
  if (only.fastened !== undefined) {
    const layer = owner(frame).layers.find((candidate) => candidate.item === item);
    if ((layer?.fastened ?? false) !== only.fastened) return false;
  }
  if (only.helped !== undefined && (helper(frame) !== undefined) !== only.helped) return false;
  return only.seated === undefined || (actor(frame).seated !== undefined) === only.seated;
}

/** Contacts with a fixture count only where it is worked the way the move says. */
function workedAs(frame: Frame, move: Extract<Move, { do: 'touch' }>): boolean {
  if (!move.only?.worked) return true;
  const fixture = move.b.at === 'fixture' ? fixtureFor(frame, move.b.kind) : undefined;
  return fixture !== undefined && workedBy(fixture) === move.only.worked && gives(frame, fixture, move.only);
}

/** Whether the product is had from this fixture: by its kind, or because the step says so. */
const gives = (frame: Frame, fixture: Fixture, { product: products }: Condition): boolean =>
  !products ||
  fixture.id === frame.step.fixture ||
  (frame.step.product !== undefined && products.includes(frame.step.product));

/** A slip of the helper's hand or foot is the helper's, and another than the same slip of the one who is helped. */
function guardOf(frame: Frame, move: Extract<Move, { do: 'touch' }>): Guard {
  if (move.slip === undefined) return ALWAYS;
  const helping = 'whose' in move.a && move.a.whose === 'helper';
  return [helping ? slipEvent(frame, move.slip, 'helper', frame.step.helper) : slipEvent(frame, move.slip)];
}

/** A part meets what lies beneath it at its own places; anything else meets everything named. */
function pairs(frame: Frame, move: Extract<Move, { do: 'touch' }>): readonly (readonly [string, string])[] {
  if (move.a.at === 'part' && move.b.at === 'beneath') {
    const item = move.b.item;
    return partsOf(frame, item, move.a.parts, move.a.side).flatMap((part) =>
      under(frame, item, part.places).map((below) => [part.id, below] as const),
    );
  }
  const others = resolve(frame, move.b);
  return resolve(frame, move.a).flatMap((a) => others.map((b) => [a, b] as const));
}

function touchMove(frame: Frame, move: Extract<Move, { do: 'touch' }>): void {
  if (!workedAs(frame, move)) return;
  const found = pairs(frame, move);
  if (found.length === 0) return;
  const when = guardOf(frame, move);
  for (const [a, b] of found) contact(frame, frame.registry.surface(a), frame.registry.surface(b), when);
}

/** Whether cleaning with the step's product counts on this surface for this agent. */
function credited(frame: Frame, surface: number, sprayed: boolean): boolean {
  if (!frame.step.product) return false;
  if (sprayed && !frame.procedure.policy.creditSpraying) return false;
  const material = frame.registry.material(surface);
  const suited = product(frame.step.product).suits.includes(material);
  if (!suited)
    problem(frame, 'product-unsuited', {
      product: frame.step.product,
      surface: frame.registry.surfaces[surface]?.id ?? '',
    });
  return suited && works(frame.step.product, frame.agent, material);
}

/** What is cleaned: the whole of it, or only the part that the step names. */
function cleaned(frame: Frame, { what }: Extract<Move, { do: 'clean' }>): readonly string[] {
  const { part } = frame.step;
  if (what.at !== 'part' || part === undefined) return resolve(frame, what);
  return partsOf(frame, what.item, [part], what.side).map((found) => found.id);
}

function cleanMove(frame: Frame, move: Extract<Move, { do: 'clean' }>): void {
  const found = cleaned(frame, move);
  // What the hand met on the way to the product has gone through the hole by then.
  if (frame.operations.length > 0) leaks(frame, actor(frame));
  const side = 'side' in move.what && move.what.side !== 'both' ? move.what.side : '';
  for (const id of found) {
    const surface = frame.registry.surface(id);
    const counts = credited(frame, surface, move.sprayed ?? false);
    const failure = counts ? move.fails.map((what): Guard => [slipEvent(frame, what, side)]) : [ALWAYS];
    frame.operations.push({ op: 'sanitise', a: surface, failure });
  }
}

type Handler<Kind extends Move['do']> = (frame: Frame, move: Extract<Move, { do: Kind }>) => void;

const HANDLERS: { readonly [Kind in Move['do']]: Handler<Kind> } = {
  touch: touchMove,
  clean: cleanMove,
  off: takeOff,
  on: putOn,
  open: (frame) => fasten(frame, false),
  close: (frame) => fasten(frame, true),
  look: (frame, move) => look(frame, move.misses),
  bend,
  sit: sitDown,
  stand: standUp,
  go,
  wet: (frame) => replace(frame, { ...actor(frame), wet: true }),
  dry: (frame) => replace(frame, { ...actor(frame), wet: false }),
};

/** Performs one move. Problems are noted and the rest goes on as far as it can. */
export function perform(frame: Frame, move: Move): void {
  if (applies(frame, move.only)) (HANDLERS[move.do] as Handler<Move['do']>)(frame, move);
}
