// What a step needs before it can be done: a helper within reach, a seat, a fixture that is there, bare or gloved hands.
import type { ActionId } from '../domain/actions.ts';
import type { Need } from '../domain/moves.ts';
import { SIDES } from '../domain/places.ts';
import { type Body, isBare } from './body.ts';
import { actor, type Frame, helper, owner, problem } from './frame.ts';

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
  mirror: (frame, body) => {
    if (!frame.procedure.fixtures.some((fixture) => fixture.kind === 'mirror' && fixture.zone === body.zone))
      problem(frame, 'fixture-missing', { fixture: 'mirror' });
  },
  'bare-hands': (frame, body) => {
    if (!SIDES.every((side) => isBare(body, side))) problem(frame, 'hand-gloved');
  },
  'gloved-hands': (frame, body) => {
    if (SIDES.some((side) => isBare(body, side))) problem(frame, 'hand-bare');
  },
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

/** Notes every need of the step that is not met. It is the one who wears the item who sits or stands for it. */
export function checkNeeds(frame: Frame): void {
  needsPresence(frame);
  for (const need of frame.technique.needs ?? []) {
    CHECKS[need](frame, need === 'seated' || need === 'standing' ? owner(frame) : actor(frame));
  }
}
