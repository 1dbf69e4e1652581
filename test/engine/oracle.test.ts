// A second, independent oracle: a SAT solver (logic-solver, MiniSat inside) over random and/or formulas. It says whether two
// formulas are the same function, and finds every minimal cut set by shrinking a model and blocking it.

import * as fc from 'fast-check';
import * as Logic from 'logic-solver';
import { expect, it } from 'vitest';
import { listOf } from '../../src/engine/cutSets.ts';
import { Diagram, type Node } from '../../src/engine/diagram.ts';
import { Families } from '../../src/engine/families.ts';

const EVENTS = 12;

type Formula = { readonly event: number } | { readonly and: Formula[] } | { readonly or: Formula[] };

const formulas: fc.Arbitrary<Formula> = fc.letrec<{ formula: Formula; parts: Formula[] }>((tie) => ({
  formula: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.record({ event: fc.nat(EVENTS - 1) }),
    fc.record({ and: tie('parts') }),
    fc.record({ or: tie('parts') }),
  ),
  parts: fc.array(tie('formula'), { minLength: 2, maxLength: 4 }),
})).formula;

function nodeOf(diagram: Diagram, formula: Formula): Node {
  if ('event' in formula) return diagram.event(formula.event);
  if ('and' in formula)
    return formula.and.map((part) => nodeOf(diagram, part)).reduce((a, b) => diagram.and(a, b));
  return formula.or.map((part) => nodeOf(diagram, part)).reduce((a, b) => diagram.or(a, b));
}

function logicOf(formula: Formula): Logic.Formula {
  if ('event' in formula) return `e${formula.event}`;
  if ('and' in formula) return Logic.and(...formula.and.map(logicOf));
  return Logic.or(...formula.or.map(logicOf));
}

function holds(formula: Formula, set: readonly number[]): boolean {
  if ('event' in formula) return set.includes(formula.event);
  return 'and' in formula
    ? formula.and.every((part) => holds(part, set))
    : formula.or.some((part) => holds(part, set));
}

/** Every minimal set: take a model, drop what it does not need, forbid it and all that hold it, ask again. */
function minimalBySolver(formula: Formula): number[][] {
  const solver = new Logic.Solver();
  solver.require(logicOf(formula));
  const found: number[][] = [];
  for (let model = solver.solve(); model !== null; model = solver.solve()) {
    let set = model.getTrueVars().map((name) => Number(name.slice(1)));
    for (const event of set) {
      const smaller = set.filter((other) => other !== event);
      if (holds(formula, smaller)) set = smaller;
    }
    found.push(set.sort((a, b) => a - b));
    solver.require(Logic.or(...set.map((event) => Logic.not(`e${event}`))));
  }
  return found;
}

it('the solver finds the same minimal cut sets', () => {
  fc.assert(
    fc.property(formulas, (formula) => {
      const diagram = new Diagram(EVENTS);
      const families = new Families(diagram);
      const ours = listOf(families, families.minimal(nodeOf(diagram, formula)), Infinity);
      const text = (sets: readonly (readonly number[])[]) => sets.map((set) => set.join(' ')).sort();
      expect(text(ours)).toEqual(text(minimalBySolver(formula)));
    }),
    { numRuns: 300 },
  );
});

it('two formulas have one id exactly when the solver cannot tell them apart', () => {
  fc.assert(
    fc.property(formulas, formulas, (one, other) => {
      const diagram = new Diagram(EVENTS);
      const wider: Formula = { or: [one, { and: [one, other] }] };
      const different = (a: Formula, b: Formula): boolean => {
        const solver = new Logic.Solver();
        solver.require(Logic.xor(logicOf(a), logicOf(b)));
        return solver.solve() !== null;
      };
      expect(nodeOf(diagram, one) === nodeOf(diagram, wider)).toBe(!different(one, wider));
      expect(nodeOf(diagram, one) === nodeOf(diagram, other)).toBe(!different(one, other));
    }),
    { numRuns: 300 },
  );
});
