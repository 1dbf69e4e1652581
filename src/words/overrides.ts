// A unit's own wording: sentences that stand in place of the program's, and who signed a language off. Checked
// before use, and marked wherever they are shown. A step's sentence names the one it stands for: read aloud, it must
// not outlive the step that it was written for.
import type { Finding } from '../check/finding.ts';
import { PROBLEM_CODES } from '../contacts/problem.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import { evidenceIds } from '../evidence/index.ts';
import { KIND_TITLES, WHY } from './en/kinds.ts';
import { type Language, languageOf, LANGUAGES } from './languages.ts';
import { reviewNote, type SignOff } from './review.ts';
import type { Setting, Words } from './words.ts';

/** Of a step: applied only while the program would say `insteadOf`. */
export interface StepSentence {
  readonly insteadOf: string;
  readonly say: string;
}

export interface Wording {
  readonly signedOff?: SignOff;
  /** By step id. */
  readonly steps: ReadonlyMap<string, StepSentence>;
  /** By finding code or caution key. */
  readonly sentences: ReadonlyMap<string, string>;
}

export type Overrides = Readonly<Partial<Record<Language, Wording>>>;

/** Keys of the cautions, in the order in which every language has them. */
export const CAUTION_KEYS = [
  'caution.does-not-replace',
  'caution.no-promise',
  'caution.chances',
  'caution.real-breach',
] as const;

const classes = Object.keys(WHY);
export const FINDING_CODES: readonly string[] = [
  ...[...PROBLEM_CODES, 'layering', 'not-worked-out'].map((code) => `impossible.${code}`),
  ...['open', 'accepted', 'one-slip'].flatMap((kind) => classes.map((end) => `${kind}.${end}`)),
  ...evidenceIds.filter((id) => id.startsWith('practice.')),
  'variant.omission',
  'variant.order',
  'coverage.bare',
  'coverage.left-on',
  'coverage.left-open',
  'acceptance.unmatched',
  'acceptance.void',
  'acceptance.overdue',
];

const HOLES = ['step', 'surface', 'events'] as const;
type Hole = (typeof HOLES)[number];

/** What a finding's sentence must still name, so that no wording hides where it is. */
const NEEDED: Readonly<Record<keyof typeof KIND_TITLES, readonly Hole[]>> = {
  impossible: [],
  open: ['surface', 'step'],
  accepted: ['surface', 'step'],
  'one-slip': ['surface', 'events'],
  practice: ['step'],
  variant: ['surface', 'step'],
  coverage: [],
  acceptance: [],
};

const kindOf = (code: string): keyof typeof KIND_TITLES =>
  (Object.keys(KIND_TITLES) as (keyof typeof KIND_TITLES)[]).find((kind) => code.startsWith(`${kind}.`)) ??
  'coverage';

export const OVERRIDE_FAULTS = [
  'not-a-map',
  'unknown-language',
  'unknown-entry',
  'bad-sign-off',
  'unknown-key',
  'not-a-sentence',
  'step-without-original',
  'unknown-placeholder',
  'missing-placeholder',
] as const;

export interface OverrideFault {
  readonly code: (typeof OVERRIDE_FAULTS)[number];
  /** Where in the file: language, entry, key. */
  readonly path: readonly string[];
  /** What was found or is missing. */
  readonly found: string;
}

const WRONG: Readonly<Record<OverrideFault['code'], (found: string) => readonly [string, string]>> = {
  'not-a-map': () => ['This must be entries of the form "key: value".', 'See docs/languages.md.'],
  'unknown-language': (found) => [
    `"${found}" is not a language of the program.`,
    `Known are ${LANGUAGES.join(', ')}.`,
  ],
  'unknown-entry': (found) => [
    `"${found}" is not known here.`,
    'A language has "signed-off", "steps" and "sentences".',
  ],
  'bad-sign-off': () => [
    'A sign-off names who signed and when.',
    'Write {by: name or role, date: 2026-01-31}.',
  ],
  'unknown-key': (found) => [
    `"${found}" is neither a finding code nor a caution.`,
    'Codes stand in brackets behind each finding; sentences of steps belong under "steps".',
  ],
  'not-a-sentence': () => [
    'This must be a sentence of at most 1000 characters in one line.',
    'Put it in quotes.',
  ],
  'step-without-original': () => [
    'The sentence of a step must name the one it stands for.',
    'Write {instead-of: "the present sentence", say: "the new one"}.',
  ],
  'unknown-placeholder': (found) => [
    `"{${found}}" is not filled in here.`,
    `Findings may use ${HOLES.map((hole) => `{${hole}}`).join(', ')}; other sentences none.`,
  ],
  'missing-placeholder': (found) => [
    `This sentence must contain "{${found}}", or nobody knows where it applies.`,
    `Add "{${found}}".`,
  ],
};

