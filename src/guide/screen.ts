// Everything a screen needs, as data: what stands large and for whom, what may be pressed, which times run or are owed,
// what is suspect. Nothing is worked out by the page; nothing on it is a verdict.
import { EMERGENCY_IDS } from '../domain/emergencies.ts';
import type { EvidenceId } from '../evidence/index.ts';
import type { NoticeId, Outcome, RefusalId } from '../domain/guiding.ts';
import { type Language, wordsFor } from '../words/index.ts';
import { type Card, type CardPage, cardOf, pagesOf, rinseOf } from './emergency.ts';
import { OTHER } from './entries.ts';
import { type Exposed, exposedBy, type Reached, reachedBy } from './exposed.ts';
import type { Fit } from './fit.ts';
import type { Hold } from './holds.ts';
import type { Suspect } from './known.ts';
import { type PressName, pressesOf } from './presses.ts';
import { type Screenful, screensOf } from './rows.ts';
import type { Line } from './script.ts';
import { languageFor, type WearLimit } from './setup.ts';
import { findsAt, type Offered, slipsAt } from './slips.ts';
import {
  type Core,
  currentLine,
  doneOf,
  type Offer,
  rewound,
  running,
  type Sought,
  type State,
  type Timer,
} from './state.ts';
import { worsened } from './suspected.ts';
import type { TimerSpec } from './timers.ts';
import { pendingAt, startable } from './timing.ts';

/** What it is about at this moment, the most urgent first. */
export type Phase = 'emergency' | 'ended' | 'stopped' | 'hand-over' | 'recap' | 'offer' | 'reading';

/** Large text for one person of the procedure. `turns` of an emergency's action that needs several screens. */
export interface Large {
  readonly person: string;
  readonly language: Language;
  readonly rows: Screenful;
  /** Spoken in answer, where something is expected. */
  readonly answer?: string;
}

export interface Screen {
  readonly phase: Phase;
  readonly drill: boolean;
  readonly fit: Fit;
  readonly line: Line;
  /** Number of the step from 1, and of how many. */
  readonly step: number;
  readonly steps: number;
  readonly large: readonly Large[];
  /** Signals stand beside the words: somebody may not hear. */
  readonly signals: boolean;
  readonly hold?: Hold;
  readonly presses: readonly PressName[];
  readonly slips: readonly Offered[];
  readonly finds: readonly Offered[];
  /** All that run, whatever lies over the line, and those that the step still owes. */
  readonly timers: readonly (Timer & Pick<TimerSpec, 'evidence' | 'source'>)[];
  readonly owed: readonly TimerSpec[];
  readonly startable: readonly TimerSpec[];
  /** Made worse by what was recorded, the surest first; null where it could not be worked out. */
  readonly suspects: readonly Suspect[] | null;
  /** Deviations that no slip of the plan covers and nobody put in a place: what they touched is not known. */
  readonly unplaced: number;
  /** `page` of `pages`, and what stands on it. */
  readonly card?: Card & { readonly page: number; readonly pages: number; readonly shows: CardPage };
  readonly offer?: Offer;
  readonly searching: boolean;
  /** A search found nothing better, or could not be carried out; until the step behind it is being done. */
  readonly sought: Sought['is'] | null;
  /** Something of the body may be contaminated, and no card that fits it was opened since. */
  readonly exposed: Exposed | null;
  /** All of the body that may be, whatever card was opened. */
  readonly reached: Reached | null;
  readonly handover?: { readonly to: string; readonly lastAnswered: Line | null };
  readonly notices: readonly NoticeId[];
  readonly refusal: RefusalId | null;
  readonly saving: boolean;
  readonly unsaved: number;
  /** What was recorded is not stored, and so the line stays until it is, or until the observer goes on unsaved. */
  readonly stalled: boolean;
  /** The observer stays out; null where the unit's plan names nobody who goes in. */
  readonly rescuer: string | null;
  readonly outcome?: Outcome;
  /** The unit's limit of time in the suit with its source; what is published of such limits, for where it has none. */
  readonly wear: { readonly limit: WearLimit | null; readonly published: readonly EvidenceId[] };
}

