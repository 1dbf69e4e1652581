// How long all order and omission variants of the 100-step exit take: every step left out, every step moved to every other
// place (9,901 edited procedures), each worked out and judged. Once on one core, once on two, the moved steps shared out
// by parity; each worker works out its own base, which counts. Finding texts are not made.
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { fileURLToPath } from 'node:url';
import { analyse } from '../src/check/analysis.ts';
import type { Edit } from '../src/check/edit.ts';
import { tryVariants, variantEdits } from '../src/check/variants.ts';
import { hundred } from './hundred.ts';
import { report, type Row } from './harness.ts';

const moved = (edit: Edit): number => (edit.do === 'move' ? edit.from : edit.at);

/** The number of worse variants among those whose step has this remainder. */
function share(part: number, parts: number): number {
  const procedure = hundred();
  const edits = [...variantEdits(procedure.steps.length)].filter((edit) => moved(edit) % parts === part);
  return tryVariants(analyse(procedure, 'enveloped'), edits).length;
}

const inWorker = (part: number, parts: number): Promise<number> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: { part, parts } });
    worker.once('message', (found: number) => resolve(found));
    worker.once('error', reject);
  });

interface Clocked {
  readonly found: number;
  readonly wall: number;
  /** Milliseconds of processor time, all threads: what a busy machine does not blur. */
  readonly processor: number;
}

async function clocked(work: () => Promise<number>): Promise<Clocked> {
  const [from, used] = [performance.now(), process.cpuUsage()];
  const found = await work();
  const { user, system } = process.cpuUsage(used);
  return { found, wall: performance.now() - from, processor: (user + system) / 1000 };
}

const rowsOf = (name: string, { wall, processor }: Clocked, goal?: string): readonly Row[] => [
  { name, samples: [wall], unit: 'ms', ...(goal === undefined ? {} : { goal }) },
  { name: `${name}, processor time`, samples: [processor], unit: 'ms' },
];

/** A fresh process and fresh workers: nothing is warmed up, as when somebody presses the button. */
async function main(): Promise<void> {
  const two = await clocked(async () => {
    const found = await Promise.all([inWorker(0, 2), inWorker(1, 2)]);
    return found.reduce((sum, one) => sum + one, 0);
  });
  const one = await clocked(() => inWorker(0, 1));
  if (one.found !== two.found)
    throw new Error(`${one.found} worse variants on one core, ${two.found} on two`);
  const count = [...variantEdits(hundred().steps.length)].length;
  report(
    [
      ...rowsOf('all variants, two workers', two, 'under 2,000 ms'),
      ...rowsOf('all variants, one worker', one, 'under 2,000 ms'),
    ],
    [`${count} variants; ${one.found} leave fewer barriers somewhere and would go unseen`],
  );
}

if (isMainThread) await main();
else {
  const { part, parts } = workerData as { readonly part: number; readonly parts: number };
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's port, not a window
  parentPort?.postMessage(share(part, parts));
}
