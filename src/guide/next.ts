// The guide: an event in, a state and effects out. Entries come first: the screen moves when the store has said that they
// are kept, and until then shows that it is saving. A stop, an emergency and a timer that is up do not wait for it. Where the
// store fails the screen stays on its line and says so; one press of the observer's goes on all the same, from then on
// without asking again until the store works, and what is not stored is sent again with whatever comes next.
import type { RefusalId } from '../domain/guiding.ts';
import { numbered } from './begin.ts';
import { decide, decideTime, type Decision, isPress } from './decide.ts';
import { effectsOf, isSearchable, rearmed, searchFor } from './effects.ts';
import { pagesOf } from './emergency.ts';
import type { Draft, GuideEntry } from './entries.ts';
import type { Effect, Event } from './events.ts';
import { evolve } from './evolve.ts';
import { doneOf, stepIdAt, type State } from './state.ts';

export type Step = readonly [state: State, effects: readonly Effect[]];

/** Shown before they are stored. */
const AT_ONCE: readonly Event['is'][] = ['stop', 'emergency'];
const CARDS: readonly Draft['kind'][] = ['emergency.opened', 'exit.resumed'];

const refused = (state: State, refusal: RefusalId): Step => [
  { ...state, refusal },
  [{ do: 'vibrate', what: 'refused' }],
];

/** Nothing waits any more: the screen shows all that was recorded, and what was held back is done. */
const settle = (state: State): Step =>
  state.saving.length > 0 ? [state, []] : [{ ...state, shown: state.core, held: [] }, state.held];

const without = (entries: readonly GuideEntry[], ids: readonly string[]): readonly GuideEntry[] =>
  entries.filter(({ id }) => !ids.includes(id));

function stored(state: State, ids: readonly string[]): Step {
  const [saving, unsaved] = [without(state.saving, ids), without(state.unsaved, ids)];
  const after: State = { ...state, saving, unsaved, adrift: state.adrift && unsaved.length > 0 };
  return unsaved.length > 0 && !after.adrift ? [after, []] : settle(after);
}

/** In the order in which they were recorded. */
const inOrder = (core: State['core'], entries: readonly GuideEntry[]): readonly GuideEntry[] => {
  const number = ({ id }: GuideEntry): number => Number(id.slice(core.exit.length + 1));
  return [...entries].sort((a, b) => number(a) - number(b));
};

/** What the store did not take. The screen stays where it is, unless the observer has said to go on without it. */
function failed(state: State, ids: readonly string[]): Step {
  const lost = state.saving.filter(({ id }) => ids.includes(id));
  const unsaved = inOrder(state.core, [...state.unsaved, ...lost]);
  const after: State = { ...state, saving: without(state.saving, ids), unsaved };
  return after.adrift ? settle(after) : [after, []];
}

/** Tells apart searches of one exit, also from those before a crash: entries only grow. */
const searchId = ({ core, searches }: State): string => `${core.exit}-search-${core.entries}-${searches + 1}`;

/** A search that is no longer about where the exit stands is asked again from there. */
function searching(
  state: State,
  drafts: readonly Draft[],
): readonly [State['search'], number, readonly Effect[]] {
  const { core, search, searches } = state;
  const done = doneOf(core);
  const recorded = drafts.some(({ kind }) => kind === 'exit.slip-recorded');
  const stale = search !== null && search.done !== done;
  if (core.offer || !isSearchable(core)) return [null, searches, []];
  if (!recorded && !stale) return [search, searches, []];
  const id = searchId(state);
  return [{ id, done }, searches + 1, [searchFor(core, id, done)]];
}

/** Records drafts: hands them to the store, with all that was not stored before. */
function record(state: State, drafts: readonly Draft[], event: Event): Step {
  if (drafts.length === 0) return event.is === 'time' ? [state, []] : [{ ...state, refusal: null }, []];
  const entries = numbered(state.core, drafts, event.at, event.by);
  const core = entries.reduce(evolve, state.core);
  const card = drafts.some(({ kind }) => CARDS.includes(kind)) ? 0 : state.card;
  const moved: State = { ...state, core, refusal: null, card };
  const [search, searches, asked] = searching(moved, drafts);
  const due = [...effectsOf(core, drafts), ...asked];
  const append: Effect = { do: 'append', entries: [...state.unsaved, ...entries] };
  const saving = [...state.saving, ...state.unsaved, ...entries];
  const sought = asked.length > 0 || core.offer ? null : state.sought;
  const sent: State = { ...moved, search, searches, sought, saving, unsaved: [] };
  if (AT_ONCE.includes(event.is))
    return [{ ...sent, shown: core, held: [] }, [append, ...state.held, ...due]];
  return [{ ...sent, held: [...state.held, ...due] }, [append]];
}

