// The logbook's folds against a plain slow reference that knows no state, no drawers and no spans: it looks at every minute
// of a small day. Entries written down afterwards, corrected, and merged from two devices in any order make the same stays.
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { fold } from '../../src/journal/fold.ts';
import type { Bodies } from '../../src/journal/kinds/index.ts';
import { roomNow, roomView, staysOf } from '../../src/journal/views/room.ts';
import { signsOf } from '../../src/journal/views/signs.ts';
import { observerOf, type Stay } from '../../src/journal/views/stay.ts';
import { companyOf, lengthOf } from '../../src/journal/views/together.ts';
import { BODIES, type Device, device } from './samples.ts';

const MINUTE = 60_000;
const START = Date.UTC(2026, 10, 25);
const DAY = 40;
const PEOPLE = ['p-anna', 'p-bela', 'p-caro', 'p-dora'] as const;
const ROOMS = ['red-1', 'red-2'] as const;
const BOUNDS = { warn: 10, past: 30, noLimit: 300 };

const iso = (minute: number): string => new Date(START + minute * MINUTE).toISOString();
const minuteOf = (instant: string): number => (Date.parse(instant) - START) / MINUTE;

async function stateAfter(entries: readonly Entry[]) {
  const store = memoryStore();
  await store.append(entries);
  return fold(roomView, await store.read(1));
}
const staysAfter = async (entries: readonly Entry[]): Promise<readonly Stay[]> =>
  staysOf(await stateAfter(entries));

const enter = (
  by: Device,
  visit: string,
  minute: number,
  more: Partial<Bodies['room.entered']> = {},
): Entry =>
  by.write('room.entered', {
    ...BODIES['room.entered'],
    visit,
    person: 'p-anna',
    room: 'red-1',
    happened: iso(minute),
    observer: null,
    ...more,
  });
const leave = (by: Device, visit: string, minute: number, more: Partial<Bodies['room.left']> = {}): Entry =>
  by.write('room.left', {
    ...BODIES['room.left'],
    visit,
    person: 'p-anna',
    room: 'red-1',
    happened: iso(minute),
    ...more,
  });
const correct = (by: Device, visit: string, more: Partial<Bodies['room.corrected']>): Entry =>
  by.write('room.corrected', { ...BODIES['room.corrected'], visit, entered: null, ...more });

/** The devices' entries as a store met them: each device's own in their order, between them any. */
function merged(one: readonly Entry[], other: readonly Entry[], picks: readonly boolean[]): readonly Entry[] {
  const [a, b] = [[...one], [...other]];
  const mixed: Entry[] = [];
  for (let turn = 0; a.length + b.length > 0; turn += 1) {
    const fromA = b.length === 0 || (a.length > 0 && picks[turn % picks.length] === true);
    mixed.push((fromA ? a : b).shift()!);
  }
  return mixed;
}

interface Planned {
  readonly person: string;
  readonly room: string;
  readonly in: number;
  readonly out: number | null;
  readonly late: boolean;
  readonly inBy: boolean;
  readonly outBy: boolean;
}
const plan: fc.Arbitrary<Planned> = fc
  .record({
    person: fc.constantFrom(...PEOPLE),
    room: fc.constantFrom(...ROOMS),
    in: fc.nat({ max: DAY }),
    lasts: fc.option(fc.nat({ max: DAY })),
    late: fc.boolean(),
    inBy: fc.boolean(),
    outBy: fc.boolean(),
  })
  .map(({ lasts, ...rest }) => ({ ...rest, out: lasts === null ? null : Math.min(DAY, rest.in + lasts) }));
const plans = fc.array(plan, { maxLength: 9 });
const picks = fc.array(fc.boolean(), { minLength: 1, maxLength: 12 });

/** What two devices write of the plans. A visit's end may be the other device's. */
function writtenBy(all: readonly Planned[]): readonly [readonly Entry[], readonly Entry[]] {
  const devices = [device('desk'), device('tablet-1')] as const;
  const by: [Entry[], Entry[]] = [[], []];
  const put = (which: boolean, write: (one: Device) => Entry): void => {
    by[which ? 0 : 1].push(write(devices[which ? 0 : 1]));
  };
  all.forEach(({ person, room, late, inBy, ...one }, index) => {
    const of = { person, room, late: late ? 'The tablet was not at hand.' : null };
    put(inBy, (to) => enter(to, `v${index}`, one.in, of));
    if (one.out !== null) put(one.outBy, (to) => leave(to, `v${index}`, one.out!, of));
  });
  return by;
}

