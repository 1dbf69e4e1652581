// What is said of an order that was found and of one thing in place of another: whole sentences in every language, with as
// many digits as it takes to tell two figures apart, and no verdict. A sample is held to the letter in golden/: a
// changed golden file is a changed wording, to be read before it is updated (-u).
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measure } from '../../src/check/finding.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { STEP_CHANGES } from '../../src/order/changes.ts';
import { type Choice, CHOICE_KINDS, FIGURES, OUTCOMES, searchOrder } from '../../src/order/index.ts';
import { REWRITINGS, substitute } from '../../src/order/substitute.ts';
import { checkOverrides, LANGUAGES, type Refusal, wordsFor } from '../../src/words/index.ts';
import { durationsIn, percentsIn } from '../../src/words/numbers.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { faultIn, FOREIGN } from './languages.ts';
import { VERDICT, whole } from './whole.ts';

const LIMITS = { agent: 'enveloped', tried: 60 } as const;
const SUIT = procedureOf('larkmoor-suit-doffing.yaml');
const FOUND = ['everyday-example-2-doffing.yaml', 'national-stable-patient-doffing.yaml'].map((file) =>
  searchOrder(procedureOf(file), LIMITS),
);
const SWAPS = [
  ['everyday-example-2-doffing.yaml', 'gown', 'coverall'],
  ['national-stable-patient-doffing.yaml', 'face-shield', 'goggles'],
] as const;
const SWAPPED = SWAPS.map(([file, from, to]) => {
  const before = procedureOf(file);
  return { before, done: substitute(before, from, to, LIMITS) };
});

const REFUSALS: readonly Refusal[] = [
  'donning',
  'nothing-worn',
  'unknown',
  'not-alike',
  'not-used',
  'used-already',
];

/** One of every kind and outcome, about steps of the suit. */
function choicesOf({ steps }: Procedure): readonly Choice[] {
  const removed = steps.filter(({ action }) => action === 'remove');
  const [first, second] = [removed[0]?.id ?? '', removed[1]?.id ?? ''];
  const rub = steps.find(({ action }) => action === 'sanitise')?.id ?? '';
  const helped = steps.find(({ helper }) => helper !== undefined)?.id ?? '';
  const about = {
    order: { step: first, instead: second },
    technique: { step: first, instead: 'front-grip' },
    helper: { step: helped, instead: 'nobody' },
    hygiene: { step: rub, instead: '' },
  } as const;
  const more = {
    worse: { difference: { figure: 'chance.mucosa', from: 0.010996, to: 0.011204 } },
    impossible: { problem: { code: 'held-by', step: 0, params: { item: 'gown', by: 'apron' } } },
    departs: { rule: 'practice.apron-torn-at-neck' },
    same: {},
    better: { difference: { figure: 'open.skin', from: 2, to: 1 } },
  } as const;
  return CHOICE_KINDS.flatMap((kind) =>
    OUTCOMES.map((outcome): Choice => ({ kind, ...about[kind], outcome, ...more[outcome] })),
  );
}

const MEASURE: Measure = {
  impossible: 0,
  open: [0, 1, 0, 0],
  chance: [0.010996, 0.4, 0.31, 0],
  departures: 1,
  seconds: 150,
};
const AFTER: Measure = { ...MEASURE, open: [0, 0, 0, 0], chance: [0.011204, 0.4, 0.3, 0], seconds: 240.2 };

