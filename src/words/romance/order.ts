// The order search: its table stands in the language, what the table leans on is put together here.
import { pairWriter } from '../figures.ts';
import { percentsIn } from '../numbers.ts';
import type { OrderWords } from '../order.ts';
import { type OrderGround, orderWords } from '../orderWords.ts';
import { problemWords } from './findings.ts';
import { figureName } from './mends.ts';
import { personPhrase } from './phrases.ts';
import { stepLabel, stepSentence } from './steps.ts';
import type { Tongue } from './tongue.ts';

const groundOf = (tongue: Tongue): OrderGround => ({
  figureName: (figure) => figureName(tongue, figure),
  write: pairWriter(percentsIn(tongue.language, tongue.percentSpace, tongue.ordering.points)),
  status: (status) => tongue.labels.statuses[status],
  label: (setting, step) => stepLabel(tongue, setting, step),
  sentence: (setting, step) => stepSentence(tongue, setting, step),
  person: (setting, id) => personPhrase(tongue, setting, id).text,
  helped: (setting, helper) => tongue.steps.helped(personPhrase(tongue, setting, helper)),
  how: (technique) => tongue.steps.how[technique],
  problem: (setting, problem) => problemWords(tongue, setting, problem).wrong,
  rule: (rule) => tongue.rules[rule].title,
});

export const orderWordsIn = (tongue: Tongue): OrderWords =>
  orderWords(tongue.ordering, groundOf(tongue), tongue.grammar.set);
