// The check of a draft that changes while it is checked: the quick answer first, the full one after a pause, and never an
// answer about a draft that is no longer the one on screen.
import { describe, expect, it } from 'vitest';
import { createSchedule, type Runner } from '../../../src/app/compose/check/schedule.ts';

interface Call {
  readonly question: string;
  readonly answer: (text: string) => void;
  readonly done: () => void;
  readonly fail: (why: Error) => void;
}

function runner(): Runner<string, string> & { readonly calls: Call[]; readonly stopped: () => number } {
  const calls: Call[] = [];
  let stops = 0;
  return {
    calls,
    stopped: () => stops,
    stop: () => {
      stops += 1;
    },
    run: (question, answer) =>
      new Promise((done, fail) => {
        calls.push({ question, answer, done, fail });
      }),
  };
}

const settled = (): Promise<void> => new Promise((done) => setImmediate(done));

function stage() {
  const [quick, full] = [runner(), runner()];
  const told: string[] = [];
  let waiting: (() => void) | undefined;
  const schedule = createSchedule<string, string>({
    quick,
    full,
    tell: (question, answer) => told.push(`${question}: ${answer}`),
    failed: (question, why) => told.push(`${question} failed: ${String(why)}`),
    later: (work) => {
      waiting = work;
      return () => {
        waiting = undefined;
      };
    },
  });
  const pause = (): void => waiting?.();
  return { quick, full, told, schedule, pause, waits: () => waiting !== undefined };
}

describe('the schedule', () => {
  it('answers quickly, and in full only after the pause', async () => {
    const { quick, full, told, schedule, pause } = stage();
    schedule.ask('a');
    quick.calls[0]?.answer('quick');
    quick.calls[0]?.done();
    await settled();
    expect(full.calls).toHaveLength(0);
    pause();
    full.calls[0]?.answer('chances');
    full.calls[0]?.answer('mends');
    expect(told).toEqual(['a: quick', 'a: chances', 'a: mends']);
  });

  it('of many edits during one check asks about the last only', async () => {
    const { quick, told, schedule } = stage();
    for (const edit of ['a', 'b', 'c', 'd']) schedule.ask(edit);
    quick.calls[0]?.answer('late');
    quick.calls[0]?.done();
    await settled();
    expect(quick.calls.map(({ question }) => question)).toEqual(['a', 'd']);
    quick.calls[1]?.answer('quick');
    expect(told).toEqual(['d: quick']);
  });

  it('breaks off a full check of what has changed, and drops what still comes of it', async () => {
    const { quick, full, told, schedule, pause, waits } = stage();
    schedule.ask('a');
    quick.calls[0]?.done();
    await settled();
    pause();
    const stops = full.stopped();
    schedule.ask('b');
    expect(full.stopped()).toBeGreaterThan(stops);
    full.calls[0]?.answer('old');
    expect(told).toEqual([]);
    expect(waits()).toBe(false);
  });

  it('asked the same again begins nothing anew, and breaks nothing off', async () => {
    const { quick, full, told, schedule, pause } = stage();
    schedule.ask('a');
    schedule.ask('a');
    quick.calls[0]?.done();
    await settled();
    pause();
    const stops = full.stopped();
    schedule.ask('a');
    expect(full.stopped()).toBe(stops);
    full.calls[0]?.answer('mends');
    expect([quick.calls.length, full.calls.length]).toEqual([1, 1]);
    expect(told).toEqual(['a: mends']);
    schedule.ask('b');
    schedule.ask('a');
    quick.calls[1]?.done();
    await settled();
    expect(quick.calls.map(({ question }) => question)).toEqual(['a', 'b', 'a']);
  });

  it('goes on to the full check where the quick one fails, and says when that fails too', async () => {
    const { quick, full, told, schedule, pause } = stage();
    schedule.ask('a');
    quick.calls[0]?.fail(new Error('half a step'));
    await settled();
    pause();
    full.calls[0]?.fail(new Error('no worker'));
    await settled();
    expect(told).toEqual(['a failed: Error: no worker']);
  });

  it('ends quietly', async () => {
    const { quick, told, schedule, waits } = stage();
    schedule.ask('a');
    schedule.end();
    quick.calls[0]?.answer('quick');
    quick.calls[0]?.done();
    await settled();
    expect(told).toEqual([]);
    expect(waits()).toBe(false);
  });
});
