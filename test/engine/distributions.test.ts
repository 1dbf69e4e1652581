// Distributions and dependence against published and recomputed numbers. Lognormal and dependence: NUREG/CR-1278 and the printed
// INL parameters (in the evidence). Beta posteriors: NUREG/CR-6823 style examples, recomputed with a numerical library from the
// stated inputs (which examples the handbook uses is from memory).

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  effectiveChance,
  givenFailure,
  givenSuccess,
  DEPENDENCE_LEVELS,
} from '../../src/engine/dependence.ts';
import { mean, quantile, sigmaOf, uncappedMean, updated, Z95 } from '../../src/engine/distributions.ts';
import { betaCdf, logGamma, normalCdf, normalQuantile } from '../../src/engine/special.ts';
import { evidenceField, evidenceNumber } from '../../src/evidence/index.ts';

const chance = fc.double({ min: 1e-6, max: 0.999999, noNaN: true });

describe('dependence (NUREG/CR-1278 equations 10-14 to 10-18, table 20-17)', () => {
  it.each([
    [0.001, 0.05095, 0.143714286, 0.5005],
    [0.003, 0.05285, 0.145428571, 0.5015],
    [0.01, 0.0595, 0.151428571, 0.505],
    [0.03, 0.0785, 0.168571429, 0.515],
    [0.05, 0.0975, 0.185714286, 0.525],
    [0.1, 0.145, 0.228571429, 0.55],
    [0.5, 0.525, 0.571428571, 0.75],
  ])('of %d gives low, moderate and high', (own, low, moderate, high) => {
    expect(givenFailure('zero', own)).toBe(own);
    expect(givenFailure('low', own)).toBeCloseTo(low, 9);
    expect(givenFailure('moderate', own)).toBeCloseTo(moderate, 9);
    expect(givenFailure('high', own)).toBeCloseTo(high, 9);
    expect(givenFailure('complete', own)).toBe(1);
  });

  it.each([
    ['zero', 0.01],
    ['low', 0.0145],
    ['moderate', 0.0228571],
    ['high', 0.055],
    ['complete', 0.1],
  ] as const)('two checkers of 0.1 each, %s: both miss with %d', (level, joint) => {
    expect(0.1 * givenFailure(level, 0.1)).toBeCloseTo(joint, 7);
    expect(effectiveChance({ visible: true }, 0.1, { miss: 0.1, level })).toBeCloseTo(joint, 7);
  });

  it('orders the levels and keeps the bounds of any joint chance', () => {
    fc.assert(
      fc.property(chance, chance, (first, own) => {
        const joint = DEPENDENCE_LEVELS.map((level) => first * givenFailure(level, own));
        expect(joint).toEqual([...joint].sort((a, b) => a - b));
        for (const both of joint) {
          expect(both).toBeLessThanOrEqual(first);
          expect(both).toBeGreaterThanOrEqual(Math.max(0, first + own - 1) - 1e-12);
        }
        expect(givenSuccess('high', own)).toBeCloseTo((1 + own) / 2, 12);
      }),
    );
  });

  it('credits nobody without a setting, and nothing that cannot be seen', () => {
    expect(effectiveChance({ visible: true }, 0.02, null)).toBe(0.02);
    expect(effectiveChance({ visible: false }, 0.02, { miss: 0.1, level: 'zero' })).toBe(0.02);
  });
});

describe('lognormal from median and error factor', () => {
  it.each([
    [0.003, 3, 0.667909, 0.003749653],
    [0.003, 5, 0.978469, 0.004841927],
    [0.001, 3, 0.667909, 0.001249884],
    [0.01, 3, 0.667909, 0.012498845],
    [0.01, 5, 0.978469, 0.016139758],
    [0.01, 10, 1.399872, 0.026639801],
    [0.1, 5, 0.978469, 0.161397579],
  ])('%d with factor %d', (median, errorFactor, sigma, uncapped) => {
    expect(sigmaOf(errorFactor)).toBeCloseTo(sigma, 6);
    expect(uncappedMean(median, errorFactor)).toBeCloseTo(uncapped, 9);
    const distribution = { kind: 'lognormal', median, errorFactor } as const;
    expect(quantile(distribution, 0.5)).toBeCloseTo(median, 12);
    expect(quantile(distribution, 0.95)).toBeCloseTo(Math.min(1, median * errorFactor), 10);
    expect(quantile(distribution, 0.05)).toBeCloseTo(median / errorFactor, 12);
  });

  it('is what the INL page prints with z rounded to 1.645', () => {
    expect(Z95).toBeCloseTo(evidenceNumber('lognormal.z95'), 13);
    const z = evidenceField('lognormal.reference', 'z');
    expect((sigmaOf(5) * Z95) / z).toBeCloseTo(evidenceField('lognormal.reference', 'sigma'), 6);
    expect(Math.log(0.003)).toBeCloseTo(evidenceField('lognormal.reference', 'mu'), 5);
  });

  it('is capped at 1: median kept, mean below the uncapped one, and right by integration', () => {
    const wide = { kind: 'lognormal', median: 0.5, errorFactor: 5 } as const;
    expect(uncappedMean(0.5, 5)).toBeCloseTo(0.807, 3);
    expect(quantile(wide, 0.95)).toBe(1);
    expect(quantile(wide, 0.5)).toBeCloseTo(0.5, 12);
    const steps = 200_000;
    const sum = Array.from({ length: steps }, (_, at) => quantile(wide, (at + 0.5) / steps)).reduce(
      (a, b) => a + b,
    );
    expect(mean(wide)).toBeCloseTo(sum / steps, 6);
    expect(mean({ kind: 'lognormal', median: 0.003, errorFactor: 5 })).toBeCloseTo(0.004841927, 8);
  });
});

