// Between what is typed at the door and what the journal keeps: every entry that the forms make is one that the journal takes,
// what is missing is said in words, a correction names only what is put right.
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import {
  asked,
  clock,
  correctedOf,
  enteredOf,
  type InTyped,
  itemsText,
  lasting,
  leftOf,
  localOf,
  millisecondsOf,
  roomAfterWord,
  roomName,
  sizesOf,
  statedOf,
  typedItems,
} from '../../../src/app/logbook/model.ts';
import { LOG } from '../../../src/app/logbook/labels.ts';
import { ROOM_ROLES } from '../../../src/journal/kinds/rooms.ts';
import { KINDS } from '../../../src/journal/kinds/index.ts';
import { versionOf } from '../../../src/journal/kinds/kind.ts';
import type { PlainObject } from '../../../src/journal/canonical.ts';
import { readBody } from '../../../src/journal/reading.ts';
import { type Fact, type Stay, stayOf } from '../../../src/journal/views/stay.ts';
import { BODIES } from '../../journal/samples.ts';

const NOW = new Date(2026, 10, 25, 12, 0).getTime();
const AT_ONCE = { is: 'now', local: '', reason: '' } as const;

const TYPED: InTyped = {
  person: 'p-anna',
  role: 'cleaner',
  room: 'Red 1',
  worn: null,
  ensemble: ' ',
  items: [
    { item: 'gown', size: 'L', lot: '' },
    { item: 'apron', size: '', lot: '' },
  ],
  observer: '',
  limit: { minutes: '', source: '' },
  drill: false,
  when: AT_ONCE,
};

const isTaken = (kind: 'room.entered' | 'room.left' | 'room.corrected', body: PlainObject): void =>
  expect(readBody({ kind, version: versionOf(KINDS[kind]), body })).toEqual({ body });

function stayFrom(body: ReturnType<typeof enteredOf>): Stay {
  if (typeof body === 'string') throw new Error(body);
  const at = new Date(NOW).toISOString();
  const fact: Fact = { kind: 'room.entered', at, by: null, hash: 'a', body };
  return stayOf([fact], false)!;
}

describe('a way in', () => {
  test('is what the journal takes, without what nobody read', () => {
    const body = enteredOf(TYPED, 'v-1', NOW);
    expect(body).toMatchObject({ room: 'red-1', ensemble: null, observer: null, limit: null, late: null });
    expect(body).toMatchObject({ items: [{ item: 'gown', size: 'L', lot: null }] });
    isTaken('room.entered', body as PlainObject);
  });

  property.prop([
    fc.record({
      role: fc.constantFrom(...ROOM_ROLES),
      room: fc.string(),
      ensemble: fc.string({ maxLength: 300 }),
      minutes: fc.oneof(fc.string({ maxLength: 5 }), fc.integer().map(String)),
      source: fc.string({ maxLength: 300 }),
      local: fc.constantFrom('', '2026-11-25T09:00', '2027-01-01T00:00', 'yesterday'),
      reason: fc.string(),
      late: fc.boolean(),
    }),
  ])('is never anything that the journal refuses', ({ minutes, source, local, reason, late, ...typed }) => {
    const when = late ? ({ is: 'earlier', local, reason } as const) : AT_ONCE;
    const body = enteredOf({ ...TYPED, ...typed, limit: { minutes, source }, when }, 'v-1', NOW);
    if (typeof body === 'string') expect(Object.values(LOG.mistakes)).toContain(body);
    else isTaken('room.entered', body);
  });

  test.each([
    [{ person: '' }, 'who'],
    [{ role: '' }, 'role'],
    [{ room: '…' }, 'room'],
    [{ observer: 'p-anna' }, 'self'],
    [{ limit: { minutes: '1.5', source: 'x' } }, 'limit'],
    [{ limit: { minutes: '60', source: ' ' } }, 'limit'],
    [{ when: { is: 'earlier', local: '', reason: 'x' } }, 'at'],
    [{ when: { is: 'earlier', local: '2026-11-25T12:01', reason: 'x' } }, 'ahead'],
    [{ when: { is: 'earlier', local: '2026-11-25T11:00', reason: '' } }, 'late'],
  ] as const)('says what is missing: %j', (part, mistake) => {
    expect(enteredOf({ ...TYPED, ...part }, 'v-1', NOW)).toBe(LOG.mistakes[mistake]);
  });
});

