// The spread of a record agrees with its value. Conversion of median and error factor, and the means below, are those
// of NUREG/CR-1278 and NUREG/CR-6823 (lognormal from median and error factor) and of the printed INL parameters.
import { describe, expect, it } from 'vitest';
import {
  allEvidence,
  type EvidenceId,
  evidence,
  evidenceField,
  evidenceNumber,
} from '../../src/evidence/index.ts';

const z95 = evidenceNumber('lognormal.z95');
const sigmaOf = (errorFactor: number, z: number) => Math.log(errorFactor) / z;

function lognormalMean(id: EvidenceId): number {
  const { distribution } = evidence(id);
  if (distribution?.kind !== 'lognormal') throw new Error(`${id} is not lognormal`);
  return distribution.median * Math.exp(sigmaOf(distribution.errorFactor, z95) ** 2 / 2);
}

describe('distributions agree with values', () => {
  const spread = allEvidence.filter((record) => record.distribution !== undefined);

  it.each(spread.map((record) => [record.id, record] as const))('%s', (_id, record) => {
    const { value, distribution } = record;
    expect(typeof value).toBe('number');
    if (distribution?.kind === 'lognormal') expect(value).toBe(distribution.median);
    if (distribution?.kind === 'beta') {
      expect(value).toBeCloseTo(distribution.alpha / (distribution.alpha + distribution.beta), 2);
    }
  });

  it('a lognormal that reaches 1 says that it is cut there', () => {
    const reachesOne = spread.filter(
      ({ unit, distribution: d }) =>
        /^(chance|share)/.test(unit) && d?.kind === 'lognormal' && d.median * d.errorFactor >= 1,
    );
    expect(reachesOne.length).toBeGreaterThan(0);
    expect(reachesOne.filter((r) => !r.note?.includes('truncated at 1')).map((r) => r.id)).toEqual([]);
  });

  it('chances and shares lie between 0 and 1', () => {
    const outside = allEvidence.filter(
      ({ unit, value }) =>
        /^(chance|share|predicted)/.test(unit) && typeof value === 'number' && !(value >= 0 && value <= 1),
    );
    expect(outside.map((record) => record.id)).toEqual([]);
  });
});

describe('lognormal reference values', () => {
  it('prints as the INL page does', () => {
    const field = (name: string) => evidenceField('lognormal.reference', name);
    expect(Math.log(field('median'))).toBeCloseTo(field('mu'), 5);
    expect(sigmaOf(field('errorFactor'), field('z'))).toBeCloseTo(field('sigma'), 6);
  });

  // means computed apart from this code, with a numerical library
  it.each([
    ['hep.omission.read-aloud', 0.003749653],
    ['hep.omission.check-off-short', 0.001249884],
    ['hep.omission.no-checkoff', 0.012498845],
    ['slip.omitted-hygiene', 0.004841927],
    ['slip.omitted-hygiene-unread', 0.016139758],
    ['hep.checker.written', 0.161397579],
  ] as const)('mean of %s', (id, mean) => {
    expect(lognormalMean(id)).toBeCloseTo(mean, 9);
  });
});

describe('dependence (NUREG/CR-1278 tables 20-17 and 20-21)', () => {
  const conditional = (level: 'low' | 'moderate' | 'high' | 'complete' | 'zero', n: number) =>
    (evidenceField(`dependence.${level}`, 'constant') + evidenceField(`dependence.${level}`, 'weight') * n) /
    evidenceField(`dependence.${level}`, 'divisor');

  it.each([
    [0.001, 0.05095, 0.143714286, 0.5005],
    [0.01, 0.0595, 0.151428571, 0.505],
    [0.1, 0.145, 0.228571429, 0.55],
    [0.5, 0.525, 0.571428571, 0.75],
  ])('conditional chances at %d', (n, low, moderate, high) => {
    expect(conditional('zero', n)).toBe(n);
    expect(conditional('low', n)).toBeCloseTo(low, 9);
    expect(conditional('moderate', n)).toBeCloseTo(moderate, 9);
    expect(conditional('high', n)).toBeCloseTo(high, 9);
    expect(conditional('complete', n)).toBe(1);
  });

  it('rounds to the handbook values at 0.01', () => {
    expect(conditional('moderate', 0.01).toFixed(2)).toBe('0.15');
    expect(conditional('high', 0.01).toFixed(1)).toBe('0.5');
  });
});
