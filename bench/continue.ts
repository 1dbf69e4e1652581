// How soon the guide has another way on after a slip, in Chromium on a processor four times slower: over random records of one
// to three slips in several procedures, each after a warm-up as the guide does it when an exit begins. The browser's own
// throttle slows a page's thread and not its workers (both are measured), so the search runs twice: on the page's thread under
// the throttle, and in the guide's own worker as it is, from the question to the answer. Needs an installed Chromium.
import { existsSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { chromium, type Page } from '@playwright/test';
import { build } from 'esbuild';
import { compile } from '../src/contacts/interpret.ts';
import type { Procedure } from '../src/domain/procedure.ts';
import type { Continuation, Known } from '../src/guide/index.ts';
import { freePort } from '../scripts/freePort.mjs';
import { median, report, type Row } from './harness.ts';
import { longest, published } from './subjects.ts';
import { chromiumPath } from '../scripts/chromium.mjs';

const CHROMIUM = chromiumPath();
const PER_PROCEDURE = 30;
const SLOW = 4;
const GOAL = 'median 100, p95 500';

interface Asked {
  readonly at: number;
  readonly done: number;
  readonly known: Known;
}

/** What the page is given by the bundle below. */
declare const bench: {
  readonly procedures: Procedure[];
  readonly continueFrom: (procedure: Procedure, done: number, known: Known) => { readonly kept: boolean };
  readonly searchWay: (asked: object) => Promise<Continuation | null>;
};

const PAGE = `import { continueFrom } from './src/order/continue.ts';
import { searchWay } from './src/app/guide/shell/search.ts';
globalThis.bench = { continueFrom, searchWay, procedures: [] };`;

async function bundled(contents: string): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: process.cwd(), loader: 'ts' },
    bundle: true,
    write: false,
    minify: true,
    format: 'esm',
    logLevel: 'error',
  });
  return outputFiles[0]?.text ?? '';
}