test('a late entry states when it happened, and why it is late', () => {
  const local = localOf(NOW - 3_600_000);
  expect(statedOf({ is: 'earlier', local, reason: ' At the door. ' }, NOW)).toEqual({
    happened: new Date(NOW - 3_600_000).toISOString(),
    late: 'At the door.',
  });
  expect(statedOf(AT_ONCE, NOW)).toEqual({ happened: new Date(NOW).toISOString(), late: null });
});

describe('a way out', () => {
  const stay = stayFrom(enteredOf({ ...TYPED, role: 'wearer' }, 'v-1', NOW));

  test('of a wearer says whether they were asked, and not what they answered', () => {
    expect(leftOf(stay, { asked: '', exit: null, when: AT_ONCE }, NOW)).toBe(LOG.mistakes.asked);
    const body = leftOf(stay, { asked: 'asked', exit: 'x-1', when: AT_ONCE }, NOW);
    expect(body).toMatchObject({ visit: 'v-1', exit: 'x-1', asked: 'asked', late: null });
    isTaken('room.left', body as PlainObject);
  });

  test('does not lie before the way in', () => {
    const when = { is: 'earlier', local: localOf(NOW - 300_000), reason: 'late' } as const;
    expect(leftOf(stay, { asked: 'asked', exit: null, when }, NOW)).toBe(LOG.mistakes.before);
  });
});

describe('a correction', () => {
  const stay = stayFrom(enteredOf(TYPED, 'v-1', NOW - 3_600_000));
  const as = {
    what: 'change',
    person: stay.person,
    role: 'cleaner',
    room: 'Red 1',
    worn: null,
    ensemble: '',
    items: typedItems(stay.items),
    limit: { minutes: '', source: '' },
    entered: localOf(NOW - 3_600_000),
    left: '',
    asked: '',
    reason: 'Wrong room.',
  } as const;

  test('names only what is put right', () => {
    const body = correctedOf(stay, { ...as, room: 'Red 2' }, NOW);
    expect(body).toEqual({
      ...BODIES['room.corrected'],
      visit: 'v-1',
      entered: null,
      room: 'red-2',
      reason: 'Wrong room.',
    });
    isTaken('room.corrected', body as PlainObject);
    expect(correctedOf(stay, as, NOW)).toBe(LOG.mistakes.nothing);
    expect(correctedOf(stay, { ...as, room: 'Red 2', reason: '' }, NOW)).toBe(LOG.mistakes.reason);
    expect(correctedOf(stay, { ...as, left: localOf(NOW + 120_000) }, NOW)).toBe(LOG.mistakes.ahead);
  });

  test('can take a visit back', () => {
    expect(correctedOf(stay, { ...as, what: 'visit' }, NOW)).toMatchObject({ undone: 'visit', room: null });
  });
});

describe('what is read', () => {
  test('minutes are rounded up, rooms have a capital, another day is named', () => {
    expect([0, 1, 60_000, 3_660_001].map(lasting)).toEqual(['0 min', '1 min', '1 min', '1 h 02 min']);
    expect(roomName('red-1')).toBe('Red 1');
    expect(['room-1', 'chambre-2', 'red-1', 'room'].map(roomAfterWord)).toEqual(['1', '2', 'Red 1', 'Room']);
    expect(clock(new Date(NOW).toISOString(), NOW)).toBe('12:00');
    expect(clock(new Date(NOW).toISOString(), NOW + 86_400_000)).toBe('2026-11-25 12:00');
    expect(millisecondsOf(localOf(NOW))).toBe(NOW);
    expect(itemsText([{ item: 'gown', size: 'L', lot: '8841' }])).toBe('gown L, lot 8841');
  });

  test('the log of a day has whoever was in for any part of it, and finds a lot', () => {
    const dayBefore = new Date(2026, 10, 24, 23, 0).toISOString();
    const [open, lot] = [stayFrom(enteredOf(TYPED, 'v-1', NOW)), { item: 'gown', size: null, lot: 'LOT-1' }];
    const over: Stay = { ...open, visit: 'v-2', entered: dayBefore, left: new Date(NOW).toISOString() };
    const past: Stay = { ...open, visit: 'v-3', entered: dayBefore, left: dayBefore, items: [lot] };
    const all = { day: '2026-11-25', room: '', person: '', role: '', text: '', drills: true };
    const found = (part: Partial<typeof all>): readonly string[] =>
      asked([over, past, open], { ...all, ...part }, NOW).map(({ visit }) => visit);
    expect(found({})).toEqual(['v-2', 'v-1']);
    expect(found({ day: '', text: 'lot-1' })).toEqual(['v-3']);
    expect(found({ room: 'red-2' })).toEqual([]);
    expect(sizesOf([open], 'p-anna').get('gown')).toBe('L');
  });
});
