// What stands in writing and does not hold: about nothing that is found, about what cannot be accepted, or not looked at again by
// its day. The check has no clock: of the last it tells only where it is given a day.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { acceptables } from '../../src/app/compose/model/rules.ts';
import type { Acceptance, Procedure } from '../../src/domain/procedure.ts';
import { readProcedure } from '../../src/language/index.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { goodDoffing } from '../support/good.ts';
import { without } from '../support/procedure.ts';

const QUICK = { mends: false, variants: false, surfaces: false } as const;
const GOOD = goodDoffing();
const RULE = 'practice.hygiene-between-items';
const BROKEN = without(GOOD, 'rub-hood');

const one = (finding: string, more: Partial<Acceptance> = {}): Acceptance => ({
  finding,
  reason: 'Because (invented).',
  by: 'Committee (invented)',
  date: '2026-01-01',
  review: '2026-07-01',
  ...more,
});

const told = (procedure: Procedure, accepted: readonly Acceptance[], day?: string) =>
  verifyProcedure({ ...procedure, accepted }, { ...QUICK, ...(day === undefined ? {} : { day }) })
    .findings.filter(({ kind }) => kind === 'acceptance')
    .map(({ code, severity, steps, params }) => [
      code,
      severity,
      procedure.steps[steps[0] ?? -1]?.id,
      params.entry,
    ]);

describe('an acceptance', () => {
  test('that is about something found is not told of', () => {
    expect(told(BROKEN, [one(RULE)])).toEqual([]);
    expect(told(BROKEN, [one(RULE, { step: 'hood-off' })])).toEqual([]);
  });

  test('that is about nothing found is a note with where and which', () => {
    expect(told(GOOD, [one(RULE, { step: 'hood-off' })])).toEqual([
      ['acceptance.unmatched', 'note', 'hood-off', '1'],
    ]);
    expect(told(BROKEN, [one(RULE), one(RULE, { step: 'gown-off' })])).toEqual([
      ['acceptance.unmatched', 'note', 'gown-off', '2'],
    ]);
    expect(told(BROKEN, [one(RULE, { surface: 'wearer.neck' })])).toHaveLength(1);
  });

  test('is about what is found also where another one covers it', () => {
    expect(told(BROKEN, [one(RULE), one(RULE, { step: 'hood-off' })])).toEqual([]);
  });

  test('of what cannot be accepted says so', () => {
    const asked = ['open.skin', 'impossible.not-worn', 'anything else'].map((finding) => one(finding));
    expect(told(GOOD, asked).map(([code]) => code)).toEqual(asked.map(() => 'acceptance.void'));
  });

  test('is overdue after its day of review, on a day that is given and never otherwise', () => {
    const accepted = [one(RULE)];
    expect(told(BROKEN, accepted)).toEqual([]);
    expect(told(BROKEN, accepted, '2026-07-01')).toEqual([]);
    expect(told(BROKEN, accepted, '2026-07-02')).toEqual([['acceptance.overdue', 'note', undefined, '1']]);
    const graded = verifyProcedure({ ...BROKEN, accepted }, { ...QUICK, day: '2026-07-02' }).findings.find(
      ({ code }) => code === RULE,
    );
    expect(graded?.severity).toBe('note');
  });

  test('of a place left bare holds as the writing page writes it, with its step', () => {
    const people = GOOD.people.map((person) => ({
      ...person,
      wears: person.wears.filter((item) => item !== 'surgical-hood'),
      leavesBare: [],
    }));
    const bare = { ...GOOD, people };
    const found = verifyProcedure(bare, QUICK).findings.filter(({ code }) => code === 'coverage.bare');
    const offered = acceptables(bare, found);
    expect(offered.length).toBeGreaterThan(0);
    const accepted = offered.map(({ finding, ...where }) => one(finding, where));
    expect(told(bare, accepted)).toEqual([]);
    const left = verifyProcedure({ ...bare, accepted }, QUICK).findings;
    expect(left.filter(({ code, severity }) => code === 'coverage.bare' && severity === 'error')).toEqual([]);
  });
});

test('no procedure of this house accepts anything that it does not hold', () => {
  const files = readdirSync('procedures').filter((name) => name.endsWith('.yaml'));
  expect(files.length).toBeGreaterThan(20);
  for (const name of files) {
    const { procedure } = readProcedure(readFileSync(`procedures/${name}`, 'utf8'), name);
    expect([name, procedure && told(procedure, procedure.accepted)]).toEqual([name, []]);
  }
});
