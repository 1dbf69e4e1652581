// Tried edits in English: what to change, and what that changes in the figures.
import type { Edit } from '../../check/edit.ts';
import type { Measure, Mend } from '../../check/finding.ts';
import type { Step } from '../../domain/procedure.ts';
import { evidence } from '../../evidence/index.ts';
import { CHANCE_STATUS } from '../events.ts';
import {
  addedBy,
  type Figure,
  type FigureGroup,
  figuresOf,
  isEstimate,
  newlyReached,
  readKey,
} from '../figures.ts';
import { isWearer } from '../given.ts';
import { duration } from '../numbers.ts';
import type { MendWords, Setting } from '../words.ts';
import { KIND_TITLES } from './kinds.ts';
import { barrierWords, percent, STATUS_WORDS } from './numbers.ts';
import { joined, personPhrase, surfacePhrase } from './phrases.ts';
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

const GROUPS: Readonly<Record<FigureGroup, string>> = {
  mucosa: 'mucosa',
  skin: 'skin',
  'clothes-shoes': 'clothes or shoes',
  'clean-side': 'the clean side',
};

/** As lists show it: 'Chance of reaching skin'. */
export function figureName(figure: Figure): string {
  if (figure.is === 'impossible') return 'Steps that cannot be done';
  if (figure.is === 'departures') return 'Departures from published practice';
  if (figure.is === 'seconds') return 'Time';
  return `${figure.is === 'open' ? 'Open routes to' : 'Chance of reaching'} ${GROUPS[figure.group]}`;
}

const figureValue = ({ is, value }: Figure): string =>
  is === 'chance' ? percent(value) : is === 'seconds' ? duration(value) : String(value);

const rests = (figure: Figure): string => (isEstimate(figure) ? ` (${STATUS_WORDS[CHANCE_STATUS]})` : '');

export const measureLines = (measure: Measure): readonly string[] =>
  figuresOf(measure).map((figure) => `${figureName(figure)}: ${figureValue(figure)}${rests(figure)}`);

/** Only what differs: 'Chance of reaching skin: 0.8 % -> 0.02 % (judgement)'. */
function changedLines(before: Measure, after_: Measure): readonly string[] {
  const now = figuresOf(after_).map(figureValue);
  return figuresOf(before).flatMap((figure, index) => {
    const [value, next] = [figureValue(figure), now[index] ?? ''];
    return next === value ? [] : [`${figureName(figure)}: ${value} -> ${next}${rests(figure)}`];
  });
}

/** A finding by its key: 'one slip away: the wearer's neck'. */
function keyWords(setting: Setting, key: string): string {
  const { code, kind, rule, where, step, isSurface } = readKey(setting, key);
  const what = rule ? evidence(rule).says.replace(/\.$/, '') : kind ? KIND_TITLES[kind] : code;
  const place = isSurface ? surfacePhrase(setting, where).text : where;
  return `${what.toLowerCase()}: ${step >= 0 ? stepReference(setting, step) : place}`;
}

const SHOWN = 4;

function keysWords(setting: Setting, keys: readonly string[]): string {
  const shown = keys.slice(0, SHOWN).map((key) => keyWords(setting, key));
  return [...shown, ...(keys.length > SHOWN ? [`and ${keys.length - SHOWN} more`] : [])].join('; ');
}

function addedLines(setting: Setting, mend: Mend): readonly string[] {
  const { noLongerOpen, fresh } = addedBy(mend);
  return [
    ...(noLongerOpen.length > 0 ? [`No longer open, but still ${keysWords(setting, noLongerOpen)}`] : []),
    ...(fresh.length > 0 ? [`New findings: ${keysWords(setting, fresh)}`] : []),
  ];
}

/** Ways to get there by one slip that were none before; shown by their places. */
function slipLines(setting: Setting, mend: Mend): readonly string[] {
  const reached = newlyReached(mend);
  if (reached.length === 0) return [];
  const places = [...new Set(reached.map((surface) => surfacePhrase(setting, surface).text))];
  const more = places.length > SHOWN ? [`and ${places.length - SHOWN} more`] : [];
  return [
    `New single slips or circumstances: ${reached.length} (to ${[...places.slice(0, SHOWN), ...more].join('; ')})`,
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
      ...slipLines(setting, mend),
    ],
  };
}
