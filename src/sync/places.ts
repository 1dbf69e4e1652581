// Which entry stands at which of the server's places, from 1 without a gap: the one order of the unit that every device
// agrees on. Kept as runs of one device's successive numbers, because devices mostly send many at once.

/** Entries `from`, `from + 1` ... of a device, so many, at successive places. */
export type Run = readonly [device: string, from: number, count: number];
export type Runs = readonly Run[];

interface Named {
  readonly device: string;
  readonly number: number;
}

/** One more entry at the next place. */
export function placed(runs: Runs, { device, number }: Named): Runs {
  const last = runs.at(-1);
  if (last?.[0] !== device || last[1] + last[2] !== number) return [...runs, [device, number, 1]];
  return [...runs.slice(0, -1), [device, last[1], last[2] + 1]];
}

/** What stands at the last place; undefined where nothing does. */
export function lastOf(runs: Runs): Named | undefined {
  const last = runs.at(-1);
  return last && { device: last[0], number: last[1] + last[2] - 1 };
}

/** The highest number of a device that has a place; 0 where none has. */
export function lastOfDevice(runs: Runs, device: string): number {
  const last = runs.findLast(([name]) => name === device);
  return last ? last[1] + last[2] - 1 : 0;
}

export const countOf = (runs: Runs): number => runs.reduce((sum, [, , count]) => sum + count, 0);

/** The places, to be asked many times: undefined for an entry that the server has not, or not yet. */
export function placesIn(runs: Runs): (entry: Named) => number | undefined {
  const byDevice = new Map<
    string,
    { readonly from: number; readonly count: number; readonly at: number }[]
  >();
  let at = 1;
  for (const [device, from, count] of runs) {
    const own = byDevice.get(device) ?? [];
    own.push({ from, count, at });
    byDevice.set(device, own);
    at += count;
  }
  return ({ device, number }) => {
    const run = byDevice.get(device)?.find(({ from, count }) => number >= from && number < from + count);
    return run && run.at + number - run.from;
  };
}
