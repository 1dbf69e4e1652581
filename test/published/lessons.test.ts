// What the published evidence teaches about modelling a doffing, lesson by lesson; each is a property of this model.
import { describe, expect, it } from 'vitest';
import { eventChances } from '../../src/check/chances.ts';
import { tryVariants, variantEdits } from '../../src/check/variants.ts';
import { type EvidenceId, evidence, evidenceIds } from '../../src/evidence/index.ts';
import { AGENTS, PRODUCT_IDS, works } from '../../src/domain/products.ts';
import { type SlipId, slipOf, SLIPS } from '../../src/domain/slips.ts';
import { TECHNIQUES, type Technique } from '../../src/domain/techniques/index.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { compiled, files, procedureOf } from '../procedures/shelf.ts';
import { withPerson } from '../support/procedure.ts';
import { ask } from './ask.ts';
import { chlorineOnGloves, INNER_GLOVES, n95Gown, paprGown, paprSuit, removal } from './subjects.ts';

const TECHNIQUE_LIST: readonly Technique[] = TECHNIQUES;
const doffings = files.filter((file) => procedureOf(file).kind === 'doffing');

describe('lesson 1: what a sanitiser does depends on agent, product and surface', () => {
  it('one product, two agents, several surfaces, different answers (Casanova 2016 and 2018)', () => {
    expect(works('alcohol-hand-rub', 'enveloped', 'glove')).toBe(true);
    expect(works('alcohol-hand-rub', 'non-enveloped', 'glove')).toBe(false);
    expect(works('chlorine-0.5', 'non-enveloped', 'glove')).toBe(true);
    expect(works('chlorine-0.5', 'non-enveloped', 'skin')).toBe(false);
    for (const product of PRODUCT_IDS)
      for (const agent of AGENTS) expect(works(product, agent, 'mucosa')).toBe(false);
  });

  it('reproduces both studies: rub leaves the resistant tracer on inner gloves, chlorine does not', () => {
    const rub = removal(paprGown, 'inner-gloves');
    const last = paprGown.steps[paprGown.steps.findIndex(({ id }) => id === rub) - 1]?.id ?? '';
    const gloves = (procedure: typeof paprGown, agent: (typeof AGENTS)[number]) =>
      ask(procedure, agent).least(INNER_GLOVES, { after: last });
    expect(gloves(paprGown, 'non-enveloped')).toBe(0);
    expect(gloves(paprGown, 'enveloped')).toBe(2);
    expect(gloves(chlorineOnGloves(paprGown), 'non-enveloped')).toBe(2);
  });
});

describe('lesson 2: surfaces are split where it matters', () => {
  const ids = new Set(
    doffings.flatMap((file) => compiled(file).plan.surfaces.map(({ id }) => id.replace(/^wearer\./, ''))),
  );
  it.each([
    [
      'glove outside and inside, by hand',
      ['left', 'right'].flatMap((side) => [`inner-gloves.${side}.outside`, `inner-gloves.${side}.inside`]),
    ],
    [
      'garment front, back, sleeve, lining',
      ['coverall.front', 'coverall.back', 'coverall.sleeve-left', 'coverall.inside'],
    ],
    ['zip, and hem of the shirt', ['coverall.zip', 'scrubs.hem']],
    ['hood outside and lower edge', ['powered-hood.outside', 'powered-hood.lower-edge']],
    [
      'strap apart from front',
      ['n95-respirator.strap', 'n95-respirator.front', 'face-shield.strap', 'face-shield.front'],
    ],
    ['shoe upper and sole', ['shoes.left.upper', 'shoes.left.sole']],
    [
      'chair, floors by zone, bin lid',
      [
        'room.clean-chair.seat',
        'room.doffing-area-floor.surface',
        'room.clean-side-floor.surface',
        'room.waste-bin.lid',
      ],
    ],
    [
      'assistant’s and observer’s gloves and gown',
      ['assistant.outer-gloves.left.outside', 'assistant.gown.front', 'observer.outer-gloves.left.outside'],
    ],
  ])('%s', (_, wanted) => {
    expect(wanted.filter((id) => !ids.has(id))).toEqual([]);
  });
});

describe('lesson 3: contamination that is designed in is reported apart from what slips bring', () => {
  const { findings } = verifyProcedure(paprSuit, { agents: ['enveloped'], mends: false, variants: false });
  const accepted = findings.filter(({ kind }) => kind === 'accepted').map(({ surface }) => surface);

  it('names the assistant’s gloves at the hood and the fingers at the zip', () => {
    expect(accepted).toContain('assistant.outer-gloves.right.outside');
    expect(accepted).toContain('wearer.inner-gloves.right.outside');
  });

  it('never files a protected surface there, nor one of these under slips', () => {
    const { surfaces } = ask(paprSuit, 'enveloped').analysis.compiled.plan;
    const guarded = new Set(surfaces.filter((surface) => surface.protected).map(({ id }) => id));
    expect(accepted.filter((id) => guarded.has(id ?? ''))).toEqual([]);
    const bySlip = findings.filter(({ kind }) => kind === 'one-slip').flatMap((finding) => finding.surfaces);
    expect(bySlip.filter((id) => accepted.includes(id))).toEqual([]);
  });
});

