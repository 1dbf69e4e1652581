// The order search in English: why each move stands where it does, what is proved and what is not, and what a substitution
// asks of people.
import { evidence } from '../../evidence/index.ts';
import { pairWriter } from '../figures.ts';
import { percentsIn } from '../numbers.ts';
import type { OrderWords } from '../order.ts';
import { type OrderGround, type OrderTable, orderWords } from '../orderWords.ts';
import { figureName } from './mends.ts';
import { counted, STATUS_WORDS } from './numbers.ts';
import { personPhrase } from './phrases.ts';
import { problemWords } from './problems.ts';
import { stepLabel, stepSentence } from './steps.ts';
import { TECHNIQUE_PHRASES } from './techniques.ts';

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Verbs of labels that take more than an '-ing'. */
const GERUNDS: Readonly<Record<string, string>> = {
  close: 'closing',
  put: 'putting',
  remove: 'removing',
  sit: 'sitting',
  tie: 'tying',
  untie: 'untying',
  unzip: 'unzipping',
  wipe: 'wiping',
  zip: 'zipping',
};

/** 'remove the gown' -> 'removing the gown'. */
function doing(label: string): string {
  const [verb = '', ...rest] = label.split(' ');
  return [GERUNDS[verb] ?? `${verb}ing`, ...rest].join(' ');
}

const TABLE: OrderTable = {
  figure: (is, name) =>
    `the ${is === 'impossible' || is === 'open' || is === 'departures' ? 'number of ' : ''}${lower(name)}`,
  points: (size) => `${size} percentage ${size === '1' ? 'point' : 'points'}`,
  slight: (within, rises) => `${rises ? 'higher' : 'lower'} by less than ${within}`,
  difference: (name, [from, to, within], rests, rises) => {
    const verb = rises ? 'rises' : 'falls';
    if (within === undefined) return `${name} ${verb} from ${from} to ${to}${rests}`;
    return `${name} ${verb} by less than ${within} and, rounded, is ${from} both times${rests}`;
  },
  chosen: {
    order: (step, next) => `${step} before ${doing(next)}`,
    technique: (step) => `${step} as written here`,
    helper: (step, helped) => `${step}${helped}`,
    hygiene: (step) => `${step} here`,
    numbered: (step, number) => `${step} (step ${number})`,
  },
  other: {
    order: 'the other way round',
    technique: (way) => `with “${way}”`,
    helper: 'without help',
    hygiene: 'without it',
  },
  reason: {
    worse: (other, difference) => `, because ${other} ${difference}.`,
    impossible: (other, wrong) => `, because ${other} this cannot be done: ${wrong}.`,
    departs: (other, rule) =>
      `, because ${other} this would depart from a published practice: “${rule.replace(/\.$/, '')}”.`,
    same: (other) => `; ${other}, no figure changes.`,
    better: (other, difference) =>
      `; ${other} ${difference}, but the search may not choose that, or did not follow it to its end.`,
  },
  tried: (tried, scenes) =>
    `${counted(tried, 'beginning')} of orders tried over ${counted(scenes, 'situation')}`,
  proved: (kept, tried) =>
    `Proved: no order that the search may choose is better than ${kept ? 'the given one' : 'this one'} (${tried}).`,
  notProved: (kept, name, [from, to, within], rests, tried) =>
    `Not proved: orders that were not followed to their end could still be better than ${kept ? 'the given one' : 'this one'}. ` +
    `The gap: ${name} is ${to}, and no order that the search may choose ${within === undefined ? `is below ${from}` : `lowers it by ${within} or more`}${rests} (${tried}).`,
  rewritings: {
    'same-steps': 'The same steps will do.',
    'few-steps': 'A few steps move or are added.',
    'new-order': 'It takes a new order.',
  },
  kept: 'Nothing is worse than before, except perhaps the time.',
  lost: 'Something is worse than before.',
  changes: {
    new: (now) => `New: ${now}`,
    gone: (was) => `Left out: ${was}`,
    moved: (now) => `At another place: ${now}`,
    changed: (now, was) => `Changed: ${now}${was && ` Before: ${was}`}`,
  },
  learns: (person, count, role) =>
    `${person} ${role === 'observer' ? 'reads and watches' : 'learns'} ${counted(count, 'changed step')}.`,
  refusals: {
    donning: 'Only a doffing has an order to search; this is a donning.',
    'nothing-worn': 'Nobody in this procedure wears anything that comes off.',
    unknown: 'Name two items, or two products, by their ids (docs/procedure-file.md).',
    'not-alike': 'An item can stand only for an item, a product only for a product.',
    'not-used': 'This procedure does not use it.',
    'used-already': 'Both are worn already.',
  },
};

const GROUND: OrderGround = {
  figureName,
  write: pairWriter(percentsIn('en', ' ', TABLE.points)),
  status: (status) => STATUS_WORDS[status],
  label: stepLabel,
  sentence: stepSentence,
  person: personPhrase,
  helped: (setting, helper) => `, helped by ${personPhrase(setting, helper)}`,
  how: (technique) => TECHNIQUE_PHRASES[technique],
  problem: (setting, { code, params }) => problemWords(setting, code, params).wrong,
  rule: (rule) => evidence(rule).says,
};

export const ORDER: OrderWords = orderWords(TABLE, GROUND);
