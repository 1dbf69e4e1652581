// What every bench shares: timed samples, cases in the order that the runner asks for, and the report as one line of
// JSON, so that the runner can put many fresh processes together.

export interface Row {
  readonly name: string;
  readonly samples: readonly number[];
  readonly unit: string;
  /** What is aimed at, in words. */
  readonly goal?: string;
  readonly note?: string;
}

export interface Case {
  readonly name: string;
  readonly work: () => unknown;
  readonly goal?: string;
  readonly note?: string;
  /** Processor time is told as well. */
  readonly processor?: boolean;
}

export interface Rounds {
  /** Untimed runs first, until the code is compiled. */
  readonly warm: number;
  readonly runs: number;
}

/** Milliseconds of one call. */
export function timeOf(work: () => unknown): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

/** The cases, backwards in every other process. */
export const ordered = <T>(cases: readonly T[]): readonly T[] =>
  process.env.BENCH_ORDER === 'backward' ? [...cases].reverse() : cases;

/** Milliseconds of processor time of one call, compiler and collector included: what a busy machine blurs least. */
function processorTimeOf(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Warms up and times each case. */
export function timed(cases: readonly Case[], { warm, runs }: Rounds): readonly Row[] {
  return ordered(cases).flatMap(({ name, work, goal, note, processor }): readonly Row[] => {
    for (let round = 0; round < warm; round += 1) work();
    const row = (what: string, samples: readonly number[]): Row => ({ name: what, samples, unit: 'ms' });
    const samples = Array.from({ length: runs }, () => timeOf(work));
    return [
      { ...row(name, samples), ...(goal ? { goal } : {}), ...(note ? { note } : {}) },
      ...(processor
        ? [
            row(
              `${name}, processor time`,
              Array.from({ length: runs }, () => processorTimeOf(work)),
            ),
          ]
        : []),
    ];
  });
}

/** The report, as the process's last line. */
export function report(rows: readonly Row[], notes: readonly string[] = [], missing?: string): void {
  console.log(JSON.stringify({ rows, notes, ...(missing === undefined ? {} : { missing }) }));
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}
