// Makes a script: sentences from the words of each language in use, broken to the unit's screen. Where languages stand
// side by side, their screens turn together: the parts of a sentence (what; how; where it goes) are kept level.
import { coverage } from '../check/coverage.ts';
import type { Performed } from '../contacts/interpret.ts';
import { type ItemGroup, itemKind } from '../domain/items.ts';
import { type NoticeId, QUESTIONS } from '../domain/guiding.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import { type Language, type Words, wordsFor } from '../words/index.ts';
import { printWordsFor } from '../words/print/index.ts';
import { type Fit, fitOf } from './fit.ts';
import { type Hold, holdsOf } from './holds.ts';
import { compiledFor } from './plans.ts';
import { level } from './level.ts';
import { isWithin, type Screenful } from './rows.ts';
import type { Line, Script, TooWide } from './script.ts';
import { languagesOf, type Setup } from './setup.ts';
import { timersAt } from './timers.ts';

interface Desk {
  readonly setup: Setup;
  readonly fit: Fit;
  readonly tongues: readonly Words[];
}

interface Group extends Pick<Line, 'group' | 'kind' | 'step' | 'for' | 'drowned' | 'question'> {
  readonly say: (words: Words) => string;
  readonly answer?: (words: Words) => string;
  /** One thought, not to be parted where a colon stands. */
  readonly whole?: boolean;
}

const languageOf = (words: Words): Language => words.language as Language;

/** The parts of a sentence that every language has: before and after its colon, before and after its semicolon. */
const partsOf = (sentence: string): readonly string[] => sentence.split(/(?<=[:;]) +/u);

/** Per language the screens of a text. Side by side, languages are kept level part by part where their parts agree. */
function levelled(
  { tongues, fit }: Desk,
  say: Group['say'],
  whole: boolean,
): readonly (readonly Screenful[])[] {
  const texts = tongues.map(say);
  const parts = texts.map(partsOf);
  const agree = new Set(parts.map((all) => all.length)).size === 1;
  if (whole || tongues.length === 1 || !agree) return level(texts, fit.characters);
  const columns = (parts[0] ?? []).map((_, at) =>
    level(
      parts.map((all) => all[at] ?? ''),
      fit.characters,
    ),
  );
  return tongues.map((_, tongue) => columns.flatMap((column) => column[tongue] ?? []));
}

const byLanguage = <Value>(
  tongues: readonly Words[],
  value: (words: Words, at: number) => Value,
): Partial<Record<Language, Value>> =>
  Object.fromEntries(tongues.map((words, at) => [languageOf(words), value(words, at)])) as Partial<
    Record<Language, Value>
  >;

function linesOf(desk: Desk, { say, answer, whole = false, ...group }: Group): readonly Line[] {
  const columns = levelled(desk, say, whole);
  const parts = columns[0]?.length ?? 0;
  return Array.from({ length: parts }, (_, at): Line => {
    const { question, ...rest } = group;
    return {
      ...rest,
      id: `${group.group}.${at + 1}`,
      part: at + 1,
      parts,
      texts: byLanguage(desk.tongues, (_words, tongue) => columns[tongue]?.[at] ?? []),
      ...(answer ? { answers: byLanguage(desk.tongues, answer) } : {}),
      ...(question === undefined ? {} : { question }),
    };
  });
}

const POWERED: readonly ItemGroup[] = ['powered-hood', 'blower'];

/** Whether anybody the step is for wears a powered respirator as it begins. */
function isDrowned(performed: Performed | undefined, people: readonly string[]): boolean {
  return people.some((person) =>
    performed?.before.bodies[person]?.layers.some(({ item }) => POWERED.includes(itemKind(item).group)),
  );
}

const doersOf = ({ who, helper }: Step): readonly string[] => [
  who,
  ...(helper === undefined ? [] : [helper]),
];

const answerTo =
  ({ action }: Step) =>
  (words: Words): string => {
    const { script } = printWordsFor(words.language);
    if (action === 'say') return script.ready;
    return action === 'inspect' ? script.looked : script.done;
  };

const observers = ({ people }: Procedure): readonly string[] =>
  people.filter(({ role }) => role === 'observer').map(({ id }) => id);
const wearers = ({ people }: Procedure): readonly string[] =>
  people.filter(({ role }) => role === 'wearer').map(({ id }) => id);

type Common = Pick<Group, 'step' | 'drowned'>;

/** What is said back before a step with a hold, and the hold after it. */
function holdGroups({ setup: { procedure } }: Desk, step: Step, common: Common): readonly [Group, Group] {
  return [
    {
      ...common,
      group: `${step.id}/back`,
      kind: 'back',
      for: doersOf(step),
      say: (words) => words.guide.sayBack(words.stepLabel(procedure, step)),
      whole: true,
    },
    {
      ...common,
      group: `${step.id}/hold`,
      kind: 'hold',
      for: procedure.people.map(({ id }) => id),
      say: (words) => words.guide.hold,
    },
  ];
}

