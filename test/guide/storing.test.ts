// Storing comes first: what the screen shows while entries are on their way, when the store fails or does not answer, and
// what is asked for again after a crash.
import { describe, expect, test } from 'vitest';
import {
  type Effect,
  type Event,
  next,
  type Press,
  replay,
  screenOf,
  type State,
} from '../../src/guide/index.ts';
import { beginWith, NOON, OBSERVER, PEOPLE, press, readTo, scriptFor, SMALL, tell, wait } from './support.ts';

const script = scriptFor(SMALL);
const doings = (effects: readonly Effect[]): readonly string[] => effects.map((effect) => effect.do);

describe('storing', () => {
  const at = (state: State, what: Press, by = OBSERVER): readonly [State, readonly Effect[]] =>
    next(state, { ...what, at: NOON, by });
  const entriesOf = (effects: readonly Effect[]) =>
    effects.flatMap((effect) => (effect.do === 'append' ? effect.entries : []));
  const ready = beginWith(script).state;

  test('comes before the screen moves; until then it shows that it is saving', () => {
    const [saving, effects] = at(ready, { is: 'forward' });
    expect(effects.map((effect) => effect.do)).toEqual(['append']);
    expect(screenOf(saving)).toMatchObject({ saving: true, line: { group: 'call/read' } });
    expect(at(saving, { is: 'seen' })[0].refusal).toBe('saving');
    const ids = entriesOf(effects).map(({ id }) => id);
    const [moved] = next(saving, { is: 'stored', entries: ids, at: NOON, by: null });
    expect(screenOf(moved)).toMatchObject({ saving: false, unsaved: 0, line: { group: 'call/look' } });
  });

  test('that fails is shown and the line stays; it goes on when it is stored', () => {
    const [saving, effects] = at(ready, { is: 'forward' });
    const ids = entriesOf(effects).map(({ id }) => id);
    const [unsaved] = next(saving, { is: 'store-failed', entries: ids, at: NOON, by: null });
    expect(screenOf(unsaved)).toMatchObject({ unsaved: 1, stalled: true, line: { group: 'call/read' } });
    expect(screenOf(unsaved).presses).toEqual(['retry', 'go-on', 'stop', 'emergency']);
    expect(at(unsaved, { is: 'forward' })[0]).toMatchObject({ refusal: 'unsaved', core: unsaved.core });
    const [retried, sent] = at(unsaved, { is: 'retry' });
    expect(entriesOf(sent).map(({ id }) => id)).toEqual(ids);
    const [stored] = next(retried, { is: 'stored', entries: ids, at: NOON, by: null });
    expect(screenOf(stored)).toMatchObject({
      unsaved: 0,
      saving: false,
      stalled: false,
      line: { group: 'call/look' },
    });
  });

  test('that fails stops the screen once: who goes on unsaved is not asked at each line', () => {
    const fail = (state: State, effects: readonly Effect[]): State => {
      const entries = entriesOf(effects).map(({ id }) => id);
      return next(state, { is: 'store-failed', entries, at: NOON, by: null })[0];
    };
    const stalled = fail(...at(ready, { is: 'forward' }));
    const [on] = at(stalled, { is: 'go-on' });
    expect(screenOf(on)).toMatchObject({ unsaved: 1, stalled: false, line: { group: 'call/look' } });
    const [seen, effects] = at(on, { is: 'seen' });
    const further = fail(seen, effects);
    expect(screenOf(further)).toMatchObject({ stalled: false, line: { group: 'gloves-off/read' } });
    expect(entriesOf(effects)).toHaveLength(3);
    // Once the store works again, the next failure is told anew.
    const [saving, again] = at(further, { is: 'retry' });
    const entries = entriesOf(again).map(({ id }) => id);
    const [stored] = next(saving, { is: 'stored', entries, at: NOON, by: null });
    expect(screenOf(fail(...at(stored, { is: 'forward' })))).toMatchObject({ stalled: true });
  });

  test('that never answers is left behind by a press', () => {
    const [saving] = at(ready, { is: 'forward' });
    expect(screenOf(saving).presses[0]).toBe('go-on');
    const [on] = at(saving, { is: 'go-on' });
    expect(screenOf(on)).toMatchObject({ unsaved: 1, line: { group: 'call/look' } });
  });

  test('is not waited for by a stop or an emergency', () => {
    const [saving] = at(ready, { is: 'forward' });
    expect(screenOf(at(saving, { is: 'stop' }, PEOPLE.wearer)[0]).phase).toBe('stopped');
    expect(screenOf(at(saving, { is: 'emergency', emergency: 'fire' })[0]).phase).toBe('emergency');
  });

  const woke: Event = { is: 'woke', at: NOON, by: null };

  test('after the shell was away, timers and the waking screen are asked for again', () => {
    const run = press(readTo(beginWith(script), 'rub/look'), { is: 'start-timer' });
    expect(doings(next(run.state, woke)[1])).toEqual(['keep-awake', 'start-timer', 'start-timer']);
  });

  test('a search that a crash took along is asked for again, until its answer was answered', () => {
    const slipped = press(readTo(beginWith(script), 'gloves-off/look'), {
      is: 'slip',
      event: 'gloves-off:snap',
    });
    const rebuilt = replay(script, slipped.stored);
    expect(rebuilt.search).toBeNull();
    const [again, effects] = next(rebuilt, woke);
    expect(doings(effects)).toEqual(['keep-awake', 'search-continuation']);
    expect(again.search?.done).toBe(2);
    const found = { id: 'c1', steps: SMALL.steps.slice(2), barriers: { before: 0, after: 1 } };
    const search = slipped.state.search!.id;
    const offered = tell(slipped, { is: 'continuation', search, found, at: NOON, by: null });
    const declined = press(offered, { is: 'decline', reason: 'no time' });
    expect(doings(next(replay(script, declined.stored), woke)[1])).toEqual(['keep-awake']);
  });

  test('a clock that ticks changes nothing where nothing is due', () => {
    const run = readTo(beginWith(script), 'rub/look');
    expect(wait(run, 5).state).toBe(run.state);
  });
});