const decided = (state: State, decision: Decision, event: Event): Step =>
  'refused' in decision ? refused(state, decision.refused) : record(state, decision.drafts, event);

/** The next screen of the card of the emergency that is open; the last one stays. */
function turnCard(state: State): Step {
  const open = state.core.emergencies.at(-1);
  const last = open === undefined ? 0 : pagesOf(state.core.script, open).length - 1;
  return [{ ...state, card: Math.min(state.card + 1, last), refusal: null }, []];
}

/** Only to somebody who has no other part in this exit: nobody observes themselves. */
function handOver(state: State, to: string): Step {
  const { core } = state;
  const { observer, wearer, assistants } = core.people;
  if (core.ended) return refused(state, 'ended');
  return ['', observer, wearer, ...assistants].includes(to)
    ? refused(state, 'not-now')
    : [{ ...state, handover: to, refusal: null }, []];
}

/** What was not stored, again. */
const retry = (state: State): Step =>
  state.unsaved.length === 0
    ? [state, []]
    : [
        { ...state, saving: [...state.saving, ...state.unsaved], unsaved: [], refusal: null },
        [{ do: 'append', entries: state.unsaved }],
      ];

/** Reading goes on though nothing is stored; what the store was given counts as not stored until it answers. */
const goOn = (state: State): Step =>
  failed(
    { ...state, adrift: true, refusal: null },
    state.saving.map(({ id }) => id),
  );

function found(state: State, event: Extract<Event, { is: 'continuation' }>): Step {
  const { core, search } = state;
  if (search === null || search.id !== event.search || core.ended) return [state, []];
  const idle = { ...state, search: null };
  if (event.found === null || event.found === 'not-worked-out') {
    const is = event.found ?? 'nothing-better';
    return [{ ...idle, sought: { is, done: search.done } }, []];
  }
  const draft: Draft = {
    kind: 'exit.continuation-offered',
    body: {
      exit: core.exit,
      offer: `${core.exit}-offer-${core.offers + 1}`,
      step: stepIdAt(core),
      choices: [event.found.id],
      continuation: event.found,
    },
  };
  return record(idle, [draft], event);
}

/** Timers and the waking screen again, and the search that a crash took along. */
function woke(state: State): Step {
  const { core, searches } = state;
  const again = core.unsought && core.offer === null && isSearchable(core);
  if (!again) return [state, rearmed(core)];
  const search = { id: searchId(state), done: doneOf(core) };
  return [
    { ...state, search, searches: searches + 1 },
    [...rearmed(core), searchFor(core, search.id, search.done)],
  ];
}

/** Presses that need no entry, or wait for none. */
const ALWAYS: readonly Event['is'][] = ['stop', 'emergency', 'go-on', 'retry'];

function pressed(state: State, event: Parameters<typeof decide>[1]): Step {
  const isObserver = event.by === state.core.people.observer;
  if (state.shown !== state.core && !ALWAYS.includes(event.is))
    return refused(state, state.saving.length > 0 ? 'saving' : 'unsaved');
  if (event.is === 'go-on') return goOn(state);
  if (event.is === 'retry') return retry(state);
  if (event.is === 'hand-over')
    return isObserver ? handOver(state, event.to) : refused(state, 'observer-only');
  if (event.is === 'keep') return [{ ...state, handover: null, refusal: null }, []];
  if (event.is === 'forward' && isObserver && state.core.emergencies.length > 0) return turnCard(state);
  const step = decided(state, decide(state, event), event);
  return event.is === 'take-over' && step[0].refusal === null
    ? [{ ...step[0], handover: null }, step[1]]
    : step;
}

/** One event. Never throws for what a press says, never waits, never moves by itself. */
export function next(state: State, event: Event): Step {
  if (isPress(event)) return pressed(state, event);
  switch (event.is) {
    case 'time':
      return record(state, decideTime(state.core, event.at), event);
    case 'stored':
      return stored(state, event.entries);
    case 'store-failed':
      return failed(state, event.entries);
    case 'continuation':
      return found(state, event);
    default:
      return woke(state);
  }
}
