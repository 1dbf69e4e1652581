// What a refusal, a failure and a press make of where a device stands.
import { describe, expect, test } from 'vitest';
import { hurried, lost, met, refused, sent } from '../../src/sync/answers.ts';
import { pauseAfter } from '../../src/sync/backoff.ts';
import { START_STATE, type SyncState } from '../../src/sync/state.ts';
import { nextStep } from '../../src/sync/step.ts';

const moment = { now: 1_000_000, chance: 0.5 };
const MET: SyncState = { ...met(START_STATE, 10, 2000, moment), more: false };

describe('the order of steps', () => {
  test('asks first, sends before it reads, then waits', () => {
    expect(nextStep(START_STATE, 12, moment.now)).toEqual({ do: 'ask' });
    expect(nextStep({ ...MET, more: true }, 12, moment.now)).toMatchObject({ do: 'send', from: 11 });
    expect(nextStep({ ...MET, more: true }, 10, moment.now)).toEqual({ do: 'read', from: 1 });
    expect(nextStep(MET, 10, moment.now)).toMatchObject({ do: 'wait' });
  });

  test('gets its own entries back before it sends, where the server has more of them', () => {
    expect(nextStep({ ...MET, more: true }, 3, moment.now)).toEqual({ do: 'read', from: 1 });
  });

  test('looks again after a while', () => {
    const step = nextStep(MET, 10, moment.now);
    expect(step.do === 'wait' && nextStep(MET, 10, step.until)).toEqual({ do: 'read', from: 1 });
  });
});

describe('failures', () => {
  test('wait longer each time, to a limit, and not the same for all', () => {
    const pauses = Array.from({ length: 12 }, (_, index) => pauseAfter(index + 1, 0));
    expect(pauses).toEqual(pauses.toSorted((a, b) => a - b));
    expect(pauses.at(-1)).toBe(pauses.at(-2));
    expect(pauseAfter(4, 0.99)).toBeGreaterThan(pauseAfter(4, 0.01));
  });

  test('a press ends the wait, but not the one that the server asked for', () => {
    const waiting = lost(MET, moment);
    expect(nextStep(waiting, 12, moment.now)).toMatchObject({ do: 'wait' });
    expect(nextStep(hurried(waiting, moment.now), 12, moment.now)).toEqual({ do: 'ask' });
    const told = refused(MET, { code: 'too-many', todo: 'retry-later', after: 30 }, moment);
    expect(nextStep(hurried(told, moment.now), 12, moment.now)).toEqual({ do: 'wait', until: 1_030_000 });
  });
});

describe('refusals', () => {
  const wrong = { code: 'kind-not-allowed', todo: 'ask-lead' } as const;

  test('what stands before a refused entry is sent alone, then the refused one is named', () => {
    const narrowed = refused(MET, { ...wrong, index: 3 }, moment, 11);
    expect(nextStep(narrowed, 20, moment.now)).toEqual({ do: 'send', from: 11, most: 3 });
    const alone = refused(sent(narrowed, 13, 0, moment), { ...wrong, index: 0 }, moment, 14);
    expect(alone.refused).toEqual({ ...wrong, number: 14, stops: 'sending' });
    expect(nextStep({ ...alone, more: true }, 20, moment.now)).toMatchObject({ do: 'read' });
    expect(nextStep({ ...alone, more: false }, 20, moment.now)).toMatchObject({ do: 'wait' });
    expect(nextStep(hurried(alone, moment.now), 20, moment.now)).toMatchObject({ do: 'send', from: 14 });
  });

  test('a device that was taken out neither sends nor reads', () => {
    const out = refused(MET, { code: 'device-revoked', todo: 'ask-lead' }, moment, 11);
    expect(out.refused?.stops).toBe('all');
    expect(nextStep({ ...out, more: true }, 20, moment.now)).toMatchObject({ do: 'wait' });
  });

  test('a request that is too large is halved', () => {
    const large = refused(MET, { code: 'too-large', todo: 'mend-request' }, moment, 11);
    expect(large.most).toBe(MET.most / 2);
    expect(large.refused).toBeUndefined();
  });

  test('a server that asks for what it was just sent is given time', () => {
    const gap = { code: 'gap', todo: 'send-from-expected', index: 0, expected: '6' } as const;
    const back = refused(MET, gap, moment, 11);
    expect(nextStep(back, 20, moment.now)).toMatchObject({ do: 'send', from: 6 });
    expect(nextStep(refused(back, gap, moment, 6), 20, moment.now)).toMatchObject({ do: 'wait' });
  });

  test('what an administrator must mend is shown until the server answers again', () => {
    const full = refused(MET, { code: 'full', todo: 'tell-administrator' }, moment, 11);
    expect(full.refused?.code).toBe('full');
    expect(met(full, 10, null, moment).refused).toBeUndefined();
  });
});
