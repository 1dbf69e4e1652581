// A mend is honest: made in the file and checked from nothing, it gives exactly the measure and the barriers that it
// claimed, takes the finding away, and adds no error that was not there before.
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/check/analysis.ts';
import { applyEdit } from '../../src/check/edit.ts';
import type { Finding, Measure, Mend } from '../../src/check/finding.ts';
import { scoreBase } from '../../src/check/mends.ts';
import type { Score } from '../../src/check/score.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { type Verdict, verifyProcedure } from '../../src/verify.ts';
import { DONNING } from '../practice/procedures.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { goodDoffing } from '../support/good.ts';
import { changed, without, withPerson } from '../support/procedure.ts';
import { planOf, reachedBy } from './reference.ts';

const GOOD = goodDoffing();

/** Faults of each kind that can be mended; the everyday example has open routes and single slips of its own. */
const FAULTY: readonly (readonly [string, Procedure, Agent])[] = [
  ['no hygiene between hood and goggles', without(GOOD, 'rub-hood'), 'enveloped'],
  ['shield by the front', changed(GOOD, 'shield-off', { technique: 'front-grip' }), 'enveloped'],
  ['gown before the outer gloves', withoutGloves(), 'enveloped'],
  ['nobody sits for the boot covers', without(GOOD, 'sit-boots'), 'enveloped'],
  ['the last item comes off with a helper who is not there', helperElsewhere(), 'enveloped'],
  ['the last rub is had from a lever that dirty gloves worked', rubByLever(), 'enveloped'],
  ['the last rub is a product that bare skin must not have', wrongProduct(), 'enveloped'],
  ['the faulty version of the invented unit', procedureOf('larkmoor-suit-doffing.yaml'), 'enveloped'],
  ['the first everyday example', procedureOf('everyday-example-1-doffing.yaml'), 'enveloped'],
  [
    'the lighter set, against a resistant agent',
    procedureOf('national-stable-patient-doffing.yaml'),
    'non-enveloped',
  ],
];

function withoutGloves(): Procedure {
  return without(GOOD, 'outer-gloves-off', 'inner-gloves-look', 'rub-inner');
}

/** Nothing later hangs on the respirator, so that leaving it on would go unnoticed by the steps. */
function helperElsewhere(): Procedure {
  const helped = changed(GOOD, 'respirator-off', { helper: 'assistant' });
  return withPerson(helped, 'assistant', { starts: 'clean-side' });
}

function rubByLever(): Procedure {
  const fixtures = GOOD.fixtures.map((one) =>
    one.id === 'hand-rub' ? { ...one, worked: 'hand' as const } : one,
  );
  return { ...GOOD, fixtures };
}

function wrongProduct(): Procedure {
  return {
    ...changed(GOOD, 'rub-last', { product: 'chlorine-0.5' }),
    products: [...GOOD.products, 'chlorine-0.5'],
  };
}

interface Tried {
  readonly finding: Finding;
  readonly mend: Mend;
  readonly mended: Procedure;
}

const triedIn = ({ findings, procedure }: Verdict): readonly Tried[] =>
  findings.flatMap((finding) =>
    finding.mends.map((mend) => ({ finding, mend, mended: applyEdit(procedure, mend.edit) })),
  );

/** Mends of several findings are often the same edit; each is checked from nothing once. */
function once<Value>(make: (procedure: Procedure) => Value): (procedure: Procedure) => Value {
  const known = new Map<string, Value>();
  return (procedure) => {
    const key = JSON.stringify(procedure.steps);
    if (!known.has(key)) known.set(key, make(procedure));
    return known.get(key)!;
  };
}

function expectSame(claimed: Measure, measured: Measure): void {
  const { chance, ...rest } = claimed;
  expect(rest).toEqual({ ...measured, chance: undefined });
  chance.forEach((value, at) => expect(value).toBeCloseTo(measured.chance[at]!, 12));
}

const minus = (a: ReadonlySet<string>, b: ReadonlySet<string>): readonly string[] =>
  [...a].filter((key) => !b.has(key)).toSorted();

const idAt = (procedure: Procedure, at: number | undefined): string =>
  procedure.steps[at ?? -1]?.id ?? 'start';

/** Code and place of an error, by the step's id, which a mend does not change. */
const placeOf = (procedure: Procedure, { code, steps, surface, params }: Finding): string =>
  [code, surface ?? idAt(procedure, steps[0]), params.item, params.place].join(' ');

