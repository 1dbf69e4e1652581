// Two procedures side by side, and what a run uses up: the sentences stand in the language's tables.
import type { StepRow } from '../../compare/align.ts';
import type { Quantity } from '../../costing/supply.ts';
import type { AroundWords, CompareWords, DifferenceToSay } from '../compare.ts';
import { isWearer } from '../given.ts';
import { duration, pointsIn, signed } from '../numbers.ts';
import type { Setting } from '../words.ts';
import { capital } from '../capital.ts';
import { fixturePhrase, personPhrase } from './phrases.ts';
import { stepSentence } from './steps.ts';
import type { Counted, Tongue } from './tongue.ts';

const counted = (count: number, [one, many]: Counted): string => `${count} ${count === 1 ? one : many}`;

function quantity({ comparing, grammar }: Tongue, { unit, count, pairs, singles = 0 }: Quantity): string {
  if (unit !== 'piece') return counted(count, comparing.units[unit]);
  if (pairs === undefined || count === 0) return String(count);
  return grammar.joined([
    ...(pairs > 0 ? [counted(pairs, comparing.pair)] : []),
    ...(singles > 0 ? [counted(singles, comparing.single)] : []),
  ]);
}

/** The wearer goes without saying. */
function told(tongue: Tongue, setting: Setting, index: number): string {
  const step = setting.steps[index];
  if (!step) return '';
  const sentence = stepSentence(tongue, setting, step);
  if (isWearer(setting, step.who)) return sentence;
  return `${capital(personPhrase(tongue, setting, step.who).text)}: ${sentence}`;
}

function what({ comparing, grammar }: Tongue, { a, b, moved, changed }: StepRow): string {
  const [from, to] = [(a ?? 0) + 1, (b ?? 0) + 1];
  const fields = grammar.joined(changed.map((field) => comparing.fields[field]));
  if (moved) return fields ? comparing.movedAndChanged(fields, from, to) : comparing.moved(from, to);
  return fields ? comparing.changed(fields, from, to) : comparing.unchanged(from, to);
}

function stepRow(tongue: Tongue, a: Setting, b: Setting, row: StepRow): string {
  const { added, leftOut, beforeAndNow } = tongue.comparing;
  if (row.a === null) return added((row.b ?? 0) + 1, told(tongue, b, row.b ?? -1));
  if (row.b === null) return leftOut(row.a + 1, told(tongue, a, row.a));
  const [before, now] = [told(tongue, a, row.a), told(tongue, b, row.b)];
  return `${what(tongue, row)} ${before === now ? now : beforeAndNow(before, now)}`;
}

function difference(
  { comparing, labels }: Tongue,
  { value, interval, excludesZero, status }: DifferenceToSay,
  write: (value: number) => string,
  unit: string,
  [less, more]: Counted,
): string {
  const { low, high } = interval;
  if (value === 0 && low === 0 && high === 0) return comparing.noDifference;
  const range = `${comparing.range(write(low), write(high))}; ${labels.statuses[status]}`;
  const which = excludesZero ? (value < 0 ? less : more) : comparing.cannotTell;
  return `${which}: ${write(value)}${unit} (${range})`;
}

export function compareWords(tongue: Tongue): Omit<CompareWords, keyof AroundWords> {
  const { comparing, labels, nouns, language } = tongue;
  const points = pointsIn(language);
  return {
    supply: (one) => {
      if (one.kind === 'item') return nouns.items[one.item].all;
      if (one.kind === 'mat')
        return one.product === undefined
          ? comparing.mats
          : comparing.soakedMats(labels.products[one.product]);
      const name = labels.products[one.product];
      return one.kind === 'product' || one.product === 'disinfectant-wipe'
        ? name
        : comparing.wettedCloths(name);
    },
    quantity: (one) => quantity(tongue, one),
    field: (field) => comparing.fields[field],
    step: (a, b, row) => stepRow(tongue, a, b, row),
    gap: (a, b, { what: kind, only, id }) => {
      if (kind === 'kind') return comparing.kinds(labels.kinds[a.kind], labels.kinds[b.kind]);
      const setting = only === 'a' ? a : b;
      const say = kind === 'person' ? personPhrase : fixturePhrase;
      return comparing.onlyOne(only === 'a' ? 'a' : 'b', say(tongue, setting, id), kind === 'person');
    },
    chance: (one) => difference(tongue, one, points, ` ${comparing.points}`, comparing.chance),
    time: (one) => difference(tongue, one, (seconds) => signed(seconds, duration), '', comparing.time),
  };
}
