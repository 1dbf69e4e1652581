// What is said of an order that was found and of one thing in place of another: whole sentences in every language, with as
// many digits as the figures bear, and no verdict. A sample is held to the letter in golden/: a
// changed golden file is a changed wording, to be read before it is updated (-u).
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measure } from '../../src/check/finding.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { STEP_CHANGES } from '../../src/order/changes.ts';
import {
  type Choice,
  CHOICE_KINDS,
  type Difference,
  FIGURES,
  OUTCOMES,
  searchOrder,
} from '../../src/order/index.ts';
import { REWRITINGS, substitute } from '../../src/order/substitute.ts';
import { capital } from '../../src/words/capital.ts';
import { checkOverrides, LANGUAGES, type Refusal, type Words, wordsFor } from '../../src/words/index.ts';
import { durations, percentsIn } from '../../src/words/numbers.ts';
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

/** Two figures that read alike and differ, falling. */
const ALIKE: readonly Difference[] = [
  { figure: 'chance.skin', from: 0.018_862, to: 0.018_861 },
  { figure: 'seconds', from: 240.2, to: 240 },
];

/** Not proved by so little that no two digits show it. */
const closeProofs = ({ order }: Words): readonly string[] =>
  ALIKE.map(({ figure, from, to }) =>
    order.proof({
      proved: false,
      kept: false,
      gap: { figure, from: to, to: from },
      explored: { scenes: 1, tried: 1, dropped: 0 },
    }),
  );

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
    ...closeProofs(words),
    ...ALIKE.map((one) => `${capital(order.difference(one))}.`),
    ...order.figures(MEASURE, AFTER).flatMap(({ slight }) => (slight ? `${capital(slight)}.` : [])),
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

  test('figures say what rests on judgement; two that differ read differently, or say by less than what', () => {
    const figures = order.figures(MEASURE, AFTER);
    expect(figures.map(({ figure }) => figure)).toEqual(FIGURES);
    expect(new Set(figures.map(({ name }) => name)).size).toBe(FIGURES.length);
    for (const { figure, before, after, turn, slight, status } of figures) {
      expect(before === after && slight === undefined).toBe(turn === 'same');
      expect(status === undefined).toBe(!/chance|seconds/.test(figure));
    }
    const turned = figures.filter(({ turn }) => turn !== 'same').map(({ figure, turn }) => [figure, turn]);
    expect(figures.filter(({ slight }) => slight !== undefined).map(({ figure }) => figure)).toEqual([
      'chance.mucosa',
    ]);
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
  const words = wordsFor(language);
  const { order } = words;
  const texts = [
    ...closeProofs(words),
    ...ALIKE.map(order.difference),
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

  test('a difference that two digits do not show is said in words', () => {
    expect(order.difference({ figure: 'chance.mucosa', from: 0.010996, to: 0.011204 })).toBe(
      'the chance of reaching mucosa rises by less than 0.1 percentage points and, rounded, is 1.1 % both times (judgement)',
    );
    expect(order.difference({ figure: 'seconds', from: 240.2, to: 240 })).toBe(
      'the time falls by less than 1 s and, rounded, is 4 min 00 s both times (judgement)',
    );
    expect(order.difference({ figure: 'chance.skin', from: 0.011, to: 0.02 })).toBe(
      'the chance of reaching skin rises from 1.1 % to 2.0 % (judgement)',
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
      'Remove the apron before removing the outer gloves, because the other way round the chance of reaching mucosa rises by less than 0.1 percentage points and, rounded, is 1.1 % both times (judgement).',
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
  const percents = percentsIn('en', ' ', (size) => size);
  const share = fc.oneof(
    fc.constantFrom(0, 1),
    fc.double({ min: 0, max: 1, noNaN: true }),
    // Small ones and large ones as often as those between.
    fc.double({ min: 1, max: 9, noNaN: true }).map((power) => 10 ** -power),
    fc.double({ min: 2, max: 9, noNaN: true }).map((power) => 1 - 10 ** -power),
  );

  /** The number that a reader takes it for; what lies beyond a bound counts as just beyond it. */
  const read = (text: string): number => {
    const value = Number(text.replace(/[^\d.]/g, ''));
    return text.startsWith('<') ? value / 2 : text.startsWith('>') ? value + 0.5 : value;
  };

  test.each([
    [0.011, 0.012, '1.1 %', '1.2 %'],
    [0.01, 0.011, '1.0 %', '1.1 %'],
    [0.5, 1, '50 %', '100 %'],
    [0, 0.02, '0 %', '2.0 %'],
    [0, 1e-9, '0 %', '< 0.0001 %'],
    [0.995, 1, '> 99 %', '100 %'],
  ])('%d and %d', (from, to, before, after) => {
    expect(percents(from, to)).toEqual([before, after]);
  });

  test.each([
    [0.018_861, 0.018_862, '1.9 %', '0.1'],
    [0.0996, 0.1004, '10 %', '1'],
    [0.000_101, 0.000_103, '0.010 %', '0.001'],
    [0.999, 0.9995, '> 99 %', '1'],
    [1e-9, 5e-9, '< 0.0001 %', '0.0001'],
  ])('%d and %d read alike, and say by less than what they differ', (from, to, both, within) => {
    expect(percents(from, to)).toEqual([both, both, within]);
    expect(percents(to, from)).toEqual([both, both, within]);
  });

  test('a bound is written as the language writes numbers', () => {
    expect(percentsIn('fr', '\u00a0', (size) => size)(0.018_861, 0.018_862)).toEqual([
      '1,9\u00a0%',
      '1,9\u00a0%',
      '0,1',
    ]);
  });

  test('two digits at most, never in the other order, and never alike without a bound that holds', () => {
    fc.assert(
      fc.property(share, share, (from, to) => {
        const [before, after, within] = percents(from, to);
        for (const [value, text] of [
          [from, before],
          [to, after],
        ] as const) {
          expect(text.replace(/^[<>] /, '')).toMatch(/^(0|0\.0*[1-9]\d?|[1-9](\.\d)?|[1-9]\d|100) %$/);
          expect([text === '0 %', text === '100 %']).toEqual([value === 0, value === 1]);
        }
        if (from < to) expect(read(before)).toBeLessThanOrEqual(read(after));
        if (from > to) expect(read(before)).toBeGreaterThanOrEqual(read(after));
        expect(within === undefined).toBe(from === to || before !== after);
        if (within !== undefined) expect(Math.abs(from - to) * 100).toBeLessThanOrEqual(Number(within));
      }),
      { numRuns: 2000 },
    );
  });

  test('times are told to the second, and by less than one where that is alike', () => {
    expect(durations(240, 240.2)).toEqual(['4 min 00 s', '4 min 00 s', '1 s']);
    expect(durations(240, 250)).toEqual(['4 min 00 s', '4 min 10 s']);
    expect(durations(240, 240)).toEqual(['4 min 00 s', '4 min 00 s']);
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
