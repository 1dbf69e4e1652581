// Draws of a chance: their spread is that of the prior where the answer is known in closed form, events of one record
// move together, and two plans drawn with one seed are drawn alike. Tolerances are 4 standard errors of the mean, not decimals.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chancesOf } from '../../src/engine/chance.ts';
import { givenFailure } from '../../src/engine/dependence.ts';
import { Diagram, FALSE, TRUE } from '../../src/engine/diagram.ts';
import { type Distribution, mean, quantile } from '../../src/engine/distributions.ts';
import {
  differencesOf,
  drawChances,
  drawColumns,
  type DrawQuestion,
  spreadOf as percentilesOf,
} from '../../src/engine/draws.ts';
import { propagate } from '../../src/engine/propagate.ts';
import { randomOf, sample } from '../../src/engine/random.ts';
import { plans } from './arbitrary.ts';

const PRIORS: Readonly<Record<string, Distribution>> = {
  rare: { kind: 'lognormal', median: 0.003, errorFactor: 5 },
  often: { kind: 'beta', alpha: 2.5, beta: 8.5 },
  odd: { kind: 'beta', alpha: 0.5, beta: 10.5 },
  fixed: { kind: 'fixed', value: 0.2 },
};

function question(diagram: Diagram, roots: readonly number[], priors: readonly string[]): DrawQuestion {
  return {
    diagram,
    roots,
    events: priors.map((prior) => ({ prior, visible: true })),
    distributionOf: (prior) => PRIORS[prior]!,
    setting: null,
    draws: 10_000,
    seed: 7,
  };
}

const meanOf = (column: Float64Array): number => column.reduce((sum, x) => sum + x, 0) / column.length;

function spreadOf(column: Float64Array): number {
  const centre = meanOf(column);
  return Math.sqrt(meanOf(column.map((x) => (x - centre) ** 2)));
}

describe('samples', () => {
  it.each(Object.entries(PRIORS))('of %s have its mean and percentiles', (name, distribution) => {
    const column = sample(distribution, randomOf(11, name), 40_000);
    const error = spreadOf(column) / Math.sqrt(column.length);
    expect(Math.abs(meanOf(column) - mean(distribution))).toBeLessThanOrEqual(4 * error + 1e-12);
    for (const p of [0.05, 0.5, 0.95]) {
      const below = column.filter((x) => x <= quantile(distribution, p) + 1e-15).length / column.length;
      if (distribution.kind !== 'fixed')
        expect(Math.abs(below - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / 40_000));
    }
    expect(column.every((x) => x >= 0 && x <= 1)).toBe(true);
  });
});

