// What changed around the steps, in every language: one change of each kind, made on the sample procedure, is found as
// exactly that, and said as a whole sentence without a word left in English.
import { describe, expect, test } from 'vitest';
import { aroundChanges } from '../../src/compare/around.ts';
import { matchOf } from '../../src/compare/match.ts';
import type { Acceptance, Procedure } from '../../src/domain/procedure.ts';
import { readProcedure } from '../../src/language/index.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';
import { faultIn, FOREIGN } from './languages.ts';
import { everyAction } from './sample.ts';
import { whole } from './whole.ts';

const before = everyAction();

const accepted: Acceptance = {
  finding: 'practice.shield-by-rear-strap',
  step: 'shield',
  reason: 'The straps break.',
  by: 'infection-prevention lead',
  date: '2026-01-31',
  review: '2026-07-31',
};

const wearer = (change: Partial<Procedure['people'][number]>): Procedure => ({
  ...before,
  people: before.people.map((one) => (one.role === 'wearer' ? { ...one, ...change } : one)),
});
const fixture = (id: string, change: Partial<Procedure['fixtures'][number]>): Procedure => ({
  ...before,
  fixtures: before.fixtures.map((one) => (one.id === id ? { ...one, ...change } : one)),
});
const me = before.people[0]!;

/** An edit of the sample, and what must be said of it in English. */
const EDITS: readonly (readonly [string, Procedure, readonly string[]])[] = [
  ['nothing', { ...before, version: '2' }, []],
  ['title', { ...before, title: 'Another' }, ['The title: before “Every action (invented)”, now “Another”.']],
  ['about', { ...before, about: 'Why' }, ['What it says that it is about: before nothing, now “Why”.']],
  ['invented', { ...before, invented: false }, ['It no longer says that it is invented.']],
  [
    'agent',
    { ...before, agents: ['non-enveloped'] },
    [
      'It need no longer hold against: enveloped agent.',
      'It must now also hold against: non-enveloped agent.',
    ],
  ],
  [
    'person',
    { ...before, people: before.people.filter(({ role }) => role !== 'observer') },
    ['No longer among the people: the observer.'],
  ],
  [
    'worn',
    wearer({ wears: [...me.wears.filter((item) => item !== 'apron'), 'goggles'] }),
    [
      'What the wearer wears at the start: no longer apron.',
      'What the wearer wears at the start: now also goggles.',
    ],
  ],
  [
    'layers',
    wearer({ wears: me.wears.toReversed() }),
    [
      'The order in which the wearer wears things, from inside to outside: before inner gloves, hooded coverall, shoe covers, N95 respirator, face shield, apron and outer gloves, now outer gloves, apron, face shield, N95 respirator, shoe covers, hooded coverall and inner gloves.',
    ],
  ],
  [
    'underneath',
    wearer({ underneath: me.underneath.filter((item) => item !== 'shoes') }),
    ['What the wearer keeps on underneath: no longer shoes.'],
  ],
  [
    'starts',
    wearer({ starts: 'doffing-area' }),
    ['Where the wearer stands at the start: before the patient room, now the doffing area.'],
  ],
  ['hand', wearer({ hand: 'left' }), ['The hand that the wearer uses first is now the left one.']],
  ['bare', wearer({ leavesBare: ['neck'] }), ["Now left bare on purpose: the wearer's neck."]],
  [
    'zone',
    { ...before, zones: [...before.zones, { id: 'corridor', side: 'clean' }] },
    ['New zone of the room: the corridor.'],
  ],
  [
    'fixture',
    { ...before, fixtures: before.fixtures.filter(({ id }) => id !== 'bin-1') },
    ['No longer in the room: bin 1.'],
  ],
  [
    'worked',
    fixture('bin-1', { worked: 'pedal' }),
    ['Bin 1 (how it is worked): before by hand, now by pedal.'],
  ],
  [
    'soaked',
    fixture('wet-mat', { product: 'alcohol-hand-rub' }),
    ['The wet mat (what it is soaked with): before strong chlorine (0.5 %), now alcohol hand rub.'],
  ],
  [
    'clean',
    fixture('clean-chair', { clean: false }),
    ['The clean chair (whether it is kept clean): before yes, now no.'],
  ],
  [
    'product',
    { ...before, products: [...before.products, 'soap-and-water'] },
    ['New among the products: soap and water.'],
  ],
  [
    'start',
    { ...before, start: [] },
    [
      'What is stated at the start of the handle of the door "exit": before contaminated (“not cleaned since the last exit”), now nothing.',
    ],
  ],
  ['spraying', { ...before, policy: { creditSpraying: true } }, ['Spraying now counts as cleaning.']],
  [
    'accepted',
    { ...before, accepted: [accepted] },
    ['Newly accepted in writing: A face shield is taken off by its rear strap'],
  ],
];

const changesOf = (now: Procedure) => aroundChanges(before, now, matchOf(before, now));

describe.each(EDITS)('%s', (name, now, sentences) => {
  test('is found as that, and said in English', () => {
    const words = wordsFor('en');
    const said = changesOf(now).map((change) => words.compare.around(before, now, change));
    if (name === 'accepted') expect(said[0]).toMatch(/^Newly accepted in writing: .+ – step 10 \(.+\), by /);
    else expect(said).toEqual(sentences);
    expect(said).toHaveLength(sentences.length);
  });

  test('is said in every other language', () => {
    for (const language of FOREIGN) {
      const words = wordsFor(language);
      for (const change of changesOf(now)) {
        const said = words.compare.around(before, now, change);
        expect(whole(said), said).toBe(true);
        // What the file says stands in quotes as it is; a role that accepts stands as it was typed.
        const own = said.replace(accepted.by, 'X').replaceAll(/«[^»]*»|“[^”]*”/gu, 'X');
        expect(faultIn(language, own.replaceAll('N95', 'X'))).toBeUndefined();
      }
    }
  });

  test('is undone by the way back', () => {
    const back = aroundChanges(now, before, matchOf(now, before));
    expect(back).toHaveLength(changesOf(now).length);
  });
});

test('an acceptance in other words is the same one, changed', () => {
  const one: Procedure = { ...before, accepted: [accepted] };
  const two: Procedure = { ...before, accepted: [{ ...accepted, review: '2027-01-31' }] };
  const [change, ...more] = aroundChanges(one, two, matchOf(one, two));
  expect(more).toEqual([]);
  expect(change).toEqual({ what: 'accepted', before: accepted, now: two.accepted[0] });
  for (const language of LANGUAGES) {
    const said = wordsFor(language).compare.around(one, two, change!);
    expect(said).toContain('2026-07-31');
    expect(said).toContain('2027-01-31');
  }
});

test('two readings of one file differ in nothing', () => {
  const { procedure } = readProcedure('');
  expect(procedure).toBeUndefined();
  expect(changesOf(everyAction())).toEqual([]);
});
