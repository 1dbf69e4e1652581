// The nearest known name to a misspelt one: insertions, deletions, changes and swaps of neighbours (optimal
// string alignment), and a known name that contains the written one as a word ("respirator").

const LONGEST = 64;
const MOST_CHANGES = 3;

/** Edit distance; Infinity where it passes `limit`. */
export function distance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  if (Math.abs(a.length - b.length) > limit) return Number.POSITIVE_INFINITY;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = swapped ? (before[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(change, swap, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    if (Math.min(...row) > limit) return Number.POSITIVE_INFINITY;
    before = last;
    last = row;
  }
  const found = last[b.length] ?? 0;
  return found <= limit ? found : Number.POSITIVE_INFINITY;
}

/** The known name that was most likely meant; undefined when none is near. Ties: the first listed. */
export function nearest(name: string, known: readonly string[]): string | undefined {
  if (name.length > LONGEST) return undefined;
  const written = name
    .toLowerCase()
    .trim()
    .replaceAll(/[\s_]+/g, '-');
  const limit = Math.min(MOST_CHANGES, Math.max(1, Math.floor(written.length / 3)));
  const beginning = known.find((candidate) => candidate.startsWith(`${written}.`));
  if (beginning !== undefined) return beginning;
  let best: string | undefined;
  let bestDistance = limit + 1;
  for (const candidate of known) {
    const found = distance(written, candidate.toLowerCase(), limit);
    if (found < bestDistance) [best, bestDistance] = [candidate, found];
  }
  if (best !== undefined || written.length < 3) return best;
  return known.find((candidate) => candidate.split(/[-.]/).includes(written));
}