describe.each(LANGUAGES)('%s', (language) => {
  const words = wordsFor(language);
  const { order } = words;
  const proofs = [true, false].flatMap((kept) => [
    order.proof({ proved: true, kept, explored: { scenes: 1, tried: 1, dropped: 0 } }),
    ...FIGURES.map((figure) =>
      order.proof({
        proved: false,
        kept,
        gap: { figure, from: 0, to: 1 },
        explored: { scenes: 57, tried: 0, dropped: 0 },
      }),
    ),
  ]);
  const sample = [
    ...choicesOf(SUIT).map((choice) => order.choice(SUIT, choice)),
    // With and without a gap, in counts, chances and times.
    ...proofs.filter((_, at) => [0, 1, 6, 11, 12].includes(at)),
    ...REWRITINGS.map(order.rewriting),
    order.kept(true),
    order.kept(false),
    ...SUIT.steps.slice(0, 2).flatMap((step, at) => {
      const was = SUIT.steps[at + 1];
      return STEP_CHANGES.map((what) => order.change(SUIT, SUIT, { what, step, ...(was ? { was } : {}) }));
    }),
    ...SUIT.people.flatMap(({ id, role }) =>
      [1, 2].map((count) =>
        order.retraining(SUIT, {
          person: id,
          role,
          changes: SUIT.steps.slice(0, count).map((step) => ({ what: 'new', step })),
        }),
      ),
    ),
    ...REFUSALS.map(order.refusal),
  ];

  test('every kind, outcome, figure, change and refusal is a whole sentence of the language', () => {
    for (const text of [...sample, ...proofs]) {
      expect(whole(text), text).toBe(true);
      expect(text).toMatch(/^\p{Lu}.+\.$/u);
      expect(text).not.toMatch(VERDICT);
    }
    expect(new Set(proofs).size).toBe(proofs.length);
  });

  test('what real procedures give', () => {
    const texts = [
      ...FOUND.flatMap((found) => [
        ...found.choices.map((choice) => order.choice(found.procedure, choice)),
        order.proof(found),
      ]),
      ...SWAPPED.flatMap(({ before, done }) => [
        ...done.changes.map((change) => order.change(before, done.procedure, change)),
        ...done.retraining.map((one) => order.retraining(done.procedure, one)),
        ...done.lost.map((one) => `${order.difference(one)}.`),
      ]),
    ];
    expect(texts.length).toBeGreaterThan(30);
    for (const text of texts) {
      expect(whole(text), text).toBe(true);
      expect(text).not.toMatch(VERDICT);
    }
  });

  test('figures say what rests on judgement, and two that differ read differently', () => {
    const figures = order.figures(MEASURE, AFTER);
    expect(figures.map(({ figure }) => figure)).toEqual(FIGURES);
    expect(new Set(figures.map(({ name }) => name)).size).toBe(FIGURES.length);
    for (const { figure, before, after, turn, status } of figures) {
      expect(before === after).toBe(turn === 'same');
      expect(status === undefined).toBe(!/chance|seconds/.test(figure));
    }
    const turned = figures.filter(({ turn }) => turn !== 'same').map(({ figure, turn }) => [figure, turn]);
    expect(turned).toEqual([
      ['open.skin', 'better'],
      ['chance.mucosa', 'worse'],
      ['chance.clothes-shoes', 'better'],
      ['seconds', 'worse'],
    ]);
  });

  test('the sample, to the letter', async () => {
    await expect(`${sample.join('\n')}\n`).toMatchFileSnapshot(`golden/order-${language}.txt`);
  });
});

test.each(FOREIGN)('%s: no English, no broken grammar', (language) => {
  const { order } = wordsFor(language);
  const texts = [
    ...choicesOf(SUIT).map((choice) => order.choice(SUIT, choice)),
    ...FOUND.flatMap((found) => [
      ...found.choices.map((choice) => order.choice(found.procedure, choice)),
      order.proof(found),
    ]),
    ...SWAPPED.flatMap(({ before, done }) => [
      ...done.changes.map((change) => order.change(before, done.procedure, change)),
      ...done.retraining.map((one) => order.retraining(done.procedure, one)),
    ]),
    ...FIGURES.flatMap((figure) => [
      order.difference({ figure, from: 0, to: 1 }),
      order.difference({ figure, from: 1, to: 0 }),
    ]),
    ...order.figures(MEASURE, AFTER).map(({ name }) => name),
    ...REWRITINGS.map(order.rewriting),
    // Where a file's own documentation is named, its name stays.
    ...REFUSALS.map(order.refusal).map((text) => text.replace(/ \(docs.*\)/, '')),
  ];
  expect(texts.flatMap((text) => faultIn(language, text) ?? [])).toEqual([]);
});

