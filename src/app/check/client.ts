// The page's side of the check: one worker per text, its answers kept for as long as the page is open, so that going from
// the steps to the ledger and back asks nothing again.
import { proxy, wrap } from 'comlink';
import { useSyncExternalStore } from 'react';
import type { Checker, Question, Result } from './result.ts';

export interface Progress {
  readonly state: 'running' | 'done' | 'failed';
  readonly result?: Result;
  readonly why?: string;
}

interface Entry {
  progress: Progress;
  readonly listeners: Set<() => void>;
}

const RUNNING: Progress = { state: 'running' };
const entries = new Map<string, Entry>();

const keyOf = ({ text, donning = '', fileName }: Question): string => `${fileName}\n${donning}\n${text}`;

function tell(entry: Entry, progress: Progress): void {
  entry.progress = progress;
  for (const listener of entry.listeners) listener();
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function run(question: Question, entry: Entry): Promise<void> {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const crashed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) =>
      reject(new Error(event.message || 'the worker did not start')),
    );
  });
  const answer = (result: Result): void =>
    tell(entry, { state: result.complete ? 'done' : 'running', result });
  try {
    await Promise.race([wrap<Checker>(worker).check(question, proxy(answer)), crashed]);
  } catch (error: unknown) {
    tell(entry, { ...entry.progress, state: 'failed', why: reasonOf(error) });
  } finally {
    worker.terminate();
  }
}

function entryFor(question: Question): Entry {
  const key = keyOf(question);
  const known = entries.get(key);
  if (known) return known;
  const entry: Entry = { progress: RUNNING, listeners: new Set() };
  entries.set(key, entry);
  run(question, entry).catch((error: unknown) => tell(entry, { state: 'failed', why: reasonOf(error) }));
  return entry;
}

/** The check of a text; starts it where nobody has. */
export function useCheck(question: Question): Progress {
  const entry = entryFor(question);
  return useSyncExternalStore(
    (listener) => {
      entry.listeners.add(listener);
      return () => entry.listeners.delete(listener);
    },
    () => entry.progress,
  );
}
