// Who is in the room by an exit's own entries, against a slow reference that walks through a small day minute by minute and
// knows neither facts nor spans: nobody is missed, nobody counted twice, in whatever order two devices' entries arrive.
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { type Entry, headOf, nextEntry, START as FIRST } from '../../src/journal/entry.ts';
import { fold } from '../../src/journal/fold.ts';
import { type Bodies, KINDS, type KindName } from '../../src/journal/kinds/index.ts';
import { versionOf } from '../../src/journal/kinds/kind.ts';
import { roomView, staysOf } from '../../src/journal/views/room.ts';
import { signsOf } from '../../src/journal/views/signs.ts';
import { observerOf, type Stay } from '../../src/journal/views/stay.ts';
import { companyOf } from '../../src/journal/views/together.ts';
import { BODIES } from './samples.ts';

const MINUTE = 60_000;
const START = Date.UTC(2026, 10, 25, 8);
const PEOPLE = ['p-anna', 'p-bela', 'p-caro', 'p-dora'] as const;
const ROOMS = ['red-1', 'red-2'] as const;
const BOUNDS = { warn: 10, past: 30, noLimit: 300 };
const iso = (minute: number): string => new Date(START + minute * MINUTE).toISOString();

/** A device whose clock is set by hand. */
function pen(device: string) {
  let head = FIRST;
  return <Name extends KindName>(
    minute: number,
    kind: Name,
    body: Bodies[Name],
    version = versionOf(KINDS[kind]),
  ) => {
    const entry = nextEntry(head, {
      unit: 'larkmoor',
      device,
      kind,
      version,
      at: iso(minute),
      by: null,
      body,
    });
    head = headOf(entry);
    return entry;
  };
}
type Pen = ReturnType<typeof pen>;

async function staysAfter(entries: readonly Entry[]): Promise<readonly Stay[]> {
  const store = memoryStore();
  await store.append(entries);
  return staysOf(fold(roomView, await store.read(1)));
}

interface Exit {
  readonly exit: string;
  readonly kind: 'doffing' | 'donning';
  readonly room: string;
  readonly people: readonly [wearer: string, observer: string, assistant: string];
  readonly drill: boolean;
}

const begin = (write: Pen, minute: number, { exit, kind, room, people, drill }: Exit): Entry => {
  const [wearer, observer, assistant] = people;
  const body = { ...BODIES['exit.started'], exit, kind, room, drill, wearer, observer };
  return write(minute, 'exit.started', { ...body, assistants: [assistant] });
};
const handOver = (write: Pen, minute: number, exit: string, from: string, to: string): Entry =>
  write(minute, 'exit.handed-over', { ...BODIES['exit.handed-over'], exit, role: 'observer', from, to });
const end = (write: Pen, minute: number, exit: string): Entry =>
  write(minute, 'exit.ended', { ...BODIES['exit.ended'], exit });
const signIn = (write: Pen, minute: number, visit: string, person: string, room: string): Entry => {
  const body = { ...BODIES['room.entered'], visit, person, room, observer: null, drill: false };
  return write(minute, 'room.entered', { ...body, limit: null, happened: iso(minute) });
};
const signOut = (write: Pen, minute: number, visit: string, person: string, room: string): Entry =>
  write(minute, 'room.left', { ...BODIES['room.left'], visit, person, room, happened: iso(minute) });

/** What may happen in a minute; what does not fit then does not happen. */
const act = fc.record({
  is: fc.constantFrom('begin', 'enter', 'hand-over', 'end', 'in', 'out'),
  room: fc.constantFrom(...ROOMS),
  kind: fc.constantFrom('doffing' as const, 'donning' as const),
  drill: fc.boolean(),
  people: fc.shuffledSubarray([...PEOPLE], { minLength: 3, maxLength: 3 }),
  which: fc.nat({ max: 3 }),
});
type Act = typeof act extends fc.Arbitrary<infer One> ? One : never;

interface Going extends Exit {
  observer: string;
  helpers: readonly string[];
  inside: boolean;
}