describe('beta', () => {
  const jeffreys = { kind: 'beta', alpha: 0.5, beta: 0.5 } as const;
  it.each([
    [
      'industry prior, 1 in 8',
      { kind: 'beta', alpha: 4.2, beta: 153.1 },
      1,
      8,
      [0.031457955, 0.01284, 0.029585, 0.056476],
    ],
    ['Jeffreys, 1 in 8', jeffreys, 1, 8, [0.166666667, 0.022465, 0.141732, 0.396673]],
    ['Jeffreys, 0 in 10', jeffreys, 0, 10, [0.045454545, 0.000191736, 0.02194, 0.170773]],
    ['Jeffreys, 1 in 10', jeffreys, 1, 10, [0.136363636, 0.017892, 0.114347, 0.330563]],
    ['Jeffreys, 2 in 10', jeffreys, 2, 10, [0.227272727, 0.060214, 0.210374, 0.452496]],
    ['Jeffreys, 7 in 10', jeffreys, 7, 10, [0.681818182, 0.441873, 0.693176, 0.882671]],
    ['Jeffreys, 0 in 59', jeffreys, 0, 59, [0.008333333, 3.318e-5, 0.003832, 0.031897]],
    ['Jeffreys, 200 in 435', jeffreys, 200, 435, [0.459862385, 0.420746, 0.459801, 0.499188]],
  ] as const)('%s', (_, prior, failures, trials, [average, low, median, high]) => {
    const posterior = updated(prior, failures, trials);
    expect(mean(posterior)).toBeCloseTo(average, 9);
    expect(quantile(posterior, 0.05)).toBeCloseTo(low, 6);
    expect(quantile(posterior, 0.5)).toBeCloseTo(median, 6);
    expect(quantile(posterior, 0.95)).toBeCloseTo(high, 6);
  });

  it('prior of the industry example has the published mean and 90 % interval', () => {
    const prior = { kind: 'beta', alpha: 4.2, beta: 153.1 } as const;
    expect(mean(prior)).toBeCloseTo(0.026700572, 9);
    expect(quantile(prior, 0.05)).toBeCloseTo(0.009543, 6);
    expect(quantile(prior, 0.95)).toBeCloseTo(0.050633, 6);
  });

  it('quantile undoes the distribution, also far below 1', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 400, noNaN: true }),
        fc.double({ min: 0.05, max: 400, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (alpha, beta, p) => {
          const x = quantile({ kind: 'beta', alpha, beta }, p);
          if (x > 1e-200 && x < 1 - 1e-9) expect(betaCdf(x, alpha, beta)).toBeCloseTo(p, 7);
          if (x > 0.01 && x < 0.99) {
            expect(betaCdf(x, alpha, beta) + betaCdf(1 - x, beta, alpha)).toBeCloseTo(1, 10);
          }
        },
      ),
    );
  });

  it('refuses more failures than opportunities', () => {
    expect(() => updated(jeffreys, 3, 2)).toThrow(RangeError);
    expect(() => updated(jeffreys, -1, 2)).toThrow(RangeError);
  });
});

describe('special functions', () => {
  it('normal quantile and distribution undo one another', () => {
    for (let p = 1e-12; p < 1; p += 0.0137)
      expect(Math.abs(normalCdf(normalQuantile(p)) / p - 1)).toBeLessThan(1e-9);
    expect(normalQuantile(0.5)).toBe(0);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 12);
    expect(normalCdf(-10)).toBeCloseTo(7.619853024160527e-24, 34);
    expect(normalCdf(8)).toBeCloseTo(1, 14);
  });
  it('log gamma is the logarithm of the factorial', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n++) {
      factorial *= n;
      expect(logGamma(n + 1)).toBeCloseTo(Math.log(factorial), 11);
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 12);
  });
});
