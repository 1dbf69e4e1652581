// The papers as PDF files: every word can be read out of them, nothing runs off the page or across a cut, tags and language
// are there, and the same print is the same bytes. Read with poppler's tools where they are installed.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { PAPERS, type PaperSize, pdfOf } from '../../src/typeset/compile.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { DOCUMENT_KINDS, type DocumentKind, printModel } from '../../src/print/index.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';
import { printWordsFor } from '../../src/words/print/index.ts';
import { run, withFiles } from '../cli/run.ts';
import { checked, NAMES, paper, procedureNamed } from './shelf.ts';

const LARKMOOR = 'larkmoor-suit-doffing.yaml';
const LONGEST = 'national-n95-coverall-doffing.yaml';
const SHORT = 'everyday-example-2-doffing.yaml';

const hasPoppler = spawnSync('pdftotext', ['-v']).status === 0;
if (!hasPoppler)
  console.log(
    'Not checked: what is in the PDF files. Install Debian’s package poppler-utils to have it checked.',
  );

const FOLDER = mkdtempSync(join(tmpdir(), 'doffline-print-'));
afterAll(() => {
  rmSync(FOLDER, { recursive: true, force: true });
});

function poppler(
  program: string,
  bytes: Uint8Array,
  options: readonly string[],
  to: readonly string[],
): string {
  const file = join(FOLDER, 'paper.pdf');
  writeFileSync(file, bytes);
  const done = spawnSync(program, [...options, file, ...to], { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (done.status !== 0) throw new Error(`${program}: ${done.stderr}`);
  return done.stdout;
}

/** Without blanks and hyphens: lines break where they will; apostrophes as they are written, not as they are printed. */
const bare = (text: string): string => text.replaceAll(/[\s\u00a0\u202f\u2009-]+/g, '').replaceAll('’', "'");
const textIn = (bytes: Uint8Array): string => bare(poppler('pdftotext', bytes, ['-raw'], ['-']));

interface Word {
  readonly text: string;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Word[];
}

function sheetsIn(bytes: Uint8Array): readonly Sheet[] {
  const found = poppler('pdftotext', bytes, ['-bbox'], ['-']);
  return found
    .split('<page ')
    .slice(1)
    .map((page) => {
      const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(page) ?? [];
      const words = [
        ...page.matchAll(
          /<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)<\/word>/g,
        ),
      ].map(
        ([, left, top, right, bottom, text]): Word => ({
          text: text ?? '',
          x: [Number(left), Number(right)],
          y: [Number(top), Number(bottom)],
        }),
      );
      return { width: Number(width), height: Number(height), words };
    });
}

/** Millimetres in points. */
const mm = (length: number): number => (length * 72) / 25.4;

/** The margins of the template, in millimetres; head and foot stand in those above and below. */
const MARGINS = { card: 8, other: 14 } as const;
/** Points by which a letter's own shape may lean out of its place. */
const LEAN = 1;

function expectInside(sheets: readonly Sheet[], kind: DocumentKind): void {
  for (const { width, height, words } of sheets) {
    const edge = mm(kind === 'card' ? MARGINS.card : MARGINS.other) - LEAN;
    const out = words.filter(
      ({ x, y }) => x[0] < edge || x[1] > width - edge || y[0] < mm(6) || y[1] > height - mm(4),
    );
    expect(out).toEqual([]);
  }
}

/** By how many points two stretches lie over one another. */
const common = (one: Word['x'], other: Word['x']): number =>
  Math.min(one[1], other[1]) - Math.max(one[0], other[0]);

/** No word is printed over another: a third of a line, and more than a hair's breadth. */
function expectApart(sheets: readonly Sheet[]): void {
  for (const { words } of sheets) {
    const over = words.flatMap((one, at) =>
      words
        .slice(at + 1)
        .filter(
          ({ x, y }) =>
            common(one.x, x) > 1.5 && common(one.y, y) > Math.min(one.y[1] - one.y[0], y[1] - y[0]) / 2,
        )
        .map(({ text }) => `${one.text} / ${text}`),
    );
    expect(over).toEqual([]);
  }
}

/** No word below the page's last line but the foot's own: its first word stands lowest but one line. */
function expectFoot(sheets: readonly Sheet[], model: ReturnType<typeof paper>): void {
  for (const { height, words } of sheets) {
    const foot = bare(
      words
        .filter(({ y }) => y[0] > height - mm(17))
        .map(({ text }) => text)
        .join(' '),
    );
    const unescaped = foot.replaceAll('&amp;', '&').replaceAll('&apos;', "'");
    const allowed = bare(`${model.stamp.join('·')}${model.invented === null ? '' : `·${model.invented}`}`);
    expect(unescaped).toContain(allowed);
    expect(unescaped.length).toBeLessThan(allowed.length + bare(model.defers).length + 40);
  }
}

function sentencesOf(procedure: Procedure, kind: DocumentKind, language: string): readonly string[] {
  const words = wordsFor(language);
  const short = kind === 'card' || kind === 'sign-off';
  return procedure.steps.map((step) => {
    const said = short ? words.stepLabel(procedure, step) : words.step(procedure, step);
    return bare(short ? said.slice(1) : said);
  });
}

async function expectWhole(
  name: string,
  kind: DocumentKind,
  language: string,
  size: PaperSize,
): Promise<void> {
  const model = paper(name, kind, language);
  const bytes = await pdfOf(model, size);
  const text = textIn(bytes);
  for (const sentence of sentencesOf(procedureNamed(name), kind, language)) expect(text).toContain(sentence);
  for (const caution of wordsFor(language).cautions) expect(text).toContain(bare(caution));
  const sheets = sheetsIn(bytes);
  expectInside(sheets, kind);
  expectApart(sheets);
  expectFoot(sheets, model);
  const pages = sheets.length;
  sheets.forEach((_, index) => {
    const said = model.page.replace('{page}', String(index + 1)).replace('{pages}', String(pages));
    expect(text).toContain(bare(said));
  });
}

describe.runIf(hasPoppler)('text', () => {
  describe.each(LANGUAGES)('%s', (language) => {
    test.each(DOCUMENT_KINDS)('%s is whole and inside the page', async (kind) => {
      await expectWhole(LARKMOOR, kind, language, 'a4');
      await expectWhole(LONGEST, kind, language, 'letter');
    });
  });

  test.each(NAMES)('script and chart of %s are whole', async (name) => {
    await expectWhole(name, 'script', 'en', 'a4');
    await expectWhole(name, 'chart', 'en', 'letter');
  });

  test('a dossier with mends and variants is whole', async () => {
    const { findings, procedure } = checked(LARKMOOR, true);
    const bytes = await pdfOf(paper(LARKMOOR, 'dossier', 'en', true), 'a4');
    const text = textIn(bytes);
    const words = wordsFor('en');
    for (const finding of findings) {
      expect(text).toContain(bare(words.finding(procedure, finding).text));
      for (const link of words.route(procedure, finding)) expect(text).toContain(bare(link.text));
    }
    expectInside(sheetsIn(bytes), 'dossier');
  });
});

describe.runIf(hasPoppler)('long words of the file', () => {
  const base = procedureNamed(LARKMOOR);
  const note = 'Slowly, and only when told. '.repeat(60).trim();
  const title = 'A title that a committee has written together over several long meetings '.repeat(5).trim();
  const long: Procedure = {
    ...base,
    title,
    steps: base.steps.map((step, index) => (index === 5 || index === 18 ? { ...step, note } : step)),
  };
  const verdict = verifyProcedure(long, { mends: false, variants: false });

  test.each(DOCUMENT_KINDS)('%s cuts nothing', async (kind) => {
    const model = printModel(verdict, { kind, words: wordsFor('en') });
    const bytes = await pdfOf(model, 'letter');
    const text = textIn(bytes);
    expect(text).toContain(bare(title));
    if (kind !== 'card' && kind !== 'sign-off') expect(text.match(/Slowly,/g)).toHaveLength(120);
    for (const sentence of sentencesOf(long, kind, 'en')) expect(text).toContain(sentence);
    expectInside(sheetsIn(bytes), kind);
  });
});

test.runIf(hasPoppler)('a title as long as a chapter leaves room for the steps on a card', async () => {
  const base = procedureNamed(SHORT);
  const verdict = verifyProcedure(
    { ...base, title: 'Never ending '.repeat(400) },
    { mends: false, variants: false },
  );
  const bytes = await pdfOf(printModel(verdict, { kind: 'card', words: wordsFor('en') }), 'a4');
  const sheets = sheetsIn(bytes);
  expect(sheets).toHaveLength(1);
  expectInside(sheets, 'card');
  expectApart(sheets);
  for (const sentence of sentencesOf(base, 'card', 'en')) expect(textIn(bytes)).toContain(sentence);
});

describe.runIf(hasPoppler)('cards', () => {
  test.each(PAPERS)('no word lies across a cut (%s)', async (size) => {
    for (const name of [LARKMOOR, LONGEST])
      for (const { width, height, words } of sheetsIn(await pdfOf(paper(name, 'card', 'fr'), size))) {
        const [middle, half] = [width / 2, (mm(8) + height - mm(17)) / 2];
        const card = words.filter(({ y }) => y[1] < height - mm(17));
        expect(card.length).toBeGreaterThan(50);
        expect(card.filter(({ x }) => x[0] < middle && x[1] > middle)).toEqual([]);
        expect(card.filter(({ y }) => y[0] < half && y[1] > half)).toEqual([]);
      }
  });
});

/** How many steps stand on each page of a chart, found by their sentences in their order. */
function stepsByPage(bytes: Uint8Array, name: string, language: string): readonly number[] {
  const pages = poppler('pdftotext', bytes, ['-raw'], ['-']).split('\f').slice(0, -1).map(bare);
  const counts = pages.map(() => 0);
  let [page, from] = [0, 0];
  for (const sentence of sentencesOf(procedureNamed(name), 'chart', language)) {
    while (!(pages[page] ?? sentence).includes(sentence, from)) [page, from] = [page + 1, 0];
    from = (pages[page] ?? '').indexOf(sentence, from) + sentence.length;
    counts[page] = (counts[page] ?? 0) + 1;
  }
  return counts;
}

/** Points from the top to the foot of a printed word at ten points. */
const TEN_POINTS = 13.7;

describe.runIf(hasPoppler)('wall charts', () => {
  describe.each(LANGUAGES)('%s', (language) => {
    test.each([
      [LARKMOOR, 'a4', 4],
      [LARKMOOR, 'letter', 5],
      [LONGEST, 'letter', 6],
    ] as const)('%s on %s: steps are shared out over few pages', async (name, size, most) => {
      const counts = stepsByPage(await pdfOf(paper(name, 'chart', language), size), name, language);
      expect(counts.length).toBeLessThanOrEqual(most);
      // The head leaves the first page less room; nowhere a row or the cautions alone.
      const [first = 0, ...others] = counts;
      expect(first).toBeGreaterThanOrEqual(3);
      expect(Math.min(...others)).toBeGreaterThanOrEqual(Math.floor(Math.max(...others) / 2));
    });
  });

  test('words grow where there is room for them, and a short procedure keeps to one page', async () => {
    const sheets = sheetsIn(await pdfOf(paper(LARKMOOR, 'chart'), 'a4'));
    const sizes = sheets.flatMap(({ words }) =>
      words.filter(({ text }) => text === 'Clean').map(({ y }) => y[1] - y[0]),
    );
    expect(sizes.length).toBeGreaterThan(5);
    // All of one size.
    expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThan(0.1);
    expect(Math.min(...sizes)).toBeGreaterThan(1.1 * TEN_POINTS);
    expect(sheetsIn(await pdfOf(paper(SHORT, 'chart'), 'letter'))).toHaveLength(1);
  });
});

describe.runIf(hasPoppler)('what nobody approved', () => {
  test.each(DOCUMENT_KINDS)(
    '%s says so on every page, in every language, and stays inside the page',
    async (kind) => {
      for (const language of LANGUAGES) {
        const words = wordsFor(language);
        const model = printModel(checked(LARKMOOR), { kind, words, stage: { is: 'draft' } });
        const bytes = await pdfOf(model, 'letter');
        const sheets = sheetsIn(bytes);
        expectInside(sheets, kind);
        expectApart(sheets);
        const said = bare(printWordsFor(language).stage.draft);
        for (const page of poppler('pdftotext', bytes, ['-raw'], ['-']).split('\f').slice(0, -1))
          expect(bare(page)).toContain(said);
      }
    },
  );

  test('an approval says its day, and nothing in large letters', () => {
    const words = wordsFor('en');
    const stage = { is: 'approved', on: '2026-03-02' } as const;
    const model = printModel(checked(LARKMOOR), { kind: 'card', words, stage });
    expect(model.stamp[0]).toBe('approved on 2026-03-02');
    expect(model.warning).toBeNull();
    expect(paper(LARKMOOR, 'card').stamp).toHaveLength(3);
  });
});

describe.runIf(hasPoppler)('tags', () => {
  test.each(DOCUMENT_KINDS)(
    '%s has a title, headings and tables that a screen reader finds',
    async (kind) => {
      const bytes = await pdfOf(paper(LARKMOOR, kind, 'pt'), 'a4');
      expect(poppler('pdfinfo', bytes, [], [])).toMatch(/Tagged:\s+yes/);
      const structure = poppler('pdfinfo', bytes, ['-struct'], []);
      expect(structure).toMatch(/Document/);
      if (kind !== 'card') expect(structure).toMatch(/H1/);
      if (kind === 'script' || kind === 'sign-off' || kind === 'dossier')
        expect(structure).toMatch(/TH\b[\s\S]*TD\b/);
      if (kind === 'chart') expect(structure.match(/Figure/g)?.length).toBe(33);
      expect(poppler('pdffonts', bytes, [], [])).not.toMatch(/ no +(yes|no) +(yes|no) +\d/);
    },
  );
});

test.each(DOCUMENT_KINDS)(
  '%s: the same print is the same bytes, and declares itself accessible',
  async (kind) => {
    const model = paper(LARKMOOR, kind, 'es');
    const [one, other] = [await pdfOf(model, 'a4'), await pdfOf(model, 'a4')];
    expect(Buffer.compare(one, other)).toBe(0);
    const text = Buffer.from(one).toString('latin1');
    expect(text).toMatch(/^%PDF-1\.7/);
    expect(text).toMatch(/pdfuaid:part>1</);
    expect(text).toMatch(/\/Lang ?\(es\)/);
  },
);

test('the command writes the file, and says so', async () => {
  await withFiles({}, async (path) => {
    const out = path('chart.pdf');
    const ran = await run([
      'print',
      `procedures/${LARKMOOR}`,
      '--as',
      'chart',
      '--date',
      '2026-03-31',
      '--out',
      out,
    ]);
    expect(ran).toEqual({
      status: 0,
      out: `${out}: Wall chart, version 1, hash 1ebu7vq, 2026-03-31\n`,
      err: '',
    });
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

test.each([
  [['--as', 'poster'], /Allowed choices are chart, script, card, sign-off, dossier/],
  [[], /--as/],
  [['--as', 'card', '--date', '31.3.2026'], /2026-03-31/],
  [['--as', 'card', '--date', '2026-02-30'], /2026-03-31/],
  [['--as', 'card', '--paper', 'a3'], /Allowed choices are a4, letter/],
  [['--as', 'card', '--out', 'no/such/folder/card.pdf'], /error: .*no\/such\/folder/],
])('what cannot be printed says why (%s)', async (args, why) => {
  const ran = await run(['print', `procedures/${LARKMOOR}`, ...args]);
  expect(ran.status).toBe(2);
  expect(ran.err).toMatch(why);
});

test('a letter that the fonts do not have is named', async () => {
  const model = { ...paper(LARKMOOR, 'card'), title: 'Gloves 🧤 漢' };
  await expect(pdfOf(model, 'a4')).rejects.toThrow('the fonts of the papers have no shape for: 🧤 漢');
});

test('only printing loads the compiler', () => {
  const source = readFileSync('src/typeset/compile.ts', 'utf8');
  const named = source.match(/.*@myriaddreamin.*/g);
  expect(named).toHaveLength(1);
  expect(named?.[0]).toMatch(/= await import\(/);
});
