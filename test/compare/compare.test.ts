// Two procedures side by side: the same one differs in nothing under any name, a mended version loses exactly what it mends,
// and paired intervals are those of the difference draw by draw.
import { describe, expect, test } from 'vitest';
import { CLASS_GROUPS } from '../../src/check/analysis.ts';
import { catchSetting, distributionOf } from '../../src/check/chances.ts';
import { DRAWS, SEED } from '../../src/check/intervals.ts';
import { agentsOfBoth, type Comparison, compareChecked } from '../../src/compare/compare.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { AGENTS } from '../../src/domain/products.ts';
import { drawColumns } from '../../src/engine/draws.ts';
import { type Verdict, verifyProcedure } from '../../src/verify.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { goodDoffing } from '../support/good.ts';
import { changed, inserted, step, without, withoutPerson } from '../support/procedure.ts';
import { renamedProcedure } from './renamed.ts';

const check = (procedure: Procedure, variants = false): Verdict =>
  verifyProcedure(procedure, { agents: AGENTS, mends: false, variants });
const compared = (a: Procedure, b: Procedure, variants = false): Comparison =>
  compareChecked(check(a, variants), check(b, variants));

const LARKMOOR = procedureOf('larkmoor-suit-doffing.yaml');
const SECOND = procedureOf('larkmoor-suit-doffing-v2.yaml');
const GOOD = goodDoffing();

describe.each([
  ['the invented unit', LARKMOOR],
  ['an everyday sequence', procedureOf('everyday-example-1-doffing.yaml')],
  ['a donning', procedureOf('larkmoor-suit-donning.yaml')],
])('%s against itself under other names', (_, own) => {
  const result = compared(own, renamedProcedure(own, true), true);

  test('no finding is gained or lost', () => {
    const { gone, gained, newErrors, kept } = result.findings;
    expect([gone, gained, newErrors]).toEqual([[], [], []]);
    expect(kept.length).toBeGreaterThan(0);
    expect(kept.filter(({ elsewhere }) => elsewhere)).toEqual([]);
  });

  test('no surface, no class, no supply and no time differs, draw by draw', () => {
    for (const { a, b, barriersA, barriersB, difference } of result.surfaces) {
      expect(b).toBe(a?.startsWith('room.') ? a.replace('room.', 'room.other-') : `other-${a ?? ''}`);
      expect(barriersB).toBe(barriersA);
      expect(difference).toMatchObject({ interval: { low: 0, high: 0 }, excludesZero: false });
      expect(difference?.chance).toBeCloseTo(0, 12);
    }
    for (const { difference } of result.classes) expect(difference.interval).toEqual({ low: 0, high: 0 });
    expect(result.costs.time).toEqual({ seconds: 0, interval: { low: 0, high: 0 }, excludesZero: false });
    for (const { a, b } of result.costs.supplies) expect(b).toEqual(a);
    expect(result.gaps).toEqual([]);
  });
});

describe('the second version of the invented unit', () => {
  const [before, after] = [check(LARKMOOR), check(SECOND)];
  const result = compareChecked(before, after);

  test('loses every open route of the first and has no new error', () => {
    const gone = result.findings.gone.filter(({ kind, agent }) => kind === 'open' && agent === 'enveloped');
    expect(gone.map(({ code }) => code).sort()).toEqual(['open.clean-side', 'open.clothes', 'open.shoes']);
    expect(result.findings.newErrors).toEqual([]);
  });

  test('says which new single slips lead to what stood open', () => {
    const surfaces = new Set(result.findings.noLongerOpen.map(({ surface }) => surface));
    expect(surfaces).toContain('wearer.scrubs.back');
    expect(result.findings.noLongerOpen.every(({ code }) => code.startsWith('one-slip.'))).toBe(true);
  });

  test('the other way round has exactly these as new errors', () => {
    const back = compareChecked(after, before).findings;
    expect(back.newErrors.map(({ code, agent }) => `${code} ${agent ?? ''}`).sort()).toEqual(
      result.findings.gone
        .filter(({ severity }) => severity === 'error')
        .map(({ code, agent }) => `${code} ${agent ?? ''}`)
        .sort(),
    );
  });

  test('class chances are those of the measures, people and rooms being the same', () => {
    for (const agent of AGENTS) {
      const measure = (verdict: Verdict) =>
        verdict.measures.find((one) => one.agent === agent)?.measure.chance;
      const classes = result.classes.filter((one) => one.agent === agent);
      expect(classes.map((one) => one.classes)).toEqual(CLASS_GROUPS);
      classes.forEach(({ figureA, figureB, difference }, at) => {
        expect(figureA.chance).toBeCloseTo(measure(before)?.[at] ?? -1, 12);
        expect(figureB.chance).toBeCloseTo(measure(after)?.[at] ?? -1, 12);
        expect(difference.chance).toBeCloseTo(figureB.chance - figureA.chance, 12);
      });
    }
  });

  test('surface figures are those of the two checks', () => {
    for (const { a, b, agent, barriersA, barriersB, figureA, figureB } of result.surfaces) {
      const own = before.surfaces.find((one) => one.surface === a && one.agent === agent);
      const other = after.surfaces.find((one) => one.surface === b && one.agent === agent);
      if (own)
        expect([barriersA, figureA]).toEqual([own.barriers, { chance: own.chance, interval: own.interval }]);
      if (other)
        expect([barriersB, figureB]).toEqual([
          other.barriers,
          { chance: other.chance, interval: other.interval },
        ]);
    }
    expect(result.surfaces.filter(({ difference }) => difference === undefined)).toEqual([]);
  });

  test('a difference and its interval are made draw by draw from shared priors', () => {
    const surface = 'wearer.hand.left';
    const columns = [before, after].map(({ analyses }) => {
      const analysis = analyses[0]!;
      const at = analysis.protectedSurfaces.findIndex(
        (index) => analysis.compiled.plan.surfaces[index]?.id === surface,
      );
      return drawColumns({
        diagram: analysis.diagram,
        roots: [analysis.judged[at]!],
        events: analysis.compiled.plan.events,
        distributionOf,
        setting: catchSetting(analysis.compiled.procedure.policy),
        draws: DRAWS,
        seed: SEED,
      })[0]!;
    });
    const sorted = Array.from(columns[0]!, (value, at) => columns[1]![at]! - value).sort((x, y) => x - y);
    const row = result.surfaces.find(({ a, agent }) => a === surface && agent === 'enveloped');
    expect(row?.difference?.interval).toEqual({ low: sorted[DRAWS * 0.05], high: sorted[DRAWS * 0.95] });
    // Paired: far narrower than if the two were drawn apart.
    const apart = (row?.figureB?.interval.high ?? 0) - (row?.figureA?.interval.low ?? 0);
    const paired = (row?.difference?.interval.high ?? 0) - (row?.difference?.interval.low ?? 0);
    expect(paired).toBeLessThan(apart);
  });
});

