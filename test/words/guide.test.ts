// The guide's own sentences: every list of the vocabulary is said in all four languages, each sentence is whole and in its
// own language, nothing gives a verdict, and emergencies say in every language what their records say in English.
import { describe, expect, test } from 'vitest';
import {
  actionEvidence,
  EMERGENCIES,
  EMERGENCY_ACTIONS,
  EMERGENCY_IDS,
  emergencyOf,
} from '../../src/domain/emergencies.ts';
import {
  BARS,
  DEVIATIONS,
  EARLY_REASONS,
  FIT_FAULTS,
  NOTICES,
  OUTCOMES,
  QUESTIONS,
  REFUSALS,
  REPLIES,
  SIGNALS,
  TIMER_KINDS,
} from '../../src/domain/guiding.ts';
import { evidence } from '../../src/evidence/index.ts';
import { type GuideWords, PRESS_NAMES } from '../../src/words/guide.ts';
import { countedIn } from '../../src/words/guideLabels.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';
import { faultIn, FOREIGN } from './languages.ts';

/** What the functions of the table are asked with. */
const ASKED: { readonly [Name in keyof GuideWords]?: (words: GuideWords) => readonly string[] } = {
  sayBack: ({ sayBack }) => [sayBack('123')],
  rescuer: ({ rescuer }) => [rescuer(undefined), rescuer('123')],
  unsaved: ({ unsaved }) => [unsaved(1), unsaved(3)],
  holdWhy: ({ holdWhy }) => [holdWhy(2, '40 %')],
  offer: ({ offer }) => [offer('2', '3')],
  labels: (words) => labelsIn(words),
};

