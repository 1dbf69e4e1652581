// Every path of the guide, walked by a machine: breadth first over a small procedure's abstracted states, and at random
// over all published ones. It never stalls, never shows a step as done twice, never hides a timer, stops everywhere and is
// resumed by the observer alone; and what was stored tells exactly where it stood.
import { describe, expect, test } from 'vitest';
import * as fc from 'fast-check';
import { EMERGENCY_IDS } from '../../src/domain/emergencies.ts';
import {
  next,
  replay,
  screenOf,
  type Continuation,
  type Core,
  type Effect,
  type Event,
  type GuideEntry,
  type Press,
  type Screen,
  type Script,
  type State,
} from '../../src/guide/index.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { beginWith, NOON, OBSERVER, PEOPLE, scriptFor, SMALL, SMALL_DONNING, TINY } from './support.ts';

/** Somebody presses each of what a screen offers, in one concrete way. */
function concrete(state: State, screen: Screen, name: Screen['presses'][number]): Press {
  const { shown: core } = state;
  switch (name) {
    case 'seen':
    case 'not-seen':
      return { is: name, reason: 'said' };
    case 'slip':
      return { is: 'slip', event: screen.slips[0]?.key ?? screen.finds[0]?.key ?? 'none' };
    case 'deviation':
      return { is: 'deviation', category: 'soil-seen', surfaces: ['wearer.scrubs.front'] };
    case 'go-early':
      return { is: 'go-early', reason: 'other' };
    case 'emergency':
      return { is: 'emergency', emergency: EMERGENCY_IDS[core.line % EMERGENCY_IDS.length]! };
    case 'decline':
    case 'break-off':
      return { is: name, reason: 'said' };
    case 'hand-over':
      return { is: 'hand-over', to: core.people.observer === OBSERVER ? 'p-obs2' : OBSERVER };
    case 'take-over':
      return { is: 'take-over', line: core.lastAnswered };
    case 'answer':
      return { is: 'answer', question: screen.line.question!, reply: 'no' };
    case 'note':
      return { is: 'note', text: 'said' };
    default:
      return { is: name };
  }
}

const presser = (state: State, press: Press): string =>
  press.is === 'take-over' ? (state.handover ?? OBSERVER) : state.core.people.observer;

interface Walk {
  readonly state: State;
  /** Entries that the store has said it keeps. */
  readonly kept: readonly GuideEntry[];
  /** All that was ever handed to it. */
  readonly sent: readonly GuideEntry[];
  readonly at: number;
}

const appended = (effects: readonly Effect[]): readonly GuideEntry[] =>
  effects.flatMap((effect) => (effect.do === 'append' ? effect.entries : []));

function step(walk: Walk, event: Event): Walk {
  const [state, effects] = next(walk.state, event);
  const fresh = appended(effects).filter(({ id }) => !walk.sent.some((one) => one.id === id));
  const kept =
    event.is === 'stored'
      ? [...walk.kept, ...walk.sent.filter(({ id }) => event.entries.includes(id))]
      : walk.kept;
  return { state, kept, sent: [...walk.sent, ...fresh], at: Math.max(walk.at, event.at) };
}

const FOUND = new WeakMap<Script, Map<number, Continuation>>();

/** The rest as it is, once more: what is offered is not what is tried here. */
function continuationFrom(script: Script, done: number): Continuation {
  const known = FOUND.get(script) ?? new Map<number, Continuation>();
  FOUND.set(script, known);
  const steps = script.setup.procedure.steps.slice(done);
  const made = known.get(done) ?? { id: 'c', steps, barriers: { before: 0, after: 1 } };
  known.set(done, made);
  return made;
}

/** All that can happen next: presses on offer, the store's answers, time, and the search's answer. */
function happenings({ state, at }: Walk, screen: Screen): readonly Event[] {
  const now = { at: at + 1000, by: null } as const;
  const ids = state.saving.map(({ id }) => id);
  const pressed = screen.presses.map((name): Event => {
    const press = concrete(state, screen, name);
    return { ...press, at: at + 1000, by: presser(state, press) };
  });
  const found = continuationFrom(state.core.script, state.search?.done ?? 0);
  return [
    ...pressed,
    ...(ids.length > 0
      ? [
          { is: 'stored', entries: ids, ...now } as const,
          { is: 'store-failed', entries: ids, ...now } as const,
        ]
      : []),
    ...(state.search ? [{ is: 'continuation', search: state.search.id, found, ...now } as const] : []),
    { is: 'time', at: at + 3_600_000, by: null },
  ];
}

