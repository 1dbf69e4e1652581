// What the guide has stored is what the journal keeps: every entry of whole exits passes its kind's own schema, survives
// being written as text, and rebuilds the exit from there.
import { describe, expect, test } from 'vitest';
import { replay } from '../../src/guide/index.ts';
import type { GuideEntry } from '../../src/guide/index.ts';
import { KINDS } from '../../src/journal/kinds/index.ts';
import { isSalted } from '../../src/journal/withheld.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { beginWith, NOON, press, readTo, type Run, scriptFor, SMALL, tell } from './support.ts';

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
