// Study results agree with their own counts. Wilson interval: Wilson 1927, as in Newcombe 1998 (81/263 there gives
// 0.2553 to 0.3662). Fisher exact test by its definition, on the two arms of Casanova et al. 2016.
import { describe, expect, it } from 'vitest';
import {
  allEvidence,
  type EvidenceId,
  type EvidenceSample,
  evidence,
  evidenceField,
  evidenceIds,
  evidenceNumber,
} from '../../src/evidence/index.ts';

const z975 = 1.959963984540054;

function wilson({ events, trials }: EvidenceSample): [number, number] {
  const p = events / trials;
  const scale = 1 + z975 ** 2 / trials;
  const centre = (p + z975 ** 2 / (2 * trials)) / scale;
  const half = (z975 * Math.sqrt((p * (1 - p)) / trials + z975 ** 2 / (4 * trials ** 2))) / scale;
  return [Math.max(0, centre - half), Math.min(1, centre + half)];
}

const choose = (n: number, k: number): number => (k === 0 ? 1 : (n / k) * choose(n - 1, k - 1));

/** Two-sided Fisher exact test of a/b against c/d events per trials. */
function fisher(a: number, b: number, c: number, d: number): number {
  const chance = (x: number) => (choose(b, x) * choose(d, a + c - x)) / choose(b + d, a + c);
  const tables = Array.from({ length: b + 1 }, (_, x) => x).filter((x) => a + c - x >= 0 && a + c - x <= d);
  const seen = chance(a) * (1 + 1e-9);
  return tables.map(chance).reduce((sum, p) => (p <= seen ? sum + p : sum), 0);
}

const sampleOf = (id: EvidenceId): EvidenceSample => {
  const { sample } = evidence(id);
  if (sample === undefined) throw new Error(`${id} has no sample`);
  return sample;
};

describe('counts', () => {
  it('the interval used here is the published one', () => {
    const [low, high] = wilson({ events: 81, trials: 263 });
    expect(low).toBeCloseTo(0.255289, 6);
    expect(high).toBeCloseTo(0.36621, 5);
  });

  const counted = allEvidence.flatMap((r) => (r.sample === undefined ? [] : [[r.id, r, r.sample] as const]));

  it.each(counted)('%s: share and interval follow from the count', (_id, record, sample) => {
    const [low, high] = wilson(sample);
    expect(record.value).toBeCloseTo(sample.events / sample.trials, 4);
    expect(record.interval?.low).toBeCloseTo(low, 4);
    expect(record.interval?.high).toBeCloseTo(high, 4);
  });

  it('an interval holds its value', () => {
    const outside = allEvidence.filter(
      ({ value, interval }) =>
        interval !== undefined &&
        typeof value === 'number' &&
        (value < interval.low || value > interval.high),
    );
    expect(outside.map((record) => record.id)).toEqual([]);
  });
});

describe('Mumma et al. 2018 and Casanova et al. 2018', () => {
  it.each([
    ['study.mumma-2018.predicted.phi6-scrubs', 'study.casanova-2018.phi6.scrubs'],
    ['study.mumma-2018.predicted.ms2-hands', 'study.casanova-2018.ms2.hands'],
    ['study.mumma-2018.predicted.ms2-scrubs', 'study.casanova-2018.ms2.scrubs'],
    ['study.mumma-2018.predicted.ms2-inner-gloves', 'study.casanova-2018.ms2.inner-gloves'],
  ] as const)('%s lies in the interval of the observation', (predicted, observed) => {
    const { interval } = evidence(observed);
    expect(evidenceNumber(predicted)).toBeGreaterThan(interval?.low ?? 1);
    expect(evidenceNumber(predicted)).toBeLessThan(interval?.high ?? 0);
  });
});