describe('English', () => {
  const { order } = wordsFor('en');

  test('a small difference shows the digits that make it one', () => {
    expect(order.difference({ figure: 'chance.mucosa', from: 0.010996, to: 0.011204 })).toBe(
      'the chance of reaching mucosa rises from 1.10 % to 1.12 % (judgement)',
    );
    expect(order.difference({ figure: 'seconds', from: 250, to: 150 })).toBe(
      'the time falls from 4 min 10 s to 2 min 30 s (judgement)',
    );
    expect(order.difference({ figure: 'open.skin', from: 0, to: 2 })).toBe(
      'the number of open routes to skin rises from 0 to 2',
    );
  });

  test('what goes first is said with what would go before it', () => {
    const [choice] = choicesOf(SUIT);
    expect(choice && order.choice(SUIT, choice)).toBe(
      'Remove the apron before removing the outer gloves, because the other way round the chance of reaching mucosa rises from 1.10 % to 1.12 % (judgement).',
    );
  });
});

test.each(LANGUAGES)('%s: two steps that are named alike are told apart by number', (language) => {
  const removed = SUIT.steps.filter(
    ({ action, items }) => action === 'remove' && items[0] === 'inner-gloves',
  );
  const [first, second] = removed;
  if (!first || !second) throw new Error('the suit takes its inner gloves off twice');
  const choice: Choice = { kind: 'order', step: first.id, instead: second.id, outcome: 'same' };
  const number = SUIT.steps.indexOf(second) + 1;
  expect(wordsFor(language).order.choice(SUIT, choice)).toMatch(new RegExp(` \\(\\p{L}+ ${number}\\)`, 'u'));
});

describe('two figures', () => {
  const percents = percentsIn('en', ' ');
  // What lies below is no chance that any table holds.
  const share = fc.oneof(fc.constant(0), fc.double({ min: 1e-11, max: 1, noNaN: true }));

  test.each([
    [0.011, 0.012, '1.1 %', '1.2 %'],
    [0.01, 0.011, '1.0 %', '1.1 %'],
    [0.0996, 0.1004, '9.96 %', '10.04 %'],
    [0.999, 0.9995, '99.90 %', '99.95 %'],
    [0, 0.02, '0 %', '2.0 %'],
    [0.5, 1, '50 %', '100 %'],
    [1e-9, 5e-9, '0.0000001 %', '0.0000005 %'],
  ])('%d and %d', (from, to, before, after) => {
    expect(percents(from, to)).toEqual([before, after]);
  });

  test('whatever differs enough to count reads differently, and nothing reads as 0 % or 100 % that is not', () => {
    fc.assert(
      fc.property(share, share, (from, to) => {
        const [before, after] = percents(from, to);
        if (Math.abs(from - to) > 1e-9) expect(before).not.toBe(after);
        for (const [value, text] of [
          [from, before],
          [to, after],
        ] as const) {
          if (value > 0) expect(text).not.toMatch(/^0(\.0+)? %$/);
          if (value < 1) expect(text).not.toMatch(/^100/);
        }
      }),
    );
  });

  test('times that round to the same second show what is beyond it', () => {
    expect(durationsIn('en')(240, 240.2)).toEqual(['240.0 s', '240.2 s']);
    expect(durationsIn('fr')(240, 250)).toEqual(['4 min 00 s', '4 min 10 s']);
  });
});

test("the unit's own sentence of a step stands in what changes, too", () => {
  const [step] = SUIT.steps;
  if (!step) throw new Error('no step');
  const plain = wordsFor('fr');
  const own = 'Dites le mot convenu et attendez.';
  const { overrides } = checkOverrides({
    fr: { steps: { [step.id]: { 'instead-of': plain.step(SUIT, step), say: own } } },
  });
  const change = { what: 'changed', step, was: step } as const;
  const said = wordsFor('fr', overrides).order.change(SUIT, SUIT, change);
  expect(said.split(own).length).toBe(3);
  expect(said).not.toContain(plain.step(SUIT, step));
});
