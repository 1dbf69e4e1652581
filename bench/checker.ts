// SPIN, a general-purpose model checker (Debian package `spin`; needs gcc): from a plan to its answers. The search is
// exhaustive (no bit-state hashing) and unrestricted in the number of slips.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Plan } from '../src/contacts/plan.ts';
import { promelaOf, type PromelaOptions } from './promela.ts';

export interface Answer {
  /** Whether the whole space was searched in the time and memory given. */
  readonly finished: boolean;
  /** Of the search alone, as the checker itself tells; of the wait where it did not finish. */
  readonly seconds: number;
  /** Making and compiling the checker, told apart. */
  readonly compileSeconds: number;
  readonly states: number;
  /** By surface: the least number of events that reaches it. */
  readonly least: ReadonlyMap<number, number>;
}

export interface Limits {
  readonly seconds: number;
  readonly megabytes: number;
}

/** Why SPIN cannot be run here; undefined when it can. */
export function whyNoSpin(): string | undefined {
  const missing = [
    ['spin', '-V'],
    ['gcc', '--version'],
  ].filter(([program, flag]) => spawnSync(program!, [flag!]).status !== 0);
  if (missing.length === 0) return undefined;
  return `${missing.map(([program]) => program).join(' and ')} not installed (apt-get install -y spin gcc)`;
}

function must(folder: string, program: string, args: readonly string[]): void {
  const done = spawnSync(program, args, { cwd: folder, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`${program}: ${done.stdout}${done.stderr}`);
}

function compiled(folder: string, text: string, { megabytes }: Limits): number {
  const from = performance.now();
  writeFileSync(join(folder, 'plan.pml'), text);
  must(folder, 'spin', ['-a', 'plan.pml']);
  const defines = [
    '-DSAFETY',
    '-DNOFAIR',
    '-DNOCLAIM',
    '-DNOREDUCE',
    '-DVECTORSZ=2048',
    `-DMEMLIM=${megabytes}`,
  ];
  must(folder, 'gcc', ['-O2', '-w', ...defines, '-o', 'pan', 'pan.c']);
  return (performance.now() - from) / 1000;
}

function leastIn(output: string): ReadonlyMap<number, number> {
  const told = [...output.matchAll(/^LEAST (\d+) (\d+)$/gm)];
  return new Map(told.map(([, surface, count]) => [Number(surface), Number(count)]));
}

/** Runs the checker on a plan. */
export function ask(plan: Plan, limits: Limits, options: PromelaOptions = {}): Answer {
  const folder = mkdtempSync(join(tmpdir(), 'plan-'));
  try {
    const compileSeconds = compiled(folder, promelaOf(plan, options), limits);
    const from = performance.now();
    const { stdout, status } = spawnSync(join(folder, 'pan'), ['-m1000000', '-w24'], {
      cwd: folder,
      encoding: 'utf8',
      timeout: limits.seconds * 1000,
      maxBuffer: 1 << 28,
    });
    const waited = (performance.now() - from) / 1000;
    const told = /elapsed time ([\d.]+)/.exec(stdout)?.[1];
    return {
      finished:
        status === 0 && told !== undefined && !/out of memory|max search depth too small/.test(stdout),
      seconds: told === undefined ? waited : Number(told),
      compileSeconds,
      states: Number(/(\d+) states, stored/.exec(stdout.replace(/e\+/g, ''))?.[1] ?? 0),
      least: leastIn(stdout),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
