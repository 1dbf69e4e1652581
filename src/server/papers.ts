// Setting papers for others: each in a process of its own (src/typeset/main.ts), a few at once, a few more waiting, each for so
// long and no longer. Whoever goes away before the paper is set is waited for no more. Nothing of it is kept.
import { type ChildProcess, fork } from 'node:child_process';
import { existsSync } from 'node:fs';
import type { ServerResponse } from 'node:http';
import type { Http2ServerResponse } from 'node:http2';
import type { PaperRequest, PdfFile } from '../api/shapes/papers.ts';
import type { PaperJob, PaperOutcome } from '../typeset/job.ts';
import { Refusal } from './refusal.ts';

export interface PaperSettings {
  /** The built program that sets one paper. */
  readonly program: string;
  readonly atOnce?: number;
  readonly waiting?: number;
  readonly mostMs?: number;
}

/** The house's own judgement: a small machine goes on answering, and the longest paper of the shelf takes some seconds. */
const USUAL = { atOnce: 2, waiting: 8, mostMs: 60_000 } as const;
/** Megabytes of the program's own memory; the compiler's is beside it. */
const MEMORY_MB = 1024;
/** Seconds after which to try again. */
const AFTER = 5;

/** Nothing of the server's environment goes along: neither its keys nor where its data is. */
const KEPT = ['PATH', 'SystemRoot', 'TEMP', 'TMPDIR'];
const environment = (): NodeJS.ProcessEnv =>
  Object.fromEntries(KEPT.flatMap((name) => (process.env[name] ? [[name, process.env[name]]] : [])));

const start = (program: string): ChildProcess =>
  fork(program, [], {
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    env: environment(),
    execArgv: [`--max-old-space-size=${MEMORY_MB}`],
  });

/** One paper in one process, which ends with it however it goes. */
function setBy(child: ChildProcess, job: PaperJob, gone: AbortSignal, mostMs: number): Promise<PaperOutcome> {
  return new Promise((resolve, reject) => {
    const end = (): void => void child.kill('SIGKILL');
    const late = setTimeout(() => {
      reject(new Refusal('paper-too-slow', { after: AFTER }));
      end();
    }, mostMs);
    gone.addEventListener('abort', end);
    child.once('message', (outcome) => resolve(outcome as PaperOutcome));
    child.once('error', reject);
    // Too late to matter where the outcome came first.
    child.once('close', () => {
      clearTimeout(late);
      gone.removeEventListener('abort', end);
      reject(new Refusal('paper-not-set'));
    });
    child.send(job, (error) => error && end());
    if (gone.aborted) end();
  });
}

/** A file to be saved, never shown in the page's own place. */
export const fileHeaders = (type: string, { bytes, name }: PdfFile) => ({
  'Content-Type': type,
  'Content-Length': String(bytes.length),
  'Content-Disposition': `attachment; filename="${name}"`,
});

/** Aborts when the connection of a request ends. */
export function goneWith(outgoing: ServerResponse | Http2ServerResponse): AbortSignal {
  const gone = new AbortController();
  outgoing.once('close', () => gone.abort());
  return gone.signal;
}

export interface Papers {
  /** Throws a refusal where there is no program for it. */
  readonly ready: () => void;
  /** The file. A refusal where the texts have errors, there are too many, it takes too long, or the program dies of it. */
  readonly set: (request: PaperRequest, gone: AbortSignal) => Promise<PdfFile>;
  /** Ends what is under way. */
  readonly close: () => void;
}

interface Turns {
  /** Resolves when it is one's turn; a refusal where too many wait already, or whoever waits has gone. */
  readonly begin: (gone: AbortSignal) => Promise<void>;
  readonly end: () => void;
}

function turnsOf(atOnce: number, waiting: number): Turns {
  const queue: (() => void)[] = [];
  let busy = 0;
  const wait = (gone: AbortSignal): Promise<void> =>
    new Promise((resolve, reject) => {
      const enter = (): void => {
        gone.removeEventListener('abort', leave);
        resolve();
      };
      const leave = (): void => {
        queue.splice(queue.indexOf(enter), 1);
        reject(new Refusal('paper-not-set'));
      };
      queue.push(enter);
      gone.addEventListener('abort', leave, { once: true });
    });
  return {
    begin: async (gone) => {
      if (busy < atOnce) {
        busy += 1;
        return;
      }
      if (queue.length >= waiting) throw new Refusal('papers-busy', { after: AFTER });
      await wait(gone);
    },
    end: () => {
      const enter = queue.shift();
      if (enter) enter();
      else busy -= 1;
    },
  };
}

/** 'larkmoor-suit-doffing.card.fr.a4.pdf': nothing but small letters, digits, hyphens and dots, whatever the title is. */
function fileNameOf(title: string, { kind, language, size }: PaperRequest): string {
  const plain = title.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();
  const name = plain
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replaceAll(/^-+|-+$/g, '');
  return `${name || 'procedure'}.${kind}.${language}.${size}.pdf`;
}

function fileIn(outcome: PaperOutcome, request: PaperRequest): PdfFile {
  if (outcome.is === 'unreadable') throw new Refusal('paper-unreadable', { faults: [...outcome.faults] });
  if (outcome.is === 'not-set') throw new Refusal('paper-not-set');
  return { bytes: new Uint8Array(outcome.pdf), name: fileNameOf(outcome.title, request) };
}

/** Papers set by the program of this name. */
export function papersBy(settings: PaperSettings): Papers {
  const { program, atOnce, waiting, mostMs } = { ...USUAL, ...settings };
  const running = new Set<ChildProcess>();
  const turns = turnsOf(atOnce, waiting);
  const ready = (): void => {
    if (!existsSync(program)) throw new Refusal('papers-missing');
  };
  const run = async (job: PaperJob, gone: AbortSignal): Promise<PaperOutcome> => {
    const child = start(program);
    running.add(child);
    child.once('close', () => running.delete(child));
    return setBy(child, job, gone, mostMs);
  };
  return {
    ready,
    set: async (request, gone) => {
      ready();
      await turns.begin(gone);
      try {
        return fileIn(await run(request, gone), request);
      } finally {
        turns.end();
      }
    },
    close: () => running.forEach((child) => child.kill('SIGKILL')),
  };
}
