// A script's lines: one step per screen, one action per row, at most two rows that fit the unit's screen, in every
// published procedure and every language; and what is said when they do not fit.
import { describe, expect, test } from 'vitest';
import * as fc from 'fast-check';
import { capitalHeight, fitOf, ownFitOf, scriptOf } from '../../src/guide/index.ts';
import { EMERGENCY_IDS } from '../../src/domain/emergencies.ts';
import { pagesOf } from '../../src/guide/emergency.ts';
import { clausesOf, isWithin, screensOf } from '../../src/guide/rows.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { setupOf, SMALL, SMALL_DONNING, WALL } from './support.ts';

const DESK = { widthMillimetres: 344, heightMillimetres: 194, distanceMetres: 2 } as const;
const PHONE = { widthMillimetres: 150, heightMillimetres: 68, distanceMetres: 3 } as const;

describe('the size of the text', () => {
  test('the observer’s own screen is told by its own pixels what 11.6 mm at 2 m takes', () => {
    // Type of which capitals are 0.7 (legibility.typeface), on a screen of 0.2 mm a pixel.
    const fit = ownFitOf({ widthMillimetres: 200, distanceMetres: 2 }, 1000);
    expect(fit.needed).toBeCloseTo(11.6 / 0.7 / 0.2, 0);
    expect(fit.worth(fit.needed).capital).toBeCloseTo(capitalHeight(2), 6);
    expect(fit.worth(fit.needed / 2).metres).toBeCloseTo(1, 6);
    // 96 pixels an inch where nobody has measured (legibility.unmeasured-screen).
    expect(ownFitOf({ distanceMetres: 2 }, 1000).worth(96).capital).toBeCloseTo(0.7 * 25.4, 6);
  });

  test('capitals are as high as text-size guidance asks: 11.6 mm at 2 m, 17.5 mm at 3 m', () => {
    expect(capitalHeight(2)).toBeCloseTo(11.6, 1);
    expect(capitalHeight(3)).toBeCloseTo(17.5, 1);
  });

  test('a screen further away takes fewer characters, and a small one says that it is too low', () => {
    expect(fitOf(WALL).fault).toBeUndefined();
    expect(fitOf({ ...WALL, distanceMetres: 2 }).characters).toBeGreaterThan(fitOf(WALL).characters);
    expect(fitOf(WALL).characters).toBe(31);
    expect(fitOf(PHONE).fault).toBe('too-low');
  });
});

describe('rows', () => {
  test('one clause a row, two rows a screen', () => {
    expect(clausesOf('Wipe it: all of it, then (0,5 %) wait; put it down.')).toEqual([
      'Wipe it',
      'all of it',
      'then (0,5 %) wait',
      'put it down',
    ]);
    expect(screensOf('Wipe it: all of it, then wait.', 20)).toEqual([
      ['Wipe it', 'all of it'],
      ['Then wait'],
    ]);
  });

  test('a clause that is longer goes over rows and screens, and no word is lost or split', () => {
    const words = fc.array(fc.stringMatching(/^[a-zé]{1,8}[,:;]?$/), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(words, fc.integer({ min: 10, max: 40 }), (list, characters) => {
        const screens = screensOf(list.join(' '), characters);
        expect(screens.every((rows) => rows.length >= 1 && rows.length <= 2)).toBe(true);
        expect(screens.flat().every((row) => row.length <= characters)).toBe(true);
        const plain = (text: string): string => text.replaceAll(/[,:;]|… /g, '').toLowerCase();
        expect(plain(screens.flat().join(' '))).toBe(plain(list.join(' ')).trim());
      }),
      { numRuns: 200 },
    );
  });

  test('a word that is too wide stands alone, and the script says so', () => {
    expect(screensOf('hydro-alcoolique', 10)).toEqual([['Hydro-alcoolique']]);
    const narrow = scriptOf(setupOf(SMALL, { display: { ...WALL, widthMillimetres: 120 } }));
    expect(narrow.tooWide.length).toBeGreaterThan(0);
    expect(narrow.notices).toContain('does-not-fit');
  });
});

