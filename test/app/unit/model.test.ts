// What the unit's page works out from what is typed and what the server says.
import { describe, expect, test } from 'vitest';
import { creation } from '../../../src/api/shapes/people.ts';
import { ROLES } from '../../../src/api/roles.ts';
import { type Account, doorOf, sentenceOf } from '../../../src/app/door/model.ts';
import {
  clockOff,
  type Device,
  hasJoined,
  isLastLead,
  isOwnMachine,
  isReason,
  knownUnit,
  labelFault,
  leftText,
  lossText,
  setupFaults,
  UNIT_HOUSE,
  waitText,
} from '../../../src/app/unit/model.ts';
import { abilitiesOf, recordsOf } from '../../../src/app/unit/roles.ts';
import { codeIn } from '../../../src/app/parts/hashCode.ts';

const account = (change: Partial<Account> = {}): Account => ({
  id: 'a-1',
  name: 'Some Invented',
  person: 'p-3k7m',
  role: 'lead',
  disabled: false,
  firstPassword: false,
  health: 'none',
  ...change,
});
const unit = { id: 'larkmoor', title: 'Larkmoor (invented)', invented: true };
const WHOLE = {
  code: 'K7M2-9XQT',
  title: 'Larkmoor (invented)',
  id: 'larkmoor-invented',
  name: 'Ada Invented',
  password: 'correct horse battery',
  repeat: 'correct horse battery',
};

describe('the beginning', () => {
  test('what is whole is what the server takes', () => {
    expect(setupFaults(WHOLE)).toEqual({});
    const { repeat, ...sent } = WHOLE;
    expect(repeat).toBe(sent.password);
    expect(creation.safeParse({ demo: false, ...sent }).success).toBe(true);
  });

  test.each([
    ['code', ' ', /terminal/],
    ['title', '', /^Type the unit’s name/],
    ['title', 'x'.repeat(121), /120 characters/],
    ['id', 'Larkmoor', /hyphens/],
    ['id', 'l'.repeat(41), /40 characters/],
    ['name', ' ', /^Type a name/],
    ['name', 'Ada\nInvented', /unusual characters/],
    ['repeat', 'correct horse batter', /differ/],
  ] as const)('%s as %j is said at its field', (field, typed, says) => {
    const faults = setupFaults({ ...WHOLE, [field]: typed });
    expect(Object.keys(faults)).toEqual([field]);
    expect(faults[field]).toMatch(says);
  });

  test.each(['short', 'aaaaaaaaaaaaaaaa', 'my larkmoor-invented', 'ada invented!!'])(
    '%s is no password',
    (password) => {
      expect(Object.keys(setupFaults({ ...WHOLE, password, repeat: password }))).toEqual(['password']);
    },
  );

  test('a unit that is there keeps its name and id, also where only its journal is', () => {
    const waiting = { unit: null, waitsForLead: true, journalOf: null };
    expect(knownUnit(waiting)).toBeUndefined();
    expect(knownUnit({ ...waiting, unit })).toEqual({ id: 'larkmoor', title: 'Larkmoor (invented)' });
    expect(knownUnit({ ...waiting, journalOf: 'larkmoor' })).toEqual({ id: 'larkmoor', title: 'larkmoor' });
  });

  test('a code is read from behind the # under its own name alone', () => {
    expect(codeIn('#setup=K7M2-9XQT', 'setup')).toBe('K7M2-9XQT');
    expect(codeIn('#pair=K7M2-9XQT', 'setup')).toBe('');
    expect(codeIn('#setup=<b>', 'setup')).toBe('');
  });
});

