// The order search in English: why each move stands where it does, what is proved and what is not, and what a substitution
// asks of people.
import type { Choice, Difference, FigureName, OrderResult } from '../../order/index.ts';
import type { Change, Retraining } from '../../order/changes.ts';
import type { Rewriting } from '../../order/substitute.ts';
import type { Step } from '../../domain/procedure.ts';
import type { TechniqueId } from '../../domain/techniques/index.ts';
import { evidence } from '../../evidence/index.ts';
import { CHANCE_STATUS } from '../events.ts';
import { ruleOf } from '../figures.ts';
import { duration } from '../numbers.ts';
import type { Setting } from '../words.ts';
import { counted, percent, STATUS_WORDS } from './numbers.ts';
import { capital, personPhrase } from './phrases.ts';
import { problemWords } from './problems.ts';
import { stepLabel, stepSentence } from './steps.ts';
import { techniqueName } from './techniques.ts';

const FIGURE_NAMES: Readonly<Record<FigureName, string>> = {
  impossible: 'the number of steps that cannot be done',
  'open.mucosa': 'the number of open routes to mucosa',
  'open.skin': 'the number of open routes to skin',
  'open.clothes-shoes': 'the number of open routes to clothes or shoes',
  'open.clean-side': 'the number of open routes to the clean side',
  'chance.mucosa': 'the chance of reaching mucosa',
  'chance.skin': 'the chance of reaching skin',
  'chance.clothes-shoes': 'the chance of reaching clothes or shoes',
  'chance.clean-side': 'the chance of reaching the clean side',
  departures: 'the number of departures from published practice',
  seconds: 'the time',
};

function figureValue(figure: FigureName, value: number): string {
  if (figure === 'seconds') return duration(value);
  return figure.startsWith('chance') ? percent(value) : String(value);
}

const status = (figure: FigureName): string =>
  figure === 'seconds' || figure.startsWith('chance') ? ` (${STATUS_WORDS[CHANCE_STATUS]})` : '';

/** 'the chance of reaching skin rises from 0.4 % to 0.9 % (judgement)'. */
export function differenceWords({ figure, from, to }: Difference): string {
  const [before, after] = [figureValue(figure, from), figureValue(figure, to)];
  const verb = to > from ? 'rises' : 'falls';
  const slightly = before === after;
  const how = slightly ? `${verb} by less than ${before} shows` : `${verb} from ${before} to ${after}`;
  return `${FIGURE_NAMES[figure]} ${how}${status(figure)}`;
}

const stepOf = ({ steps }: Setting, id: string): Step | undefined => steps.find((step) => step.id === id);

const label = (setting: Setting, id: string): string => {
  const step = stepOf(setting, id);
  return step ? stepLabel(setting, step) : id;
};

/** What the alternative is, as the beginning of a sentence. */
function alternative(
  setting: Setting,
  { kind, step, instead }: Choice,
): { readonly chosen: string; readonly other: string } {
  const own = label(setting, step);
  if (kind === 'order')
    return { chosen: `${capital(own)} before: ${label(setting, instead)}`, other: 'the other way round' };
  if (kind === 'hygiene') return { chosen: `${capital(own)} here`, other: 'without it' };
  if (kind === 'helper') {
    const helper = stepOf(setting, step)?.helper;
    const by = helper === undefined ? '' : ` helped by ${personPhrase(setting, helper)}`;
    return { chosen: `${capital(own)},${by}`, other: 'alone' };
  }
  const technique = stepOf(setting, step)?.technique;
  const way = technique === undefined ? 'as written' : techniqueName(technique);
  return { chosen: `${capital(own)}: ${way}`, other: `with "${techniqueName(instead as TechniqueId)}"` };
}

const ruleWords = (rule: string): string => {
  const known = ruleOf(rule);
  return known ? evidence(known).says.replace(/\.$/, '') : rule;
};

function reason(setting: Setting, choice: Choice, other: string): string {
  const { outcome, difference, problem, rule } = choice;
  if (outcome === 'impossible' && problem)
    return `because ${other} it cannot be done: ${problemWords(setting, problem.code, problem.params).wrong}.`;
  if (outcome === 'departs')
    return `because ${other} it would depart from published practice: ${ruleWords(rule ?? '')}.`;
  if (outcome === 'same') return `it could as well be done ${other}.`;
  if (!difference) return `because of ${other}.`;
  const told = differenceWords(difference);
  return outcome === 'better'
    ? `though ${other} ${told}: outside what the search may choose, or not followed in its time.`
    : `because ${other} ${told}.`;
}

/** 'Remove the goggles before: remove the respirator, because the other way round the chance ... rises from a to b.' */
export function choiceSentence(setting: Setting, choice: Choice): string {
  const { chosen, other } = alternative(setting, choice);
  return `${chosen}, ${reason(setting, choice, other)}`;
}

/** What is proved of the order, in one sentence. */
export function proofSentence({ proved, gap, kept, explored }: OrderResult): string {
  const tried = `${counted(explored.tried, 'partial order')} over ${counted(explored.scenes, 'scene')}`;
  const what = kept ? 'the given order' : 'this order';
  if (proved) return `Proved: no admissible order is better than ${what} (${tried} tried).`;
  const { figure, from, to } = gap ?? { figure: 'seconds', from: 0, to: 0 };
  return (
    `Not proved: orders that were not followed could still be better than ${what}. The gap: ` +
    `${FIGURE_NAMES[figure]} is ${figureValue(figure, to)}, and no admissible order is below ${figureValue(figure, from)}${status(figure)} (${tried} tried).`
  );
}

const REWRITING_SENTENCES: Readonly<Record<Rewriting, string>> = {
  'same-steps': 'The same steps will do.',
  'few-steps': 'A few steps move or are added.',
  'new-order': 'It takes a new order.',
};

export const rewritingSentence = (rewriting: Rewriting): string => REWRITING_SENTENCES[rewriting];

/** One step that is new, gone, moved or done in another way. */
export function changeSentence(before: Setting, after: Setting, { what, step, was }: Change): string {
  if (what === 'new') return `New: ${stepSentence(after, step)}`;
  if (what === 'gone') return `No longer: ${stepSentence(before, step)}`;
  if (what === 'moved') return `At another place: ${stepSentence(after, step)}`;
  return `Otherwise: ${stepSentence(after, step)}${was ? ` Before: ${stepSentence(before, was)}` : ''}`;
}

/** 'The wearer learns 3 changed steps.' */
export function retrainingSentence(setting: Setting, { person, role, changes }: Retraining): string {
  const what = role === 'observer' ? 'reads and watches' : 'learns';
  return `${capital(personPhrase(setting, person))} ${what} ${counted(changes.length, 'changed step')}.`;
}

/** Why no order can be searched, or one thing cannot stand for another. */
export const REFUSALS = {
  donning: 'Only a doffing has an order to search; this is a donning.',
  'nothing-worn': 'Nobody in this procedure wears anything that comes off.',
  unknown: 'Name two items, or two products, by their ids (docs/procedure-file.md).',
  'not-alike': 'An item can stand only for an item, a product only for a product.',
  'not-used': 'This procedure does not use it.',
  'used-already': 'Both are worn already.',
} as const;