describe('stays', () => {
  property.prop([plans, picks])('are what was planned, in whatever order it arrives', async (all, order) => {
    const [desk, tablet] = writtenBy(all);
    const stays = await staysAfter(merged(desk, tablet, order));
    expect(await staysAfter([...tablet, ...desk])).toEqual(stays);
    const byVisit = new Map(stays.map((stay) => [stay.visit, stay]));
    expect(byVisit.size).toBe(all.length);
    all.forEach(({ person, room, late, ...one }, index) => {
      const stay = byVisit.get(`v${index}`)!;
      expect(stay).toMatchObject({ person, room, leftTwice: false, undone: false });
      expect(minuteOf(stay.entered!)).toBe(one.in);
      expect(stay.left && minuteOf(stay.left)).toBe(one.out);
      expect(stay.writtenIn?.late === null).toBe(!late);
      // Stated and recorded are both kept.
      expect(stay.writtenIn?.at).not.toBe(stay.entered);
    });
    const open = all.filter(({ out }) => out === null);
    expect(roomNow(await stateAfter([...desk, ...tablet])).inside).toHaveLength(open.length);
  });

  test('follow corrections, which alter nothing that was written', async () => {
    const desk = device('desk');
    const entries = [
      enter(desk, 'v1', 10),
      leave(desk, 'v1', 20),
      correct(desk, 'v1', { undone: 'way-out', reason: 'It was somebody else.' }),
      correct(desk, 'v1', { person: 'p-bela', entered: iso(8), reason: 'Wrong line.' }),
      enter(desk, 'v2', 12),
      correct(desk, 'v2', { undone: 'visit', reason: 'Only looked in.' }),
    ];
    const [one, two] = await staysAfter(entries);
    expect(one).toMatchObject({ person: 'p-bela', entered: iso(8), left: null, role: 'wearer' });
    expect(one?.corrections.map(({ reason }) => reason)).toEqual(['It was somebody else.', 'Wrong line.']);
    expect(one?.writtenIn?.at).toBe(entries[0]?.at);
    expect(two).toMatchObject({ undone: true });
    expect(roomNow(await stateAfter(entries)).inside.map(({ visit }) => visit)).toEqual(['v1']);
    const [again] = await staysAfter([...entries, leave(desk, 'v1', 30)]);
    expect(again).toMatchObject({ left: iso(30), leftTwice: false });
  });

  const change = fc.record({
    by: fc.boolean(),
    room: fc.option(fc.constantFrom('red-2', 'red-3')),
    role: fc.option(fc.constantFrom('cleaner' as const, 'waste' as const)),
    entered: fc.option(fc.nat({ max: 9 })),
  });
  property.prop([fc.array(change, { maxLength: 8 }), picks])(
    'have in each field what was put right last, whichever device’s corrections arrive first',
    async (changes, order) => {
      const devices = [device('desk'), device('tablet-1')] as const;
      const first = enter(devices[0], 'v1', 10);
      const by: [Entry[], Entry[]] = [[first], []];
      for (const { by: which, room, role, entered } of changes) {
        const at = entered === null ? null : iso(entered);
        by[which ? 0 : 1].push(correct(devices[which ? 0 : 1], 'v1', { room, role, entered: at }));
      }
      const stays = await staysAfter(merged(...by, order));
      expect(await staysAfter([...by[1], ...by[0]])).toEqual(stays);
      // The reference: field by field, the last of all that name it, by the clocks that wrote them.
      const all = by
        .flat()
        .slice(1)
        .toSorted((a, b) => `${a.at} ${a.hash}`.localeCompare(`${b.at} ${b.hash}`, 'en'));
      const lastOf = (field: string): unknown =>
        all.map(({ body }) => body[field]).findLast((value) => value !== null);
      expect(stays).toMatchObject([
        {
          room: lastOf('room') ?? 'red-1',
          role: lastOf('role') ?? 'wearer',
          entered: lastOf('entered') ?? iso(10),
        },
      ]);
      expect(stays[0]?.corrections).toHaveLength(changes.length);
    },
  );

  test('keep the longer one where two devices wrote different ways out, and say so', async () => {
    const [desk, tablet] = [device('desk'), device('tablet-1')];
    const first = enter(desk, 'v1', 0);
    const outs = [leave(desk, 'v1', 10), leave(tablet, 'v1', 12)];
    for (const entries of [
      [first, ...outs],
      [outs[1]!, first, outs[0]!],
    ]) {
      const stays = await staysAfter(entries);
      expect(stays).toMatchObject([{ left: iso(12), leftTwice: true }]);
      expect(signsOf(stays, START + DAY * MINUTE, BOUNDS)).toEqual([
        { code: 'out-twice', visit: 'v1', other: null },
      ]);
    }
  });

  test('know who watches, also handed over in the middle of a donning that is read aloud', async () => {
    const desk = device('desk');
    const entries = [
      desk.write('exit.started', { ...BODIES['exit.started'], exit: 'v1', drill: true }),
      enter(desk, 'v1', 0, { observer: 'p-bela', drill: null }),
      desk.write('room.observer-changed', {
        ...BODIES['room.observer-changed'],
        visit: 'v1',
        observer: 'p-caro',
        happened: iso(5),
      }),
    ];
    const [stay] = await staysAfter(entries);
    expect(stay?.observers.map(({ observer }) => observer)).toEqual(['p-bela', 'p-caro']);
    expect(stay?.drill).toBe(true);
    const handed = { ...BODIES['exit.handed-over'], exit: 'v1', to: 'p-dora' };
    const [later] = await staysAfter([...entries, desk.write('exit.handed-over', handed)]);
    expect(observerOf(later!)).toBe('p-dora');
  });
});

