// Mumma et al. and Casanova et al. 2018: powered respirator, trained observer, alcohol rub, two tracers on four places of the
// equipment, ten doffings. Routes by mechanism; shares beside chances.
import { describe, expect, it } from 'vitest';
import { AGENTS } from '../../src/domain/products.ts';
import { evidence, evidenceNumber } from '../../src/evidence/index.ts';
import { evidenceIds } from '../../src/evidence/ids.ts';
import { slipOf, SLIPS } from '../../src/domain/slips.ts';
import { ask } from './ask.ts';
import { hoodLast } from './claims/head.ts';
import { rankOf, shares } from './shares.ts';
import { OBSERVATIONS, ORDERS, type Order, oursFor } from './study2018.ts';
import { HANDS, INNER_GLOVES, paprGown, removal, SCRUBS } from './subjects.ts';

const hood = removal(paprGown, 'powered-hood');
const inner = removal(paprGown, 'inner-gloves');
const beforeInner = paprGown.steps[paprGown.steps.findIndex(({ id }) => id === inner) - 1]?.id ?? '';

describe('routes that the study names or found', () => {
  it('enveloped tracer on scrubs by the hood: one swing, where the hood comes off over bare scrubs', () => {
    const swing = `${hood}:swing`;
    expect(ask(hoodLast, 'enveloped').reaches('wearer.scrubs.front', swing)).toBe(true);
    expect(SCRUBS.filter((surface) => ask(paprGown, 'enveloped').reaches(surface, swing))).toEqual([]);
  });

  it('nothing enveloped on inner gloves, hands or face without at least one failure', () => {
    const q = ask(paprGown, 'enveloped');
    expect(q.least(INNER_GLOVES, { after: beforeInner })).toBe(2);
    expect(q.least(HANDS)).toBe(2);
    expect(q.least(['wearer.face', 'wearer.eyes', 'wearer.nose', 'wearer.mouth'])).toBe(1);
  });

  it('resistant tracer on inner gloves: nobody needs to slip', () => {
    expect(ask(paprGown, 'non-enveloped').least(INNER_GLOVES, { after: beforeInner })).toBe(0);
  });

  it('resistant tracer on hands: one slip as the inner gloves come off', () => {
    const q = ask(paprGown, 'non-enveloped');
    expect(q.least(HANDS)).toBe(1);
    expect(q.alone('wearer.hand.right')).toContain(`${inner}:touch-beneath`);
  });

  it('resistant tracer on scrubs: by the gloves that take the gown', () => {
    expect(ask(paprGown, 'non-enveloped').least(SCRUBS)).toBe(0);
  });

  // The study found similar pathways for both tracers. A failed rub is no event where rubbing does nothing.
  it('whatever alone opens a surface to the enveloped agent opens it to the resistant one', () => {
    const [tight, loose] = AGENTS.map((agent) => ask(paprGown, agent));
    const known = new Set(loose!.analysis.compiled.plan.events.map(({ key }) => key));
    for (const surface of [...SCRUBS, ...HANDS, 'wearer.face', 'wearer.neck'])
      for (const event of tight!.alone(surface))
        expect(loose!.reaches(surface, ...[event].filter((key) => known.has(key)))).toBe(true);
  });
});

describe('which steps weigh most', () => {
  it('the study: hand hygiene, then hood removal, by risk index', () => {
    expect(evidenceNumber('study.mumma-2018.hand-hygiene.risk-index')).toBeGreaterThan(
      evidenceNumber('study.mumma-2018.hood.risk-index'),
    );
  });

  // Another ranking is no refutation: an index of frequency and severity is not a count of combinations.
  it('ours, enveloped: hand hygiene is in the most combinations', () => {
    expect(rankOf(paprGown, 'enveloped', 'hand hygiene')).toBe(1);
    const [most, second] = shares(paprGown, 'enveloped');
    expect(most!.sets).toBeGreaterThan(second!.sets);
  });

  it('ours, resistant: a rub that does nothing is in none', () => {
    expect(shares(paprGown, 'non-enveloped').at(-1)).toEqual({ kind: 'hand hygiene', sets: 0n });
  });
});

describe('shares beside chances', () => {
  it.each(OBSERVATIONS)(
    '$what: the share is the quotient of its sample, inside its Wilson interval',
    ({ observed }) => {
      const { value, sample, interval } = evidence(observed);
      expect(value).toBeCloseTo(sample!.events / sample!.trials, 12);
      // Wilson 1927 with z = 1.96, worked out here on its own.
      const [x, n, z2] = [sample!.events, sample!.trials, 1.959964 ** 2];
      const centre = (x + z2 / 2) / (n + z2);
      const half = (Math.sqrt(z2) / (n + z2)) * Math.sqrt((x * (n - x)) / n + z2 / 4);
      expect(interval?.low ?? 0).toBeCloseTo(Math.max(0, centre - half), 3);
      expect(interval?.high ?? 1).toBeCloseTo(centre + half, 3);
    },
  );

  it.each(OBSERVATIONS)('$what: our chance lies in our own interval, or is certain', (observation) => {
    for (const order of Object.keys(ORDERS) as Order[]) {
      const { chance, low, high } = oursFor(observation, order);
      expect(low).toBeLessThanOrEqual(chance);
      expect(chance).toBeLessThanOrEqual(high);
    }
  });

  it('what is worse in people is worse in ours: resistant against enveloped on gloves and hands', () => {
    const of = (what: string) =>
      oursFor(OBSERVATIONS.find((one) => one.what === what)!, 'hood before gown').chance;
    expect(of('Resistant tracer on inner gloves')).toBeGreaterThan(of('Enveloped tracer on inner gloves'));
    expect(of('Resistant tracer on hands')).toBeGreaterThan(of('Enveloped tracer on hands'));
    expect(of('Resistant tracer on scrubs')).toBeGreaterThan(of('Enveloped tracer on scrubs'));
  });

  // Ten people cannot fit a model; no chance of ours may lean on what these studies counted.
  it('no chance of a slip leans on the study', () => {
    const studies = new Set<string>(evidenceIds.filter((id) => id.startsWith('study.')));
    for (const { id } of SLIPS) {
      const prior = evidence(slipOf(id).prior);
      expect(studies.has(prior.id)).toBe(false);
      expect(studies.has(prior.basis?.id ?? '')).toBe(false);
    }
  });
});