/** What the laws speak of; times, numbers and texts are left out. */
function keyOf({ state }: Walk): string {
  const coreKey = (core: Core): string =>
    [
      core.line,
      core.recap ? 'r' : '',
      core.stopped ? 's' : '',
      core.emergencies.length,
      core.offer ? 'o' : '',
      core.ended ? core.ended.how : '',
      [...new Set(core.timers.map(({ id, ended }) => `${id}${ended ? '+' : '-'}`))].sort().join(','),
      Object.keys(core.answered).length,
    ].join('|');
  return [
    coreKey(state.core),
    state.shown === state.core ? '' : coreKey(state.shown),
    state.saving.length > 0 ? 'S' : '',
    state.unsaved.length > 0 ? 'U' : '',
    state.adrift ? 'A' : '',
    state.search ? 'Q' : '',
    state.handover === null ? '' : 'H',
  ].join('/');
}

const PRESSES_THAT_LEAD_ON: ReadonlySet<string> = new Set([
  'forward',
  'seen',
  'not-seen',
  'answer',
  'leave',
  'end',
  'resume',
  'return',
  'go-on',
  'start-timer',
  'go-early',
  'accept',
  'decline',
]);

/** Laws of one state, and of every press from it. */
function obeys(walk: Walk, screen: Screen): void {
  const { state } = walk;
  // A timer that runs is on the screen, whatever lies over the line.
  const open = state.shown.timers.filter(({ ended }) => ended === null);
  expect(screen.timers.map(({ id }) => id)).toEqual(open.map(({ id }) => id));
  expect(screen.timers.every(({ evidence, source }) => evidence !== undefined || source !== undefined)).toBe(
    true,
  );
  // At most two rows, and something to read, for everybody.
  for (const { rows } of screen.large) expect([1, 2]).toContain(rows.length);
  // Every emergency opens from here.
  const fire = next(state, { is: 'emergency', emergency: 'fire', at: walk.at + 1, by: PEOPLE.wearer })[0];
  expect(fire.shown.emergencies.at(-1)).toBe('fire');
  if (state.shown.ended) return;
  // Something leads on.
  const leading = screen.presses.filter((name) => PRESSES_THAT_LEAD_ON.has(name));
  const moved = leading.some((name) => {
    const press = concrete(state, screen, name);
    const after = next(state, { ...press, at: walk.at + 1000, by: presser(state, press) })[0];
    return after.refusal === null && after !== state;
  });
  expect(moved).toBe(true);
  if (state.core.ended) return;
  // Anybody stops it, and then the observer alone resumes.
  const stopped = next(state, { is: 'stop', at: walk.at + 1, by: PEOPLE.wearer })[0];
  expect(stopped.core.stopped).not.toBeNull();
  const not = next(stopped, { is: 'resume', at: walk.at + 2, by: PEOPLE.wearer })[0];
  expect(not.core.stopped).not.toBeNull();
}

/** No step is said to be done twice. */
function answeredOnce(entries: readonly GuideEntry[], script: Script): void {
  const groups = entries.flatMap((entry) =>
    entry.kind === 'exit.line-confirmed' || entry.kind === 'exit.not-seen' ? [entry.body.line] : [],
  );
  expect(new Set(groups).size).toBe(groups.length);
  expect(groups.length).toBeLessThanOrEqual(script.lines.length * 2);
}

const walkFrom = (script: Script): Walk => {
  const { state, stored } = beginWith(script);
  return { state, kept: stored, sent: stored, at: NOON };
};

/** What is pressed but once on a way, so that ways stay few: what lies over reading can lie over it anywhere. */
const ONCE: ReadonlySet<string> = new Set([
  'slip',
  'deviation',
  'emergency',
  'note',
  'hand-over',
  'store-failed',
  'stop',
]);