/** The English of a fault: what is wrong, and how to mend it. */
export function describeOverrideFault({ code, found }: OverrideFault): {
  readonly wrong: string;
  readonly mend: string;
} {
  const [wrong, mend] = WRONG[code](found);
  return { wrong, mend };
}

type Fields = Readonly<Record<string, unknown>>;
type Tell = (code: OverrideFault['code'], path: readonly string[], found?: string) => undefined;

const isMap = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isSentence = (value: unknown): value is string =>
  typeof value === 'string' && value.trim() !== '' && value.length <= 1000 && !/\p{Cc}/u.test(value);

function entriesOf(
  value: unknown,
  path: readonly string[],
  tell: Tell,
): readonly (readonly [string, unknown])[] {
  if (value === undefined || value === null) return [];
  if (isMap(value)) return Object.entries(value);
  tell('not-a-map', path);
  return [];
}

const ISO_DATE = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

function signOffOf(value: unknown, path: readonly string[], tell: Tell): SignOff | undefined {
  if (value === undefined) return undefined;
  const { by, date }: Fields = isMap(value) ? value : {};
  if (isSentence(by) && typeof date === 'string' && ISO_DATE.test(date)) return { signedBy: by, date };
  return tell('bad-sign-off', path);
}

const holesIn = (sentence: string): readonly string[] =>
  [...sentence.matchAll(/\{([^}]*)\}/g)].map(([, name = '']) => name);

function checkHoles(key: string, sentence: string, path: readonly string[], tell: Tell): void {
  const isCode = FINDING_CODES.includes(key);
  const allowed: readonly string[] = isCode ? HOLES : [];
  const holes = holesIn(sentence);
  for (const hole of holes) if (!allowed.includes(hole)) tell('unknown-placeholder', path, hole);
  const needed = isCode ? NEEDED[kindOf(key)] : [];
  for (const hole of needed) if (!holes.includes(hole)) tell('missing-placeholder', path, hole);
}

function sentencesOf(value: unknown, path: readonly string[], tell: Tell): ReadonlyMap<string, string> {
  const known = new Set<string>([...FINDING_CODES, ...CAUTION_KEYS]);
  const sentences = new Map<string, string>();
  for (const [key, sentence] of entriesOf(value, path, tell)) {
    const here = [...path, key];
    if (!known.has(key)) tell('unknown-key', here, key);
    else if (isSentence(sentence)) {
      checkHoles(key, sentence, here, tell);
      sentences.set(key, sentence);
    } else tell('not-a-sentence', here);
  }
  return sentences;
}

function stepsOf(value: unknown, path: readonly string[], tell: Tell): ReadonlyMap<string, StepSentence> {
  const steps = new Map<string, StepSentence>();
  for (const [id, entry] of entriesOf(value, path, tell)) {
    const here = [...path, id];
    const { 'instead-of': insteadOf, say, ...rest }: Fields = isMap(entry) ? entry : {};
    if (!isSentence(insteadOf) || Object.keys(rest).length > 0) tell('step-without-original', here);
    else if (isSentence(say)) {
      checkHoles(id, say, here, tell);
      steps.set(id, { insteadOf, say });
    } else tell('not-a-sentence', [...here, 'say']);
  }
  return steps;
}

const ENTRIES = new Set(['signed-off', 'steps', 'sentences']);

function wordingOf(language: string, value: unknown, tell: Tell): Wording {
  const fields = new Map(entriesOf(value, [language], tell));
  for (const name of fields.keys()) if (!ENTRIES.has(name)) tell('unknown-entry', [language, name], name);
  const signedOff = signOffOf(fields.get('signed-off'), [language, 'signed-off'], tell);
  return {
    ...(signedOff ? { signedOff } : {}),
    steps: stepsOf(fields.get('steps'), [language, 'steps'], tell),
    sentences: sentencesOf(fields.get('sentences'), [language, 'sentences'], tell),
  };
}