describe('draws', () => {
  it('of a single event are those of its prior', () => {
    const diagram = new Diagram(1);
    const [spread] = drawChances(question(diagram, [diagram.event(0)], ['odd']));
    expect(spread?.mean).toBeCloseTo(mean(PRIORS.odd!), 2);
    expect(spread?.low).toBeCloseTo(quantile(PRIORS.odd!, 0.05), 3);
    expect(spread?.median).toBeCloseTo(quantile(PRIORS.odd!, 0.5), 2);
    expect(spread?.high).toBeCloseTo(quantile(PRIORS.odd!, 0.95), 1);
  });

  it('of two slips of one record move together: both is the square, draw by draw', () => {
    const diagram = new Diagram(3);
    const roots = [diagram.event(0), diagram.conjunction([0, 1]), diagram.conjunction([0, 2])];
    const [one, both, apart] = drawColumns(question(diagram, roots, ['often', 'often', 'odd']));
    one!.forEach((p, at) => expect(both![at]).toBeCloseTo(p * p, 15));
    expect(meanOf(apart!)).toBeCloseTo(mean(PRIORS.often!) * mean(PRIORS.odd!), 2);
    expect(meanOf(both!)).toBeGreaterThan(mean(PRIORS.often!) ** 2);
  });

  it('with fixed chances are the exact chance, every one', () => {
    fc.assert(
      fc.property(plans(), (plan) => {
        const { diagram, ever } = propagate(plan);
        const roots = [...ever].filter((node) => node >= FALSE);
        const ask = {
          ...question(
            diagram,
            roots,
            plan.events.map(() => 'fixed'),
          ),
          draws: 300,
        };
        const exact = chancesOf(
          diagram,
          roots,
          plan.events.map(() => 0.2),
        );
        drawColumns(ask).forEach((column, at) => {
          expect(Math.min(...column)).toBeCloseTo(exact[at]!, 12);
          expect(Math.max(...column)).toBeCloseTo(exact[at]!, 12);
        });
      }),
      { numRuns: 200 },
    );
  });

  it('are the exact chance of each draw, whichever priors stand beside one another', () => {
    const names = Object.keys(PRIORS);
    const single = new Diagram(names.length);
    const alone = drawColumns({
      ...question(
        single,
        names.map((_, at) => single.event(at)),
        names,
      ),
      draws: 30,
    });
    const prior = fc.nat(names.length - 1);
    fc.assert(
      fc.property(plans(), fc.array(prior, { minLength: 1, maxLength: 40 }), (plan, chosen) => {
        const { diagram, ever } = propagate(plan);
        const roots = [...ever].filter((node) => node >= FALSE);
        const priors = plan.events.map((_, at) => chosen[at % chosen.length]!);
        const columns = drawColumns({
          ...question(
            diagram,
            roots,
            priors.map((at) => names[at]!),
          ),
          draws: 30,
        });
        for (let draw = 0; draw < 30; draw += 1) {
          const exact = chancesOf(
            diagram,
            roots,
            priors.map((at) => alone[at]![draw]!),
          );
          columns.forEach((column, at) => expect(column[draw]).toBeCloseTo(exact[at]!, 12));
        }
      }),
      { numRuns: 200 },
    );
  });

  it('give the same for the same seed whatever else is drawn, so that plans can be paired', () => {
    const small = new Diagram(1);
    const large = new Diagram(4);
    const root = large.or(large.event(3), large.conjunction([0, 1]));
    const [alone] = drawColumns(question(small, [small.event(0)], ['rare']));
    const [within, more] = drawColumns(
      question(large, [large.event(3), root], ['often', 'odd', 'odd', 'rare']),
    );
    expect(within).toEqual(alone);
    expect(differencesOf(alone!, more!).every((difference) => difference >= 0)).toBe(true);
    const [other] = drawColumns({ ...question(small, [small.event(0)], ['rare']), seed: 8 });
    expect(other).not.toEqual(alone);
  });

  it('credit the observer by the setting, and only for what can be seen', () => {
    const diagram = new Diagram(2);
    const ask: DrawQuestion = {
      ...question(diagram, [diagram.event(0), diagram.event(1)], ['often', 'often']),
      events: [
        { prior: 'often', visible: true },
        { prior: 'often', visible: false },
      ],
      setting: { miss: 0.1, level: 'moderate' },
    };
    const [seen, unseen] = drawColumns(ask);
    seen!.forEach((p, at) => expect(p).toBeCloseTo(unseen![at]! * givenFailure('moderate', 0.1), 12));
  });

  it('have the percentiles that sorting gives, the column left as it was', () => {
    const values = fc.array(
      fc.oneof(fc.constantFrom(0, 0.5, 1), fc.double({ min: 0, max: 1, noNaN: true })),
      {
        minLength: 1,
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(values, (list) => {
        const column = Float64Array.from(list);
        const sorted = column.toSorted();
        const { low, median, high } = percentilesOf(column);
        const at = (p: number) => sorted[Math.min(list.length - 1, Math.floor(p * list.length))];
        expect([low, median, high]).toEqual([at(0.05), at(0.5), at(0.95)]);
        expect([...column]).toEqual(list);
      }),
    );
  });

  it('of the constants are 0 and 1', () => {
    const [never, always] = drawChances(question(new Diagram(1), [FALSE, TRUE], ['rare']));
    expect(never).toEqual({ mean: 0, low: 0, median: 0, high: 0 });
    expect(always).toEqual({ mean: 1, low: 1, median: 1, high: 1 });
  });
});