function groupsOf(desk: Desk, step: Step, index: number, held: boolean): readonly Group[] {
  const { procedure } = desk.setup;
  const doers = doersOf(step);
  const drowned = isDrowned(compiledFor(procedure)[0]?.performed[index], doers);
  const common: Common = { step: index, drowned };
  const read: Group = {
    ...common,
    group: `${step.id}/read`,
    kind: 'read',
    for: doers,
    say: (words) => words.step(procedure, step),
  };
  const look: Group = {
    ...common,
    group: `${step.id}/look`,
    kind: 'look',
    for: observers(procedure),
    say: (words) => words.guide.look,
    answer: answerTo(step),
  };
  if (!held) return [read, look];
  const [back, hold] = holdGroups(desk, step, common);
  return [read, back, look, hold];
}

/** What comes after the last step. */
function closing({ setup: { procedure } }: Desk): readonly Group[] {
  const common = { step: procedure.steps.length, drowned: false };
  const reader = { ...common, for: observers(procedure) };
  if (procedure.kind === 'donning') {
    return [
      { ...reader, group: 'end/all-round', kind: 'all-round', say: ({ guide }) => guide.allRound },
      { ...reader, group: 'end/inside', kind: 'inside', say: ({ guide }) => guide.inside },
    ];
  }
  return [
    ...QUESTIONS.map(
      ({ id }): Group => ({
        ...common,
        group: `end/${id}`,
        kind: 'question',
        for: wearers(procedure),
        question: id,
        say: ({ guide }) => guide.questions[id],
      }),
    ),
    { ...reader, group: 'end/finish', kind: 'finish', say: ({ guide }) => guide.finish },
  ];
}

function tooWideIn(lines: readonly Line[], { characters }: Fit): readonly TooWide[] {
  return lines.flatMap(({ id, texts }) =>
    Object.entries(texts).flatMap(([language, screen]) =>
      isWithin(screen, characters) ? [] : [{ line: id, language: language as Language }],
    ),
  );
}

type Draft = Omit<Script, 'notices'>;

function noticesOf(
  { setup, fit, tooWide, bare }: Draft,
  holds: readonly Hold[] | undefined,
): readonly NoticeId[] {
  const { procedure, unit } = setup;
  const told: readonly (readonly [NoticeId, boolean])[] = [
    ['invented', procedure.invented],
    ['no-unit-plan', unit.plan === undefined],
    ['no-rescuer', unit.plan?.rescuer === undefined],
    ['no-wear-limit', unit.wear === undefined],
    ['holds-not-worked-out', holds === undefined],
    ['does-not-fit', fit.fault !== undefined || tooWide.length > 0],
    ['left-bare', bare.some(({ severity }) => severity === 'error')],
  ];
  return told.filter(([, holdsTrue]) => holdsTrue).map(([id]) => id);
}

function bareIn({ procedure }: Setup): readonly Finding[] {
  const [compiled] = compiledFor(procedure);
  return procedure.kind === 'donning' && compiled ? coverage(compiled) : [];
}
type Finding = Script['bare'][number];

/** The lines from a step on, to the end. */
function linesFrom(desk: Desk, from: number, holds: readonly Hold[]): readonly Line[] {
  const held = new Set(holds.map(({ step }) => step));
  const { steps } = desk.setup.procedure;
  const groups = steps.flatMap((step, index) =>
    index < from ? [] : groupsOf(desk, step, index, held.has(index)),
  );
  return [...groups, ...closing(desk)].flatMap((group) => linesOf(desk, group));
}

function deskOf(setup: Setup): Desk {
  const tongues = languagesOf(setup).map((language) => wordsFor(language, setup.unit.wording));
  return { setup, fit: fitOf(setup.unit.display), tongues };
}

function assembled(desk: Desk, done: readonly Line[], from: number): Script {
  const { setup, fit } = desk;
  const holds = holdsOf(setup.procedure);
  const lines = [...done, ...linesFrom(desk, from, holds ?? [])];
  const draft: Draft = {
    setup,
    fit,
    lines,
    timers: setup.procedure.steps.map((_, index) => timersAt(setup, index)),
    holds: holds ?? [],
    tooWide: tooWideIn(lines, fit),
    bare: bareIn(setup),
  };
  return { ...draft, notices: noticesOf(draft, holds) };
}

/** The script of a procedure for this unit's screen and languages. */
export const scriptOf = (setup: Setup): Script => assembled(deskOf(setup), [], 0);

const CONTINUED = new WeakMap<readonly Step[], WeakMap<Script, Script>>();

function continued(script: Script, from: number, steps: readonly Step[]): Script {
  const { setup } = script;
  const procedure = { ...setup.procedure, steps: [...setup.procedure.steps.slice(0, from), ...steps] };
  return assembled(
    deskOf({ ...setup, procedure }),
    script.lines.filter(({ step }) => step < from),
    from,
  );
}

/** The same exit with other steps from `from` on: all lines of the steps before keep their numbers. */
export function withSteps(script: Script, from: number, steps: readonly Step[]): Script {
  const known = CONTINUED.get(steps) ?? new WeakMap<Script, Script>();
  CONTINUED.set(steps, known);
  const found = known.get(script);
  if (found && found.setup.procedure.steps.length === from + steps.length) return found;
  const made = continued(script, from, steps);
  known.set(script, made);
  return made;
}
