// Who is in the patient's room now, and since when. A visit ends by its id, so that an end which arrives before its
// beginning (two devices, one of them out of reach) still finds it.
import type { View } from '../fold.ts';
import type { Bodies } from '../kinds/index.ts';

export type Visit = {
  readonly visit: string;
  readonly person: string;
  readonly room: string;
  /** When the person went in. */
  readonly since: string;
  /** The unit's number of the entry that says so. */
  readonly unitNumber: number;
};

/** `ended` holds the ends whose beginning has not arrived. */
type RoomState = {
  readonly inside: Readonly<Record<string, Visit>>;
  readonly ended: Readonly<Record<string, string>>;
};

function without<Value>(record: Readonly<Record<string, Value>>, key: string) {
  const { [key]: _gone, ...rest } = record;
  return rest;
}

function entered(state: RoomState, body: Bodies['room.entered'], unitNumber: number): RoomState {
  const { visit, person, room, happened: since } = body;
  if (Object.hasOwn(state.ended, visit)) return { ...state, ended: without(state.ended, visit) };
  return { ...state, inside: { ...state.inside, [visit]: { visit, person, room, since, unitNumber } } };
}

function left(state: RoomState, { visit, happened }: Bodies['room.left']): RoomState {
  return Object.hasOwn(state.inside, visit)
    ? { ...state, inside: without(state.inside, visit) }
    : { ...state, ended: { ...state.ended, [visit]: happened } };
}

export const roomView: View<RoomState> = {
  name: 'room',
  version: 1,
  start: { inside: {}, ended: {} },
  kinds: ['room.entered', 'room.left'],
  next: (state, entry) => {
    if (entry.kind === 'room.entered') return entered(state, entry.body, entry.unitNumber);
    return entry.kind === 'room.left' ? left(state, entry.body) : state;
  },
};

export interface RoomNow {
  /** The longest inside first. */
  readonly inside: readonly Visit[];
  /** People who went in twice without coming out: a way out was not recorded. */
  readonly twice: readonly string[];
  /** Visits that ended without having begun: the way in was not recorded or has not arrived, or the way out came twice. */
  readonly unopened: readonly string[];
}

export function roomNow({ inside, ended }: RoomState): RoomNow {
  const visits = Object.values(inside).toSorted((a, b) => (a.since < b.since ? -1 : 1));
  const people = visits.map(({ person }) => person);
  return {
    inside: visits,
    twice: [...new Set(people.filter((person, index) => people.indexOf(person) !== index))],
    unopened: Object.keys(ended),
  };
}
