// Aligns the steps of two procedures: by id first (a step keeps its id when it moves), then by content, the longest common
// subsequence between what is already aligned, then by likeness. Numbers in place of ids (s1, s2 ...) say nothing of a step
// and are not used. What stays in order stays; the fewest others have moved.
import type { Procedure } from '../domain/procedure.ts';
import type { Match } from './match.ts';
import {
  type ComparedField,
  contentOf,
  differing,
  exactKey,
  nearKey,
  renamed,
  type StepContent,
} from './steps.ts';

export interface StepRow {
  /** Index in the first procedure; null for a new step. */
  readonly a: number | null;
  /** Index in the second; null for one that is gone. */
  readonly b: number | null;
  /** What the two were recognised by. */
  readonly by: 'id' | 'content' | 'likeness' | null;
  /** Stands elsewhere among the steps that both have. */
  readonly moved: boolean;
  readonly changed: readonly ComparedField[];
}

export const HAPPENINGS = ['same', 'new', 'gone', 'moved', 'changed', 'moved-and-changed'] as const;
export type Happening = (typeof HAPPENINGS)[number];

/** What happened to a step, as one word. */
export function happenedTo({ a, b, moved, changed }: StepRow): Happening {
  if (a === null) return 'new';
  if (b === null) return 'gone';
  if (moved) return changed.length > 0 ? 'moved-and-changed' : 'moved';
  return changed.length > 0 ? 'changed' : 'same';
}

interface Pair {
  readonly a: number;
  readonly b: number;
  readonly by: 'id' | 'content' | 'likeness';
}

interface Sides {
  readonly a: readonly StepContent[];
  readonly b: readonly StepContent[];
}

/** The longest run of pairs, sorted by `a`, whose `b` rises: what did not move. */
export function rising(pairs: readonly Pair[]): readonly Pair[] {
  const length: number[] = [];
  const from: number[] = [];
  let best = -1;
  pairs.forEach((pair, at) => {
    length[at] = 1;
    from[at] = -1;
    for (let before = 0; before < at; before += 1) {
      if (pairs[before]!.b < pair.b && length[before]! + 1 > length[at]) {
        length[at] = length[before]! + 1;
        from[at] = before;
      }
    }
    if (best < 0 || length[at] > length[best]!) best = at;
  });
  const kept: Pair[] = [];
  for (let at = best; at >= 0; at = from[at]!) kept.push(pairs[at]!);
  return kept.reverse();
}

/** Beyond this many cells the table of the longest common subsequence is not built: no real procedure asks for it. */
const MOST_CELLS = 1 << 22;

type Places = readonly (readonly [number, number])[];

/** The first equal one each time: right where little was changed, and quick on files of ten thousand steps. */
function greedy(a: readonly string[], b: readonly string[]): Places {
  let next = 0;
  return a.flatMap((key, i): Places => {
    const j = b.indexOf(key, next);
    if (j < 0) return [];
    next = j + 1;
    return [[i, j]];
  });
}

/** Longest common subsequence of two lists of keys, as pairs of positions. */
export function common(a: readonly string[], b: readonly string[]): Places {
  const width = b.length + 1;
  if ((a.length + 1) * width > MOST_CELLS) return greedy(a, b);
  const longest = new Uint32Array((a.length + 1) * width);
  for (let i = a.length - 1; i >= 0; i -= 1)
    for (let j = b.length - 1; j >= 0; j -= 1)
      longest[i * width + j] =
        a[i] === b[j]
          ? longest[(i + 1) * width + j + 1]! + 1
          : Math.max(longest[(i + 1) * width + j]!, longest[i * width + j + 1]!);
  const found: (readonly [number, number])[] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    if (a[i] === b[j]) found.push([i++, j++]);
    else if (longest[(i + 1) * width + j]! >= longest[i * width + j + 1]!) i += 1;
    else j += 1;
  }
  return found;
}

/** An id that is only a place in a list. */
const NUMBER = /^s\d+$/;

function byId(a: Procedure, b: Procedure): readonly Pair[] {
  const places = new Map(b.steps.map(({ id }, at) => [id, at]));
  return a.steps.flatMap(({ id }, at): readonly Pair[] => {
    const other = NUMBER.test(id) ? undefined : places.get(id);
    return other === undefined ? [] : [{ a: at, b: other, by: 'id' }];
  });
}