/** What is wrong with a script for a screen; empty where every line is as it should be. */
function faults(
  file: string,
  display: typeof WALL | typeof DESK,
  languages: readonly (typeof LANGUAGES)[number][],
) {
  const procedure = procedureOf(file);
  const [first = 'en', second = first] = languages;
  const names = Object.fromEntries(
    procedure.people.map(({ id, role }) => [id, role === 'observer' ? first : second] as const),
  );
  const script = scriptOf(setupOf(procedure, { display, languages: names }));
  const { characters } = fitOf(display);
  return script.lines.flatMap((line) =>
    Object.values(line.texts).flatMap((rows) => {
      const fine =
        rows.length >= 1 && rows.length <= 2 && rows.every((row) => row !== '' && row.length <= characters);
      return fine ? [] : [`${line.id}: ${rows.join(' / ')}`];
    }),
  );
}

describe.each(LANGUAGES)('every published procedure in %s', (language) => {
  test('fits a wall screen at three metres and a desk screen at two, two short rows at most', () => {
    const found = files.flatMap((file) => [
      ...faults(file, WALL, [language]),
      ...faults(file, DESK, [language]),
    ]);
    expect(found).toEqual([]);
  });

  test('begins each step with what to do and to what', () => {
    const words = wordsFor(language);
    for (const file of files) {
      const procedure = procedureOf(file);
      const languages = Object.fromEntries(procedure.people.map(({ id }) => [id, language] as const));
      const { lines } = scriptOf(setupOf(procedure, { languages }));
      procedure.steps.forEach((step, index) => {
        const first = lines.find((line) => line.step === index)?.texts[language]?.[0] ?? '';
        expect(words.step(procedure, step).startsWith(first)).toBe(true);
      });
    }
  });
});

test.each(LANGUAGES)('the cards of all emergencies fit the same screens in %s', (language) => {
  for (const display of [WALL, DESK]) {
    const script = scriptOf(setupOf(SMALL, { display, languages: { wearer: language, observer: language } }));
    const pages = EMERGENCY_IDS.flatMap((id) =>
      pagesOf(script, id).map(({ texts }) => texts[language] ?? []),
    );
    expect(pages.filter((rows) => !isWithin(rows, fitOf(display).characters) || rows.length === 0)).toEqual(
      [],
    );
  }
});

test('two languages side by side keep level: as many screens of each', () => {
  for (const file of files) expect(faults(file, WALL, ['en', 'fr'])).toEqual([]);
});

test('one step is on a screen, its lines in order: read, looked for, answered', () => {
  for (const file of files) {
    const { lines, setup } = scriptOf(setupOf(procedureOf(file)));
    const steps = lines.map(({ step }) => step);
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
    setup.procedure.steps.forEach((_, index) => {
      const kinds = [...new Set(lines.filter(({ step }) => step === index).map(({ kind }) => kind))];
      expect(['read,look', 'read,back,look,hold']).toContain(kinds.join(','));
    });
    expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
  }
});

test('few steps get a hold, the ones that carry most of the chance, with place and share', () => {
  for (const file of files) {
    const { holds, setup } = scriptOf(setupOf(procedureOf(file)));
    expect(holds.length).toBeLessThanOrEqual(6);
    if (setup.procedure.kind === 'doffing') expect(holds.length).toBeGreaterThan(0);
    expect(holds.map(({ rank }) => rank).toSorted((a, b) => a - b)).toEqual(holds.map((_, at) => at + 1));
    const byRank = holds.toSorted((a, b) => a.rank - b.rank).map(({ share }) => share);
    expect(byRank).toEqual(byRank.toSorted((a, b) => b - a));
  }
});

test('signals stand beside the words where somebody wears a powered respirator', () => {
  const { lines, setup } = scriptOf(setupOf(procedureOf('national-papr-gown-doffing.yaml')));
  const off = setup.procedure.steps.findIndex(
    ({ action, items }) => action === 'remove' && items.includes('powered-hood'),
  );
  const drowned = (step: number): boolean => lines.some((line) => line.step === step && line.drowned);
  expect(drowned(off)).toBe(true);
  expect(drowned(setup.procedure.steps.length - 1)).toBe(false);
});

test('a donning ends with the look all round and the room, a doffing with the questions', () => {
  const ends = (of: typeof SMALL): readonly string[] =>
    scriptOf(setupOf(of))
      .lines.filter(({ step }) => step === of.steps.length)
      .map(({ kind }) => kind);
  expect(ends(SMALL_DONNING)).toEqual(['all-round', 'inside']);
  expect(ends(SMALL)).toEqual(['question', 'question', 'question', 'question', 'question', 'finish']);
});
