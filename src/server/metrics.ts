// Counts for a monitor to collect, in Prometheus' text format (version 0.0.4). Labels are of closed sets: routes, methods,
// status, codes; nothing of people, and nothing from which health records could be counted.
import type { ProblemCode } from '../api/problems.ts';

/** Upper ends of the classes of a request's time, in seconds. */
const CLASSES = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10] as const;

interface Timed {
  readonly counts: number[];
  sum: number;
  count: number;
}

export interface Metrics {
  readonly request: (route: string, method: string, status: number, seconds: number) => void;
  readonly entries: (count: number) => void;
  readonly refused: (code: ProblemCode) => void;
  /** `gauges`: further values, by name and what they are. */
  readonly text: (gauges: readonly (readonly [name: string, help: string, value: number])[]) => string;
}

const METHODS: ReadonlySet<string> = new Set(['GET', 'HEAD', 'POST', 'PATCH', 'DELETE']);

const labels = (pairs: Readonly<Record<string, string | number>>): string =>
  Object.entries(pairs)
    .map(([key, value]) => `${key}="${value}"`)
    .join(',');

const raise = (counts: Map<string, number>, key: string, by = 1): void => {
  counts.set(key, (counts.get(key) ?? 0) + by);
};

function linesOfTimes(name: string, times: ReadonlyMap<string, Timed>): readonly string[] {
  return [...times].flatMap(([route, { counts, sum, count }]) => {
    let below = 0;
    const buckets = CLASSES.map((end, index) => {
      below += counts[index] ?? 0;
      return `${name}_bucket{${labels({ route, le: end })}} ${below}`;
    });
    return [
      ...buckets,
      `${name}_bucket{${labels({ route, le: '+Inf' })}} ${count}`,
      `${name}_sum{${labels({ route })}} ${sum}`,
      `${name}_count{${labels({ route })}} ${count}`,
    ];
  });
}

const block = (name: string, type: string, help: string, lines: readonly string[]): string =>
  [`# HELP ${name} ${help}`, `# TYPE ${name} ${type}`, ...lines].join('\n');

function noteTime(times: Map<string, Timed>, route: string, seconds: number): void {
  const timed = times.get(route) ?? { counts: CLASSES.map(() => 0), sum: 0, count: 0 };
  times.set(route, timed);
  const at = CLASSES.findIndex((end) => seconds <= end);
  if (at >= 0) timed.counts[at] = (timed.counts[at] ?? 0) + 1;
  timed.sum += seconds;
  timed.count += 1;
}

const counter = (name: string, help: string, counts: ReadonlyMap<string, number>): string =>
  block(
    name,
    'counter',
    help,
    [...counts].map(([key, value]) => (key === '' ? `${name} ${value}` : `${name}{${key}} ${value}`)),
  );

export function newMetrics(): Metrics {
  const requests = new Map<string, number>();
  const refusals = new Map<string, number>();
  const entries = new Map([['', 0]]);
  const times = new Map<string, Timed>();
  const blocks = (): readonly string[] => [
    counter('doffline_requests_total', 'Requests answered.', requests),
    counter('doffline_refusals_total', 'Requests refused, by why.', refusals),
    counter('doffline_entries_total', 'Entries acknowledged to devices.', entries),
    block(
      'doffline_request_seconds',
      'histogram',
      'Time to answer.',
      linesOfTimes('doffline_request_seconds', times),
    ),
  ];
  return {
    request: (route, method, status, seconds) => {
      raise(requests, labels({ route, method: METHODS.has(method) ? method : 'other', status }));
      noteTime(times, route, seconds);
    },
    entries: (count) => raise(entries, '', count),
    refused: (code) => raise(refusals, labels({ code })),
    text: (gauges) => {
      const told = gauges.map(([name, help, value]) => block(name, 'gauge', help, [`${name} ${value}`]));
      return `${[...blocks(), ...told].join('\n')}\n`;
    },
  };
}
