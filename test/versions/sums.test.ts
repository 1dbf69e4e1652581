// The sums around versions: names made from titles, days, who signs, what hinders sending, departures across versions.
// Today is always a value, so nothing here depends on when it runs.
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/check/finding.ts';
import type { Plain } from '../../src/journal/canonical.ts';
import { fold, type View } from '../../src/journal/fold.ts';
import { hashOfText } from '../../src/journal/hash.ts';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { personId, slug } from '../../src/journal/kinds/values.ts';
import { versionsView } from '../../src/journal/views/versions.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { daysBetween, isDay, yearLater } from '../../src/versions/days.ts';
import { departureRows, reviewsDue } from '../../src/versions/departures.ts';
import { deviceIdFrom, freeSlug, nextVersion, personIdFrom, slugOf } from '../../src/versions/naming.ts';
import { hindrances, type ToSend } from '../../src/versions/sending.ts';
import { memberText, staffView } from '../../src/versions/staff.ts';
import { textsView } from '../../src/versions/texts.ts';
import { BODIES, device } from '../journal/samples.ts';
import { procedure } from '../support/procedure.ts';

describe('names', () => {
  test.each([
    ['Suit doffing, ward 3', 'suit-doffing-ward-3'],
    ['Déshabillage « combinaison »', 'deshabillage-combinaison'],
    ['  --  ', ''],
    ['防护服', ''],
  ])('%s', (title, id) => {
    expect(slugOf(title)).toBe(id);
  });

  property.prop([fc.string({ unit: 'grapheme' }), fc.uniqueArray(fc.string())])(
    'an id is always one that the journal takes, and free',
    (title, others) => {
      const taken = new Set([...others, slugOf(title)]);
      const id = freeSlug(title, taken, 'procedure');
      expect(slug.safeParse(id).success).toBe(true);
      expect(taken.has(id)).toBe(false);
    },
  );

  test.each([
    ['1', [], '2'],
    ['1', ['2', '3'], '4'],
    ['v3', [], 'v4'],
    ['1.9', [], '1.10'],
    ['spring', [], 'spring.2'],
    ['x'.repeat(32), [], `${'x'.repeat(26)}.2`],
  ] as const)('after %s comes another', (version, taken, next) => {
    expect(nextVersion(version, new Set(taken))).toBe(next);
  });

  property.prop([fc.uint8Array({ minLength: 8, maxLength: 16 })])('ids from chance are ids', (bytes) => {
    expect(personId.safeParse(personIdFrom(bytes)).success).toBe(true);
    expect(slug.safeParse(deviceIdFrom(bytes)).success).toBe(true);
  });
});

describe('days', () => {
  test('are counted across months and leap years', () => {
    expect(daysBetween('2026-02-28', '2026-03-01')).toBe(1);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2026-11-25', '2026-11-24')).toBe(-1);
    expect(yearLater('2026-11-25')).toBe('2027-11-25');
    expect(yearLater('2028-02-29')).toBe('2029-02-28');
  });

  test('a day that is none is none', () => {
    for (const no of ['2026-06-31', '2026-13-01', '2026-1-1', '', 'today']) expect(isDay(no)).toBe(false);
    expect(isDay('2028-02-29')).toBe(true);
  });
});

async function stateOf<State extends Plain>(view: View<State>, entries: readonly Entry[]): Promise<State> {
  const store = memoryStore();
  await store.append(entries);
  return fold(view, await store.read(1));
}

describe('staff', () => {
  test('the latest line about somebody holds; nobody has a name', async () => {
    const desk = device('desk');
    const staff = await stateOf(staffView, [
      desk.write('staff.listed'),
      desk.write('staff.listed', { person: 'p-3k7m', role: 'charge nurse', initials: 'CN' }),
      desk.write('note.added'),
    ]);
    expect(memberText(staff, 'p-3k7m')).toBe('charge nurse (CN)');
    expect(memberText(staff, 'p-gone')).toBe('p-gone');
    expect(memberText(staff, 'constructor')).toBe('constructor');
    expect(memberText(staff, null)).toBe('the device');
  });
});

const ERROR: Finding = {
  code: 'open.skin',
  kind: 'open',
  severity: 'error',
  steps: [0],
  surfaces: [],
  params: {},
  events: [],
  route: [],
  mends: [],
  evidence: [],
};
const DEPARTURE: Finding = { ...ERROR, code: 'practice.x', kind: 'practice' };
const TODAY = '2026-11-25';
const READY: ToSend = {
  title: 'Suit',
  version: '2',
  text: 'x',
  content: hashOfText('x'),
  accepted: [],
  checked: { findings: [], limits: [] },
  broken: false,
};
const codes = (draft: Partial<ToSend>, there?: Parameters<typeof hindrances>[1]): readonly string[] =>
  hindrances({ ...READY, ...draft }, there, TODAY).map(({ code }) => code);
const VERSION = {
  version: '2',
  content: READY.content,
  drafted: { at: '', by: null, unitNumber: 1 },
  sent: null,
  sentBack: null,
  approved: null,
  retired: null,
  departures: [],
};

