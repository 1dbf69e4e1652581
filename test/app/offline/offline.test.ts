// What a page says of itself at an address, and when an exit counts as under way.
import { describe, expect, test } from 'vitest';
import { openExit } from '../../../src/app/offline/midExit.ts';
import { ABILITIES, missing } from '../../../src/app/offline/support.ts';
import { memoryStore } from '../../../src/journal/adapters/memory.ts';
import type { KindName } from '../../../src/journal/kinds/index.ts';
import { LAST } from '../../../src/journal/port.ts';
import { device } from '../../journal/samples.ts';

describe('what works at an address', () => {
  test('nothing of it without https, whatever the browser has', () => {
    const world = { secure: false, serviceWorker: true, wakeLock: true };
    expect(ABILITIES.map((one) => missing(one, world))).toEqual(['insecure', 'insecure', 'insecure']);
  });

  test('with https what the browser has', () => {
    expect(missing('wake-lock', { secure: true, serviceWorker: true, wakeLock: false })).toBe('browser');
    expect(missing('offline', { secure: true, serviceWorker: true, wakeLock: false })).toBeUndefined();
    expect(missing('installation', { secure: true, serviceWorker: false, wakeLock: true })).toBe('browser');
  });
});

describe('an exit under way', () => {
  async function openAfter(...kinds: readonly KindName[]) {
    const store = memoryStore();
    const tablet = device('tablet-1');
    const entries = kinds.map((kind) => tablet.write(kind));
    await store.append(entries);
    const last = Date.parse(entries.at(-1)?.at ?? '');
    const latest = await store.read(LAST, { backwards: true });
    return {
      now: openExit(latest, new Date(last + 60_000)),
      nextDay: openExit(latest, new Date(last + 86_400_000)),
    };
  }

  test('from its beginning to its end', async () => {
    expect((await openAfter('exit.started')).now).toBe('exit-1');
    expect((await openAfter('exit.started', 'exit.line-shown', 'note.added')).now).toBe('exit-1');
    expect((await openAfter('exit.started', 'exit.line-shown', 'exit.ended')).now).toBeUndefined();
    expect((await openAfter('exit.started', 'exit.ended', 'exit.question-answered')).now).toBeUndefined();
    expect((await openAfter('note.added')).now).toBeUndefined();
  });

  test('and not for ever where nobody ended it', async () => {
    expect((await openAfter('exit.started', 'exit.line-shown')).nextDay).toBeUndefined();
  });
});
