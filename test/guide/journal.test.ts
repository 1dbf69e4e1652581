// What the guide has stored is what the journal keeps: every entry of whole exits passes its kind's own schema, survives
// being written as text, and rebuilds the exit from there.
import { describe, expect, test } from 'vitest';
import { replay } from '../../src/guide/index.ts';
import type { GuideEntry } from '../../src/guide/index.ts';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { type Entry, headOf, nextEntry, START } from '../../src/journal/entry.ts';
import { fold } from '../../src/journal/fold.ts';
import { KINDS } from '../../src/journal/kinds/index.ts';
import { versionOf } from '../../src/journal/kinds/kind.ts';
import { isInside, roomView, staysOf } from '../../src/journal/views/room.ts';
import { signsOf } from '../../src/journal/views/signs.ts';
import { isSalted } from '../../src/journal/withheld.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import {
  beginWith,
  NOON,
  OBSERVER,
  PEOPLE,
  press,
  readTo,
  type Run,
  scriptFor,
  SMALL,
  SMALL_DONNING,
  tell,
} from './support.ts';

const schemaOf = (entry: GuideEntry) => KINDS[entry.kind].versions.at(-1)!.schema;

/** An exit in which everything happens that has an entry of its own. */
function eventful(): Run {
  const script = scriptFor(SMALL);
  let run = readTo(beginWith(script), 'gloves-off/look');
  run = press(run, { is: 'slip', event: 'gloves-off:wrong-grip', text: 'left hand' });
  const found = { id: 'c1', steps: SMALL.steps.slice(2), barriers: { before: 0, after: null } };
  run = tell(run, { is: 'continuation', search: run.state.search!.id, found, at: NOON, by: null });
  run = press(run, { is: 'accept' });
  run = press(run, { is: 'deviation', category: 'touched-face', surfaces: ['wearer.face'] });
  run = press(run, { is: 'not-seen' });
  run = press(run, { is: 'stop', text: 'door' }, 'p-wea1');
  run = press(run, { is: 'hand-over', to: 'p-obs2' });
  run = press(run, { is: 'take-over', line: run.state.core.lastAnswered }, 'p-obs2');
  run = press(run, { is: 'resume' }, 'p-obs2');
  run = press(run, { is: 'emergency', emergency: 'sharps' }, 'p-wea1');
  run = press(run, { is: 'start-timer' }, 'p-obs2');
  run = press(run, { is: 'return' }, 'p-obs2');
  run = press(run, { is: 'note', text: 'all well' }, 'p-obs2');
  run = press(run, { is: 'go-early', reason: 'other' }, 'p-obs2');
  run = press(run, { is: 'emergency', emergency: 'fire' }, 'p-obs2');
  return press(run, { is: 'break-off', reason: 'evacuated' }, 'p-obs2');
}

const faultsOf = (entries: readonly GuideEntry[]): readonly string[] =>
  entries.flatMap((entry) => {
    // The shell draws the salt as it writes.
    const salt = isSalted(entry.kind) ? { salt: '0'.repeat(32) } : {};
    const { error } = schemaOf(entry).safeParse({ ...entry.body, ...salt });
    return error ? [`${entry.kind}: ${error.message}`] : [];
  });

describe('entries', () => {
  test('of an exit in which everything happens pass the schemas of their kinds', () => {
    const { stored } = eventful();
    expect(faultsOf(stored)).toEqual([]);
    expect(new Set(stored.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(14);
    for (const { at, by } of stored) {
      expect(new Date(at).toISOString()).toBe(at);
      expect(by === null || /^p-[a-z0-9]{4,32}$/.test(by)).toBe(true);
    }
  });

  test.each(files)('of a whole run of %s pass them too', (file) => {
    const script = scriptFor(procedureOf(file));
    const donning = procedureOf(file).kind === 'donning';
    const run = readTo(beginWith(script), donning ? 'end/all-round' : 'end/finish');
    const over = donning ? press(run, { is: 'seen', reason: 'looked' }) : run;
    const { stored, state } = press(over, { is: donning ? 'leave' : 'end' });
    expect(state.core.ended?.how).toBe('finished');
    expect(faultsOf(stored)).toEqual([]);
  });

  test('written as text and read again rebuild the exit', () => {
    const { stored, state } = eventful();
    const read = JSON.parse(JSON.stringify(stored)) as readonly GuideEntry[];
    const { core } = replay(scriptFor(SMALL), read);
    expect({ ...core, script: core.script.lines }).toEqual({
      ...state.core,
      script: state.core.script.lines,
    });
  });
});

/** What the logbook makes of a run's entries: nobody has filled in a form. */
async function roomAfter({ stored, at }: Run) {
  let head = START;
  const entries = stored.map((written): Entry => {
    const { kind, body } = written;
    const salt = isSalted(kind) ? { salt: '0'.repeat(32) } : {};
    const entry = nextEntry(head, {
      unit: 'larkmoor',
      device: 'tablet-1',
      kind,
      version: versionOf(KINDS[kind]),
      at: written.at,
      by: written.by,
      body: JSON.parse(JSON.stringify({ ...body, ...salt })) as Entry['body'],
    });
    head = headOf(entry);
    return entry;
  });
  const store = memoryStore();
  await store.append(entries);
  const stays = staysOf(fold(roomView, await store.read(1)));
  const bounds = { warn: 10, past: 30, noLimit: 300 };
  return {
    inside: stays.filter(isInside).map(({ person, role }) => [person, role]),
    signs: signsOf(stays, at, bounds).map(({ code }) => code),
  };
}

describe('the logbook by an exit’s entries alone', () => {
  const everybody = [
    [PEOPLE.wearer, 'wearer'],
    [OBSERVER, 'observer'],
    [PEOPLE.assistants[0], 'assistant'],
  ];

  test('beginning a doffing for real signs in all who take part, its observer too; its end signs them out', async () => {
    const begun = beginWith(scriptFor(SMALL), false);
    const room = await roomAfter(begun);
    expect(room.inside).toEqual(expect.arrayContaining(everybody));
    expect(room.inside).toHaveLength(everybody.length);
    expect(room.signs).toEqual([]);
    const over = press(readTo(begun, 'end/finish'), { is: 'end' });
    expect(await roomAfter(over)).toEqual({ inside: [], signs: [] });
  });

  test('a donning for real signs its observer in with its wearer, who goes in; before that nobody is in', async () => {
    const look = readTo(beginWith(scriptFor(SMALL_DONNING), false), 'end/all-round');
    expect((await roomAfter(look)).inside).toEqual([]);
    const inside = await roomAfter(press(look, { is: 'seen', reason: 'two steps only' }));
    expect(inside.inside).toEqual(expect.arrayContaining(everybody.slice(0, 2)));
    expect(inside.inside).toHaveLength(2);
    expect(inside.signs).not.toContain('observer-not-in');
  });

  test('a drill signs nobody in who is to be counted', async () => {
    expect((await roomAfter(beginWith(scriptFor(SMALL)))).inside).toEqual([]);
  });
});
