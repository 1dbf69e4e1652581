// The logbook: every visit to the patient's room, as facts by visit. The state is a set of facts, whatever order they arrive
// in (two devices, one of them out of reach; entries written down afterwards), and stays are worked out from it.
// Visits lie in drawers by their id, so that an entry copies one drawer and not years of them.
import type { View } from '../fold.ts';
import type { Seen } from '../reading.ts';
import { type Guided, guidedBy } from './guided.ts';
import { onceEach } from './onceEach.ts';
import { type Fact, ROOM_KINDS, type RoomKind, type Stay, stayOf } from './stay.ts';

type Drawer = Readonly<Record<string, readonly Fact[]>>;

export type RoomState = {
  readonly drawers: Readonly<Record<string, Drawer>>;
  /** Exits that are drills; a donning read aloud has the id of the visit that it begins. */
  readonly drills: Readonly<Record<string, true>>;
  /** Exits for real that go on: who is there by their own entries. */
  readonly guided: Readonly<Record<string, Guided>>;
};

const DRAWERS = 64;

const drawerOf = (visit: string): string => {
  let sum = 0;
  for (const letter of visit) sum = (sum * 31 + (letter.codePointAt(0) ?? 0)) % 65_521;
  return String(sum % DRAWERS);
};

const own = <Value>(record: Readonly<Record<string, Value>>, key: string): Value | undefined =>
  Object.hasOwn(record, key) ? record[key] : undefined;

function added(state: RoomState, fact: Fact): RoomState {
  const { visit } = fact.body;
  const key = drawerOf(visit);
  const drawer = own(state.drawers, key) ?? {};
  const facts = own(drawer, visit) ?? [];
  return { ...state, drawers: { ...state.drawers, [key]: { ...drawer, [visit]: [...facts, fact] } } };
}

const isOfRooms = (entry: Seen): entry is Extract<Seen, { readonly kind: RoomKind }> =>
  (ROOM_KINDS as readonly string[]).includes(entry.kind);

/** What an entry says of a visit by itself. */
function told(state: RoomState, entry: Seen): RoomState {
  const { at, by, hash } = entry;
  if (isOfRooms(entry)) {
    const { kind, body } = entry;
    return added(state, { kind, at, by, hash, body } as Fact);
  }
  if (entry.kind === 'exit.started' && entry.body.drill)
    return { ...state, drills: { ...state.drills, [entry.body.exit]: true } };
  // Handed over in the middle of a donning that is read aloud: whoever watches then watches the visit too.
  if (entry.kind === 'exit.handed-over' && entry.body.role === 'observer') {
    const body = { visit: entry.body.exit, observer: entry.body.to, happened: at, late: null };
    return added(state, { kind: 'room.observer-changed', at, by, hash, body });
  }
  return state;
}

/** The exit that an entry belongs to; a donning's has the id of the visit that it begins. */
function exitOf({ kind, body }: Seen): string | undefined {
  if (kind === 'room.entered') return body.visit;
  return kind === 'exit.started' || kind === 'exit.handed-over' || kind === 'exit.ended'
    ? body.exit
    : undefined;
}

function next(state: RoomState, entry: Seen): RoomState {
  const after = told(state, entry);
  const exit = exitOf(entry);
  if (exit === undefined) return after;
  const { guided, facts } = guidedBy(own(state.guided, exit), entry);
  const { [exit]: _, ...others } = state.guided;
  const going = guided === undefined ? others : { ...others, [exit]: guided };
  return facts.reduce(added, { ...after, guided: going });
}

export const roomView: View<RoomState> = {
  name: 'room',
  version: 4,
  start: { drawers: {}, drills: {}, guided: {} },
  kinds: [...ROOM_KINDS, 'exit.started', 'exit.handed-over', 'exit.ended'],
  next,
};

const enteredFirst = (a: Stay, b: Stay): number => {
  const [one, other] = [a.entered ?? a.left ?? '', b.entered ?? b.left ?? ''];
  if (one !== other) return one < other ? -1 : 1;
  return a.visit < b.visit ? -1 : 1;
};

/** All of them, by when they began; of those without a way in, by their end. */
export const staysOf = ({ drawers, drills }: RoomState): readonly Stay[] =>
  onceEach(
    Object.values(drawers)
      .flatMap((drawer) => Object.entries(drawer))
      .flatMap(([visit, facts]) => stayOf(facts, own(drills, visit) === true) ?? [])
      .toSorted(enteredFirst),
  ).toSorted(enteredFirst);

export interface RoomNow {
  /** The longest inside first. */
  readonly inside: readonly Stay[];
  /** People who went in twice without coming out: a way out was not recorded. */
  readonly twice: readonly string[];
  /** Visits that ended without having begun: the way in was not recorded or has not arrived. */
  readonly unopened: readonly string[];
}

export const isInside = ({ entered, left, undone }: Stay): boolean =>
  entered !== null && left === null && !undone;

export function roomNow(state: RoomState): RoomNow {
  const stays = staysOf(state);
  const inside = stays.filter(isInside);
  const people = inside.map(({ person }) => person);
  return {
    inside,
    twice: [...new Set(people.filter((person, index) => people.indexOf(person) !== index))],
    unopened: stays.filter(({ entered, undone }) => entered === null && !undone).map(({ visit }) => visit),
  };
}
