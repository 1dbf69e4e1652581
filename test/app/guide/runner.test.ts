// One exit run by the shell over a store in memory: the screen waits for the store, nothing is stored twice, nothing is lost
// when the store fails or another tab is quicker, and what was spoken is what stood on the screen.
import { describe, expect, test } from 'vitest';
import { createExitLog } from '../../../src/app/guide/log/exitLog.ts';
import { entriesOf, exitsView, openExits } from '../../../src/app/guide/log/exits.ts';
import { createRun, type Run } from '../../../src/app/guide/shell/runner.ts';
import { silentVoice } from '../../../src/app/guide/shell/voice.ts';
import { begin, replay, screenOf } from '../../../src/guide/index.ts';
import { memoryStore } from '../../../src/journal/adapters/memory.ts';
import { fold } from '../../../src/journal/fold.ts';
import type { Store } from '../../../src/journal/port.ts';
import { NOON, OBSERVER, PEOPLE, scriptFor, SMALL } from '../../guide/support.ts';

const EXIT = 'x-1';
const script = scriptFor(SMALL);

/** Lets everything that waits for the store come to its end. */
const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 50; turn += 1) await Promise.resolve();
};

function started(store: Pick<Store, 'append' | 'read'>, exit = EXIT) {
  const lost: string[] = [];
  const begun = begin(script, PEOPLE, { is: 'drill' }, { exit, room: 'room-1', at: NOON, by: OBSERVER });
  if (!begun.ok) throw new Error(begun.bar);
  let now = NOON;
  const voice = silentVoice();
  const waits: { readonly at: number; readonly call: () => void }[] = [];
  const log = createExitLog({
    store: async () => Promise.resolve(store),
    device: 'tablet-1',
    unit: () => 'larkmoor',
    written: () => undefined,
    elsewhere: (gone) => lost.push(gone),
  });
  const run = createRun([begun.state, begun.effects], {
    log,
    voice,
    now: () => now,
    wait: (milliseconds, then) => {
      const wait = { at: now + milliseconds, call: then };
      waits.push(wait);
      return () => waits.splice(waits.indexOf(wait), 1);
    },
    keepAwake: () => undefined,
    signal: () => undefined,
    search: async () => Promise.resolve(null),
  });
  const pass = (milliseconds: number): void => {
    now += milliseconds;
    for (const { call } of waits.filter(({ at }) => at <= now)) call();
  };
  return { run, voice, pass, lost, log };
}

async function kept(store: Pick<Store, 'read'>, exit = EXIT) {
  const exits = fold(exitsView, await store.read(1, { most: 10_000 }));
  return { exits, entries: await entriesOf(store, { exit, from: exits[exit]?.from ?? 1 }) };
}

/** Reads on with the plainest press. */
async function onward(run: Run, times: number): Promise<void> {
  for (let turn = 0; turn < times; turn += 1) {
    const { presses } = screenOf(run.state());
    if (presses.includes('seen')) run.press({ is: 'seen', means: 'pedal' });
    else run.press({ is: 'forward' });
    await settled();
  }
}