/** Walks through the acts, writes them down, and notes who is where in the minute after each. */
function walked(acts: readonly Act[]) {
  const [tablet, desk] = [pen('tablet-1'), pen('desk')];
  const [byTablet, byDesk]: [Entry[], Entry[]] = [[], []];
  const going: Going[] = [];
  const written: { visit: string; person: string; room: string }[] = [];
  const noted = acts.map(({ is, room, kind, drill, people, which }, minute) => {
    const at = going[which % Math.max(1, going.length)];
    const [wearer = '', observer = '', assistant = ''] = people;
    if (is === 'begin') {
      const exit: Exit = { exit: `x-${minute}`, kind, room, people: [wearer, observer, assistant], drill };
      byTablet.push(begin(tablet, minute, exit));
      going.push({ ...exit, observer, helpers: [assistant], inside: false });
    } else if (is === 'enter' && at?.kind === 'donning' && !at.inside && !at.drill) {
      byTablet.push(signIn(tablet, minute, at.exit, at.people[0], at.room));
      written.push({ visit: at.exit, person: at.people[0], room: at.room });
      at.inside = true;
    } else if (is === 'hand-over' && at && wearer !== at.observer && wearer !== at.people[0]) {
      byTablet.push(handOver(tablet, minute, at.exit, at.observer, wearer));
      at.observer = wearer;
      at.helpers = at.helpers.filter((one) => one !== wearer);
    } else if (is === 'end' && at) {
      byTablet.push(end(tablet, minute, at.exit));
      going.splice(going.indexOf(at), 1);
    } else if (is === 'in') {
      byDesk.push(signIn(desk, minute, `v-${minute}`, wearer, room));
      written.push({ visit: `v-${minute}`, person: wearer, room });
    } else if (is === 'out' && written.length > 0) {
      const [gone] = written.splice(which % written.length, 1);
      byDesk.push(signOut(desk, minute, gone!.visit, gone!.person, gone!.room));
    }
    const guided = going.flatMap((one) => {
      if (one.drill) return [];
      const there = one.kind === 'donning' ? [] : [one.people[0], ...one.helpers];
      const isWatched = one.kind === 'doffing' || one.inside;
      return [...there, ...(isWatched ? [one.observer] : [])].map((person) => `${person} ${one.room}`);
    });
    const byHand = written.map((one) => `${one.person} ${one.room}`);
    return { guided: new Set(guided), byHand };
  });
  return { entries: [byTablet, byDesk] as const, noted };
}

function merged(one: readonly Entry[], other: readonly Entry[], picks: readonly boolean[]): readonly Entry[] {
  const [a, b] = [[...one], [...other]];
  const mixed: Entry[] = [];
  for (let turn = 0; a.length + b.length > 0; turn += 1) {
    const fromA = b.length === 0 || (a.length > 0 && picks[turn % picks.length] === true);
    mixed.push((fromA ? a : b).shift()!);
  }
  return mixed;
}

const during = ({ entered, left }: Stay, minute: number): boolean =>
  entered! < iso(minute + 0.5) && (left === null || left > iso(minute + 0.5));

const picks = fc.array(fc.boolean(), { minLength: 1, maxLength: 12 });