/** No fixed limit was found; these are what single places kept to or measured. */
const WEAR: readonly EvidenceId[] = [
  'wear.no-limit',
  'wear.haverkort-2016',
  'wear.coca-2017',
  'wear.grelot-2016',
];

function phaseOf(core: Core, handover: string | null): Phase {
  if (core.emergencies.length > 0) return 'emergency';
  if (core.ended) return 'ended';
  if (core.stopped) return 'stopped';
  if (handover !== null) return 'hand-over';
  if (core.recap) return 'recap';
  return core.offer ? 'offer' : 'reading';
}

/** The line whose text is shown: while it is watched, what was read; in a recap, the step that was answered last. */
function textLine(core: Core): Line {
  const here = currentLine(core);
  const { lines } = core.script;
  const readOf = (line: Line, last: boolean): Line => {
    const read = lines.filter(({ step, kind }) => step === line.step && kind === 'read');
    return (last ? read.at(-1) : read[0]) ?? line;
  };
  if (core.recap && core.lastAnswered !== null) return readOf(lines[core.lastAnswered] ?? here, false);
  return here.kind === 'look' ? readOf(here, true) : here;
}

function largeOf(core: Core): readonly Large[] {
  const { setup } = core.script;
  const here = currentLine(core);
  const shown = textLine(core);
  const isObserver = (person: string): boolean =>
    setup.procedure.people.some(({ id, role }) => id === person && role === 'observer');
  return setup.procedure.people.map(({ id }): Large => {
    const language = languageFor(setup, id);
    const line = here.kind === 'look' && !core.recap && isObserver(id) ? here : shown;
    const answer = here.answers?.[language];
    return {
      person: id,
      language,
      rows: line.texts[language] ?? [],
      ...(answer === undefined ? {} : { answer }),
    };
  });
}

/** What stands over the line: a stop, or a screen of an emergency's card. */
function overlaid(core: Core, rows: (language: Language) => Screenful): readonly Large[] {
  const { setup } = core.script;
  return setup.procedure.people.map(({ id }): Large => {
    const language = languageFor(setup, id);
    return { person: id, language, rows: rows(language) };
  });
}

const two = (number: number): string => String(number).padStart(2, '0');

/** That it has ended, and when by the device's own time of day. */
function endedIn({ script: { setup, fit }, ended }: Core, language: Language): Screenful {
  const at = new Date(ended?.at ?? 0);
  const { line } = wordsFor(language, setup.unit.wording).guide.labels;
  const text = line.ended(`${two(at.getHours())}:${two(at.getMinutes())}`);
  return screensOf(text, fit.characters)[0] ?? [];
}

function largeFor(core: Core, phase: Phase, card: Screen['card']): readonly Large[] {
  const { setup, fit } = core.script;
  const stopped = (language: Language): Screenful =>
    screensOf(wordsFor(language, setup.unit.wording).guide.stopped, fit.characters)[0] ?? [];
  if (phase === 'stopped') return overlaid(core, stopped);
  if (phase === 'ended') return overlaid(core, (language) => endedIn(core, language));
  return card ? overlaid(core, (language) => card.shows.texts[language] ?? []) : largeOf(core);
}

function outcomeOf({ ended }: Core): Outcome | undefined {
  if (!ended) return undefined;
  if (ended.deviations > 0) return 'deviation-recorded';
  return ended.linesNotSeen > 0 || ended.how === 'broken-off' ? 'not-all-seen' : 'no-deviation-seen';
}

function noticesOf({ approved, shown }: State): readonly NoticeId[] {
  return [
    ...(shown.drill ? (['drill'] as const) : []),
    ...(approved ? [] : (['unapproved'] as const)),
    ...shown.script.notices,
  ];
}

/** The likely slips of the step that is read; of what is done, those of the step before as well. */
function offeredAt(
  core: Core,
  of: (procedure: Core['script']['setup']['procedure'], step: number) => readonly Offered[],
) {
  const { procedure } = core.script.setup;
  const { step, kind } = currentLine(core);
  const before = kind === 'read' && core.line === rewound(core) ? of(procedure, step - 1) : [];
  return step < procedure.steps.length ? [...of(procedure, step), ...before] : before;
}

