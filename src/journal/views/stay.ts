// One visit to a room as all that was written of it makes it: when in, when out, as what, in what, watched by whom. Facts are
// kept as they were written and put in the order of the clocks that wrote them, so that the same facts make the same stay
// in whatever order they arrive. Where two of them disagree, the longer stay holds and a sign says so.
import type { Bodies } from '../kinds/index.ts';
import type { Asked, RoomRole } from '../kinds/rooms.ts';

export const ROOM_KINDS = ['room.entered', 'room.left', 'room.observer-changed', 'room.corrected'] as const;
export type RoomKind = (typeof ROOM_KINDS)[number];

/** What one entry says of a visit. `hash` is the entry's, which tells facts of one moment apart. */
export type FactOf<Kind extends RoomKind> = {
  readonly kind: Kind;
  readonly at: string;
  readonly by: string | null;
  readonly hash: string;
  readonly body: Bodies[Kind];
  /** The exit whose own entries say it; absent where somebody wrote it in the logbook. */
  readonly guided?: string;
};
export type Fact = { readonly [Kind in RoomKind]: FactOf<Kind> }[RoomKind];

type Entered = Bodies['room.entered'];

/** When it was written down, by whom, and why afterwards; `late` null where it was not. */
export interface Written {
  readonly at: string;
  readonly by: string | null;
  readonly late: string | null;
}

export interface Correction {
  readonly at: string;
  readonly by: string | null;
  readonly reason: string;
  readonly body: Bodies['room.corrected'];
}

export interface Stay {
  readonly visit: string;
  readonly person: string;
  readonly room: string;
  readonly role: RoomRole | null;
  /** When the person went in; null where no entry says so. */
  readonly entered: string | null;
  /** When the person came out; null where no entry says so. */
  readonly left: string | null;
  readonly worn: Entered['worn'];
  readonly ensemble: string | null;
  readonly items: Entered['items'];
  readonly limit: Entered['limit'];
  readonly drill: boolean;
  /** The exit read aloud by whose own entries somebody was there (guided.ts); null where it was written in the logbook. */
  readonly guided: string | null;
  readonly asked: Asked | null;
  /** The doffing that followed, where one was recorded. */
  readonly exit: string | null;
  /** Who watched, from when on, in the order of time. */
  readonly observers: readonly {
    readonly observer: string;
    readonly from: string;
    readonly late: string | null;
  }[];
  readonly writtenIn: Written | null;
  readonly writtenOut: Written | null;
  readonly corrections: readonly Correction[];
  /** A correction says that it never was. */
  readonly undone: boolean;
  /** More than one way out was written down, at different times; the latest holds. */
  readonly leftTwice: boolean;
}

type Order = -1 | 1;
const before = <Value extends string | number>(a: Value, b: Value): Order => (a < b ? -1 : 1);

/** In the order of the clocks that wrote them. */
const inOrder = (facts: readonly Fact[]): readonly Fact[] =>
  facts.toSorted((a, b) => (a.at === b.at ? before(a.hash, b.hash) : before(a.at, b.at)));

const written = ({ at, by, body }: FactOf<'room.entered'> | FactOf<'room.left'>): Written => ({
  at,
  by,
  late: body.late,
});

const of =
  <Kind extends RoomKind>(kind: Kind) =>
  (fact: Fact): fact is Extract<Fact, { readonly kind: Kind }> =>
    fact.kind === kind;

const NOTHING_YET: Omit<Stay, 'visit' | 'person' | 'room' | 'guided'> = {
  role: null,
  entered: null,
  left: null,
  worn: null,
  ensemble: null,
  items: [],
  limit: null,
  drill: false,
  asked: null,
  exit: null,
  observers: [],
  writtenIn: null,
  writtenOut: null,
  corrections: [],
  undone: false,
  leftTwice: false,
};

function begun(fact: FactOf<'room.entered'> | FactOf<'room.left'>): Stay {
  const { kind, body, guided = null } = fact;
  const { visit, person, room } = body;
  const stay = { ...NOTHING_YET, visit, person, room, guided };
  if (kind === 'room.left') return stay;
  const { happened: entered, role, worn, ensemble, items, limit, drill, observer } = body;
  const observers = observer === null ? [] : [{ observer, from: entered, late: body.late }];
  return {
    ...stay,
    entered,
    role,
    worn,
    ensemble,
    items,
    limit,
    drill: drill === true,
    observers,
    writtenIn: written(fact),
  };
}

/** The latest way out holds: somebody was at most that long inside. */
function out(stay: Stay, fact: FactOf<'room.left'>): Stay {
  const { happened, exit, asked } = fact.body;
  const known = { exit: exit ?? stay.exit, asked: asked ?? stay.asked };
  const leftTwice = stay.leftTwice || (stay.left !== null && stay.left !== happened);
  if (stay.left !== null && stay.left >= happened) return { ...stay, ...known, leftTwice };
  return { ...stay, ...known, leftTwice, left: happened, writtenOut: written(fact) };
}

function corrected(stay: Stay, { at, by, body }: FactOf<'room.corrected'>): Stay {
  const { undone, person, room, role, entered, left, worn, ensemble, items, limit, asked, reason } = body;
  const open = undone === 'way-out' ? { left: null, writtenOut: null, leftTwice: false } : {};
  const closed = left === null ? {} : { left, leftTwice: false };
  return {
    ...stay,
    person: person ?? stay.person,
    room: room ?? stay.room,
    role: role ?? stay.role,
    entered: entered ?? stay.entered,
    items: items ?? stay.items,
    limit: limit ?? stay.limit,
    asked: asked ?? stay.asked,
    worn: worn ?? stay.worn,
    ensemble: ensemble ?? stay.ensemble,
    ...open,
    ...closed,
    undone: stay.undone || undone === 'visit',
    corrections: [...stay.corrections, { at, by, reason, body }],
  };
}

function watched(stay: Stay, { body }: FactOf<'room.observer-changed'>): Stay {
  const watch = { observer: body.observer, from: body.happened, late: body.late };
  return {
    ...stay,
    observers: [...stay.observers, watch].toSorted((a, b) =>
      a.from < b.from ? -1 : Number(a.from > b.from),
    ),
  };
}

function after(stay: Stay, fact: Fact): Stay {
  switch (fact.kind) {
    case 'room.left':
      return out(stay, fact);
    case 'room.observer-changed':
      return watched(stay, fact);
    case 'room.corrected':
      return corrected(stay, fact);
    default:
      return stay;
  }
}

/**
 * The stay that these facts of one visit make; undefined while neither way in nor way out was written. Should a visit have
 * two ways in, the earlier holds. `drill`: an exit of this visit is a drill.
 */
export function stayOf(facts: readonly Fact[], drill: boolean): Stay | undefined {
  const sorted = inOrder(facts);
  const [way] = sorted
    .filter(of('room.entered'))
    .toSorted((a, b) => (a.body.happened < b.body.happened ? -1 : Number(a.body.happened > b.body.happened)));
  const first = way ?? sorted.find(of('room.left'));
  if (!first) return undefined;
  const stay = sorted.reduce(after, begun(first));
  return { ...stay, drill: stay.drill || drill };
}

/** Whoever watches last; null where nobody was named. */
export const observerOf = ({ observers }: Stay): string | null => observers.at(-1)?.observer ?? null;

export function byPerson(stays: readonly Stay[]): ReadonlyMap<string, readonly Stay[]> {
  const grouped = new Map<string, Stay[]>();
  for (const stay of stays) {
    const known = grouped.get(stay.person);
    if (known) known.push(stay);
    else grouped.set(stay.person, [stay]);
  }
  return grouped;
}
