// Signing a language off: every pattern is listed for every language, from tables and not by hand; the hash is of exactly
// what was read, so another word anywhere makes the language one to be reviewed again.
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { fold } from '../../src/journal/fold.ts';
import { languagesView, signedState, wordingHash } from '../../src/versions/languages.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';
import { PATTERN_GROUPS, type PatternRow, patternsOf } from '../../src/words/patterns.ts';
import { SAMPLE, unfitted } from '../../src/words/sampleRoom.ts';
import { ACTION_IDS } from '../../src/domain/actions.ts';
import { ITEM_IDS } from '../../src/domain/items.ts';
import { evidenceIds } from '../../src/evidence/index.ts';
import { device } from '../journal/samples.ts';
import { faultIn, FOREIGN } from '../words/languages.ts';

const english = patternsOf(wordsFor('en'));
const keysOf = (rows: readonly PatternRow[]): readonly string[] =>
  rows.map(({ group, key }) => `${group} ${key}`);

describe('the sample', () => {
  test('has a step for every technique that the technique fits, and one for every action', () => {
    expect(unfitted()).toEqual([]);
    expect(new Set(SAMPLE.steps.map(({ action }) => action))).toEqual(new Set(ACTION_IDS));
    const ids = SAMPLE.steps.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('the rows', () => {
  test('are of every group, each under a key of its own', () => {
    expect(new Set(english.map(({ group }) => group))).toEqual(new Set(PATTERN_GROUPS));
    expect(new Set(keysOf(english)).size).toBe(english.length);
    expect(english.filter(({ group }) => group === 'items')).toHaveLength(ITEM_IDS.length);
    const rules = evidenceIds.filter((id) => id.startsWith('practice.'));
    expect(english.filter(({ group }) => group === 'practice')).toHaveLength(2 * rules.length);
  });

  test.each(LANGUAGES)('%s: whole, under the same keys as in English', (language) => {
    const rows = patternsOf(wordsFor(language));
    expect(keysOf(rows)).toEqual(keysOf(english));
    for (const { text } of rows) {
      expect(text.trim()).not.toBe('');
      expect(text).not.toMatch(/undefined|null|NaN|\[object|[{}]/);
    }
  });

  // The other groups are held to their language, with more care, where they are made: test/words.
  test.each(FOREIGN)('%s: steps, slips, changes and names in its own language', (language) => {
    const held = ['steps', 'slips', 'changes', 'items', 'techniques', 'products'];
    const rows = patternsOf(wordsFor(language)).filter(({ group }) => held.includes(group));
    expect(rows.flatMap(({ text }) => faultIn(language, text.replaceAll('…', 'X')) ?? [])).toEqual([]);
  });
});

describe('a sign-off', () => {
  const french = patternsOf(wordsFor('fr'));
  const wording = wordingHash(french);
  const signed = async () => {
    const store = memoryStore();
    await store.append([
      device('desk').write('language.signed-off', { language: 'fr', wording, on: '2026-11-20' }),
    ]);
    return fold(languagesView, await store.read(1));
  };

  test('holds for exactly what was read', async () => {
    const state = await signed();
    expect(signedState(state, 'fr', wording)).toMatchObject({ is: 'signed', signed: { on: '2026-11-20' } });
    expect(signedState(state, 'es', wording)).toEqual({ is: 'machine-made' });
    expect(signedState(state, 'constructor', wording)).toEqual({ is: 'machine-made' });
  });

  test('is over as soon as one word of any row is another, or a row is added', async () => {
    const state = await signed();
    for (const at of [0, 100, french.length - 1]) {
      const changed = french.map((row, index) => (index === at ? { ...row, text: `${row.text} !` } : row));
      expect(signedState(state, 'fr', wordingHash(changed)).is).toBe('changed');
    }
    const more = [...french, { group: 'own', key: 'step apron', text: 'Rompre, tenir, rouler.' }];
    expect(signedState(state, 'fr', wordingHash(more)).is).toBe('changed');
    expect(wordingHash(patternsOf(wordsFor('fr')))).toBe(wording);
  });
});
