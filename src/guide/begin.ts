// How an exit begins: as a drill, with any procedure, or for real, from the very text that was approved and not after the
// approval's day of review. A drill with a procedure that is not approved says so for as long as it lasts.
import type { BarId } from '../domain/guiding.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import type { Draft, GuideEntry } from './entries.ts';
import type { Effect } from './events.ts';
import { evolve, startCore } from './evolve.ts';
import { effectsOf } from './effects.ts';
import type { Script } from './script.ts';
import type { Core, People, State } from './state.ts';
import { startWear } from './timing.ts';

/** Who approved which text, on which day, and until when: ISO days. */
export interface Approval {
  readonly content: string;
  readonly by: readonly string[];
  readonly on: string;
  readonly reviewOn: string;
}

export type Mode =
  | { readonly is: 'drill'; readonly approval?: Approval }
  | { readonly is: 'exit'; readonly approval?: Approval };

export interface Occasion {
  readonly exit: string;
  readonly room: string;
  /** Of the wearer to the room; the exit's own id when absent. */
  readonly visit?: string;
  readonly agent?: Agent;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Whoever pressed. */
  readonly by: string | null;
  /** Seconds in the suit before this began, for a doffing. */
  readonly inSuit?: number;
  /** What whoever begins was warned of and goes on with all the same, in words: recorded as notes of the exit. */
  readonly knowingly?: readonly { readonly warned: Warning; readonly text: string }[];
}

/** An exit for real begins with these only knowingly. */
export type Warning = 'no-assistant' | 'wearer-in-another' | 'departure-overdue';

/** Indices of the steps in which an assistant has a part. */
export function assistedSteps({ people, steps }: Procedure): readonly number[] {
  const assistants = people.filter(({ role }) => role === 'assistant').map(({ id }) => id);
  return steps.flatMap(({ who, of, helper }, index) =>
    [who, of, helper].some((one) => one !== undefined && assistants.includes(one)) ? [index] : [],
  );
}

export type Begun =
  | { readonly ok: true; readonly state: State; readonly effects: readonly Effect[] }
  | { readonly ok: false; readonly bar: BarId };

/** Why an exit for real does not begin; undefined where nothing bars it. */
function barTo({ identity }: Script['setup'], approval: Approval | undefined, at: number): BarId | undefined {
  if (!approval || approval.by.length === 0) return 'not-approved';
  if (approval.content !== identity.content) return 'approved-other-text';
  return new Date(at).toISOString().slice(0, 'YYYY-MM-DD'.length) > approval.reviewOn
    ? 'approval-ended'
    : undefined;
}

const idOf = (exit: string, number: number): string => `${exit}.${number}`;

/** Drafts as entries, numbered on from those there are. */
export const numbered = (
  core: Core,
  drafts: readonly Draft[],
  at: number,
  by: string | null,
): readonly GuideEntry[] =>
  drafts.map((draft, index): GuideEntry => {
    const id = idOf(core.exit, core.entries + index + 1);
    return { ...draft, id, at: new Date(at).toISOString(), by };
  });

/** A state in which nothing is on its way: the screen shows all that was recorded. */
export const settled = (core: Core, known: Pick<State, 'visit' | 'approved'>): State => ({
  core,
  shown: core,
  saving: [],
  unsaved: [],
  adrift: false,
  held: [],
  search: null,
  searches: 0,
  sought: null,
  handover: null,
  card: 0,
  refusal: null,
  ...known,
});

function startedBy(script: Script, people: People, drill: boolean, occasion: Occasion): Draft & GuideEntry {
  const { identity, procedure } = script.setup;
  const body = {
    exit: occasion.exit,
    drill,
    ...identity,
    agent: occasion.agent ?? procedure.agents[0] ?? 'enveloped',
    room: occasion.room,
    ...people,
    kind: procedure.kind,
  };
  const at = new Date(occasion.at).toISOString();
  return { kind: 'exit.started', body, id: idOf(occasion.exit, 1), at, by: occasion.by };
}

/** Begins at the first line; what began is being stored at once, and the first line is shown meanwhile. */
export function begin(script: Script, people: People, mode: Mode, occasion: Occasion): Begun {
  const bar = barTo(script.setup, mode.approval, occasion.at);
  if (people.observer === '') return { ok: false, bar: 'no-observer' };
  if (mode.is === 'exit' && bar) return { ok: false, bar };
  const { knowingly = [] } = occasion;
  const lacks = people.assistants.length === 0 && assistedSteps(script.setup.procedure).length > 0;
  if (mode.is === 'exit' && lacks && !knowingly.some(({ warned }) => warned === 'no-assistant'))
    return { ok: false, bar: 'no-assistant' };
  const started = startedBy(script, people, mode.is === 'drill', occasion);
  if (started.kind !== 'exit.started') throw new Error('an exit begins with its beginning');
  const first = startCore(script, started.body);
  const shown: Draft = {
    kind: 'exit.line-shown',
    body: { exit: occasion.exit, line: 0, step: script.setup.procedure.steps[0]?.id ?? 'end' },
  };
  const wear = occasion.inSuit === undefined ? [] : startWear(first, occasion.inSuit);
  const notes = knowingly.map(
    ({ text }): Draft => ({ kind: 'note.added', body: { about: 'exit', id: occasion.exit, text } }),
  );
  const drafts = [...notes, shown, ...wear];
  const rest = numbered(first, drafts, occasion.at, occasion.by);
  const core = rest.reduce(evolve, first);
  const entries = [started, ...rest];
  const known = { visit: occasion.visit ?? occasion.exit, approved: bar === undefined };
  return {
    ok: true,
    state: { ...settled(core, known), saving: entries },
    effects: [{ do: 'keep-awake', on: true }, { do: 'append', entries }, ...effectsOf(core, drafts)],
  };
}
