// Tried edits and what they change in the figures.
import type { Edit } from '../../check/edit.ts';
import type { Measure, Mend } from '../../check/finding.ts';
import type { Step } from '../../domain/procedure.ts';
import { CHANCE_STATUS } from '../events.ts';
import { addedBy, type Figure, figuresOf, isEstimate, newlyReached, readKey } from '../figures.ts';
import { isWearer } from '../given.ts';
import { duration, percentIn } from '../numbers.ts';
import type { MendWords, Setting } from '../words.ts';
import { barrierWords } from './findings.ts';
import { lower } from './grammar.ts';
import { personPhrase, surfacePhrase } from './phrases.ts';
import { stepLabel, stepReference, stepSentence } from './steps.ts';
import type { Tongue } from './tongue.ts';

/** The wearer goes without saying. */
const doneBy = (tongue: Tongue, setting: Setting, step: Step): string =>
  `${stepLabel(tongue, setting, step)}${isWearer(setting, step.who) ? '' : ` (${personPhrase(tongue, setting, step.who).text})`}`;

function insertSentence(tongue: Tongue, setting: Setting, at: number, steps: readonly Step[]): string {
  const { mends, grammar } = tongue;
  const grown: Setting = { ...setting, steps: setting.steps.toSpliced(at, 0, ...steps) };
  const where = at <= 0 ? mends.beginning : mends.after(stepReference(tongue, setting, at - 1));
  return mends.insert(where, grammar.joined(steps.map((step) => doneBy(tongue, grown, step))));
}

function moveSentence(tongue: Tongue, setting: Setting, from: number, to: number): string {
  const { mends } = tongue;
  const before = setting.steps.toSpliced(from, 1)[to - 1];
  const now = before ? setting.steps.findIndex((step) => step.id === before.id) : -1;
  const where = before ? mends.after(stepReference(tongue, setting, now)) : mends.beginning;
  return mends.move(stepReference(tongue, setting, from), where);
}

export function editSentence(tongue: Tongue, setting: Setting, edit: Edit): string {
  if (edit.do === 'insert') return insertSentence(tongue, setting, edit.at, edit.steps);
  if (edit.do === 'move') return moveSentence(tongue, setting, edit.from, edit.to);
  if (edit.do === 'remove') return tongue.mends.leaveOut(stepReference(tongue, setting, edit.at));
  const changed: Setting = { ...setting, steps: setting.steps.with(edit.at, edit.step) };
  return tongue.mends.replace(edit.at + 1, stepSentence(tongue, changed, edit.step));
}

/** As lists show it. */
export function figureName({ mends }: Tongue, figure: Figure): string {
  if (figure.is === 'impossible') return mends.impossible;
  if (figure.is === 'departures') return mends.departures;
  if (figure.is === 'seconds') return mends.time;
  const say = figure.is === 'open' ? mends.openTo : mends.chanceOf;
  return say(mends.groups[figure.group]);
}

export const percentOf = ({ language, percentSpace }: Tongue): ((chance: number) => string) =>
  percentIn(language, percentSpace);

function figureValue(tongue: Tongue, { is, value }: Figure): string {
  if (is === 'chance') return percentOf(tongue)(value);
  return is === 'seconds' ? duration(value) : String(value);
}

const rests = ({ labels }: Tongue, figure: Figure): string =>
  isEstimate(figure) ? ` (${labels.statuses[CHANCE_STATUS]})` : '';

export const measureLines = (tongue: Tongue, measure: Measure): readonly string[] =>
  figuresOf(measure).map(
    (figure) => `${figureName(tongue, figure)}: ${figureValue(tongue, figure)}${rests(tongue, figure)}`,
  );

/** Only what differs. */
function changedLines(tongue: Tongue, before: Measure, after: Measure): readonly string[] {
  const now = figuresOf(after).map((figure) => figureValue(tongue, figure));
  return figuresOf(before).flatMap((figure, index) => {
    const [value, next] = [figureValue(tongue, figure), now[index] ?? ''];
    return next === value
      ? []
      : [`${figureName(tongue, figure)}: ${value} -> ${next}${rests(tongue, figure)}`];
  });
}

function keyWords(tongue: Tongue, setting: Setting, key: string): string {
  const { code, kind, rule, where, step, isSurface } = readKey(setting, key);
  const what = rule ? tongue.rules[rule].title : kind ? tongue.labels.findingKinds[kind] : code;
  const place = isSurface ? surfacePhrase(tongue, setting, where).text : where;
  return `${lower(what)}: ${step >= 0 ? stepReference(tongue, setting, step).text : place}`;
}

const SHOWN = 4;

/** The first few, and how many more. */
const some = ({ mends }: Tongue, texts: readonly string[]): string =>
  [...texts.slice(0, SHOWN), ...(texts.length > SHOWN ? [mends.more(texts.length - SHOWN)] : [])].join('; ');

function addedLines(tongue: Tongue, setting: Setting, mend: Mend): readonly string[] {
  const { noLongerOpen, fresh } = addedBy(mend);
  const said = (title: string, keys: readonly string[]): readonly string[] =>
    keys.length === 0
      ? []
      : [
          `${title}: ${some(
            tongue,
            keys.map((key) => keyWords(tongue, setting, key)),
          )}`,
        ];
  return [...said(tongue.mends.noLongerOpen, noLongerOpen), ...said(tongue.mends.fresh, fresh)];
}

function slipLines(tongue: Tongue, setting: Setting, mend: Mend): readonly string[] {
  const reached = newlyReached(mend);
  if (reached.length === 0) return [];
  const places = [...new Set(reached.map((id) => surfacePhrase(tongue, setting, id).text))];
  return [tongue.mends.newSlips(reached.length, some(tongue, places))];
}

export function mendWords(tongue: Tongue, setting: Setting, mend: Mend): MendWords {
  const { barriers } = mend;
  const moved = barriers && barriers.before !== barriers.after;
  const line = moved
    ? [
        `${tongue.mends.barriers}: ${barrierWords(tongue, barriers.before)} -> ${barrierWords(tongue, barriers.after)}`,
      ]
    : [];
  return {
    sentence: editSentence(tongue, setting, mend.edit),
    changes: [
      ...line,
      ...changedLines(tongue, mend.before, mend.after),
      ...(mend.gone.length > 0 ? [`${tongue.mends.gone}: ${mend.gone.length}`] : []),
      ...addedLines(tongue, setting, mend),
      ...slipLines(tongue, setting, mend),
    ],
  };
}
