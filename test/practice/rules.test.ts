// One broken fact, one rule: each case takes a procedure without a departure, breaks exactly what one rule asks for, and
// expects exactly that rule, at that step. `source` is where the rule is published (evidence/practice.json).
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { evidence, evidenceIds, type PracticeRuleId } from '../../src/evidence/index.ts';
import { techniquesThatBreak } from '../../src/practice/declared.ts';
import { departures, RULES } from '../../src/practice/index.ts';
import { UNCHECKED } from '../../src/practice/unchecked.ts';
import type { Case } from './cases/case.ts';
import { FEET_CASES } from './cases/feet.ts';
import { GRIP_CASES } from './cases/grip.ts';
import { HYGIENE_CASES } from './cases/hygiene.ts';
import { DONNING_CASES, ORDER_CASES } from './cases/order.ts';
import { LOOK_CASES, TEAM_CASES } from './cases/team.ts';

const found = (procedure: Procedure) =>
  departures(compile(procedure, 'enveloped')).map(
    ({ rule, step: index }) => `${rule} @ ${procedure.steps[index]?.id}`,
  );

const CASES: readonly Case[] = [
  ...HYGIENE_CASES,
  ...ORDER_CASES,
  ...GRIP_CASES,
  ...FEET_CASES,
  ...LOOK_CASES,
  ...TEAM_CASES,
  ...DONNING_CASES,
];

describe('one broken fact is exactly one departure', () => {
  for (const { rule, source, broken, procedure, at, also } of CASES) {
    test(`${rule} (${source}): ${broken}`, () => {
      expect(evidence(rule).source.id).toBe(source);
      const expected = [rule, ...(also ? [also] : [])].map((id) => `${id} @ ${at}`);
      expect([...found(procedure)].toSorted()).toEqual(expected.toSorted());
    });
  }
});

describe('the tables', () => {
  const all = evidenceIds.filter((id): id is PracticeRuleId => id.startsWith('practice.'));
  const checked = all.filter(
    (id) => RULES.some((rule) => rule.id === id) || techniquesThatBreak(id).length > 0,
  );

  test('every published rule is checked, or said not to be, and none is both', () => {
    expect(all.length).toBeGreaterThan(60);
    const unchecked = UNCHECKED.map((entry) => entry.id);
    expect([...checked, ...unchecked].toSorted()).toEqual(all.toSorted());
  });

  test('every checked rule has a case above', () => {
    const tested = CASES.flatMap(({ rule, also }) => [rule, ...(also ? [also] : [])]);
    expect(checked.filter((id) => !tested.includes(id))).toEqual([]);
  });

  test('no rule stands twice', () => {
    const ids = RULES.map((rule) => rule.id);
    expect(ids).toEqual([...new Set(ids)]);
  });
});