describe('a run', () => {
  test('shows the next line only when the store has the entry', async () => {
    const memory = memoryStore();
    let open: () => void = () => undefined;
    const gate = new Promise<void>((resolve) => {
      open = resolve;
    });
    let late = false;
    const store: Pick<Store, 'append' | 'read'> = {
      read: memory.read,
      append: async (entries) => {
        if (late) await gate;
        return memory.append(entries);
      },
    };
    const { run } = started(store);
    await settled();
    late = true;
    const before = screenOf(run.state()).line.id;
    run.press({ is: 'forward' });
    await settled();
    expect(screenOf(run.state())).toMatchObject({ saving: true, line: { id: before } });
    open();
    await settled();
    expect(screenOf(run.state()).saving).toBe(false);
    expect(screenOf(run.state()).line.id).not.toBe(before);
  });

  test('is rebuilt from the journal at the same line, each entry there once', async () => {
    const store = memoryStore();
    const { run } = started(store);
    await settled();
    await onward(run, 3);
    const { entries, exits } = await kept(store);
    expect(openExits(exits).map(({ exit }) => exit)).toEqual([EXIT]);
    const again = replay(script, entries);
    expect(again.core).toEqual(run.state().core);
    expect(entries.length).toBe(run.state().core.entries);
  });

  test('says so when the store fails, stays on the line, and goes on by itself when it works again', async () => {
    const memory = memoryStore();
    let broken = false;
    const store: Pick<Store, 'append' | 'read'> = {
      read: memory.read,
      append: async (entries) => (broken ? Promise.reject(new Error('no room')) : memory.append(entries)),
    };
    const { run, pass } = started(store);
    await settled();
    broken = true;
    const before = screenOf(run.state()).line.id;
    const held = (await kept(store)).entries.length;
    await onward(run, 1);
    expect(screenOf(run.state())).toMatchObject({ stalled: true, line: { id: before } });
    expect(run.trouble()).toBe('no room');
    pass(6000);
    await settled();
    expect(screenOf(run.state()).stalled).toBe(true);
    expect((await kept(store)).entries.length).toBe(held);
    broken = false;
    pass(6000);
    await settled();
    expect(screenOf(run.state())).toMatchObject({ stalled: false, unsaved: 0 });
    expect(screenOf(run.state()).line.id).not.toBe(before);
    expect((await kept(store)).entries.length).toBe(run.state().core.entries);
  });

  test('stores nothing twice where the store took it and then failed to say so', async () => {
    const memory = memoryStore();
    let silent = false;
    const store: Pick<Store, 'append' | 'read'> = {
      read: memory.read,
      append: async (entries) => {
        const acknowledged = await memory.append(entries);
        if (silent) throw new Error('lost on the way');
        return acknowledged;
      },
    };
    const { run } = started(store);
    await settled();
    silent = true;
    await onward(run, 1);
    expect(screenOf(run.state()).unsaved).toBeGreaterThan(0);
    silent = false;
    run.press({ is: 'retry' });
    await settled();
    expect(screenOf(run.state()).unsaved).toBe(0);
    expect((await kept(store)).entries.length).toBe(run.state().core.entries);
  });

  test('two rooms write one journal and are told apart', async () => {
    const store = memoryStore();
    const [one, other] = [started(store), started(store, 'x-2')];
    await settled();
    await Promise.all([onward(one.run, 3), onward(other.run, 2)]);
    await settled();
    expect((await kept(store)).entries.length).toBe(one.run.state().core.entries);
    expect((await kept(store, 'x-2')).entries.length).toBe(other.run.state().core.entries);
  });

  test('stores nothing more once another tab has gone on with the same exit', async () => {
    const store = memoryStore();
    const one = started(store);
    await settled();
    await onward(one.run, 2);
    // Another tab rebuilds it from the journal, and goes on without asking.
    const other = started(store, 'x-other');
    await settled();
    await other.log.mark(EXIT);
    const { core } = replay(script, (await kept(store)).entries);
    const { observer: by } = core.people;
    const at = new Date(NOON).toISOString();
    const body = { exit: EXIT, line: core.line, step: 'end', text: null };
    await other.log.append([{ id: `${EXIT}.${core.entries + 1}`, kind: 'exit.stopped', body, at, by }]);
    const before = (await kept(store)).entries.length;
    await onward(one.run, 1);
    expect(one.lost).toEqual([EXIT]);
    expect(other.lost).toEqual([]);
    expect((await kept(store)).entries.length).toBe(before);
  });

  test('saves what it has before it goes to another tab, and then takes no press', async () => {
    const memory = memoryStore();
    let broken = false;
    const { run } = started({
      read: memory.read,
      append: async (entries) => (broken ? Promise.reject(new Error('no room')) : memory.append(entries)),
    });
    await settled();
    broken = true;
    await onward(run, 1);
    expect(await run.settle()).toBe(false);
    broken = false;
    expect(await run.settle()).toBe(true);
    const { entries } = run.state().core;
    expect((await kept(memory)).entries.length).toBe(entries);
    await onward(run, 2);
    expect(run.state().core.entries).toBe(entries);
  });

  test('speaks what is shown, and nothing while it is muted', async () => {
    const { run, voice } = started(memoryStore());
    await settled();
    expect(voice.said.map(({ text }) => text)).toEqual([
      screenOf(run.state())
        .large.find(({ person }) => screenOf(run.state()).line.for.includes(person))
        ?.rows.join(' '),
    ]);
    run.mute(true);
    await onward(run, 2);
    expect(voice.said.length).toBe(1);
    expect(run.speech()).toBe('off');
  });

  test('says when a language has no voice', () => {
    expect(silentVoice(['fr']).speak('Hands off.', 'en')).toBe('no-voice');
  });
});