describe('by an exit’s own entries', () => {
  property.prop([fc.array(act, { maxLength: 40 }), picks])(
    'everybody who takes part is there once, as long as it says, whoever signed them in besides',
    async (acts, order) => {
      const { entries, noted } = walked(acts);
      const stays = await staysAfter(merged(...entries, order));
      expect(await staysAfter([...entries[1], ...entries[0]])).toEqual(stays);
      for (const [minute, { guided, byHand }] of noted.entries()) {
        const found = stays
          .filter((stay) => during(stay, minute))
          .map(({ person, room }) => `${person} ${room}`);
        const once = [...guided].filter((one) => !byHand.includes(one));
        expect(found.toSorted()).toEqual([...byHand, ...once].toSorted());
      }
    },
  );

  const EXIT: Exit = {
    exit: 'x-1',
    kind: 'doffing',
    room: 'red-1',
    people: ['p-anna', 'p-bela', 'p-caro'],
    drill: false,
  };
  const asked = { window: { from: START, to: START + 60 * MINUTE }, now: START + 60 * MINUTE, drills: false };

  test('an observer counts among those who were with the wearer, hand-over and all', async () => {
    const write = pen('tablet-1');
    const stays = await staysAfter([
      begin(write, 10, EXIT),
      handOver(write, 20, 'x-1', 'p-bela', 'p-dora'),
      end(write, 40, 'x-1'),
    ]);
    const { met, onlyNamed } = companyOf(stays, 'p-anna', asked);
    expect(met.map(({ person, together }) => [person, together / MINUTE])).toEqual([
      ['p-caro', 30],
      ['p-dora', 20],
      ['p-bela', 10],
    ]);
    expect(onlyNamed).toEqual([]);
    const wearer = stays.find(({ person }) => person === 'p-anna')!;
    expect(wearer.observers.map(({ observer }) => observer)).toEqual(['p-bela', 'p-dora']);
  });

  test('signed in by hand as well, also late and for a part, they count once, and watch the written stay', async () => {
    const [write, desk] = [pen('tablet-1'), pen('desk')];
    const late = { ...BODIES['room.entered'], person: 'p-bela', room: 'red-1', limit: null, drill: false };
    const entries = [
      signIn(desk, 5, 'v-1', 'p-anna', 'red-1'),
      begin(write, 10, EXIT),
      desk(50, 'room.entered', { ...late, visit: 'v-2', happened: iso(20), late: 'Written afterwards.' }),
      signOut(desk, 51, 'v-2', 'p-bela', 'red-1'),
    ];
    const stays = await staysAfter(entries);
    const { met } = companyOf(stays, 'p-anna', asked);
    expect(met.find(({ person }) => person === 'p-bela')?.together).toBe(50 * MINUTE);
    const theirs = stays.filter(({ person }) => person === 'p-bela');
    expect(theirs.map(({ entered, left, guided }) => [entered, left, guided])).toEqual([
      [iso(10), iso(20), 'x-1'],
      [iso(20), iso(51), null],
      [iso(51), null, 'x-1'],
    ]);
    const wearer = stays.filter(({ person }) => person === 'p-anna');
    expect(wearer.map(({ visit }) => visit)).toEqual(['v-1']);
    expect(observerOf(wearer[0]!)).toBe('p-bela');
    expect(signsOf(stays, START + 55 * MINUTE, BOUNDS).map(({ code }) => code)).toEqual([]);
  });

  test('what it says is put right like any other visit', async () => {
    const [write, desk] = [pen('tablet-1'), pen('desk')];
    const [, watch] = await staysAfter([begin(write, 10, EXIT)]);
    const undone = {
      ...BODIES['room.corrected'],
      visit: watch!.visit,
      undone: 'visit' as const,
      entered: null,
    };
    const stays = await staysAfter([begin(pen('tablet-1'), 10, EXIT), desk(30, 'room.corrected', undone)]);
    expect(stays.filter((stay) => !stay.undone)).toHaveLength(2);
  });

  test('an exit of an earlier release signs nobody in, unless it signs its wearer in', async () => {
    const write = pen('tablet-1');
    const { kind: _, ...first } = { ...BODIES['exit.started'], drill: false, exit: 'x-1' };
    const entries = [write(0, 'exit.started', first as Bodies['exit.started'], 1)];
    expect(await staysAfter(entries)).toEqual([]);
    entries.push(signIn(write, 5, 'x-1', first.wearer, 'red-1'));
    expect((await staysAfter(entries)).map(({ person }) => person)).toEqual([first.wearer, first.observer]);
  });
});

test('what the wearer of a doffing has on is told by the exit; of nobody else is anything said', async () => {
  const write = pen('tablet-1');
  const people = ['p-anna', 'p-bela', 'p-caro'] as const;
  const stays = await staysAfter([
    begin(write, 1, { exit: 'x-1', kind: 'doffing', room: 'red-1', people, drill: false }),
  ]);
  const { procedure, version, content } = BODIES['exit.started'];
  const wears = Object.fromEntries(stays.map(({ person, worn }) => [person, worn]));
  expect(wears).toEqual({ 'p-anna': { procedure, version, content }, 'p-bela': null, 'p-caro': null });
});