/** Every text of a table in a table, its places filled; each key with its path. */
function saidIn(value: unknown, path: string): readonly (readonly [path: string, text: string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function')
    return [[path, (value as (...places: readonly string[]) => string)('123', '456', '789')]];
  return Object.entries(value as object).flatMap(([key, inner]) => saidIn(inner, `${path}.${key}`));
}
const labelsIn = ({ labels }: GuideWords): readonly string[] =>
  saidIn(labels, 'labels').map(([, text]) => text);

/** Of labels with more than one place. */
const PLACES: Readonly<Record<string, number>> = {
  'labels.line.tooLow': 3,
  'labels.line.step': 2,
  'labels.suspects.exposed': 2,
  'labels.suspects.alsoOthers': 2,
  'labels.overdue.says': 2,
  'labels.overdue.note': 2,
};

const flat = (value: unknown): readonly string[] =>
  typeof value === 'string' ? [value] : Object.values(value as object).flatMap(flat);

/** Every text of a table. */
const textsIn = (words: GuideWords): readonly string[] =>
  Object.entries(words).flatMap(([name, value]) => {
    const asked = ASKED[name as keyof GuideWords]?.(words);
    return asked ?? (typeof value === 'function' ? [`no example of ${name}`] : flat(value));
  });

const GAPS = /undefined|null|NaN|\[object|[{}]| {2}/;
/** What may never be said of a person or a thing. */
const VERDICT_EN = /\b(is|are|was|now|all) (clean|safe|decontaminated)\b/i;

describe.each(LANGUAGES)('%s', (language) => {
  const { guide } = wordsFor(language);

  test('says every word of the lists, and no other', () => {
    const keys = (record: object): readonly string[] => Object.keys(record).toSorted();
    const sorted = (ids: readonly string[]): readonly string[] => [...ids].toSorted();
    expect(keys(guide.questions)).toEqual(sorted(QUESTIONS.map(({ id }) => id)));
    expect(keys(guide.replies)).toEqual(sorted(REPLIES));
    expect(keys(guide.signals)).toEqual(sorted(SIGNALS));
    expect(keys(guide.timers)).toEqual(sorted(TIMER_KINDS));
    expect(keys(guide.early)).toEqual(sorted(EARLY_REASONS));
    expect(keys(guide.deviations)).toEqual(sorted(DEVIATIONS));
    expect(keys(guide.outcomes)).toEqual(sorted(OUTCOMES));
    expect(keys(guide.notices)).toEqual(sorted(NOTICES));
    expect(keys(guide.refusals)).toEqual(sorted(REFUSALS));
    expect(keys(guide.bars)).toEqual(sorted(BARS));
    expect(keys(guide.fits)).toEqual(sorted(FIT_FAULTS));
    expect(keys(guide.presses)).toEqual(sorted(PRESS_NAMES));
    expect(keys(guide.emergencies)).toEqual(sorted(EMERGENCY_IDS));
    expect(keys(guide.actions)).toEqual(sorted(EMERGENCY_ACTIONS.map(({ id }) => id)));
  });

  test('says it whole', () => {
    for (const text of textsIn(guide)) {
      expect(text.trim()).not.toBe('');
      expect(text).not.toMatch(GAPS);
      expect(text).not.toMatch(/^no example/);
      expect(text).not.toMatch(VERDICT_EN);
    }
  });

  test('says something else of each emergency and each action', () => {
    const names = EMERGENCY_IDS.map((id) => guide.emergencies[id]);
    const actions = EMERGENCY_ACTIONS.map(({ id }) => guide.actions[id]);
    expect(new Set(names).size).toBe(EMERGENCIES.length);
    expect(new Set(actions).size).toBe(EMERGENCY_ACTIONS.length);
    for (const action of actions) expect(action).toMatch(/^[\p{Lu}¿].*[.?]$/u);
  });
});

test.each(FOREIGN)('%s is said in its own grammar', (language) => {
  const texts = textsIn(wordsFor(language).guide).filter((text) => !text.startsWith('STOP'));
  expect(texts.flatMap((text) => faultIn(language, text.replaceAll(' ...', '')) ?? [])).toEqual([]);
});

describe('labels around the lines', () => {
  const english = saidIn(wordsFor('en').guide.labels, 'labels');

  test.each(FOREIGN)('%s: each is there, and none is left in English', (language) => {
    const said = saidIn(wordsFor(language).guide.labels, 'labels');
    expect(said.map(([path]) => path)).toEqual(english.map(([path]) => path));
    const same = said.filter(([, text], at) => text === english[at]?.[1]);
    // Signs without a word are often those of English.
    expect(same.filter(([, text]) => /\p{L}/u.test(text))).toEqual([]);
  });

  test.each(LANGUAGES)('%s: every place of a label is filled', (language) => {
    const { labels } = wordsFor(language).guide;
    for (const [path, text] of saidIn(labels, 'labels')) {
      const places = PLACES[path] ?? (/123/.test(text) ? 1 : 0);
      expect([path, (text.match(/123|456|789/g) ?? []).length]).toEqual([path, places]);
    }
  });

  test('French has a space before a colon, and quotation marks of its own', () => {
    const { line } = wordsFor('fr').guide.labels;
    expect(line.colon('Réponse')).toBe('Réponse\u00A0:');
    expect(line.spoken('Fait.')).toBe('«\u00A0Fait.\u00A0»');
  });

  test.each(LANGUAGES)('%s: one and several are counted apart', (language) => {
    const { labels } = wordsFor(language).guide;
    for (const counted of [labels.suspects.unseen, labels.offer.heading, labels.offer.changed]) {
      expect(countedIn(counted, 1)).toContain('1');
      expect(countedIn(counted, 3)).toContain('3');
      expect(countedIn(counted, 1).replace('1', '3')).not.toBe(countedIn(counted, 3));
    }
  });
});

test('every emergency has actions, each with its record, and ends with a report', () => {
  for (const id of EMERGENCY_IDS) {
    const { actions, rinse } = emergencyOf(id);
    expect(actions.length).toBeGreaterThan(2);
    expect(new Set(actions).size).toBe(actions.length);
    expect(actions.at(-1)).toBe('report');
    for (const action of actions)
      expect(['rule', 'statement']).toContain(evidence(actionEvidence(action)).unit);
    if (rinse) expect(evidence(rinse).unit).toBe('minutes');
  }
});

test('no action names a drug', () => {
  const said = LANGUAGES.flatMap((language) => Object.values(wordsFor(language).guide.actions));
  expect(
    said.filter((text) => /prophyla|profila|antivir|vaccin|vacun|vacin|médicament|medica/i.test(text)),
  ).toEqual([]);
});