const sorted = (pairs: readonly Pair[]): readonly Pair[] => [...pairs].sort((x, y) => x.a - y.a);

const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.max(0, to - from) }, (_, at) => from + at);

/** Steps not yet aligned that lie between the same two aligned ones, by this key, in order. */
function fill(
  sides: Sides,
  pairs: readonly Pair[],
  keyOf: (content: StepContent) => string,
  by: Pair['by'],
): readonly Pair[] {
  const [usedA, usedB] = [new Set(pairs.map(({ a }) => a)), new Set(pairs.map(({ b }) => b))];
  const fixed = [...rising(sorted(pairs)), { a: sides.a.length, b: sides.b.length }];
  let [fromA, fromB] = [0, 0];
  const found: Pair[] = [];
  for (const end of fixed) {
    const inA = range(fromA, end.a).filter((at) => !usedA.has(at));
    const inB = range(fromB, end.b).filter((at) => !usedB.has(at));
    const keys = (content: readonly StepContent[], places: readonly number[]): readonly string[] =>
      places.map((at) => keyOf(content[at]!));
    for (const [i, j] of common(keys(sides.a, inA), keys(sides.b, inB)))
      found.push({ a: inA[i]!, b: inB[j]!, by });
    [fromA, fromB] = [end.a + 1, end.b + 1];
  }
  return [...pairs, ...found];
}

/** Steps that handle an item, the only one of their key on either side: the same step, wherever it went. */
function lone(
  sides: Sides,
  pairs: readonly Pair[],
  keyOf: (content: StepContent) => string,
  by: Pair['by'],
): readonly Pair[] {
  const free = (content: readonly StepContent[], used: ReadonlySet<number>): ReadonlyMap<string, number> => {
    const places = new Map<string, number[]>();
    content.forEach((one, at) => {
      if (one.items === '' || used.has(at)) return;
      places.set(keyOf(one), [...(places.get(keyOf(one)) ?? []), at]);
    });
    return new Map(
      [...places].flatMap(([key, [at, ...more]]) => (more.length > 0 ? [] : [[key, at!] as const])),
    );
  };
  const inA = free(sides.a, new Set(pairs.map(({ a }) => a)));
  const inB = free(sides.b, new Set(pairs.map(({ b }) => b)));
  const found = [...inA].flatMap(([key, a]): readonly Pair[] => {
    const b = inB.get(key);
    return b === undefined ? [] : [{ a, b, by }];
  });
  return [...pairs, ...found];
}

/** Rows in the order of the second procedure; what is gone stands after what it stood behind in the first. */
function inOrder(rows: readonly StepRow[], gone: readonly number[]): readonly StepRow[] {
  const result = [...rows];
  for (const a of gone) {
    const before = result.findLastIndex((row) => row.a !== null && !row.moved && row.a < a);
    result.splice(before + 1, 0, { a, b: null, by: null, moved: false, changed: [] });
  }
  return result;
}

/** Every step of both procedures exactly once. */
export function alignSteps(a: Procedure, b: Procedure, match: Match): readonly StepRow[] {
  const sides: Sides = { a: a.steps.map(contentOf), b: b.steps.map((step) => renamed(step, match)) };
  let pairs = fill(sides, byId(a, b), exactKey, 'content');
  pairs = lone(sides, pairs, exactKey, 'content');
  pairs = fill(sides, pairs, nearKey, 'likeness');
  pairs = lone(sides, pairs, nearKey, 'likeness');
  const stay = new Set(rising(sorted(pairs)));
  const ofB = new Map(pairs.map((pair) => [pair.b, pair]));
  const rows = b.steps.map((_, at): StepRow => {
    const pair = ofB.get(at);
    if (!pair) return { a: null, b: at, by: null, moved: false, changed: [] };
    const changed = differing(sides.a[pair.a]!, sides.b[at]!);
    return { a: pair.a, b: at, by: pair.by, moved: !stay.has(pair), changed };
  });
  const known = new Set(pairs.map((pair) => pair.a));
  return inOrder(
    rows,
    a.steps.flatMap((_, at) => (known.has(at) ? [] : [at])),
  );
}
