// What a step needs before it can be done: a helper within reach, a seat, a tap, an item that is still worn.
import type { ActionId } from '../domain/actions.ts';
import { type ItemKind, itemKind } from '../domain/items.ts';
import type { Need } from '../domain/moves.ts';
import { type Body, buriedUnder, fasteningUnder, indexOf } from './body.ts';
import { actor, type Frame, helper, isWorked, itemSides, owner, problem } from './frame.ts';
import { fixtureFor } from './resolve.ts';

function needsSeat(frame: Frame, body: Body): void {
  if (body.seated === undefined) problem(frame, 'not-seated');
  else if (frame.step.action === 'wipe') {
    const seat = frame.procedure.fixtures.find((fixture) => fixture.id === body.seated);
    if (seat && !seat.clean) problem(frame, 'dirty-seat', { fixture: seat.id });
  }
}

function needsOpen(frame: Frame): void {
  const item = frame.step.items[0];
  const layer = owner(frame).layers.find((candidate) => candidate.item === item);
  if (layer?.fastened) problem(frame, 'still-fastened', { item: item ?? '' });
}

const CHECKS: Readonly<Record<Need, (frame: Frame, body: Body) => void>> = {
  seated: needsSeat,
  standing: (frame, body) => {
    if (body.seated !== undefined) problem(frame, 'not-standing');
  },
  helper: (frame) => {
    if (!helper(frame)) problem(frame, 'helper-missing');
  },
  open: needsOpen,
};

/** Seen and heard across a line; everything else is done within reach. */
const AT_A_DISTANCE: ReadonlySet<ActionId> = new Set(['inspect', 'say']);

/** Within reach: in the same zone. */
function needsPresence(frame: Frame): void {
  if (AT_A_DISTANCE.has(frame.step.action)) return;
  const { zone } = actor(frame);
  const near = helper(frame);
  if (near && near.zone !== zone) problem(frame, 'helper-elsewhere', { person: near.id });
  if (owner(frame).zone !== zone) problem(frame, 'owner-elsewhere', { person: owner(frame).id });
  const fixture = frame.procedure.fixtures.find((candidate) => candidate.id === frame.step.fixture);
  const walks = ['move', 'stand', 'step-on'].includes(frame.step.action);
  if (fixture && fixture.zone !== zone && !walks)
    problem(frame, 'fixture-elsewhere', { fixture: fixture.id });
}

/** Washing needs a tap, the step's own or one where the hands are. */
function needsTap(frame: Frame): void {
  if (frame.step.product === 'soap-and-water' && !fixtureFor(frame, 'tap'))
    problem(frame, 'fixture-missing', { fixture: 'tap' });
}

/** What is wiped or touched must still be there, and what is wiped in sight; taking off and opening say so themselves. */
function needsWorn(frame: Frame): void {
  const { action, items } = frame.step;
  if (!['wipe', 'touch'].includes(action)) return;
  const body = owner(frame);
  for (const item of items)
    for (const side of itemSides(frame, 'both', item)) {
      const index = indexOf(body, item, side);
      if (index < 0) problem(frame, 'not-worn', { item, side: side ?? '', person: body.id });
      const by = action === 'wipe' ? buriedUnder(body, index) : undefined;
      if (by) problem(frame, 'held-by', { item, by, person: body.id });
    }
}

/** A unit and its hood hang together by the hose: neither leaves the other before that is off, nor is it on without both. */
function needsPartner(frame: Frame): void {
  const { action, items } = frame.step;
  const body = owner(frame);
  for (const { joins, joinedBy } of items.map((id): ItemKind => itemKind(id))) {
    const joined = body.layers.find(({ item, fastened }) => fastened && itemKind(item).group === joinedBy);
    if (action === 'remove' && joined) problem(frame, 'still-fastened', { item: joined.item });
    if (action === 'fasten' && joins && !body.layers.some(({ item }) => item === joins))
      problem(frame, 'not-worn', { item: joins, side: '', person: body.id });
  }
}

/** A fastening is worked only when nothing lies over it. */
function needsFastening(frame: Frame): void {
  const { action, items, part } = frame.step;
  const [item] = items;
  if (!item || !['unfasten', 'fasten'].includes(action)) return;
  const body = owner(frame);
  const over = new Set(
    body.layers.flatMap((layer, index) =>
      isWorked(frame, layer) ? (fasteningUnder(body, index, part) ?? []) : [],
    ),
  );
  for (const by of over) problem(frame, 'held-by', { item, by, person: body.id });
}

/** A cleaning that found nothing to clean, and not because it was not worn. */
export function checkCleaned(frame: Frame): void {
  const cleans = frame.technique.moves.some((move) => move.do === 'clean');
  const done = frame.operations.some((operation) => operation.op === 'sanitise');
  if (cleans && !done && !frame.problems.some(({ code }) => code === 'not-worn'))
    problem(frame, 'nothing-to-clean');
}

/** Notes every need of the step that is not met. It is the one who wears the item who sits or stands for it. */
export function checkNeeds(frame: Frame): void {
  needsPresence(frame);
  needsTap(frame);
  needsWorn(frame);
  needsFastening(frame);
  needsPartner(frame);
  for (const need of frame.technique.needs ?? []) {
    CHECKS[need](frame, need === 'seated' || need === 'standing' ? owner(frame) : actor(frame));
  }
}