describe('who is in', () => {
  test('the lead alone finds the lists; whoever has a first password changes it before anything else', () => {
    const stands = (change: Partial<Account>) =>
      doorOf(UNIT_HOUSE, { is: 'answer', body: { unit, account: account(change) } }).is;
    expect(ROLES.filter((role) => stands({ role }) === 'in')).toEqual(['lead']);
    for (const role of ROLES) expect(stands({ role, firstPassword: true })).toBe('first');
  });

  test('no server, and one without a unit, are said with what to do', () => {
    expect(sentenceOf(UNIT_HOUSE, { is: 'lost' })).toMatch(/What you typed stays.*Then ask again\.$/);
  });

  test('the last lead is the only one whose account is open', () => {
    const ada = account();
    const bo = account({ id: 'a-2' });
    expect(isLastLead(ada, [ada, account({ id: 'a-3', role: 'observer' })])).toBe(true);
    expect(isLastLead(ada, [ada, bo])).toBe(false);
    expect(isLastLead(ada, [ada, { ...bo, disabled: true }])).toBe(true);
    expect(isLastLead({ ...ada, disabled: true }, [{ ...ada, disabled: true }])).toBe(false);
    expect(isLastLead(account({ role: 'reader' }), [ada])).toBe(false);
  });

  test('before a change that makes an account wait for health records the lead reads so, and where nobody could let it in', () => {
    const health = (id: string, change: Partial<Account> = {}): Account =>
      account({ id, name: `Some ${id}`, role: 'occupational-health', health: 'in', ...change });
    const [one, two] = [health('a-1'), health('a-2')];
    expect(waitText(account({ role: 'reader' }), [one])).toBe('');
    expect(waitText(account({ role: 'reader' }), [one], 'occupational-health')).toMatch(
      /until somebody of occupational health .* machine\.$/,
    );
    expect(waitText(account(), [account()], 'occupational-health')).toMatch(/first account .* at once/);
    expect(waitText(one, [one, two])).not.toContain('Nobody else');
    for (const other of [[], [health('a-2', { health: 'waits' })], [health('a-2', { disabled: true })]]) {
      expect(waitText(one, [one, ...other])).toMatch(/^ Some a-1 then .*Nobody else is let in now.*doffline/);
      expect(lossText(one, [one, ...other])).toMatch(/^ Opened again .*Nobody else is let in now/);
    }
    expect(lossText(one, [one, two])).toMatch(/^ Opened again .* waits to be let in to health records\.$/);
    expect(lossText(health('a-1', { health: 'waits' }), [two])).toBe('');
    expect(lossText(account(), [account()])).toBe('');
  });

  test('what a role may do is what the server’s table says', () => {
    expect(abilitiesOf('reader')).toEqual(['read the unit’s entries', 'have papers set']);
    const able = (what: RegExp) => ROLES.filter((role) => abilitiesOf(role).some((says) => what.test(says)));
    expect(able(/accounts/)).toEqual(['lead']);
    expect(able(/health records/)).toEqual(['occupational-health']);
    expect(able(/answered/)).toEqual(['observer', 'lead', 'occupational-health']);
    expect(recordsOf('reader')).toBe('nothing, it only reads');
    expect(recordsOf('stores')).toBe('notes, times on products’ labels');
    expect(ROLES.filter((role) => recordsOf(role).includes('procedures'))).toEqual(['lead']);
  });
});

describe('a pairing', () => {
  const device = (change: Partial<Device> = {}): Device => ({
    id: 'tablet-1',
    label: 'Tablet',
    role: 'observer',
    pairedAt: '2026-11-25T10:00:00.000Z',
    revokedAt: null,
    seenAt: null,
    clockOffset: null,
    ...change,
  });

  test('is told when the tablet is there, also one that was there before', () => {
    const offer = { device: 'tablet-1' };
    expect(hasJoined(offer, [], [])).toBe(false);
    expect(hasJoined(offer, [], [device({ id: 'tablet-2' })])).toBe(false);
    expect(hasJoined(offer, [], [device()])).toBe(true);
    expect(hasJoined(offer, [device()], [device({ seenAt: '2026-11-25T11:00:00.000Z' })])).toBe(false);
    expect(hasJoined(offer, [device()], [device({ pairedAt: '2026-11-25T11:00:00.000Z' })])).toBe(true);
  });

  test('shows minutes and seconds', () => {
    expect([600, 65, 9, 0].map(leftText)).toEqual(['10:00', '1:05', '0:09', '0:00']);
  });

  test.each([
    ['http://127.0.0.1:4173/device', true],
    ['http://localhost:4173/device', true],
    ['http://[::1]:4173/device', true],
    ['https://unit.example/device', false],
    ['https://10.1.2.3/device', false],
    ['https://127.example/device', false],
  ])('%s is this machine’s own: %s', (address, own) => {
    expect(isOwnMachine(address)).toBe(own);
  });

  test('asks for a name, and taking out for a reason', () => {
    expect(labelFault('Tablet')).toBe('');
    expect(labelFault(' ')).toMatch(/^Type what the tablet is called/);
    expect(labelFault('x'.repeat(81))).toMatch(/80 characters/);
    expect([isReason('Lost.'), isReason('  '), isReason('x'.repeat(301))]).toEqual([true, false, false]);
  });

  test('tells of a clock that is off by half a minute or more', () => {
    expect([null, 29_999, 30_000, -61_000].map(clockOff)).toEqual([undefined, undefined, 30, -61]);
  });
});