describe('sending', () => {
  test('nothing hinders a draft that is checked to the end and without an error', () => {
    expect(codes({})).toEqual([]);
    expect(codes({ checked: { findings: [{ ...DEPARTURE, severity: 'note' }], limits: [] } })).toEqual([]);
    expect(codes({}, { ...VERSION, stage: 'draft' })).toEqual([]);
  });

  test('a check that has not run on this text hinders, and so does a file that cannot be read', () => {
    expect(codes({ checked: undefined })).toEqual(['not-checked']);
    expect(codes({ checked: undefined, broken: true })).toEqual(['not-finished']);
  });

  test('an open route must be mended; a departure may be accepted; what was accepted no longer hinders', () => {
    const found = hindrances(
      { ...READY, checked: { findings: [ERROR, DEPARTURE], limits: [] } },
      undefined,
      TODAY,
    );
    expect(found.map(({ code, findings }) => [code, findings.map((one) => one.code)])).toEqual([
      ['to-mend', ['open.skin']],
      ['to-accept', ['practice.x']],
    ]);
    const accepted = { finding: 'practice.x', reason: 'r', by: 'b', date: '2026-01-01', review: TODAY };
    expect(codes({ checked: { findings: [{ ...DEPARTURE, accepted }], limits: [] } })).toEqual([]);
  });

  test('an approved or retired version is never written over; the same file is not sent twice', () => {
    expect(codes({}, { ...VERSION, stage: 'approved' })).toEqual(['version-taken']);
    expect(codes({}, { ...VERSION, stage: 'retired' })).toEqual(['version-taken']);
    expect(codes({}, { ...VERSION, stage: 'review' })).toEqual(['same-sent']);
    expect(codes({}, { ...VERSION, stage: 'review', content: hashOfText('y') })).toEqual([]);
  });

  test('what is accepted past its day of review hinders, found or not, the longest overdue first', () => {
    const one = (step: string, review: string) => ({
      finding: 'practice.x',
      step,
      reason: 'r',
      by: 'lead',
      date: '2026-01-01',
      review,
    });
    const [late, later, due] = [one('a', '2026-11-24'), one('b', '2026-03-01'), one('c', TODAY)] as const;
    const findings = [late, due].map((accepted): Finding => ({ ...DEPARTURE, severity: 'note', accepted }));
    const draft = { ...READY, accepted: [late, later, due], checked: { findings, limits: [] } };
    expect(hindrances(draft, undefined, TODAY)).toEqual([
      { code: 'review-past', findings: findings.slice(0, 1), overdue: [later, late] },
    ]);
    expect(codes({ accepted: [due] })).toEqual([]);
    expect(codes({ accepted: [late], checked: undefined })).toEqual(['not-checked', 'review-past']);
  });

  test('what the journal would refuse is told before', () => {
    expect(codes({ title: ' ', version: '' })).toEqual(['no-title', 'no-version']);
    expect(codes({ version: 'x'.repeat(33) })).toEqual(['no-version']);
    expect(codes({ text: 'x'.repeat(128 * 1024 + 1) })).toEqual(['too-long']);
    expect(codes({ checked: { findings: [], limits: [{ code: 'exact', params: {} }] } })).toEqual([
      'not-worked-out',
    ]);
  });
});

describe('departures across versions', () => {
  const accepted = (finding: string, review: string) => ({
    finding,
    reason: 'r',
    by: 'lead',
    date: '2026-01-01',
    review,
  });
  const file = (version: string, ...reviews: readonly string[]) => ({
    ...procedure({ people: [], steps: [] }),
    version,
    accepted: reviews.map((review, at) => accepted(`practice.${at}`, review)),
  });
  const files = new Map([
    [hashOfText('1'), file('1', '2026-05-01')],
    [hashOfText('2'), file('2', '2026-12-01', '2026-11-24', '2026-11-25')],
    [hashOfText('3'), file('3', '2026-11-20')],
  ]);

  test('the overdue first, the longest overdue at the top, those of retired versions last', async () => {
    const desk = device('desk');
    const through = (version: string): readonly Entry[] => {
      const of = { procedure: 'suit-doffing', version, content: hashOfText(version) };
      return [
        desk.write('procedure.drafted', { ...of, text: version }),
        desk.write('procedure.sent-for-review', { ...of, to: ['p-3k7m'] }),
        desk.write('procedure.approved', { ...BODIES['procedure.approved'], ...of }),
      ];
    };
    const of = { procedure: 'suit-doffing', version: '1', content: hashOfText('1') };
    const entries = [
      ...through('1'),
      ...through('2'),
      ...through('3'),
      desk.write('procedure.retired', { ...of, reason: 'Replaced.' }),
    ];
    const state = await stateOf(versionsView, entries);
    const rows = departureRows(state, (content) => files.get(content), '2026-11-25');
    expect(rows.map(({ version, days, overdue, stage }) => [version, days, overdue, stage])).toEqual([
      ['3', -5, true, 'approved'],
      ['2', -1, true, 'approved'],
      ['2', 0, false, 'approved'],
      ['2', 6, false, 'approved'],
      ['1', -208, false, 'retired'],
    ]);
    expect(departureRows(state, () => undefined, '2026-11-25')).toEqual([]);
    expect(reviewsDue(state, '2027-11-26').map(({ version, days }) => [version, days])).toEqual([
      ['2', -1],
      ['3', -1],
    ]);
    const texts = await stateOf(textsView, entries);
    expect(texts).toEqual({ [hashOfText('1')]: '1', [hashOfText('2')]: '2', [hashOfText('3')]: '3' });
  });
});