/** Minutes at which both were in the same room, by looking at every minute. */
function slowMeetings(all: readonly Planned[], who: string, from: number, to: number, now: number) {
  const minutes = new Map<string, Set<number>>();
  for (let minute = from; minute <= to; minute += 1)
    for (const room of ROOMS) {
      const inside = all.filter(
        (one) => one.room === room && one.in <= minute && minute <= (one.out ?? Math.max(now, one.in)),
      );
      if (inside.some(({ person }) => person === who))
        for (const { person } of inside)
          if (person !== who) minutes.set(person, new Set([...(minutes.get(person) ?? []), minute]));
    }
  return minutes;
}

/** Whole minutes between neighbours of a set in which one room or another was shared: what counts once. */
function slowLength(
  all: readonly Planned[],
  who: string,
  other: string,
  from: number,
  to: number,
  now: number,
) {
  let total = 0;
  for (let minute = from; minute < to; minute += 1) {
    const both = ROOMS.some((room) => {
      const here = (person: string): boolean =>
        all.some(
          (one) =>
            one.person === person &&
            one.room === room &&
            one.in <= minute &&
            minute + 1 <= (one.out ?? Math.max(now, one.in)),
        );
      return here(who) && here(other);
    });
    if (both) total += 1;
  }
  return total;
}

