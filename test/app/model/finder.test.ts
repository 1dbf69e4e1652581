// Long pages: what the address keeps of a search and of folded groups, what is open, and what an address points to.
import { describe, expect, test } from 'vitest';
import { fc, test as property } from '@fast-check/vitest';
import type { SurfaceVerdict } from '../../../src/check/finding.ts';
import { allEvidence } from '../../../src/evidence/index.ts';
import { groupOfRecord, isRecord, searched } from '../../../src/app/model/evidence.ts';
import { groupsOf, holds, openOf, soughtIn, withOpen, withSearch } from '../../../src/app/model/finder.ts';
import { anchorOf, gradeOf, gradesFound, pointedTo } from '../../../src/app/surfaces/grades.ts';
import { surfaceVerdicts } from '../../../src/check/surfaces.ts';
import { analysisOf, LARKMOOR, procedureIn } from '../checked.ts';

const NAMES = ['hep', 'practice', 'slip'];
const open = (
  address: string,
  target?: string,
  standing: readonly string[] = ['slip'],
): readonly string[] => [
  ...openOf({ sought: soughtIn(new URLSearchParams(address)), names: NAMES, standing, target }),
];

describe('which groups are open', () => {
  test.each([
    ['nothing asked: those that stand open', '', undefined, ['slip']],
    ['a search opens all that it finds', 'find=grip', undefined, NAMES],
    ['as a hand left them', 'open=hep', undefined, ['hep']],
    ['all folded by hand', 'open=', undefined, []],
    ['folded by hand within a search', 'find=grip&open=hep,slip', undefined, ['hep', 'slip']],
    ['the group of what is pointed to', 'open=hep', 'practice', ['hep', 'practice']],
    ['a group that is not there', 'open=hep,other', undefined, ['hep']],
  ])('%s', (_, address, target, expected) => {
    expect(open(address, target).toSorted()).toEqual(expected);
  });

  const word = fc.string({ minLength: 1, maxLength: 12 });
  property.prop([word, fc.subarray(NAMES)])(
    'the address gives back what was put into it',
    (search, groups) => {
      const before = new URLSearchParams('agent=all');
      const asked = withOpen(withSearch(before, search), groups);
      expect(soughtIn(new URLSearchParams(asked.toString()))).toEqual({ search, open: groups });
      expect(asked.get('agent')).toBe('all');
      // Another search forgets what was folded for this one, and none leaves nothing behind.
      expect(soughtIn(withSearch(asked, `${search}s`)).open).toBeUndefined();
      expect(withSearch(asked, '').toString()).toBe(before.toString());
    },
  );
});

test('every word of a search must be there, in any order and case', () => {
  expect(holds('The wearer’s left hand', 'HAND left')).toBe(true);
  expect(holds('The wearer’s left hand', 'hand right')).toBe(false);
  expect(holds('anything', '  ')).toBe(true);
});

property.prop([fc.array(fc.nat({ max: 30 }))])('groups hold every item once, in its order', (items) => {
  const groups = groupsOf(items, (item) => String(item % 4));
  expect(groups.flatMap((group) => group.items).toSorted((a, b) => a - b)).toEqual(
    items.toSorted((a, b) => a - b),
  );
  for (const { name, items: own } of groups)
    expect(own).toEqual(items.filter((item) => String(item % 4) === name));
});

test('every record can be pointed to, and stands in its group', () => {
  const groups = new Map(searched('').map(({ name, items }) => [name, items]));
  for (const record of allEvidence) {
    expect(isRecord(record.id)).toBe(true);
    expect(groups.get(groupOfRecord(record.id))).toContain(record);
  }
  expect(isRecord('no.such-record')).toBe(false);
});

describe('surfaces', () => {
  const procedure = procedureIn(LARKMOOR);
  const surfaces = surfaceVerdicts(analysisOf(procedure, 'enveloped'), '');

  test('no search lists every surface once, worst grade first', () => {
    const grades = gradesFound(procedure, surfaces, '');
    expect(grades.flatMap(({ items }) => items)).toHaveLength(surfaces.length);
    expect(grades.map(({ name }) => name)).toEqual(
      ['0', '1', '2', '3', 'none'].filter((grade) => grades.some(({ name }) => name === grade)),
    );
    for (const { name, items } of grades) for (const one of items) expect(gradeOf(one)).toBe(name);
  });

  test('a search leaves what holds its words, by words and by id', () => {
    const idsOf = (search: string): readonly string[] =>
      gradesFound(procedure, surfaces, search).flatMap(({ items }) => items.map(({ surface }) => surface));
    expect(idsOf('mouth').some((id) => id === 'wearer.mouth')).toBe(true);
    expect(idsOf('wearer.mouth').every((id) => id.startsWith('wearer.mouth'))).toBe(true);
    expect(idsOf('mouth xylophone')).toEqual([]);
  });

  test('each has its own place in the address; without an agent it is the first of that name', () => {
    const twice = surfaces.flatMap((one): readonly SurfaceVerdict[] => [
      { ...one, agent: 'enveloped' },
      { ...one, agent: 'non-enveloped' },
    ]);
    expect(new Set(twice.map(anchorOf)).size).toBe(twice.length);
    for (const one of twice) expect(pointedTo(twice, anchorOf(one))).toBe(one);
    expect(pointedTo(twice, 'wearer.mouth')).toMatchObject({ surface: 'wearer.mouth', agent: 'enveloped' });
    expect(pointedTo(twice, 'nobody.nothing')).toBeUndefined();
  });
});