describe('Casanova et al. 2016', () => {
  it.each([
    ['dominant', 'study.casanova-2016.alcohol.inner-glove-dominant'],
    ['other', 'study.casanova-2016.alcohol.inner-glove-other'],
  ] as const)('Fisher test of the arms, %s hand', (hand, alcoholId) => {
    const alcohol = sampleOf(alcoholId);
    const chlorine = sampleOf('study.casanova-2016.chlorine.inner-gloves');
    expect(fisher(alcohol.events, alcohol.trials, chlorine.events, chlorine.trials)).toBeCloseTo(
      evidenceField('study.casanova-2016.fisher', hand),
      8,
    );
  });
});

describe('scores of Gurses et al. 2019', () => {
  it.each(['study.gurses-2019.crossing', 'study.gurses-2019.apron-strap'] as const)('%s multiply', (id) => {
    const score = (name: string) => evidenceField(id, name);
    expect(score('severity') * score('probability') * score('detectability')).toBe(score('product'));
  });
});

describe('transfer', () => {
  it('the beta of Julian et al. 2010 has the published mean and standard deviation', () => {
    const { distribution } = evidence('transfer.finger-glass');
    if (distribution?.kind !== 'beta') throw new Error('not a beta');
    const { alpha, beta } = distribution;
    const variance = (alpha * beta) / ((alpha + beta) ** 2 * (alpha + beta + 1));
    expect(alpha / (alpha + beta)).toBeCloseTo(evidenceNumber('transfer.finger-glass'), 4);
    expect(Math.sqrt(variance)).toBeCloseTo(evidenceNumber('transfer.finger-glass-sd'), 4);
  });
});

describe('efficacy', () => {
  const uses = {
    'alcohol-hand-rub': ['skin', 'glove', 'hard'],
    'disinfectant-wipe': ['skin', 'glove', 'hard', 'equipment'],
    'chlorine-strong': ['skin', 'glove', 'hard', 'equipment'],
    'chlorine-weak': ['skin', 'glove', 'hard'],
    'soap-and-water': ['skin', 'glove', 'hard'],
  };
  const cells = Object.entries(uses).flatMap(([product, surfaces]) =>
    ['enveloped', 'non-enveloped'].flatMap((agent) =>
      surfaces.map((surface) => `efficacy.${product}.${agent}.${surface}`),
    ),
  );

  it('is stated for every product, agent and surface, and for no other cell', () => {
    const stated = evidenceIds.filter((id) => /^efficacy\..*enveloped\./.test(id));
    expect(stated.toSorted()).toEqual(cells.toSorted());
  });

  it('is not credited against the harder agent where it fails against the easier one', () => {
    const works = (id: string) => {
      const { value } = evidence(id as EvidenceId);
      return typeof value === 'object' && 'works' in value && value.works === true;
    };
    const harder = cells.filter((id) => id.includes('.non-enveloped.') && works(id));
    expect(harder.length).toBeGreaterThan(0);
    expect(harder.filter((id) => !works(id.replace('.non-enveloped.', '.enveloped.')))).toEqual([]);
  });
});

describe('arithmetic of the sums of the trade', () => {
  it('chlorine: the printed examples follow from the printed rules', () => {
    const example = (name: string) => evidenceField('chlorine.dilution.examples', name);
    expect(3.5 / 0.5 - 1).toBeCloseTo(example('bleach3.5To0.5Parts'), 9);
    expect(5 / 0.1 - 1).toBeCloseTo(example('bleach5To0.1Parts'), 9);
    expect((0.5 / 35) * 1000).toBeCloseTo(example('powder35To0.5GramsPerLitre'), 1);
  });

  it('fever is one bound in two units', () => {
    const fever = (unit: string) => evidenceField('followup.fever', unit);
    expect((fever('celsius') * 9) / 5 + 32).toBeCloseTo(fever('fahrenheit'), 9);
  });

  it('waste of the stay over waste of a day is about twenty patient days, by volume and by mass', () => {
    const stay = (name: string) => evidenceField('waste.lowe-2014.stay', name);
    const day = (name: string) => evidenceField('waste.lowe-2014.day', name);
    expect(stay('cubicFeet') / day('cubicFeet')).toBeCloseTo(20.2, 1);
    expect(stay('pounds') / day('pounds')).toBeCloseTo(20.2, 1);
  });
});
