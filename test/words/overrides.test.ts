// A unit's own wording: what it replaces, what it may not hide, and what is said of a file that is not right.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readPlain } from '../../src/language/index.ts';
import { checkOverrides, describeOverrideFault, unusedWording, wordsFor } from '../../src/words/index.ts';
import { CAUTION_KEYS, FINDING_CODES, OVERRIDE_FAULTS } from '../../src/words/overrides.ts';
import { everyAction, FINDINGS } from './sample.ts';

const procedure = everyAction();
const apron = procedure.steps.find(({ id }) => id === 'apron') ?? procedure.steps[0]!;
const PRESENT = wordsFor('fr').step(procedure, apron);
const OWN = 'Retirez le tablier comme affiché au mur.';

const read = (text: string) => checkOverrides(readPlain(text, 'wording.yaml').value);
const file = (say = OWN, insteadOf = PRESENT) => `fr:
  signed-off: {by: the reviewer (invented), date: 2026-02-03}
  steps:
    apron: {instead-of: ${JSON.stringify(insteadOf)}, say: ${JSON.stringify(say)}}
  sentences:
    practice.shield-by-rear-strap: "Étape {step} : par la bride."
    open.skin: "Voie vers {surface}, étape {step}."
    one-slip.clothes: "{surface} : {events}"
    caution.real-breach: Appelez le 15.
`;

describe('what is well-formed', () => {
  const { overrides, faults } = read(file());
  const words = wordsFor('fr', overrides);
  const plain = wordsFor('fr');

  test('has no fault', () => expect(faults).toEqual([]));

  test('stands in place of a step, and is marked', () => {
    expect(words.step(procedure, apron)).toBe(OWN);
    expect(words.isOverridden(procedure, apron)).toBe(true);
    expect(plain.isOverridden(procedure, apron)).toBe(false);
    for (const step of procedure.steps.filter(({ id }) => id !== 'apron')) {
      expect(words.step(procedure, step)).toBe(plain.step(procedure, step));
      expect(words.isOverridden(procedure, step)).toBe(false);
    }
  });

  test('stands in place of a finding, with its holes filled and its acceptance kept', () => {
    const said = (code: string): string => {
      const finding = FINDINGS.find((one) => one.code === code);
      if (!finding) throw new Error(code);
      expect(words.isOverridden(procedure, finding)).toBe(true);
      expect(words.finding(procedure, finding).title).toBe(plain.finding(procedure, finding).title);
      return words.finding(procedure, finding).text;
    };
    expect(said('open.skin')).toBe(
      "Voie vers le visage de la personne équipée, étape 19 (retirer l'APR N95).",
    );
    expect(said('one-slip.clothes')).toContain("l'hygiène des mains est omise à l'étape 14");
    expect(said('practice.shield-by-rear-strap')).toMatch(/par la bride\. Accepté par écrit par/);
  });

  test('replaces a caution, and leaves the others', () => {
    expect(words.cautions[3]).toBe('Appelez le 15.');
    expect(words.cautions.slice(0, 3)).toEqual(plain.cautions.slice(0, 3));
  });

  test('says who signed the language off, in it and in English', () => {
    expect(words.review).toEqual({ signedBy: 'the reviewer (invented)', date: '2026-02-03' });
    expect(words.reviewNote).toEqual([
      'Formulation relue et validée par the reviewer (invented) le 2026-02-03.',
      'Wording reviewed and signed off by the reviewer (invented) on 2026-02-03.',
    ]);
  });

  test('touches no other language', () => {
    expect(wordsFor('es', overrides)).toBe(wordsFor('es'));
    expect(wordsFor('en', overrides).review).toBe('machine-made');
  });
});

describe('a sentence never outlives its step', () => {
  test('once the step says something else the program speaks for it again', () => {
    const { overrides, faults } = read(file(OWN, 'Retirez autre chose.'));
    expect(faults).toEqual([]);
    const words = wordsFor('fr', overrides);
    expect(words.step(procedure, apron)).toBe(PRESENT);
    expect(words.isOverridden(procedure, apron)).toBe(false);
    expect(unusedWording(wordsFor('fr'), overrides.fr, procedure)).toEqual([{ why: 'stale', step: 'apron' }]);
  });

  test('a step that is not there is told, one that is used is not', () => {
    const { overrides } = read(file());
    expect(unusedWording(wordsFor('fr'), overrides.fr, procedure)).toEqual([]);
    const without = { ...procedure, steps: procedure.steps.filter(({ id }) => id !== 'apron') };
    expect(unusedWording(wordsFor('fr'), overrides.fr, without)).toEqual([{ why: 'unused', step: 'apron' }]);
  });
});

describe('what is wrong is told', () => {
  test.each([
    ['[fr]', 'not-a-map', []],
    ['fr: yes please', 'not-a-map', ['fr']],
    ['de: {}', 'unknown-language', ['de']],
    ['FR: {}', 'unknown-language', ['FR']],
    ['fr: {words: {}}', 'unknown-entry', ['fr', 'words']],
    ['fr: {signed-off: {by: me}}', 'bad-sign-off', ['fr', 'signed-off']],
    ['fr: {signed-off: {by: me, date: 3.2.2026}}', 'bad-sign-off', ['fr', 'signed-off']],
    ['fr: {sentences: {open.skni: "{surface} {step}"}}', 'unknown-key', ['fr', 'sentences', 'open.skni']],
    ['fr: {sentences: {caution.chances: ""}}', 'not-a-sentence', ['fr', 'sentences', 'caution.chances']],
    ['fr: {sentences: {caution.chances: [a]}}', 'not-a-sentence', ['fr', 'sentences', 'caution.chances']],
    [
      'fr: {sentences: {caution.chances: "{step}"}}',
      'unknown-placeholder',
      ['fr', 'sentences', 'caution.chances'],
    ],
    [
      'fr: {sentences: {coverage.bare: "{who}"}}',
      'unknown-placeholder',
      ['fr', 'sentences', 'coverage.bare'],
    ],
    ['fr: {sentences: {open.skin: "étape {step}"}}', 'missing-placeholder', ['fr', 'sentences', 'open.skin']],
    ['fr: {steps: {apron: Retirez.}}', 'step-without-original', ['fr', 'steps', 'apron']],
    ['fr: {steps: {apron: {instead-of: A.}}}', 'not-a-sentence', ['fr', 'steps', 'apron', 'say']],
  ] as const)('%s is %s', (text, code, path) => {
    const { faults } = read(text);
    expect(faults.map((fault) => fault.code)).toEqual([code]);
    expect(faults[0]?.path).toEqual(path);
  });

  test.each(OVERRIDE_FAULTS)('%s says what is wrong and how to mend it', (code) => {
    const { wrong, mend } = describeOverrideFault({ code, path: [], found: 'x' });
    expect(wrong).toMatch(/^["A-Z].+\.$/);
    expect(mend).toMatch(/^[A-Z].+\.$/);
  });
});

test('every code that the sample finds may be worded, and there is a key for each caution', () => {
  for (const { code } of FINDINGS) expect(FINDING_CODES).toContain(code);
  expect(CAUTION_KEYS.length).toBe(wordsFor('en').cautions.length);
});

test('the sample of docs/languages.md is well-formed', () => {
  const sample = /```yaml\n([\s\S]*?)```/.exec(readFileSync('docs/languages.md', 'utf8'))?.[1] ?? '';
  const { overrides, faults } = read(sample);
  expect(faults).toEqual([]);
  expect(overrides.fr?.steps.size).toBe(1);
  expect(overrides.fr?.sentences.size).toBe(2);
});
