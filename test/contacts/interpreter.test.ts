// The interpreter as variants use it: what it remembers equals what a new run finds, and names of events do not move with
// the steps.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Scene } from '../../src/contacts/scene.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { procedures } from '../support/arbitraryProcedure.ts';
import { moved, step } from '../support/procedure.ts';
import { compiledOf, doffing, lineOf, linesOf } from './support.ts';

/** A procedure with one of its steps moved before another, and both positions. */
const moves = procedures(12)
  .filter(({ steps }) => steps.length > 1)
  .chain((one) => {
    const ids = one.steps.map(({ id }) => id);
    return fc
      .tuple(fc.constantFrom(...ids), fc.constantFrom(...ids))
      .filter(([from, before]) => from !== before)
      .map(([from, before]): readonly [Procedure, Procedure] => [one, moved(one, before, from)]);
  });

/** Of everybody: what is worn and how, where they are, and whether the hands are wet. */
const posture = ({ bodies }: Scene) =>
  Object.values(bodies).map(({ layers, ...rest }) => ({
    ...rest,
    layers: layers.map(({ item, side, fastened }) => [item, side, fastened]),
  }));

/** The steps of another order, performed by the interpreter of the first. */
function continued(base: Compiled, other: Procedure) {
  let scene = base.interpreter.start.scene;
  const performed = other.steps.map((one, index) => {
    const result = base.interpreter.perform(scene, one, index);
    scene = result.after;
    return result;
  });
  const { surfaces, events } = base.interpreter.registry;
  const plan = { surfaces, events, start: base.interpreter.start.operations, steps: [] };
  const lines = performed.map(({ operations }) => operations.map((one) => lineOf({ ...base, plan }, one)));
  return { performed, lines };
}

describe('an interpreter that goes on with other steps', () => {
  it('does what a new run does, by name, with problems where the steps are now', () => {
    fc.assert(
      fc.property(moves, ([one, other]) => {
        const anew = compile(other, 'enveloped');
        const { performed, lines } = continued(compile(one, 'enveloped'), other);
        expect(lines).toEqual(other.steps.map(({ id }) => linesOf(anew, id)));
        expect(performed.flatMap(({ problems }) => problems)).toEqual(anew.problems);
        expect(performed.map(({ after }) => posture(after))).toEqual(
          anew.performed.map(({ after }) => posture(after)),
        );
      }),
      { numRuns: 400 },
    );
  });

  it('gives the same again for the same steps', () => {
    fc.assert(
      fc.property(procedures(12), (one) => {
        const base = compile(one, 'non-enveloped');
        const { performed } = continued(base, one);
        expect(performed.map(({ operations }) => operations)).toEqual(
          base.plan.steps.map(({ operations }) => operations),
        );
        expect(performed.map(({ after }) => after)).toEqual(base.performed.map(({ after }) => after));
      }),
      { numRuns: 300 },
    );
  });
});

describe('names of events', () => {
  it('are those of their step wherever it stands', () => {
    fc.assert(
      fc.property(moves, ([one, other]) => {
        const before = new Map(compile(one, 'enveloped').plan.events.map((event) => [event.key, event]));
        for (const { key, what, prior, who } of compile(other, 'enveloped').plan.events) {
          const known = before.get(key);
          if (known) expect([what, prior, who]).toEqual([known.what, known.prior, known.who]);
          expect(key.startsWith('start:') || other.steps.some(({ id }) => key.startsWith(`${id}:`))).toBe(
            true,
          );
        }
      }),
      { numRuns: 200 },
    );
  });

  it('survive a move that changes nothing else', () => {
    const say = step('say', 'say');
    const off = step('off', 'remove', { items: ['gown'] });
    const keys = (from: Procedure) => compiledOf(from).plan.events.map(({ key }) => key);
    const first = doffing(['gown'], [say, off]);
    expect(new Set(keys(moved(first, 'say', 'off')))).toEqual(new Set(keys(first)));
  });
});