async function serve(port: number): Promise<Server> {
  const files: Readonly<Record<string, string>> = {
    '/page.js': await bundled(PAGE),
    // Where the page's own code looks for it.
    '/worker.ts': await bundled("import './src/app/guide/shell/worker.ts';"),
  };
  const server = createServer(({ url = '/' }, answer) => {
    const file = files[url];
    answer.setHeader('content-type', file === undefined ? 'text/html' : 'text/javascript');
    answer.end(file ?? '<!doctype html><script type="module" src="/page.js"></script>');
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return server;
}

/** Not by chance alone, so that a figure can be measured again. */
function dice(seed: number): (sides: number) => number {
  let state = seed;
  return (sides) => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return Math.floor((state / 2147483648) * sides);
  };
}

/** So many records: some steps are done, one to three of their slips happened, what else could be seen did not. */
function recordsOf(procedure: Procedure, at: number): readonly Asked[] {
  const roll = dice(20261125 + at);
  const { events } = compile(procedure, procedure.agents[0] ?? 'enveloped').plan;
  return Array.from({ length: PER_PROCEDURE }, (): Asked => {
    const done = 1 + roll(procedure.steps.length - 1);
    const possible = events.filter(({ kind, step }) => kind === 'slip' && step >= 0 && step < done);
    const count = Math.min(possible.length, 1 + roll(3));
    const happened = Array.from({ length: count }, () => possible[roll(possible.length)]?.key ?? '');
    const excluded = possible.filter(({ visible, key }) => visible && !happened.includes(key));
    return { at, done, known: { happened, excluded: excluded.map(({ key }) => key), taints: [] } };
  });
}

const PROCEDURES: readonly Procedure[] = [
  published('larkmoor-suit-doffing.yaml'),
  published('larkmoor-suit-doffing-v2.yaml'),
  longest().procedure,
  published('national-papr-coverall-doffing.yaml'),
  published('international-coverall-doffing.yaml'),
];

interface Timed {
  readonly samples: number[];
  readonly better: number;
}

/** In the page: each record on its own thread. */
function onThread(all: readonly Asked[]): Timed {
  const samples: number[] = [];
  let better = 0;
  for (const { at, done, known } of all) {
    const from = performance.now();
    if (!bench.continueFrom(bench.procedures[at]!, done, known).kept) better += 1;
    samples.push(performance.now() - from);
  }
  return { samples, better };
}

/** In the page: each record in the guide's worker, as after a press. */
async function inWorker(all: readonly Asked[]): Promise<Timed> {
  const samples: number[] = [];
  let better = 0;
  for (const { at, done, known } of all) {
    const from = performance.now();
    const found = await bench.searchWay({ procedure: bench.procedures[at], doneSteps: done, known });
    if (found) better += 1;
    samples.push(performance.now() - from);
  }
  return { samples, better };
}

const RECORDS = PROCEDURES.map(recordsOf);

type Client = Awaited<ReturnType<ReturnType<Page['context']>['newCDPSession']>>;

/** Milliseconds of processor that the page's thread has used: what a busy machine blurs least. The throttle counts in it. */
async function processorOf(client: Client): Promise<number> {
  const { metrics } = await client.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
}

/** Each record by itself on the page's thread under the throttle, in processor time less that of an empty task. */
async function processorTimes(page: Page, client: Client): Promise<number[]> {
  await client.send('Performance.enable', { timeDomain: 'threadTicks' });
  const cost = async (all: readonly Asked[]): Promise<number> => {
    const before = await processorOf(client);
    await page.evaluate(onThread, all);
    return (await processorOf(client)) - before;
  };
  const samples: number[] = [];
  for (const all of RECORDS) {
    await cost(all.slice(0, 1));
    for (const one of all) samples.push(Math.max(0, (await cost([one])) - (await cost([]))));
  }
  return samples;
}

async function measured(page: Page): Promise<{ readonly rows: readonly Row[]; readonly note: string }> {
  const client = await page.context().newCDPSession(page);
  const slow = async (rate: number) => client.send('Emulation.setCPUThrottlingRate', { rate });
  /** Every procedure in turn, its first record unmeasured. */
  const over = async (where: (all: readonly Asked[]) => Timed | Promise<Timed>, rate: number) => {
    const samples: number[] = [];
    let better = 0;
    for (const all of RECORDS) {
      await slow(1);
      await page.evaluate(where, all.slice(0, 1));
      await slow(rate);
      const one = await page.evaluate(where, all);
      samples.push(...one.samples);
      better += one.better;
    }
    return { samples, note: `${better} of ${samples.length} records have a better way on` };
  };
  const thread = [await over(onThread, 1), await over(onThread, SLOW)] as const;
  const worker = [await over(inWorker, 1), await over(inWorker, SLOW)] as const;
  const processor = await processorTimes(page, client);
  const times = ([one, other]: readonly [Timed | { samples: number[] }, { samples: number[] }]): string =>
    (median(other.samples) / median(one.samples)).toFixed(1);
  const unit = 'ms';
  return {
    rows: [
      { name: `another way on, page's thread slowed ${SLOW} times`, ...thread[1], unit, goal: GOAL },
      { name: 'the same, processor time', samples: processor, unit: 'ms of processor', goal: GOAL },
      { name: "the same, at this machine's speed", ...thread[0], unit },
      { name: `in the guide's worker, page slowed ${SLOW} times`, ...worker[1], unit },
      { name: "in the guide's worker, at this machine's speed", ...worker[0], unit },
    ],
    note: `The throttle of ${SLOW} made the search on the page's thread ${times(thread)} times slower, and in the worker ${times(worker)} times.`,
  };
}

async function main(): Promise<void> {
  if (!existsSync(CHROMIUM)) {
    report([], [], `${CHROMIUM} is missing`);
    return;
  }
  const port = await freePort();
  const server = await serve(port);
  const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking'];
  const browser = await chromium.launch({ executablePath: CHROMIUM, args });
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${port}/`);
    await page.waitForFunction('globalThis.bench !== undefined');
    await page.evaluate((all) => {
      bench.procedures.push(...all);
    }, PROCEDURES);
    const { rows, note } = await measured(page);
    report(rows, [note]);
  } finally {
    await browser.close();
    server.close();
  }
}

await main();
