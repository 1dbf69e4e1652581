// Papers over the wire, from the unit's server and from the local one: the same requests, the same PDF, the same refusals. What
// a text holds stays text; a paper that takes too long, dies or is waited for by nobody costs the server nothing.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { problem } from '../../src/api/problems.ts';
import {
  MOST_PAPER_BODY,
  MOST_PAPER_TEXT,
  PAPER_KINDS,
  PAPER_LANGUAGES,
  PAPER_SIZES,
  PAPER_STAGES as WIRE_STAGES,
  type PaperRequest,
} from '../../src/api/shapes/papers.ts';
import { DOCUMENT_KINDS, PAPER_STAGES } from '../../src/print/index.ts';
import { papersBy, type PaperSettings } from '../../src/server/papers.ts';
import { createStaticServer, listen } from '../../src/server/static.ts';
import { PAPERS } from '../../src/typeset/compile.ts';
import { LANGUAGES } from '../../src/words/languages.ts';
import { client, lead, type Running, start, tablet } from './harness.ts';

const TEXT = readFileSync('procedures/larkmoor-suit-doffing.yaml', 'utf8');
const DONNING = readFileSync('procedures/larkmoor-suit-donning.yaml', 'utf8');
const CARD: PaperRequest = { text: TEXT, kind: 'card', size: 'a4', language: 'fr' };
const REQUIRE = "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);";

mkdirSync('.cache', { recursive: true });
/** Inside the house, so that the compiler and the fonts are found from there. */
const folder = mkdtempSync('.cache/papers-');
const program = join(folder, 'typeset.mjs');

/** A program in place of the one that sets papers. */
function programDoing(name: string, source: string): string {
  const file = join(folder, `${name}.mjs`);
  writeFileSync(file, source);
  return file;
}

const STUCK = "process.on('message', () => undefined);\n";

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

interface Asked {
  readonly method?: string;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  readonly signal?: AbortSignal;
}

function ask(port: number, { method = 'POST', body, headers = {}, signal }: Asked): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const json = { 'content-type': 'application/json', ...headers };
    const given = { host: '127.0.0.1', port, agent: false, path: '/api/papers', method, headers: json };
    const call = request({ ...given, ...(signal ? { signal } : {}) }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(parts),
        }),
      );
      response.on('error', reject);
    });
    call.on('error', reject);
    call.end(typeof body === 'string' ? body : body === undefined ? undefined : JSON.stringify(body));
  });
}

const problemIn = ({ body }: Answer) =>
  problem.parse((JSON.parse(body.toString()) as { problem: unknown }).problem);

interface Place {
  readonly ask: (asked: Asked) => Promise<Answer>;
  readonly log: () => string;
  readonly calm: () => void;
  readonly stop: () => Promise<void>;
}

async function unitServer(settings: PaperSettings): Promise<Place> {
  const server: Running = await start({ papers: papersBy(settings) });
  const { client: paired } = await tablet(server, await lead(server), 'reader');
  const cookie = [...paired.cookies].map(([key, value]) => `${key}=${value}`).join('; ');
  return {
    ask: (asked) => ask(server.port, { ...asked, headers: { cookie, ...asked.headers } }),
    log: server.log,
    calm: server.calm,
    stop: server.stop,
  };
}

