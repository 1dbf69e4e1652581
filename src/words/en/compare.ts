// Two procedures side by side, and what a run uses up, in English.
import type { StepRow } from '../../compare/align.ts';
import type { ComparedField } from '../../compare/steps.ts';
import type { Quantity } from '../../costing/supply.ts';
import type { AroundWords, CompareWords, DifferenceToSay } from '../compare.ts';
import { isWearer } from '../given.ts';
import { duration, pointsIn, signed } from '../numbers.ts';
import type { Setting } from '../words.ts';
import { ITEM_NOUNS, KIND_NOUNS, PRODUCT_NOUNS } from './nouns.ts';
import { counted, STATUS_WORDS } from './numbers.ts';
import { fixturePhrase, joined, personPhrase } from './phrases.ts';
import { capital } from '../capital.ts';
import { stepSentence } from './steps.ts';

const FIELDS: Readonly<Record<ComparedField, string>> = {
  who: 'who does it',
  action: 'action',
  items: 'items',
  side: 'side',
  part: 'part',
  of: 'whose it is',
  place: 'place',
  technique: 'technique',
  product: 'product',
  fixture: 'fixture',
  zone: 'zone',
  helper: 'helper',
  note: 'note',
};

const supply: CompareWords['supply'] = (what) => {
  if (what.kind === 'item') return ITEM_NOUNS[what.item].all;
  if (what.kind === 'mat')
    return what.product === undefined ? 'mats' : `mats soaked with ${PRODUCT_NOUNS[what.product]}`;
  if (what.kind === 'product' || what.product === 'disinfectant-wipe') return PRODUCT_NOUNS[what.product];
  return `cloths wetted with ${PRODUCT_NOUNS[what.product]}`;
};

const UNITS: Readonly<Record<Quantity['unit'], string>> = {
  piece: 'piece',
  wipe: 'wipe',
  use: 'use',
  mat: 'mat',
};

function quantity({ unit, count, pairs, singles = 0 }: Quantity): string {
  if (pairs === undefined || count === 0)
    return unit === 'piece' ? String(count) : counted(count, UNITS[unit]);
  const parts = [
    ...(pairs > 0 ? [counted(pairs, 'pair')] : []),
    ...(singles > 0 ? [pairs > 0 ? `${singles} single` : counted(singles, 'single piece')] : []),
  ];
  return joined(parts);
}

/** The wearer goes without saying. */
function told(setting: Setting, index: number): string {
  const step = setting.steps[index];
  if (!step) return '';
  const sentence = stepSentence(setting, step);
  return isWearer(setting, step.who) ? sentence : `${capital(personPhrase(setting, step.who))}: ${sentence}`;
}

function what({ a, b, moved, changed }: StepRow): string {
  const [from, to] = [(a ?? 0) + 1, (b ?? 0) + 1];
  const fields = joined(changed.map((field) => FIELDS[field]));
  if (moved && fields) return `Moved and changed (${fields}): step ${from} is now step ${to}.`;
  if (moved) return `Moved: step ${from} is now step ${to}.`;
  if (fields) return `Changed (${fields}): step ${from}, now step ${to}.`;
  return from === to ? `Unchanged: step ${to}.` : `Unchanged: step ${from}, now step ${to}.`;
}

const step: CompareWords['step'] = (a, b, row) => {
  if (row.a === null) return `New: step ${(row.b ?? 0) + 1}. ${told(b, row.b ?? -1)}`;
  if (row.b === null) return `Left out: step ${row.a + 1}. ${told(a, row.a)}`;
  const [before, now] = [told(a, row.a), told(b, row.b)];
  return before === now ? `${what(row)} ${now}` : `${what(row)} Before: ${before} Now: ${now}`;
};

const gap: CompareWords['gap'] = (a, b, { what: kind, only, id }) => {
  if (kind === 'kind')
    return `One is a ${KIND_NOUNS[a.kind]}, the other a ${KIND_NOUNS[b.kind]}: read their figures side by side, not as one better than the other.`;
  const [setting, which] = only === 'a' ? [a, 'first'] : [b, 'second'];
  const name = kind === 'person' ? personPhrase(setting, id) : fixturePhrase(setting, id);
  return `Only the ${which} has ${name}: what reaches ${kind === 'person' ? 'that person' : 'it'} cannot be compared, and is left out of the figures by class.`;
};

const points = pointsIn('en');

function difference(
  { value, interval, excludesZero, status }: DifferenceToSay,
  write: (value: number) => string,
  unit: string,
  [less, more]: readonly [string, string],
): string {
  const { low, high } = interval;
  if (value === 0 && low === 0 && high === 0) return 'no difference';
  const range = `90 % interval ${write(low)} to ${write(high)}; ${STATUS_WORDS[status]}`;
  const size = `${write(value)}${unit} (${range})`;
  return excludesZero ? `${value < 0 ? less : more}: ${size}` : `cannot be told apart: ${size}`;
}

export const COMPARE: Omit<CompareWords, keyof AroundWords> = {
  supply,
  quantity,
  field: (field) => FIELDS[field],
  step,
  gap,
  chance: (one) => difference(one, points, ' percentage points', ['lower', 'higher']),
  time: (one) => difference(one, (seconds) => signed(seconds, duration), '', ['shorter', 'longer']),
};