/** Where a time comes from: its step's or its emergency's, or the unit's own limit. */
function groundOf(core: Core, { id, kind }: Timer): Pick<TimerSpec, 'evidence' | 'source'> {
  const { setup, timers } = core.script;
  if (kind === 'wear' || kind === 'wear-warning')
    return setup.unit.wear ? { source: setup.unit.wear.source } : {};
  const rinses = EMERGENCY_IDS.flatMap((emergency) => rinseOf(setup, emergency) ?? []);
  const spec = [...timers.flat(), ...rinses].find((one) => one.id === id);
  if (spec?.evidence !== undefined) return { evidence: spec.evidence };
  return spec?.source === undefined ? {} : { source: spec.source };
}

function cardAt(core: Core, page: number): Screen['card'] {
  const open = core.emergencies.at(-1);
  if (open === undefined) return undefined;
  const pages = pagesOf(core.script, open);
  const at = Math.min(page, pages.length - 1);
  const shows = pages[at] ?? { item: 0, texts: {} };
  return { ...cardOf(core.script.setup, open), page: at, pages: pages.length, shows };
}

function overOf(state: State): Pick<Screen, 'card' | 'handover'> {
  const { shown: core, handover } = state;
  const { lines } = core.script;
  const card = cardAt(core, state.card);
  const lastAnswered = core.lastAnswered === null ? null : (lines[core.lastAnswered] ?? null);
  return {
    ...(card ? { card } : {}),
    ...(handover === null ? {} : { handover: { to: handover, lastAnswered } }),
  };
}

/** As long as the next step is the one that it was about. */
function soughtAt({ shown: core, sought }: State): Sought['is'] | null {
  const isOver = core.offer !== null || core.ended !== null || !core.unsought;
  return sought === null || isOver || doneOf(core) > sought.done ? null : sought.is;
}

/** What was recorded means, and what became of the search for another way on. */
function afterSlip(
  state: State,
): Pick<Screen, 'suspects' | 'exposed' | 'reached' | 'unplaced' | 'searching' | 'sought'> {
  const { shown: core, search } = state;
  const suspects = worsened(core);
  const nowhere = core.deviations.filter(
    ({ slip, surfaces }) => slip.startsWith(OTHER) && surfaces.length === 0,
  );
  return {
    suspects,
    exposed: exposedBy(core, suspects),
    reached: reachedBy(core, suspects),
    unplaced: nowhere.length,
    searching: search !== null,
    sought: soughtAt(state),
  };
}

/** The screen of a state. All times are as recorded: the page compares them with its own clock. */
export function screenOf(state: State): Screen {
  const { shown: core, handover } = state;
  const phase = phaseOf(core, handover);
  const line = currentLine(core);
  const { script } = core;
  const over = overOf(state);
  const hold = script.holds.find(({ step }) => step === line.step);
  const outcome = outcomeOf(core);
  return {
    phase,
    drill: core.drill,
    fit: script.fit,
    line,
    step: Math.min(line.step + 1, script.setup.procedure.steps.length),
    steps: script.setup.procedure.steps.length,
    large: largeFor(core, phase, over.card),
    signals: line.drowned,
    ...(hold ? { hold } : {}),
    presses: pressesOf(state),
    slips: offeredAt(core, slipsAt),
    finds: offeredAt(core, findsAt),
    timers: running(core).map((timer) => ({ ...timer, ...groundOf(core, timer) })),
    wear: { limit: script.setup.unit.wear ?? null, published: WEAR },
    owed: pendingAt(core),
    startable: startable(core),
    ...afterSlip(state),
    ...over,
    ...(core.offer ? { offer: core.offer } : {}),
    notices: noticesOf(state),
    refusal: state.refusal,
    saving: state.saving.length > 0,
    unsaved: state.unsaved.length,
    stalled: state.shown !== state.core && state.saving.length === 0,
    rescuer: script.setup.unit.plan?.rescuer ?? null,
    ...(outcome === undefined ? {} : { outcome }),
  };
}
