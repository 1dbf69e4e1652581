// Tried edits in English: what to change, and what that changes in the figures.
import type { Edit } from '../../check/edit.ts';
import { FINDING_KINDS, type Measure, type Mend } from '../../check/finding.ts';
import type { Step } from '../../domain/procedure.ts';
import { evidence, evidenceIds } from '../../evidence/index.ts';
import { CHANCE_STATUS } from '../events.ts';
import type { MendWords, Setting } from '../words.ts';
import { barrierWords, duration, percent, STATUS_WORDS } from './numbers.ts';
import { KIND_TITLES } from './kinds.ts';
import { isWearer, joined, personPhrase, surfacePhrase } from './phrases.ts';
import { stepLabel, stepReference, stepSentence } from './steps.ts';

/** Where inserted steps go: 'after step 9 (...)', 'at the beginning'. */
const after = (setting: Setting, at: number): string =>
  at <= 0 ? 'at the beginning' : `after ${stepReference(setting, at - 1)}`;

/** The wearer goes without saying. */
const doneBy = (setting: Setting, step: Step): string =>
  `${stepLabel(setting, step)}${isWearer(setting, step.who) ? '' : ` (${personPhrase(setting, step.who)})`}`;

function insertSentence(setting: Setting, at: number, steps: readonly Step[]): string {
  const grown: Setting = { ...setting, steps: setting.steps.toSpliced(at, 0, ...steps) };
  return `Insert ${after(setting, at)}: ${joined(steps.map((step) => doneBy(grown, step)))}.`;
}

function moveSentence(setting: Setting, from: number, to: number): string {
  const rest = { ...setting, steps: setting.steps.toSpliced(from, 1) };
  const before = rest.steps[to - 1];
  const now = before ? setting.steps.findIndex((step) => step.id === before.id) : -1;
  return `Move ${stepReference(setting, from)} ${before ? `to after ${stepReference(setting, now)}` : 'to the beginning'}.`;
}

/** 'Insert after step 9 (remove the outer gloves): clean both gloved hands with alcohol hand rub.' */
export function editSentence(setting: Setting, edit: Edit): string {
  if (edit.do === 'insert') return insertSentence(setting, edit.at, edit.steps);
  if (edit.do === 'move') return moveSentence(setting, edit.from, edit.to);
  if (edit.do === 'remove') return `Leave out ${stepReference(setting, edit.at)}.`;
  const changed: Setting = { ...setting, steps: setting.steps.with(edit.at, edit.step) };
  return `Change step ${edit.at + 1} to: ${stepSentence(changed, edit.step)}`;
}

const GROUPS = ['mucosa', 'skin', 'clothes or shoes', 'the clean side'] as const;

interface Line {
  readonly name: string;
  readonly value: string;
}

const STATUS = STATUS_WORDS[CHANCE_STATUS];

/** Every figure of a measure, in the order of their weight. */
function lines(measure: Measure): readonly Line[] {
  return [
    { name: 'Steps that cannot be done', value: String(measure.impossible) },
    ...GROUPS.map((group, index) => ({
      name: `Open routes to ${group}`,
      value: String(measure.open[index] ?? 0),
    })),
    ...GROUPS.map((group, index) => ({
      name: `Chance of reaching ${group}`,
      value: percent(measure.chance[index] ?? 0),
    })),
    { name: 'Departures from published practice', value: String(measure.departures) },
    { name: 'Time', value: duration(measure.seconds) },
  ];
}

const rests = (name: string): string => (name.startsWith('Chance') || name === 'Time' ? ` (${STATUS})` : '');

export const measureLines = (measure: Measure): readonly string[] =>
  lines(measure).map(({ name, value }) => `${name}: ${value}${rests(name)}`);

/** Only what differs: 'Chance of reaching skin: 0.8 % -> 0.02 % (judgement)'. */
function changedLines(before: Measure, after_: Measure): readonly string[] {
  const now = lines(after_);
  return lines(before).flatMap(({ name, value }, index) => {
    const next = now[index]?.value ?? value;
    return next === value ? [] : [`${name}: ${value} -> ${next}${rests(name)}`];
  });
}

/** A finding by its key, `code where`, where `where` is a surface or a step: 'one slip away: the wearer's neck'. */
function keyWords(setting: Setting, key: string): string {
  const [code = '', where = ''] = key.split(' ');
  const [group = ''] = code.split('.');
  const kind = FINDING_KINDS.find((candidate) => candidate === group);
  const rule = evidenceIds.find((id) => id === code);
  const what = rule ? evidence(rule).says.replace(/\.$/, '') : kind ? KIND_TITLES[kind] : code;
  const index = setting.steps.findIndex((step) => step.id === where);
  const place =
    index >= 0
      ? stepReference(setting, index)
      : where.includes('.')
        ? surfacePhrase(setting, where).text
        : where;
  return `${what.toLowerCase()}: ${place}`;
}

const SHOWN = 4;

function keysWords(setting: Setting, keys: readonly string[]): string {
  const shown = keys.slice(0, SHOWN).map((key) => keyWords(setting, key));
  return [...shown, ...(keys.length > SHOWN ? [`and ${keys.length - SHOWN} more`] : [])].join('; ');
}

const whereIn = (key: string): string => key.slice(key.indexOf(' ') + 1);

/** An open route that becomes one slip away is no new trouble: it is said apart. */
function addedLines(setting: Setting, { gone, added }: Mend): readonly string[] {
  const wasOpen = new Set(gone.filter((key) => key.startsWith('open.')).map(whereIn));
  const better = added.filter((key) => key.startsWith('one-slip.') && wasOpen.has(whereIn(key)));
  const fresh = added.filter((key) => !better.includes(key));
  return [
    ...(better.length > 0 ? [`No longer open, but still ${keysWords(setting, better)}`] : []),
    ...(fresh.length > 0 ? [`New findings: ${keysWords(setting, fresh)}`] : []),
  ];
}

/** Ways to get there by one slip that were none before; shown by their places, worst first as the check lists them. */
function slipLines(setting: Setting, keys: readonly string[]): readonly string[] {
  if (keys.length === 0) return [];
  const places = [...new Set(keys.map((key) => surfacePhrase(setting, whereIn(key)).text))];
  const more = places.length > SHOWN ? [`and ${places.length - SHOWN} more`] : [];
  return [
    `New single slips or circumstances: ${keys.length} (to ${[...places.slice(0, SHOWN), ...more].join('; ')})`,
  ];
}

export function mendWords(setting: Setting, mend: Mend): MendWords {
  const { barriers } = mend;
  const moved = barriers && barriers.before !== barriers.after;
  return {
    sentence: editSentence(setting, mend.edit),
    changes: [
      ...(moved ? [`Barriers: ${barrierWords(barriers.before)} -> ${barrierWords(barriers.after)}`] : []),
      ...changedLines(mend.before, mend.after),
      ...(mend.gone.length > 0 ? [`Findings that go: ${mend.gone.length}`] : []),
      ...addedLines(setting, mend),
      ...slipLines(setting, mend.newSlips ?? []),
    ],
  };
}
