// A history as text for the browser's store, and back. Each step, person and list is written once however many
// snapshots share it, so that hundreds of undo steps of a long procedure stay small, and sharing survives the reload.
import type * as z from 'zod';
import type { Procedure } from '../../../domain/procedure.ts';
import type { History, Snapshot } from './history.ts';
import { DONE, ENTRIES, REST } from './shape.ts';

const LISTS = [
  'agents',
  'people',
  'zones',
  'fixtures',
  'products',
  'start',
  'steps',
  'accepted',
] as const satisfies readonly (keyof Procedure)[];

/** The oldest are let go first; undo in the open page is not limited by this. */
export const MOST_KEPT = 400;

const FORMAT = 1;

interface Packed {
  readonly format: typeof FORMAT;
  /** Entries of lists, and what of a procedure is no list. */
  readonly things: readonly unknown[];
  /** Indices into `things`. */
  readonly lists: readonly (readonly number[])[];
  /** What was done; the rest of the procedure; one list each. */
  readonly snapshots: readonly (readonly [string, number, ...number[]])[];
  readonly now: number;
}

/** Numbers for values: the same text gets the same number. */
function pool<T>(): { readonly values: T[]; readonly at: (value: T) => number } {
  const values: T[] = [];
  const known = new Map<string, number>();
  const seen = new Map<unknown, number>();
  const at = (value: T): number => {
    const before = seen.get(value);
    if (before !== undefined) return before;
    const text = JSON.stringify(value);
    const number = known.get(text) ?? values.push(value) - 1;
    known.set(text, number);
    if (typeof value === 'object') seen.set(value, number);
    return number;
  };
  return { values, at };
}

function restOf(procedure: Procedure): object {
  const lists: ReadonlySet<string> = new Set(LISTS);
  return Object.fromEntries(Object.entries(procedure).filter(([key]) => !lists.has(key)));
}

/** The history as text; of a long past and future only what is nearest to now. */
export function packed({ past, present, future }: History, most = MOST_KEPT): string {
  const things = pool<unknown>();
  const lists = pool<readonly number[]>();
  const numbers = new Map<readonly unknown[], number>();
  const list = (value: readonly unknown[]): number => {
    const known = numbers.get(value) ?? lists.at(value.map((entry) => things.at(entry)));
    numbers.set(value, known);
    return known;
  };
  const before = past.slice(Math.max(0, past.length - most));
  const after = future.slice(0, most);
  const snapshots = [...before, present, ...after].map(({ procedure, done }): Packed['snapshots'][number] => [
    done,
    things.at(restOf(procedure)),
    ...LISTS.map((key) => list(procedure[key])),
  ]);
  const whole: Packed = {
    format: FORMAT,
    things: things.values,
    lists: lists.values,
    snapshots,
    now: before.length,
  };
  return JSON.stringify(whole);
}

/** Throws where a value is not of the shape; each is looked at once, however many snapshots share it. */
function looker(): <Value>(shape: z.ZodType, value: Value) => Value {
  const sound = new Map<z.ZodType, Set<unknown>>();
  return (shape, value) => {
    const before = sound.get(shape) ?? new Set();
    if (!before.has(value)) shape.parse(value);
    sound.set(shape, before.add(value));
    return value;
  };
}

function unpackAll({ things, lists, snapshots, now }: Packed): History | undefined {
  const look = looker();
  const made = lists.map((entries) => entries.map((index) => things[index]));
  const listOf = (key: (typeof LISTS)[number], number: number | undefined): readonly unknown[] => {
    const list = made[number ?? -1] ?? [];
    for (const entry of list) look(ENTRIES[key], entry);
    return list;
  };
  const all = snapshots.map(([done, rest, ...numbers]): Snapshot => {
    const filled = Object.fromEntries(LISTS.map((key, index) => [key, listOf(key, numbers[index])]));
    const whole = { ...(look(REST, things[rest]) as object), ...filled };
    return { done: look(DONE, done), procedure: whole as unknown as Procedure };
  });
  const present = all[now];
  return present && { past: all.slice(0, now), present, future: all.slice(now + 1) };
}

/** The history of a text; undefined where the text is none of ours. */
export function unpacked(text: string): History | undefined {
  try {
    const value = JSON.parse(text) as Partial<Packed>;
    return value.format === FORMAT ? unpackAll(value as Packed) : undefined;
  } catch {
    return undefined;
  }
}