async function localServer(settings: PaperSettings): Promise<Place> {
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>page</title>');
  const papers = papersBy(settings);
  const server: Server = createStaticServer(folder, papers);
  const { port } = new URL(await listen(server, 0));
  return {
    ask: (asked) => ask(Number(port), asked),
    log: () => '',
    calm: () => undefined,
    stop: async () => {
      papers.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

const PLACES = { unit: unitServer, local: localServer };

const hasPoppler = spawnSync('pdftotext', ['-v']).status === 0;

function poppler(tool: string, bytes: Buffer, ...options: readonly string[]): string {
  return spawnSync(tool, [...options, '-', ...(tool === 'pdftotext' ? ['-'] : [])], {
    input: bytes,
    encoding: 'utf8',
  }).stdout;
}

beforeAll(async () => {
  await build({
    entryPoints: ['src/typeset/main.ts'],
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['@myriaddreamin/typst-ts-node-compiler'],
    banner: { js: REQUIRE },
    logLevel: 'error',
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const titled = (title: string): PaperRequest => ({
  ...CARD,
  text: TEXT.replace(/^title: .*$/m, `title: ${JSON.stringify(title)}`),
});

test('the interface and the papers name the same kinds, sizes, languages and stages', () => {
  expect(PAPER_KINDS).toEqual(DOCUMENT_KINDS);
  expect(PAPER_SIZES).toEqual(PAPERS);
  expect(PAPER_LANGUAGES).toEqual(LANGUAGES);
  expect(WIRE_STAGES).toEqual(PAPER_STAGES);
});

describe.each(['unit', 'local'] as const)('the %s server', (name) => {
  let place: Place;
  beforeAll(async () => {
    place = await PLACES[name]({ program });
  });
  beforeEach(() => place.calm());
  afterAll(() => place.stop());

  const refused = async (asked: Asked) => {
    const answer = await place.ask(asked);
    return { status: answer.status, ...problemIn(answer) };
  };

  test('says what it sets', async () => {
    const { status, body } = await place.ask({ method: 'GET' });
    expect(status).toBe(200);
    expect(JSON.parse(body.toString())).toEqual({
      kinds: DOCUMENT_KINDS,
      sizes: PAPERS,
      languages: LANGUAGES,
    });
  });

  test('gives a tagged PDF to be saved, with the steps, the unit’s sentences and how far it is approved', async () => {
    const wording = { fr: { sentences: { 'caution.real-breach': 'Incident : appelez le poste 7.' } } };
    const body = { ...CARD, donning: DONNING, stage: { is: 'draft' }, date: '2026-03-31', wording };
    const { status, headers, body: pdf } = await place.ask({ body });
    expect(status).toBe(200);
    expect(headers).toMatchObject({
      'content-type': 'application/pdf',
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    });
    expect(headers['content-disposition']).toBe(
      'attachment; filename="larkmoor-general-hospital-invented-isolation-unit-doffing-of.card.fr.a4.pdf"',
    );
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    if (!hasPoppler) return;
    const text = poppler('pdftotext', pdf);
    for (const one of ['Retirer le tablier', 'BROUILLON, NON APPROUVÉ', '2026-03-31', 'appelez le poste 7'])
      expect(text).toContain(one);
    expect(poppler('pdfinfo', pdf)).toMatch(/Tagged:\s+yes/);
    expect(poppler('pdffonts', pdf)).not.toMatch(/ no +(yes|no) +(yes|no) +\d/);
  });

  test.each([
    '#panic("x") #read("/etc/passwd") $x$ *bold* <label> @ref \\ ]] }} "',
    '../../etc/passwd ; filename="x.html" {page} <script>alert(1)</script>&lt;',
  ])('what looks like a command stays text, and reaches no file name: %s', async (title) => {
    const { status, headers, body } = await place.ask({ body: titled(title) });
    expect(status).toBe(200);
    expect(headers['content-disposition']).toMatch(/^attachment; filename="[a-z0-9-]+\.card\.fr\.a4\.pdf"$/);
    // As it is drawn: the number of a card stands beside a title of two lines, and would be read between them.
    if (hasPoppler)
      expect(poppler('pdftotext', body, '-raw').replaceAll(/\s/g, '')).toContain(title.replaceAll(/\s/g, ''));
  });

  test('a text with errors: each with its line and column, and nothing of it in the log', async () => {
    const text = TEXT.replace('kind: doffing', 'kind: SECRET');
    const said = await refused({ body: { ...CARD, text } });
    expect(said).toMatchObject({ status: 422, code: 'paper-unreadable', todo: 'mend-request' });
    const line = text.split('\n').findIndex((one) => one.startsWith('kind:')) + 1;
    expect(said.faults?.[0]).toMatchObject({ file: 'procedure', line, column: 7 });
    expect(place.log()).not.toContain('SECRET');
  });

  test('a letter that the fonts do not have is named, with its place', async () => {
    const { faults, code } = await refused({ body: titled('Gloves 🧤') });
    const line = TEXT.split('\n').findIndex((one) => one.startsWith('title:')) + 1;
    expect(code).toBe('paper-unreadable');
    expect(faults).toEqual([
      expect.objectContaining({ file: 'procedure', code: 'no-shape', line, column: 16 }),
    ]);
  });

  test('a donning that is none, and a wording with a fault', async () => {
    expect((await refused({ body: { ...CARD, donning: TEXT } })).faults?.[0]?.file).toBe('donning');
    const wording = { fr: { sentences: { 'no.such': 'x' } } };
    expect((await refused({ body: { ...CARD, wording } })).faults?.[0]).toMatchObject({
      file: 'wording',
      code: 'wording-unknown-key',
    });
  });

  test.each([
    { ...CARD, kind: 'poster' },
    { ...CARD, size: 'a3' },
    { ...CARD, language: 'de' },
    { ...CARD, date: '31.3.2026' },
    { ...CARD, stage: { is: 'safe' } },
    { ...CARD, out: '/tmp/x.pdf' },
    { ...CARD, text: '' },
    { ...CARD, text: 'x'.repeat(MOST_PAPER_TEXT + 1) },
    { ...CARD, wording: { fr: { steps: { a: [['x']] } } } },
    [],
    null,
  ])('a request of another form is refused (%#)', async (body) => {
    expect(await refused({ body })).toMatchObject({ status: 400, code: 'wrong-shape' });
  });

  test('too long, not JSON, of another type, from another page', async () => {
    const long = ' '.repeat(MOST_PAPER_BODY + 1);
    expect(await refused({ body: long })).toMatchObject({ status: 413, code: 'too-large' });
    expect(await refused({ body: '{' })).toMatchObject({ status: 400, code: 'not-json' });
    const form = { 'content-type': 'application/x-www-form-urlencoded' };
    expect(await refused({ body: 'text=x', headers: form })).toMatchObject({ status: 415 });
    const foreign = { origin: 'https://elsewhere.example' };
    expect(await refused({ body: CARD, headers: foreign })).toMatchObject({ code: 'foreign-page' });
    const embedded = { 'sec-fetch-site': 'cross-site' };
    expect(await refused({ body: CARD, headers: embedded })).toMatchObject({ code: 'foreign-page' });
    expect(await refused({ method: 'DELETE' })).toMatchObject({ status: 404 });
  });
});

/** Until it is so. */
async function until(isSo: () => boolean): Promise<void> {
  while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 20));
}

describe.each(['unit', 'local'] as const)('the %s server, when papers go wrong', (name) => {
  async function withPlace(settings: PaperSettings, work: (place: Place) => Promise<void>): Promise<void> {
    const place = await PLACES[name](settings);
    try {
      await work(place);
    } finally {
      await place.stop();
    }
  }

  test('what takes too long is given up; what comes when enough wait is sent away; both may try again', async () => {
    const stuck = programDoing('stuck', STUCK);
    await withPlace({ program: stuck, atOnce: 1, waiting: 1, mostMs: 700 }, async (place) => {
      const answers = await Promise.all([1, 2, 3].map(() => place.ask({ body: CARD })));
      const codes = answers.map((one) => problemIn(one).code).toSorted();
      expect(codes).toEqual(['paper-too-slow', 'paper-too-slow', 'papers-busy']);
      for (const { status, headers } of answers) {
        expect(status).toBe(503);
        expect(Number(headers['retry-after'])).toBeGreaterThan(0);
      }
    });
  });

  test('it goes on answering meanwhile, and ends a paper that nobody waits for', async () => {
    const pid = join(folder, `pid-${name}`);
    const note = `import { writeFileSync } from 'node:fs';\nwriteFileSync(${JSON.stringify(pid)}, String(process.pid));\n`;
    await withPlace({ program: programDoing(`noted-${name}`, note + STUCK) }, async (place) => {
      const leave = new AbortController();
      const asked = place.ask({ body: CARD, signal: leave.signal }).catch(() => 'gone');
      await until(() => existsSync(pid) && readFileSync(pid, 'utf8') !== '');
      expect((await place.ask({ method: 'GET' })).status).toBe(200);
      leave.abort();
      expect(await asked).toBe('gone');
      const child = Number(readFileSync(pid, 'utf8'));
      await until(() => {
        try {
          return !process.kill(child, 0);
        } catch {
          return true;
        }
      });
    });
  });

  test('a program that dies of it', async () => {
    const dying = programDoing('dying', "process.on('message', () => process.exit(1));\n");
    await withPlace({ program: dying }, async (place) => {
      for (let turn = 0; turn < 3; turn += 1)
        expect(problemIn(await place.ask({ body: CARD })).code).toBe('paper-not-set');
    });
  });

  test('no program', async () => {
    await withPlace({ program: join(folder, 'none.mjs') }, async (place) => {
      for (const asked of [{ method: 'GET' }, { body: CARD }]) {
        const answer = await place.ask(asked);
        expect([answer.status, problemIn(answer).code]).toEqual([503, 'papers-missing']);
      }
    });
  });

  test('nothing of the server’s environment goes along', async () => {
    const telling = `process.on('message', () => process.send({ is: 'paper', title: 'x', pdf: new TextEncoder().encode(JSON.stringify(process.env)) }, () => process.disconnect()));\n`;
    process.env.DOFFLINE_HEALTH_KEY = 'key-of-nobody';
    await withPlace({ program: programDoing('telling', telling) }, async (place) => {
      const { body } = await place.ask({ body: CARD });
      expect(body.toString()).toMatch(/^\{/);
      expect(body.toString()).not.toMatch(/DOFFLINE|DATABASE|key-of-nobody/);
    });
    delete process.env.DOFFLINE_HEALTH_KEY;
  });
});

test('one person or device may not have them all: after thirty in a minute it waits', async () => {
  const place = await unitServer({ program: join(folder, 'none.mjs') });
  const codes: string[] = [];
  for (let turn = 0; turn < 31; turn += 1) codes.push(problemIn(await place.ask({ body: CARD })).code);
  expect(codes.slice(0, 30)).toEqual(Array.from({ length: 30 }, () => 'papers-missing'));
  expect(codes[30]).toBe('too-many');
  await place.stop();
});

test('nobody in particular gets none from the unit’s server', async () => {
  const server = await start({ papers: papersBy({ program }) });
  expect(await client(server.port).refused('set-paper', { body: CARD })).toMatchObject({
    code: 'not-signed-in',
  });
  await server.stop();
});
