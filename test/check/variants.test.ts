// Variants are tried beside the base, with only what differs; each must come out as the edited procedure does when it is
// worked out from nothing, with an interpreter and a diagram of its own.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/check/analysis.ts';
import { applyEdit, type Edit } from '../../src/check/edit.ts';
import type { WorseVariant } from '../../src/check/variantFindings.ts';
import { tryVariants, variantEdits } from '../../src/check/variants.ts';
import { AGENTS } from '../../src/domain/products.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { leastEvents } from '../../src/engine/barriers.ts';
import { RESPIRATOR_GOWN } from '../practice/procedures.ts';
import { procedures } from '../support/arbitraryProcedure.ts';

const leastOf = ({ compiled, diagram, judged, protectedSurfaces }: Analysis): ReadonlyMap<string, number> => {
  const least = leastEvents(diagram, judged);
  return new Map(
    protectedSurfaces.map((surface, at) => [compiled.plan.surfaces[surface]!.id, least[at]!] as const),
  );
};

/** From nothing: which surfaces have fewer barriers, and whether more cannot be done. */
function slowly(base: Analysis, edit: Edit) {
  const edited = analyse(applyEdit(base.compiled.procedure, edit), base.agent);
  const before = leastOf(base);
  const worse = [...leastOf(edited)].flatMap(([surface, after]) => {
    const was = before.get(surface) ?? -1;
    return after >= 0 && (was < 0 || after < was) ? [{ surface, before: was < 0 ? null : was, after }] : [];
  });
  return { edit, worse, unseen: edited.compiled.problems.length <= base.compiled.problems.length };
}

const bySurface = (worse: WorseVariant['worse']) =>
  [...worse].sort((a, b) => (a.surface < b.surface ? -1 : 1));

const plain = ({ edit, worse }: Pick<WorseVariant, 'edit' | 'worse'>) => ({
  edit,
  worse: bySurface(worse),
});

function expectSame(procedure: Procedure, agent: Analysis['agent'], edits: readonly Edit[]): number {
  const base = analyse(procedure, agent);
  const quick = tryVariants(base, edits).map(plain);
  const slow = edits.map((edit) => slowly(base, edit));
  const kept = slow.filter(({ worse, unseen }) => unseen && worse.length > 0);
  expect(quick).toEqual(kept.map(plain));
  return quick.length;
}

describe('variants', () => {
  test.each(AGENTS)('of random procedures come out as if worked out from nothing (%s)', (agent) => {
    fc.assert(
      fc.property(procedures(), fc.infiniteStream(fc.nat()), (procedure, numbers) => {
        const all = [...variantEdits(procedure.steps.length)];
        const some = all.filter(() => Number(numbers.next().value) % Math.ceil(all.length / 20) === 0);
        expectSame(procedure, agent, some);
      }),
      { numRuns: 60 },
    );
  });

  test('of a published order: a third of them, and some are worse', () => {
    const edits = [...variantEdits(RESPIRATOR_GOWN.steps.length)].filter((_, at) => at % 3 === 0);
    expect(expectSame(RESPIRATOR_GOWN, 'enveloped', edits)).toBeGreaterThan(3);
  });

  test('leave the base as it was, and come out the same again', () => {
    const base = analyse(RESPIRATOR_GOWN, 'enveloped');
    const edits = [...variantEdits(RESPIRATOR_GOWN.steps.length)].slice(0, 200);
    const count = base.diagram.count;
    const first = tryVariants(base, edits);
    expect(base.diagram.count).toBe(count);
    expect(tryVariants(base, edits)).toEqual(first);
  });

  test('also of edits that insert or replace a step', () => {
    const { steps } = RESPIRATOR_GOWN;
    const edits: readonly Edit[] = steps.flatMap((step, at): readonly Edit[] => [
      { do: 'insert', at, steps: [{ id: 'more', who: 'wearer', action: 'touch', items: [], place: 'face' }] },
      { do: 'replace', at, step: { id: step.id, who: step.who, action: 'say', items: [] } },
    ]);
    expect(expectSame(RESPIRATOR_GOWN, 'enveloped', edits)).toBeGreaterThan(5);
  });
});