const errorsOf = ({ findings, procedure }: Verdict): ReadonlySet<string> =>
  new Set(
    findings.filter(({ severity }) => severity === 'error').map((finding) => placeOf(procedure, finding)),
  );

describe.each(FAULTY)('%s', (_, procedure, agent) => {
  const base = verifyProcedure(procedure, { agents: [agent], variants: false });
  const tried = triedIn(base);
  const fromNothing = once((mended: Procedure): Score => scoreBase(analyse(mended, agent)));
  const checked = once((mended: Procedure) =>
    verifyProcedure(mended, { agents: [agent], mends: false, variants: false }),
  );
  const before = scoreBase(analyse(procedure, agent));

  test('has mends, at most three to a finding, of edits that were tried', () => {
    expect(tried.length).toBeGreaterThan(0);
    for (const { mends, tried: edits = 0 } of base.findings) {
      expect(mends.length).toBeLessThanOrEqual(3);
      expect(mends.length).toBeLessThanOrEqual(edits);
    }
  });

  test('claims the measure that the edited file has', () => {
    for (const { mend, mended } of tried) {
      expectSame(mend.before, before.measure);
      expectSame(mend.after, fromNothing(mended).measure);
    }
  });

  test('claims the barriers that the edited file has', () => {
    for (const { mend, mended, finding } of tried) {
      if (!mend.barriers) continue;
      expect(mend.barriers.before).toBe(before.barriers.get(finding.surface!) ?? null);
      expect(mend.barriers.after).toBe(fromNothing(mended).barriers.get(finding.surface!) ?? null);
    }
  });

  test('names what goes and what is new', () => {
    for (const { mend, mended } of tried) {
      const after = fromNothing(mended);
      expect(mend.gone.toSorted()).toEqual(minus(before.keys, after.keys));
      expect(mend.added.toSorted()).toEqual(minus(after.keys, before.keys));
    }
  });

  test('takes the finding away', () => {
    for (const { finding, mended } of tried) {
      const { findings } = checked(mended);
      const place = placeOf(procedure, finding);
      if (finding.kind === 'one-slip') {
        const plan = planOf(mended, agent);
        const left = finding.events.filter((key) => plan.events.some((event) => event.key === key));
        const reached = left.length < finding.events.length ? new Set() : reachedBy(plan, left);
        expect(reached.has(finding.surface!)).toBe(false);
      } else {
        const still = findings.map((one) => placeOf(mended, one));
        expect(still).not.toContain(place);
      }
    }
  });

  test('adds no error', () => {
    const known = errorsOf(base);
    for (const { mended } of tried) expect(minus(errorsOf(checked(mended)), known)).toEqual([]);
  });
});

describe('a mend', () => {
  const mendsOf = (procedure: Procedure): readonly Tried[] =>
    triedIn(verifyProcedure(procedure, { agents: ['enveloped'], variants: false }));

  test('never leaves a removal out', () => {
    for (const procedure of [helperElsewhere(), withoutGloves()])
      for (const { mend } of mendsOf(procedure))
        if (mend.edit.do === 'remove') expect(procedure.steps[mend.edit.at]?.action).not.toBe('remove');
  });

  test('does not rub hands where there is nothing to rub them with', () => {
    const procedure = rubByLever();
    const last = procedure.steps.findIndex(({ id }) => id === 'cross-line');
    const moved = mendsOf(procedure).filter(
      ({ mend: { edit } }) =>
        edit.do === 'move' && procedure.steps[edit.from]?.action === 'sanitise' && edit.to >= last,
    );
    expect(moved).toEqual([]);
  });

  test('for a product that does not suit is another one that does', () => {
    const found = mendsOf(wrongProduct()).filter(
      ({ finding }) => finding.code === 'impossible.product-unsuited',
    );
    expect(found.map(({ mended }) => mended.steps.find(({ id }) => id === 'rub-last')?.product)).toContain(
      'alcohol-hand-rub',
    );
  });

  test('for a missing seal check looks at the respirator by name (training module, donning 09)', () => {
    const donning = without(DONNING, 'seal');
    const found = mendsOf(donning).filter(({ finding }) => finding.code === 'practice.donning.seal-check');
    expect(
      found.map(({ mend: { edit } }) => (edit.do === 'insert' ? edit.steps[0]?.items : [])),
    ).toContainEqual(['n95-respirator']);
  });
});