interface Way {
  readonly walk: Walk;
  readonly once: readonly string[];
}

/** Breadth first to the last state, one way kept per abstracted state; at most so many of `ONCE` on a way. */
function explore(script: Script, most: number): { readonly states: number; readonly ended: number } {
  const known = new Set<string>();
  const queue: Way[] = [{ walk: walkFrom(script), once: [] }];
  let ended = 0;
  for (let way = queue.shift(); way !== undefined; way = queue.shift()) {
    const { walk, once } = way;
    const key = `${keyOf(walk)}/${once.toSorted().join(',')}`;
    if (known.has(key)) continue;
    known.add(key);
    const screen = screenOf(walk.state);
    obeys(walk, screen);
    if (walk.state.shown.ended) ended += 1;
    for (const event of happenings(walk, screen)) {
      const rare = ONCE.has(event.is);
      if (rare && once.length >= most) continue;
      queue.push({ walk: step(walk, event), once: rare ? [...once, event.is] : once });
    }
  }
  return { states: known.size, ended };
}

describe('breadth first, to the last state', () => {
  test.each([
    ['a small doffing', TINY],
    ['a small donning', SMALL_DONNING],
  ] as const)('%s', (_name, procedure) => {
    const { states, ended } = explore(scriptFor(procedure), 1);
    expect(states).toBeGreaterThan(1000);
    expect(ended).toBeGreaterThan(5);
  });
});

/** Walks at random, told by a stream of numbers which of the happenings comes next. */
function wander(script: Script, choices: Iterator<number>, length: number, law: (walk: Walk) => void): Walk {
  let walk = walkFrom(script);
  for (let count = 0; count < length && !walk.state.shown.ended; count += 1) {
    const all = happenings(walk, screenOf(walk.state));
    const pick = choices.next().value as number;
    // Mostly what leads on, so that a walk comes far.
    const index = pick % 3 === 0 ? Math.floor(pick / 3) % all.length : 0;
    walk = step(walk, all[index]!);
    if (walk.state.saving.length > 0 && pick % 5 !== 0) {
      const entries = walk.state.saving.map(({ id }) => id);
      walk = step(walk, { is: 'stored', entries, at: walk.at, by: null });
    }
    law(walk);
  }
  return walk;
}

/** Everything that is not volatile. */
const rebuilt = (script: Script, entries: readonly GuideEntry[]): Core => replay(script, entries).core;

describe.each(files.filter((file) => procedureOf(file).kind === 'doffing'))('at random: %s', (file) => {
  const script = scriptFor(procedureOf(file));

  test('keeps its laws, answers each line once, and is rebuilt from its entries', () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat(1_000_000)), (stream) => {
        let count = 0;
        const walk = wander(script, stream, 160, (here) => {
          count += 1;
          if (count % 20 === 0) obeys(here, screenOf(here.state));
        });
        answeredOnce(walk.sent, script);
        expect(rebuilt(script, walk.sent)).toEqual(walk.state.core);
      }),
      { numRuns: 3 },
    );
  });
});

test('a replay of any beginning of the entries is where the exit stood then', () => {
  const script = scriptFor(SMALL);
  fc.assert(
    fc.property(fc.infiniteStream(fc.nat(1_000_000)), (stream) => {
      const seen: { readonly entries: number; readonly core: Core }[] = [];
      const walk = wander(script, stream, 80, ({ sent, state }) => {
        seen.push({ entries: sent.length, core: state.core });
      });
      for (const { entries, core } of seen)
        expect(rebuilt(script, walk.sent.slice(0, entries))).toEqual(core);
    }),
    { numRuns: 20 },
  );
});

test('entries that begin no exit, or one of another text, are not replayed', () => {
  const script = scriptFor(SMALL);
  const { stored } = beginWith(script);
  expect(() => replay(script, stored.slice(1))).toThrow('beginning');
  const [first] = stored as readonly [GuideEntry & { readonly kind: 'exit.started' }];
  const other = { ...first, body: { ...first.body, content: 'c'.repeat(64) } };
  expect(() => replay(script, [other])).toThrow('another text');
});