describe('lesson 4: the ways of erring that studies saw are all in the vocabulary', () => {
  const used = new Set(
    TECHNIQUE_LIST.flatMap(({ moves }) =>
      moves.flatMap((move) => [
        ...(move.slip ? [move.slip] : []),
        ...(move.do === 'clean' ? move.fails : []),
        ...(move.do === 'look' ? [move.misses] : []),
      ]),
    ),
  );
  const SEEN: readonly (readonly [string, readonly SlipId[]])[] = [
    ['hygiene left out, or done badly', ['omitted-hygiene', 'inadequate-hygiene']],
    ['outside held for inside', ['wrong-grip', 'touch-beneath']],
    ['the body sways or brushes', ['brush', 'swing', 'bump']],
    ['a second hand on the suit', ['second-hand-on-front']],
    ['clean and dirty crossed', ['cross-line']],
    ['a hand to the face', ['reach-to-face']],
    ['a tear missed', ['missed-tear']],
    ['bin and other fixtures touched', ['touch-fixture', 'full-bin']],
    ['leg on leg, balance lost', ['leg-on-leg', 'loses-balance']],
    ['hood or glove snapped', ['snap']],
  ];
  it.each(SEEN)('%s', (_, slips) => {
    expect(slips.filter((slip) => !used.has(slip))).toEqual([]);
  });

  it('steps done in another order', () => {
    const { analysis } = ask(n95Gown, 'enveloped');
    const worse = tryVariants(analysis, variantEdits(n95Gown.steps.length));
    expect([...worse].some(({ edit }) => edit.do === 'move')).toBe(true);
  });

  it('handedness: the zip soils the hand that leads', () => {
    const left = withPerson(paprSuit, 'wearer', { hand: 'left' });
    const zip = paprSuit.steps.find(
      ({ action, items }) => action === 'unfasten' && items[0] === 'coverall',
    )?.id;
    const soiled = (procedure: typeof paprSuit) =>
      INNER_GLOVES.filter((glove) => ask(procedure, 'enveloped').least(glove, { after: zip ?? '' }) === 0);
    expect(soiled(paprSuit)).toEqual(['wearer.inner-gloves.right.outside']);
    expect(soiled(left)).toEqual(['wearer.inner-gloves.left.outside']);
  });

  // Krein 2018: of 283 failures 37 were slips in the narrow sense; so the word here means any deviation.
  it('a slip is any deviation: mistakes and violations outnumber slips in the narrow sense', () => {
    const { value } = evidence('study.krein-2018.failures');
    const { violations, mistakes, slips } = value as { violations: number; mistakes: number; slips: number };
    expect(Math.min(violations, mistakes)).toBeGreaterThan(slips);
    // Left out (a violation), not done well enough and not noticed (mistakes), as well as brushing (a slip).
    for (const id of ['omitted-hygiene', 'inadequate-hygiene', 'missed-tear', 'brush'] as const)
      expect(used.has(id)).toBe(true);
  });
});

describe('lesson 5: chances are not fitted to studies of ten or eighteen people', () => {
  const studies = new Set<string>(evidenceIds.filter((id) => id.startsWith('study.')));
  it.each(SLIPS.map(({ id }) => id))('%s', (id) => {
    const { basis } = evidence(slipOf(id).prior);
    expect(studies.has(basis?.id ?? '')).toBe(false);
  });

  it('every chance shown has an interval and stands on judgement that says so', () => {
    for (const { id } of SLIPS) expect(evidence(slipOf(id).prior).status).toBe('judgement');
    const { surfaces } = verifyProcedure(n95Gown, { agents: ['enveloped'], mends: false, variants: false });
    for (const { chance, interval, combinationCount } of surfaces) {
      expect(interval.low).toBeLessThanOrEqual(interval.high);
      expect(chance > 0).toBe(combinationCount !== '0');
    }
  });
});

describe('lesson 6: an observer who misses is a chance of its own, and none is assumed', () => {
  const { plan } = compiled('national-papr-gown-doffing.yaml');
  const uncredited = eventChances(plan.events, { creditSpraying: false });

  it('no procedure file credits the observer, and there is no such number in the evidence', () => {
    expect(files.filter((file) => procedureOf(file).policy.observer)).toEqual([]);
    const rates = evidenceIds.filter((id) => /observer\.(miss|detect|sensitiv)/.test(id));
    expect(rates.filter((id) => typeof evidence(id).value === 'number')).toEqual([]);
  });

  it('a unit’s own number lowers what can be seen and leaves what cannot', () => {
    const stated = eventChances(plan.events, {
      creditSpraying: false,
      observer: { misses: 'slip.missed-inspection' satisfies EvidenceId, dependence: 'low' },
    });
    plan.events.forEach(({ visible }, at) => {
      if (visible) expect(stated[at]!).toBeLessThan(uncredited[at]!);
      else expect(stated[at]!).toBe(uncredited[at]!);
    });
    expect(plan.events.some(({ visible }) => !visible)).toBe(true);
  });
});

describe('lesson 7: heat limits how long, and is a number of the unit', () => {
  it('the check has no wear-time limit: a procedure’s time is reported and never judged', () => {
    const { findings, measures } = verifyProcedure(paprSuit, {
      agents: ['enveloped'],
      mends: false,
      variants: false,
    });
    expect(measures[0]!.measure.seconds).toBeGreaterThan(0);
    expect(findings.filter(({ evidence: ids }) => ids.some((id) => id.startsWith('heat.')))).toEqual([]);
    for (const { time } of TECHNIQUE_LIST) expect(time.startsWith('duration.')).toBe(true);
  });
});
