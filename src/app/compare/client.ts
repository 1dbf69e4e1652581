// The page's side of comparing: one worker per pair of texts, its answers kept for as long as the page is open.
import { proxy, wrap } from 'comlink';
import { useSyncExternalStore } from 'react';
import type { Question } from '../check/result.ts';
import type { Answer, Comparer } from './result.ts';

export interface Comparing {
  readonly state: 'running' | 'done' | 'failed';
  readonly answer?: Answer;
  readonly why?: string;
}

interface Entry {
  now: Comparing;
  readonly listeners: Set<() => void>;
}

const entries = new Map<string, Entry>();

const keyOf = (...questions: readonly Question[]): string =>
  questions.map(({ text, donning = '', fileName }) => [fileName, donning, text].join('\n')).join('\n---\n');

function tell(entry: Entry, now: Comparing): void {
  entry.now = now;
  for (const listener of entry.listeners) listener();
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function run(a: Question, b: Question, entry: Entry): Promise<void> {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const crashed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) =>
      reject(new Error(event.message || 'the worker did not start')),
    );
  });
  const take = (answer: Answer): void => {
    const done = 'broken' in answer || answer.compared.complete;
    tell(entry, { state: done ? 'done' : 'running', answer });
  };
  try {
    await Promise.race([wrap<Comparer>(worker).compare(a, b, proxy(take)), crashed]);
  } catch (error: unknown) {
    tell(entry, { ...entry.now, state: 'failed', why: reasonOf(error) });
  } finally {
    worker.terminate();
  }
}

function entryFor(a: Question, b: Question): Entry {
  const key = keyOf(a, b);
  const known = entries.get(key);
  if (known) return known;
  const entry: Entry = { now: { state: 'running' }, listeners: new Set() };
  entries.set(key, entry);
  run(a, b, entry).catch((error: unknown) => tell(entry, { state: 'failed', why: reasonOf(error) }));
  return entry;
}

/** The comparison of two texts; starts it where nobody has. */
export function useComparison(a: Question, b: Question): Comparing {
  const entry = entryFor(a, b);
  return useSyncExternalStore(
    (listener) => {
      entry.listeners.add(listener);
      return () => entry.listeners.delete(listener);
    },
    () => entry.now,
  );
}
