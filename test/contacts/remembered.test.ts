// What was worked out for another procedure with the same people and room is used again. That must never show: the plan is
// the same, number by number, as one that is worked out by a process that knows nothing.
import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import { AGENTS } from '../../src/domain/products.ts';
import { procedures } from '../support/arbitraryProcedure.ts';

async function knowingNothing(): Promise<typeof compile> {
  vi.resetModules();
  return (await import('../../src/contacts/interpret.ts')).compile;
}

const told = ({ plan, problems, performed }: Compiled) => ({
  plan,
  problems,
  techniques: performed.map(({ technique }) => technique.id),
});

/** Steps left out, in another order, and one whose id now says something else. */
const edits = (steps: readonly Step[]) =>
  fc.tuple(fc.shuffledSubarray([...steps]), fc.nat(), fc.nat()).map(([some, to, from]): readonly Step[] => {
    const [one, other] = [some[to % some.length], steps[from % steps.length]];
    return one && other ? some.map((step) => (step === one ? { ...other, id: one.id } : step)) : some;
  });

const edited = procedures(10)
  .filter(({ steps }) => steps.length > 0)
  .chain((one) =>
    fc
      .array(edits(one.steps), { minLength: 2, maxLength: 4 })
      .map((all): readonly Procedure[] => [one, ...all.map((steps) => structuredClone({ ...one, steps }))]),
  );

test('a procedure compiles to the same plan whatever was compiled before it', async () => {
  await fc.assert(
    fc.asyncProperty(edited, async (all) => {
      const after = all.map((one) => AGENTS.map((agent) => told(compile(one, agent))));
      for (const [at, one] of all.entries()) {
        for (const [which, agent] of AGENTS.entries()) {
          const anew = await knowingNothing();
          expect(after[at]?.[which]).toEqual(told(anew(one, agent)));
        }
      }
    }),
    { numRuns: 60 },
  );
});