describe('who was with somebody', () => {
  property.prop([plans, picks, fc.constantFrom(...PEOPLE), fc.nat({ max: DAY }), fc.nat({ max: DAY })])(
    'is what a look at every minute finds',
    async (all, order, who, one, other) => {
      const [from, to] = [Math.min(one, other), Math.max(one, other)];
      const now = DAY;
      const stays = await staysAfter(merged(...writtenBy(all), order));
      const window = { from: START + from * MINUTE, to: START + to * MINUTE };
      const { met } = companyOf(stays, who, { window, now: START + now * MINUTE, drills: false });
      const slow = slowMeetings(all, who, from, to, now);
      expect(met.map(({ person }) => person).sort()).toEqual([...slow.keys()].sort());
      for (const { person, together, meetings } of met) {
        expect(together / MINUTE).toBe(slowLength(all, who, person, from, to, now));
        expect(together).toBe(lengthOf(meetings.map(({ span }) => span)));
        const theirs = (whose: string): boolean =>
          all.some((planned) => planned.person === whose && planned.out === null);
        for (const { open } of meetings) if (open) expect(theirs(person)).toBe(true);
      }
    },
  );

  test('counts who came as another went, who never signed out, and who has no way in', async () => {
    const desk = device('desk');
    const stays = await staysAfter([
      enter(desk, 'v1', 10, { observer: 'p-eva0' }),
      leave(desk, 'v1', 20),
      enter(desk, 'v2', 20, { person: 'p-bela' }),
      leave(desk, 'v3', 15, { person: 'p-caro' }),
      enter(desk, 'v4', 12, { person: 'p-dora', drill: true }),
      enter(desk, 'v5', 0, { person: 'p-frei', room: 'red-2' }),
    ]);
    const window = { from: START, to: START + DAY * MINUTE };
    const asked = { window, now: START + 30 * MINUTE, drills: false };
    const { met, onlyNamed } = companyOf(stays, 'p-anna', asked);
    expect(met.map(({ person, together }) => [person, together / MINUTE])).toEqual([
      ['p-caro', 5],
      ['p-bela', 0],
    ]);
    expect(met[0]?.meetings).toMatchObject([{ atMost: true, open: false, room: 'red-1' }]);
    expect(met[1]?.meetings).toMatchObject([{ atMost: false, open: true }]);
    expect(onlyNamed).toEqual(['p-eva0']);
    expect(companyOf(stays, 'p-dora', asked).stays).toEqual([]);
    const drill = companyOf(stays, 'p-dora', { ...asked, drills: true });
    expect(drill.stays).toHaveLength(1);
    expect(drill.met).toEqual([]);
  });
});

describe('signs', () => {
  const codes = async (entries: readonly Entry[], minute: number) =>
    signsOf(await staysAfter(entries), START + minute * MINUTE, BOUNDS).map(
      ({ code, visit }) => `${visit} ${code}`,
    );

  test('of the limit come one after the other', async () => {
    const limit = { minutes: 60, source: 'The unit’s rule (invented)' };
    const entries = [enter(device('desk'), 'v1', 0, { role: 'cleaner', limit })];
    expect(await codes(entries, 49)).toEqual([]);
    expect(await codes(entries, 50)).toEqual(['v1 near-limit']);
    expect(await codes(entries, 61)).toEqual(['v1 over-limit']);
    expect(await codes(entries, 91)).toEqual(['v1 forgotten']);
    const none = [enter(device('desk'), 'v1', 0, { role: 'cleaner', limit: null })];
    expect(await codes(none, 300)).toEqual([]);
    expect(await codes(none, 301)).toEqual(['v1 forgotten']);
  });

  test('point out one person in two rooms at once, now and afterwards', async () => {
    const desk = device('desk');
    const both = [
      enter(desk, 'v1', 0, { role: 'waste', limit: null }),
      enter(desk, 'v2', 5, { role: 'waste', limit: null, room: 'red-2' }),
    ];
    expect(await codes(both, 10)).toEqual(['v1 two-rooms', 'v2 two-rooms']);
    const over = [...both, leave(desk, 'v1', 10), leave(desk, 'v2', 12)];
    expect(await codes(over, 20)).toEqual(['v1 two-rooms', 'v2 two-rooms']);
    expect(await codes([...over, correct(desk, 'v2', { entered: iso(10) })], 20)).toEqual([]);
  });

  test('point out a wearer whom nobody watches, and times that do not fit', async () => {
    const alone = [enter(device('desk'), 'v1', 0, { limit: null })];
    expect(await codes(alone, 5)).toEqual(['v1 no-observer']);
    const door = device('door');
    const named = [enter(door, 'v2', 0, { limit: null, observer: 'p-bela' })];
    expect(await codes(named, 5)).toEqual(['v2 observer-not-in']);
    const inToo = enter(door, 'v3', 0, { person: 'p-bela', role: 'observer', limit: null });
    expect(await codes([...named, inToo], 5)).toEqual([]);
    const tablet = device('tablet-1');
    const odd = [
      enter(tablet, 'v4', 9, { person: 'p-caro', role: 'visitor', limit: null }),
      leave(tablet, 'v4', 4, { person: 'p-caro' }),
    ];
    expect(await codes(odd, 20)).toEqual(['v4 out-before-in']);
    expect(await codes([leave(device('gate'), 'v5', 4)], 20)).toEqual(['v5 way-in-missing']);
  });
});
