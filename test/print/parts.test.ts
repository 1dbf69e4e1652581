// The parts of a script: whatever the walk and the sitting, every step is in one part, and parts hold five to nine.
import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import { LEAST, MOST, partsOf } from '../../src/print/parts.ts';
import { momentsOf } from '../../src/print/moments.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { goodDoffing } from '../support/good.ts';

const chair = (procedure: Procedure): string =>
  procedure.fixtures.find(({ kind }) => kind === 'chair')?.id ?? 'chair';

const KINDS = ['say', 'sit', 'stand', 'move'] as const;

function stepOf(procedure: Procedure, kind: (typeof KINDS)[number], index: number): Step {
  const who = procedure.people.find(({ role }) => role === 'wearer')?.id ?? '';
  const zone = procedure.zones[index % procedure.zones.length]?.id ?? '';
  const more = kind === 'sit' ? { fixture: chair(procedure) } : kind === 'move' ? { zone } : {};
  return { id: `s${index}`, who, action: kind, items: [], ...more };
}

const partsFor = (kinds: readonly (typeof KINDS)[number][]) => {
  const base = goodDoffing();
  const procedure = { ...base, steps: kinds.map((kind, index) => stepOf(base, kind, index)) };
  const verdict = verifyProcedure(procedure, { mends: false, variants: false });
  return partsOf(procedure, momentsOf(verdict));
};

describe('parts', () => {
  test.prop([fc.array(fc.constantFrom(...KINDS), { minLength: 1, maxLength: 40 })], { numRuns: 60 })(
    'hold every step once, five to nine each',
    (kinds) => {
      const parts = partsFor(kinds);
      expect(parts.flatMap(({ from, to }) => kinds.slice(from, to))).toEqual(kinds);
      expect(parts.map(({ from }) => from)).toEqual([0, ...parts.slice(0, -1).map(({ to }) => to)]);
      if (kinds.length >= LEAST)
        for (const { from, to } of parts) {
          expect(to - from).toBeGreaterThanOrEqual(LEAST);
          expect(to - from).toBeLessThanOrEqual(MOST);
        }
    },
  );

  test('end where the wearer sits down, not in the middle of it', () => {
    const said = (count: number) => Array.from({ length: count }, () => 'say' as const);
    const kinds = [...said(6), 'sit' as const, ...said(4), 'stand' as const];
    expect(partsFor(kinds).map(({ from }) => from)).toEqual([0, 6]);
  });
});
