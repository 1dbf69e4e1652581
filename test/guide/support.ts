// Exits for tests: a small doffing that holds one of everything, every published procedure with a usual screen, a shell that
// stores at once, and the entries that it was given.
import {
  begin,
  type Begun,
  type Effect,
  type Event,
  type GuideEntry,
  type Mode,
  next,
  type People,
  type Press,
  type Script,
  scriptOf,
  type Setup,
  type State,
  type UnitSettings,
} from '../../src/guide/index.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { person, procedure, step } from '../support/procedure.ts';

export const OBSERVER = 'p-obs1';
export const PEOPLE: People = { wearer: 'p-wea1', observer: OBSERVER, assistants: ['p-ass1'] };
const CONTENT = 'a'.repeat(64);
export const APPROVAL = {
  content: CONTENT,
  by: ['p-lead1'],
  on: '2026-03-01',
  reviewOn: '2027-03-01',
} as const;
/** 25 November 2026, noon. */
export const NOON = Date.UTC(2026, 10, 25, 12);
/** A 24-inch screen read from three metres. */
export const WALL = { widthMillimetres: 531, heightMillimetres: 299, distanceMetres: 3 } as const;

const UNIT: UnitSettings = { display: WALL, languages: {} };

export const setupOf = (of: Procedure, unit: Partial<UnitSettings> = {}): Setup => ({
  identity: { procedure: 'a-test', version: of.version, content: CONTENT },
  procedure: of,
  unit: { ...UNIT, ...unit },
});

/** Gown, gloves, a wiped shoe and a fresh glove: short, and with a contact, a rub and a drying to be timed. */
export const SMALL: Procedure = procedure({
  people: [
    person({ id: 'wearer', role: 'wearer', wears: ['gown', 'gloves'] }),
    person({ id: 'observer', role: 'observer', wears: [] }),
  ],
  agents: ['enveloped'],
  steps: [
    step('call', 'say', { who: 'observer' }),
    step('gloves-off', 'remove', { items: ['gloves'] }),
    step('rub', 'sanitise', { product: 'alcohol-hand-rub' }),
    step('gloves-on', 'put-on', { items: ['gloves'] }),
    step('chair', 'wipe', { fixture: 'chair', product: 'disinfectant-wipe' }),
    step('gown-off', 'remove', { items: ['gown'] }),
  ],
});

/** Two steps of it. */
export const TINY: Procedure = { ...SMALL, steps: SMALL.steps.slice(1, 3) };

export const SMALL_DONNING: Procedure = procedure({
  kind: 'donning',
  people: [person({ id: 'wearer', role: 'wearer' }), person({ id: 'observer', role: 'observer', wears: [] })],
  agents: ['enveloped'],
  steps: [
    step('rub', 'sanitise', { product: 'alcohol-hand-rub' }),
    step('gown-on', 'put-on', { items: ['gown'] }),
  ],
});

const SCRIPTS = new WeakMap<Procedure, Script>();

export function scriptFor(of: Procedure): Script {
  const known = SCRIPTS.get(of) ?? scriptOf(setupOf(of));
  SCRIPTS.set(of, known);
  return known;
}

/** One exit as a shell runs it: each entry is stored before the next event. */
export interface Run {
  readonly state: State;
  readonly stored: readonly GuideEntry[];
  readonly effects: readonly Effect[];
  readonly at: number;
}

const appended = (effects: readonly Effect[]): readonly GuideEntry[] =>
  effects.flatMap((effect) => (effect.do === 'append' ? effect.entries : []));

/** Acknowledges what was appended, as a store does that answers at once. */
function settle(run: Run, effects: readonly Effect[]): Run {
  const entries = appended(effects);
  if (entries.length === 0) return { ...run, effects };
  const fresh = entries.filter(({ id }) => !run.stored.some((one) => one.id === id));
  const event: Event = { is: 'stored', entries: entries.map(({ id }) => id), at: run.at, by: null };
  const [state, due] = next(run.state, event);
  return { ...run, state, stored: [...run.stored, ...fresh], effects: [...effects, ...due] };
}

export function started(begun: Begun, at = NOON): Run {
  if (!begun.ok) throw new Error(`it did not begin: ${begun.bar}`);
  return settle({ state: begun.state, stored: [], effects: [], at }, begun.effects);
}

export function beginWith(script: Script, drill = true): Run {
  const mode: Mode = drill ? { is: 'drill' } : { is: 'exit', approval: APPROVAL };
  return started(begin(script, PEOPLE, mode, { exit: 'x1', room: 'room-1', at: NOON, by: OBSERVER }));
}

/** One event, a second later, stored at once. */
export function tell(run: Run, event: Event): Run {
  const [state, effects] = next(run.state, event);
  return settle({ ...run, state, at: event.at }, effects);
}

export const press = (run: Run, what: Press, by: string = OBSERVER, after = 1000): Run =>
  tell(run, { ...what, at: run.at + after, by });

export const wait = (run: Run, seconds: number): Run =>
  tell(run, { is: 'time', at: run.at + seconds * 1000, by: null });

/** Reads on until the line is of this group, everything seen, every time waited for. */
export function readTo(run: Run, group: string): Run {
  let here = run;
  for (let guard = 0; guard < 2000; guard += 1) {
    const { core } = here.state;
    const line = core.script.lines[core.line];
    if (!line || line.group === group || core.ended) return here;
    here = onward(here);
  }
  throw new Error(`never reached ${group}`);
}

/** The plainest press that leads on from here. */
export function onward(run: Run): Run {
  const { core } = run.state;
  const line = core.script.lines[core.line]!;
  if (line.kind === 'question') return press(run, { is: 'answer', question: line.question!, reply: 'no' });
  const owed = (core.script.timers[line.step] ?? []).filter(
    ({ id }) => !core.timers.some((timer) => timer.id === id && timer.ended),
  );
  if (line.kind === 'look' && owed.length > 0) {
    return wait(press(run, { is: 'start-timer' }), Math.max(...owed.map(({ seconds }) => seconds)));
  }
  const answers = ['back', 'look', 'hold', 'all-round'].includes(line.kind) && line.part === line.parts;
  if (line.kind === 'inside') return press(run, { is: 'leave' });
  if (line.kind === 'finish') return press(run, { is: 'end' });
  return press(run, answers ? { is: 'seen' } : { is: 'forward' });
}
