// Who is in the room by an exit's own entries: whoever reads an exit aloud has said who takes part, and need not sign anybody in
// besides. Of a doffing that is its wearer, observer and assistants from its beginning to its end; of a donning, which
// takes place outside and signs its wearer in, the observer while the wearer is inside. Drills are left out. What comes of
// it are facts as the logbook's own entries make them, of visits of their own, which can be put right like any other.
import type { Bodies } from '../kinds/index.ts';
import type { RoomRole } from '../kinds/rooms.ts';
import type { Seen } from '../reading.ts';
import type { Fact } from './stay.ts';

/** One who is there, by which visit. */
type Present = { readonly person: string; readonly visit: string };

/** An exit that goes on. */
export type Guided = {
  readonly exit: string;
  readonly kind: Bodies['exit.started']['kind'];
  readonly room: string;
  readonly observer: string;
  /** What its text says that the wearer has on. */
  readonly worn: NonNullable<Bodies['room.entered']['worn']>;
  readonly present: readonly Present[];
  /** So many visits were made of it: each has its number. */
  readonly visits: number;
};

export interface After {
  /** Undefined where the exit has ended, or nobody is there by it. */
  readonly guided: Guided | undefined;
  readonly facts: readonly Fact[];
}

/** When, and by which entry. */
type Mark = Pick<Seen, 'at' | 'by' | 'hash'>;

const NOTHING_MORE = { ensemble: null, limit: null, drill: false, late: null } as const;

const visitOf = (exit: string, number: number): string => `${exit}-by-${number}`;

/** Of a doffing's visits the first. */
const WEARER = 1;

function enter(
  { guided, facts }: After & { readonly guided: Guided },
  [person, role]: readonly [person: string, role: RoomRole],
  { at, by, hash }: Mark,
): After & { readonly guided: Guided } {
  const { exit, room, observer, worn, present, visits } = guided;
  const visit = visitOf(exit, visits + 1);
  const named = role === 'wearer' ? { observer, worn } : { observer: null, worn: null };
  const body = { ...NOTHING_MORE, ...named, items: [], visit, person, room, role, happened: at };
  const now = { ...guided, present: [...present, { person, visit }], visits: visits + 1 };
  return { guided: now, facts: [...facts, { kind: 'room.entered', at, by, hash, body, guided: exit }] };
}

const leave = (
  { exit, room }: Guided,
  leaving: readonly Present[],
  { at, by, hash }: Mark,
): readonly Fact[] =>
  leaving.map(({ person, visit }) => {
    const body = { visit, person, room, happened: at, exit, asked: null, late: null };
    return { kind: 'room.left', at, by, hash, body, guided: exit };
  });

function started({ body, ...mark }: Extract<Seen, { readonly kind: 'exit.started' }>): After {
  const { exit, kind, room, wearer, observer, assistants, drill, procedure, version, content } = body;
  if (drill) return { guided: undefined, facts: [] };
  const worn = { procedure, version, content };
  const guided: Guided = { exit, kind, room, observer, worn, present: [], visits: 0 };
  if (kind !== 'doffing') return { guided, facts: [] };
  const people: readonly (readonly [string, RoomRole])[] = [
    [wearer, 'wearer'],
    [observer, 'observer'],
    ...[...new Set(assistants)].map((assistant) => [assistant, 'assistant'] as const),
  ];
  return people.reduce((after, one) => enter(after, one, mark), { guided, facts: [] as readonly Fact[] });
}

/** Whoever watches the wearer by the exit from then on. */
function watched({ exit, observer, present }: Guided, { at, by, hash }: Mark): readonly Fact[] {
  const wearer = present.find(({ visit }) => visit === visitOf(exit, WEARER));
  if (!wearer) return [];
  const body = { visit: wearer.visit, observer, happened: at, late: null };
  return [{ kind: 'room.observer-changed', at, by, hash, body, guided: exit }];
}

/** Whoever takes over comes as the other goes; an assistant who takes over is the observer from then on. */
function handedOver(
  before: Guided,
  { body: { role, from, to }, ...mark }: Extract<Seen, { readonly kind: 'exit.handed-over' }>,
): After {
  const guided = role === 'observer' ? { ...before, observer: to } : before;
  if (before.present.length === 0) return { guided, facts: [] };
  const leaving = before.present.filter(({ person }) => person === from || person === to);
  const rest = { ...guided, present: before.present.filter((one) => !leaving.includes(one)) };
  const watch = role === 'observer' && guided.kind === 'doffing' ? watched(rest, mark) : [];
  return enter({ guided: rest, facts: [...leave(guided, leaving, mark), ...watch] }, [to, role], mark);
}

/**
 * Before entry nobody is in the room; from the wearer's way in on, whoever watches them is counted. An exit of earlier
 * releases does not say what it reads aloud: one that signs its wearer in is a donning.
 */
const wentIn = (guided: Guided, entry: Seen): After =>
  guided.kind === 'doffing' || guided.present.length > 0
    ? { guided, facts: [] }
    : enter({ guided, facts: [] }, [guided.observer, 'observer'], entry);

/** What an entry makes of the exit that it belongs to. One that goes on is not begun again. */
export function guidedBy(guided: Guided | undefined, entry: Seen): After {
  if (!guided) return entry.kind === 'exit.started' ? started(entry) : { guided: undefined, facts: [] };
  switch (entry.kind) {
    case 'exit.handed-over':
      return handedOver(guided, entry);
    case 'exit.ended':
      return { guided: undefined, facts: leave(guided, guided.present, entry) };
    case 'room.entered':
      return wentIn(guided, entry);
    default:
      return { guided, facts: [] };
  }
}
