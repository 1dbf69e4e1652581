// One move of a technique, performed in a frame: contacts and cleaning here, the rest in dress.ts and posture.ts.
import type { Condition, Move } from '../domain/moves.ts';
import { product } from '../domain/products.ts';
import { type Fixture, workedBy } from '../domain/room.ts';
import { usesHelper } from '../domain/techniques/index.ts';
import { fasten, look, putOn, takeOff } from './dress.ts';
import {
  actor,
  clean,
  contact,
  creditFor,
  type Frame,
  helper,
  itemAt,
  owner,
  problem,
  replace,
  slipEvent,
  surface,
} from './frame.ts';
import type { Credit } from './performed.ts';
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

/**
 * A slip of the helper's hand or foot is the helper's, and another than the same slip of the one who is helped; one of the
 * hand of whoever wears the item is theirs, though somebody else does the step.
 */
function guardOf(frame: Frame, move: Extract<Move, { do: 'touch' }>): Guard {
  if (move.slip === undefined) return ALWAYS;
  const whose = move.a.at === 'hand' || move.a.at === 'place' ? move.a.whose : undefined;
  const who = frame.step.helper;
  if (whose === 'helper' && who !== undefined) return [slipEvent(frame, move.slip, { apart: 'helper', who })];
  const own = move.a.at === 'hand' && whose === 'owner' ? { who: owner(frame).id } : {};
  return [slipEvent(frame, move.slip, own)];
}

/** A part meets what lies beneath it at its own places; anything else meets everything named. */
function forPairs(
  frame: Frame,
  move: Extract<Move, { do: 'touch' }>,
  each: (a: string, b: string) => void,
): void {
  if (move.a.at === 'part' && move.b.at === 'beneath') {
    const { item } = move.b;
    for (const part of partsOf(frame, item, move.a.parts, move.a.side))
      for (const below of under(frame, item, part.places)) each(part.id, below);
    return;
  }
  const others = resolve(frame, move.b);
  for (const a of resolve(frame, move.a)) for (const b of others) each(a, b);
}

/** A helper whose part in it is not written down has a hand wherever the hands of the doer are: in doubt, contaminated. */
function touchMove(frame: Frame, move: Extract<Move, { do: 'touch' }>): void {
  meet(frame, move);
  const { a, b } = move;
  if (!helper(frame) || a.at !== 'hand' || a.whose !== 'actor' || usesHelper(frame.technique)) return;
  if (b.at === 'part' || b.at === 'beneath') meet(frame, { ...move, a: { ...a, whose: 'helper' } });
}

function meet(frame: Frame, move: Extract<Move, { do: 'touch' }>): void {
  if (!workedAs(frame, move)) return;
  let when: Guard | undefined;
  forPairs(frame, move, (a, b) => {
    when ??= guardOf(frame, move);
    contact(frame, surface(frame, a), surface(frame, b), when);
  });
}

/** What the step's product is credited with on this surface, if it works on the agent. */
function creditOf(frame: Frame, id: string, target: number, sprayed: boolean): Credit | undefined {
  if (!frame.step.product) return undefined;
  if (sprayed && !frame.procedure.policy.creditSpraying) return undefined;
  const credit = creditFor(frame, target, frame.step.product);
  if (product(credit.product).suits.includes(credit.material)) return credit;
  problem(frame, 'product-unsuited', { product: credit.product, surface: id });
  return undefined;
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
    const target = surface(frame, id);
    const credit = creditOf(frame, id, target, move.sprayed ?? false);
    clean(frame, target, credit, () =>
      move.fails.map(
        (what): Guard => [slipEvent(frame, what, { apart: side, ...(credit ? { credit } : {}) })],
      ),
    );
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