describe('one edit', () => {
  test('a rub more never makes a hand likelier to be reached: no draw of the difference is above nought', () => {
    const rub = step('rub-more', 'sanitise', { product: 'alcohol-hand-rub' });
    const last = GOOD.steps.findLast(({ items }) => items.includes('inner-gloves'))?.id ?? '';
    const { surfaces, costs } = compared(GOOD, inserted(GOOD, last, rub));
    const hands = surfaces.filter(({ a, agent }) => a?.startsWith('wearer.hand') && agent === 'enveloped');
    expect(hands).toHaveLength(2);
    for (const { difference } of hands) expect(difference?.interval.high ?? 1).toBeLessThanOrEqual(0);
    expect(costs.time.seconds).toBeGreaterThan(0);
    expect(costs.time.excludesZero).toBe(true);
  });

  test('an acceptance taken back is a new error, though the finding was there', () => {
    const accepted = check(LARKMOOR).findings.flatMap((one) => (one.accepted ? [one.code] : []));
    expect(accepted.length).toBeGreaterThan(0);
    const { newErrors, gained } = compared(LARKMOOR, { ...LARKMOOR, accepted: [] }).findings;
    expect(newErrors.map(({ code }) => code).sort()).toEqual([...accepted].sort());
    expect(gained).toEqual([]);
  });

  test('a front grip is one new departure, at that step', () => {
    const { newErrors } = compared(
      LARKMOOR,
      changed(LARKMOOR, 'shield-off', { technique: 'front-grip' }),
    ).findings;
    expect(newErrors.map(({ code }) => code)).toContain('practice.shield-by-rear-strap');
    expect(newErrors.every(({ steps }) => steps.length > 0)).toBe(true);
  });

  test('without a hygiene step only what leans on it is new', () => {
    const { gained } = compared(LARKMOOR, without(LARKMOOR, 'rub-bare')).findings;
    expect(gained.some(({ code }) => code.startsWith('practice.hygiene'))).toBe(true);
    expect(gained.filter(({ severity, kind }) => severity === 'error' && kind !== 'practice')).toEqual([]);
  });
});

describe('what only one of them has', () => {
  const wearers: Procedure = withoutPerson(
    {
      ...GOOD,
      steps: GOOD.steps.filter(({ who, helper, of }) => ![who, helper, of].includes('assistant')),
    },
    'assistant',
  );

  test('is listed, has no difference, and is left out of the classes', () => {
    const result = compared(GOOD, wearers);
    expect(result.gaps).toContainEqual({ what: 'person', only: 'a', id: 'assistant' });
    const lone = result.surfaces.filter(({ difference }) => difference === undefined);
    expect(lone.length).toBeGreaterThan(0);
    for (const { a, b, barriersB, figureB } of lone) {
      expect(a).toMatch(/^assistant\./);
      expect([b, barriersB, figureB]).toEqual([undefined, undefined, undefined]);
    }
  });

  test('agents are all that either names', () => {
    expect(agentsOfBoth({ ...GOOD, agents: ['non-enveloped'] }, { ...GOOD, agents: ['enveloped'] })).toEqual(
      AGENTS,
    );
  });

  test('one that cannot be worked out exactly leaves its surfaces unsaid', () => {
    const verdict = check(GOOD);
    const result = compareChecked(verdict, { ...verdict, analyses: [] });
    expect([result.exact, result.surfaces, result.classes]).toEqual([false, [], []]);
    expect(result.steps).toHaveLength(GOOD.steps.length);
  });
});