/** Checks a file of wording that was read into plain values. Nothing of it is to be used while there are faults. */
export function checkOverrides(value: unknown): {
  readonly overrides: Overrides;
  readonly faults: readonly OverrideFault[];
} {
  const faults: OverrideFault[] = [];
  const tell: Tell = (code, path, found = '') => {
    faults.push({ code, path, found });
    return undefined;
  };
  const overrides: Partial<Record<Language, Wording>> = {};
  if (!isMap(value)) tell('not-a-map', []);
  for (const [tag, entry] of isMap(value) ? Object.entries(value) : []) {
    const language = languageOf(tag);
    if (language === tag) overrides[language] = wordingOf(tag, entry, tell);
    else tell('unknown-language', [tag], tag);
  }
  return { overrides, faults };
}

const isStep = (what: Step | Finding): what is Step => 'action' in what;

/** A finding's own sentence with its holes filled; what was accepted in writing is still said after it. */
function filled(words: Words, setting: Setting, finding: Finding, sentence: string): string {
  const [first = -1] = finding.steps;
  const step = setting.steps[first];
  const values: Readonly<Record<string, string>> = {
    step: step ? `${first + 1} (${words.stepLabel(setting, step)})` : '0',
    surface: finding.surface === undefined ? '' : words.surface(setting, finding.surface),
    events: finding.events.map((key) => words.event(setting, key)).join('; '),
  };
  const { accepted: _, ...open } = finding;
  const accepted = words.finding(setting, finding).text.slice(words.finding(setting, open).text.length);
  return `${sentence.replaceAll(/\{([^}]*)\}/g, (_hole, name: string) => values[name] ?? '')}${accepted}`;
}

type OwnStep = (setting: Setting, step: Step) => string | undefined;

/** The order search with the unit's own sentences of steps inside its own. */
function ownOrder(words: Words, ownStep: OwnStep): Words['order'] {
  const swapped = (text: string, setting: Setting, step: Step): string =>
    text.replace(words.step(setting, step), (said) => ownStep(setting, step) ?? said);
  return {
    ...words.order,
    change: (before, after, change) => {
      const { what, step, was } = change;
      const said = swapped(words.order.change(before, after, change), what === 'gone' ? before : after, step);
      return was ? swapped(said, before, was) : said;
    },
  };
}

/** The words of a language with a unit's own sentences and sign-off in their place. */
export function withWording(words: Words, wording: Wording | undefined): Words {
  if (!wording) return words;
  const { steps, sentences, signedOff } = wording;
  const ownStep: OwnStep = (setting, step) => {
    const own = steps.get(step.id);
    return own?.insteadOf === words.step(setting, step) ? own.say : undefined;
  };
  return {
    ...words,
    ...(signedOff ? { review: signedOff, reviewNote: reviewNote(words.language, signedOff) } : {}),
    cautions: words.cautions.map((caution, at) => sentences.get(CAUTION_KEYS[at] ?? '') ?? caution),
    isOverridden: (setting, what) =>
      isStep(what) ? ownStep(setting, what) !== undefined : sentences.has(what.code),
    step: (setting, step) => ownStep(setting, step) ?? words.step(setting, step),
    order: ownOrder(words, ownStep),
    finding: (setting, finding) => {
      const said = words.finding(setting, finding);
      const own = sentences.get(finding.code);
      return own === undefined ? said : { ...said, text: filled(words, setting, finding, own) };
    },
  };
}

export interface UnusedSentence {
  /** `unused`: the procedure has no such step; `stale`: the step says something else now. */
  readonly why: 'unused' | 'stale';
  readonly step: string;
}

/** Sentences of steps that do not apply to this procedure. `words` without the unit's wording. */
export function unusedWording(
  words: Words,
  wording: Wording | undefined,
  procedure: Procedure,
): readonly UnusedSentence[] {
  return [...(wording?.steps ?? [])].flatMap(([id, { insteadOf }]): readonly UnusedSentence[] => {
    const step = procedure.steps.find((candidate) => candidate.id === id);
    if (!step) return [{ why: 'unused', step: id }];
    return words.step(procedure, step) === insteadOf ? [] : [{ why: 'stale', step: id }];
  });
}
