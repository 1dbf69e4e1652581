// The command line in every language, and with a unit's own sentences: what it says, what it marks, what it refuses.
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { CheckReport } from '../../src/cli/reportSchema.ts';
import { CLI_LABELS } from '../../src/cli/labels/index.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';
import { faultIn, FOREIGN } from '../words/languages.ts';
import { gloves, run, withFiles } from './run.ts';

const EVERYDAY = 'procedures/everyday-example-2-doffing.yaml';
const flat = (text: string): string => text.replaceAll(/[ \n]+/g, ' ');

afterEach(() => {
  vi.unstubAllEnvs();
});

describe.each(FOREIGN)('--language %s', (language) => {
  const words = wordsFor(language);
  const labels = CLI_LABELS[language];

  test('check speaks it, and says how far to trust it in it and in English', async () => {
    const { out, err } = await run(['check', '--language', language, EVERYDAY]);
    expect(err).toBe('');
    expect(out).toContain(labels.more);
    for (const sentence of [...words.cautions, ...words.reviewNote]) expect(flat(out)).toContain(sentence);
    for (const label of [CLI_LABELS.en.mends, CLI_LABELS.en.restsOn, CLI_LABELS.en.more])
      expect(out).not.toContain(label);
  });

  test('explain finds a surface by its words, accents or not, and replay runs what it names', async () => {
    const asked = words
      .surface({ ...NOBODY, people: [WEARER] }, 'wearer.hand.left')
      .split(' ')
      .slice(1, 3);
    const { out, status } = await run(['explain', '--language', language, EVERYDAY, ...asked]);
    expect(status).toBe(0);
    expect(out).toContain('(wearer.hand.left)');
    expect(out).toContain(labels.whenChanged);
    const id = new RegExp(`${labels.replay}:\\s+(\\S+)`).exec(out)?.[1] ?? '';
    const replayed = await run(['replay', '--language', language, EVERYDAY, id]);
    expect(replayed.status).toBe(0);
    expect(replayed.out).toContain(labels.goesWrong);
    expect(flat(replayed.out)).toContain(words.reviewNote[0]);
  });

  test('the environment chooses it, and the option goes before the environment', async () => {
    vi.stubEnv('DOFFLINE_LANGUAGE', language);
    expect((await run(['check', EVERYDAY])).out).toContain(labels.more);
    expect((await run(['check', '--language', 'en', EVERYDAY])).out).toContain(CLI_LABELS.en.more);
  });

  test('the object says in which language it is, and how far that may be trusted', async () => {
    const { out } = await run(['check', '--json', '--language', language, EVERYDAY]);
    const report = JSON.parse(out) as CheckReport;
    expect([report.language, report.review]).toEqual([language, words.reviewNote]);
    expect(report.procedure?.steps[0]?.ownWording).toBe(false);
  });

  test('every label is of the language', () => {
    const texts = Object.entries(labels).flatMap(([name, label]) => {
      if (name === 'language' || name === 'more' || name === 'theRest') return [];
      if (typeof label === 'string') return [label];
      const say = label as (...args: readonly unknown[]) => string;
      return [1, 2].map((count) => (name === 'against' ? say(['x']) : say(count, 'x')));
    });
    const set = (text: string): string =>
      language === 'fr' ? text.replaceAll(/ ([:;%])/g, '\u00a0$1') : text;
    expect(texts.flatMap((text) => faultIn(language, set(text)) ?? [])).toEqual([]);
  });
});

const NOBODY = { kind: 'doffing', people: [], zones: [], fixtures: [], start: [], steps: [] } as const;
const WEARER = {
  id: 'wearer',
  role: 'wearer',
  wears: [],
  underneath: [],
  starts: 'x',
  hand: 'right',
  leavesBare: [],
} as const;

test('English says of itself that it was made by machine, too', async () => {
  const { out } = await run(['check', EVERYDAY]);
  expect(out).toContain(wordsFor('en').reviewNote[0]);
});

test.each([['de'], ['FR'], ['']])('--language %j is refused', async (language) => {
  const { status, out, err } = await run(['check', '--language', language, EVERYDAY]);
  expect([status, out]).toEqual([2, '']);
  for (const known of LANGUAGES) expect(err).toContain(known);
});

describe('--wording', () => {
  const OWN = 'Take both gloves off as the poster by the door shows.';
  const PRESENT =
    'Remove the gloves: peel the first off by its outside, then roll the second off with a finger under its cuff.';
  const wording = `en:
  steps:
    gloves-off: {instead-of: "${PRESENT}", say: "${OWN}"}
  sentences:
    one-slip.skin: "At {step}: {events}. Think of {surface}."
`;

  test('is used, and marked in the object and in the text', async () => {
    await withFiles({ 'gloves.yaml': gloves(), 'own.yaml': wording }, async (path) => {
      const args = ['--wording', path('own.yaml'), path('gloves.yaml')];
      const { out } = await run(['check', '--json', ...args]);
      const report = JSON.parse(out) as CheckReport;
      expect(report.procedure?.steps[0]).toMatchObject({ sentence: OWN, ownWording: true });
      expect(report.procedure?.steps[1]?.ownWording).toBe(false);
      const own = report.findings.filter((one) => one.code === 'one-slip.skin');
      expect(own.length).toBeGreaterThan(0);
      for (const { message, ownWording } of own) {
        expect(ownWording).toBe(true);
        expect(message).toMatch(/^At \d.*Think of the .+\.$/);
      }
      const told = await run([
        'explain',
        '--wording',
        path('own.yaml'),
        path('gloves.yaml'),
        'one-slip.skin',
      ]);
      expect(told.out).toContain(CLI_LABELS.en.ownWording);
    });
  });

  test('that no longer fits is told, and the program speaks for the step', async () => {
    const stale = wording
      .replace(PRESENT, 'Remove the gloves.')
      .replace('  sentences', '    elsewhere: {instead-of: a, say: b}\n  sentences');
    await withFiles({ 'gloves.yaml': gloves(), 'own.yaml': stale }, async (path) => {
      const { out, err } = await run(['check', '--json', '--wording', path('own.yaml'), path('gloves.yaml')]);
      expect((JSON.parse(out) as CheckReport).procedure?.steps[0]?.sentence).toBe(PRESENT);
      expect(err).toContain('note wording-stale: the sentence for step "gloves-off" is not used');
      expect(err).toContain('note wording-unused: the sentence for step "elsewhere" is not used');
    });
  });

  test.each([
    ['fr:\n  sentences:\n    open.skin: "x"\n', ':3:16: error wording-missing-placeholder: '],
    ['fr: {a: 1}\n', ':1:9: error wording-unknown-entry: "a" is not known here.'],
    ['fr: {steps: &a {}}\n', 'error aliases-not-allowed'],
    ['fr: [', 'error'],
  ])('%j is refused whole, with its place', async (text, complaint) => {
    await withFiles({ 'own.yaml': text }, async (path) => {
      const { status, out, err } = await run(['check', '--wording', path('own.yaml'), EVERYDAY]);
      expect([status, out]).toEqual([2, '']);
      expect(err).toContain(complaint);
    });
  });

  test('that is not there is refused', async () => {
    const { status, err } = await run(['replay', '--wording', 'nowhere.yaml', EVERYDAY, 'x']);
    expect(status).toBe(2);
    expect(err).toContain('nowhere.yaml:1:1: error file-missing');
  });
});
