// Who stands at the door of a page that needs the server, and that what is said there is plain and tells nothing of a record.
import { describe, expect, test } from 'vitest';
import { PROBLEM_CODES, PROBLEMS, type ProblemCode } from '../../../src/api/problems.ts';
import { ROLES } from '../../../src/api/roles.ts';
import {
  type Account,
  asksAnew,
  doorAfterSignOut,
  doorOf as doorOfHouse,
  doorWhenEnded as doorOfHouseWhenEnded,
  type Refused,
  sentenceOf as sentenceOfHouse,
} from '../../../src/app/door/model.ts';
import { HEALTH_HOUSE } from '../../../src/app/health/model.ts';

type Tail<Ask> = Ask extends (first: never, ...rest: infer Rest) => unknown ? Rest : never;
const doorOf = (...told: Tail<typeof doorOfHouse>) => doorOfHouse(HEALTH_HOUSE, ...told);
const doorWhenEnded = (...told: Tail<typeof doorOfHouseWhenEnded>) =>
  doorOfHouseWhenEnded(HEALTH_HOUSE, ...told);
const sentenceOf = (refused: Refused): string => sentenceOfHouse(HEALTH_HOUSE, refused);
const LOST = HEALTH_HOUSE.lost;

const account = (change: Partial<Account> = {}): Account => ({
  id: 'a-1',
  name: 'Some Invented',
  person: 'p-3k7m',
  role: 'occupational-health',
  disabled: false,
  firstPassword: false,
  health: 'in',
  ...change,
});
const unit = { id: 'larkmoor', title: 'Larkmoor (invented)', invented: true };
const session = (change?: Partial<Account>) =>
  ({ is: 'answer', body: { unit, account: account(change) } }) as const;
const refused = (code: ProblemCode, after?: number): Refused => ({
  is: 'refused',
  problem: { code, todo: PROBLEMS[code].todo, ...(after === undefined ? {} : { after }) },
});
const lost = { is: 'lost' } as const;

describe('the door', () => {
  test('opens to occupational health that is let in alone, and not before an own password was chosen', () => {
    const open = ROLES.filter((role) => doorOf(session({ role })).is === 'in');
    expect(open).toEqual(['occupational-health']);
    expect(doorOf(session({ firstPassword: true })).is).toBe('first');
    expect(doorOf(session({ health: 'waits' })).is).toBe('other');
    expect(doorOf(session({ health: 'waits', firstPassword: true })).is).toBe('first');
    for (const role of ROLES.filter((one) => one !== 'occupational-health'))
      expect(doorOf(session({ role, firstPassword: true })).is).toBe('other');
  });

  test.each(['not-signed-in', 'not-allowed', 'not-paired', 'device-revoked'] as const)(
    'asks to sign in where the server says %s, on a paired device as well',
    (code) => {
      expect(doorOf(refused(code), 'A note.')).toEqual({ is: 'out', note: 'A note.' });
      const ended = doorWhenEnded(refused(code));
      expect(ended.is === 'out' && ended.note).toMatch(/^The session has ended/);
    },
  );

  test('is shut, and says why, where nobody answers, there is no unit, or the server fails', () => {
    expect(doorOf(lost)).toEqual({ is: 'shut', says: LOST });
    for (const code of ['not-found', 'damaged', 'too-many'] as const)
      expect(doorOf(refused(code))).toEqual({ is: 'shut', says: sentenceOf(refused(code)) });
  });

  test('after signing out says so where the server may still have the session open', () => {
    expect(doorAfterSignOut({ is: 'answer', body: {} }, 'Why.')).toEqual({ is: 'out', note: 'Why.' });
    expect(doorAfterSignOut(refused('not-signed-in'))).toEqual({ is: 'out', note: '' });
    const unsure = doorAfterSignOut(lost);
    expect(unsure.is === 'shut' && unsure.says).toMatch(/may still be open/);
  });
});

describe('what is said', () => {
  test('is a sentence for every refusal there is, and never a code', () => {
    for (const code of PROBLEM_CODES) {
      const says = sentenceOf(refused(code));
      expect(says).toMatch(/^[A-Z].*\.$/);
      expect(says).not.toContain(code.includes('-') ? code : `“${code}”`);
    }
  });

  test('names what is missing and who can mend it', () => {
    expect(sentenceOf(refused('health-key-missing'))).toMatch(/no key .*DOFFLINE_HEALTH_KEY.*administrator/);
    expect(sentenceOf(refused('health-key-unknown'))).toMatch(/older key/);
    expect(sentenceOf(lost)).toMatch(/This page needs it/);
  });

  test.each([
    [undefined, 'a minute'],
    [1, 'a minute'],
    [61, '2 minutes'],
    [900, '15 minutes'],
  ])('says how long to wait: %s seconds are %s', (after, says) => {
    expect(sentenceOf(refused('too-many', after))).toBe(`Too many tries. Wait ${says}, then try again.`);
  });

  test('puts in doubt who is signed in only where the refusal is about that', () => {
    const doubted = PROBLEM_CODES.filter((code) => asksAnew(refused(code)));
    expect(doubted.toSorted()).toEqual([
      'device-revoked',
      'first-password',
      'not-allowed',
      'not-found',
      'not-let-in',
      'not-paired',
      'not-signed-in',
    ]);
    expect(asksAnew(lost)).toBe(false);
  });
});
