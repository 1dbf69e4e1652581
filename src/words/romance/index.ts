// A language of this family as the program asks for it: its tables and sentences behind the interface of words.
import { evidence, type EvidenceId, source } from '../../evidence/index.ts';
import { ruleOf } from '../figures.ts';
import { reviewNote } from '../review.ts';
import { routeSentences } from '../routes.ts';
import type { EvidenceWords, Words } from '../words.ts';
import type { CompareWords } from '../compare.ts';
import { compareWords } from './compare.ts';
import { aroundWordsIn } from './around.ts';
import { barrierWords, findingWords, problemWords } from './findings.ts';
import { capital } from '../capital.ts';
import { orderWordsIn } from './order.ts';
import { editSentence, measureLines, mendWords, percentOf } from './mends.ts';
import { fixturePhrase, personPhrase, surfacePhrase } from './phrases.ts';
import { cleanedSentence, routeSayer, turnSentence } from './routes.ts';
import { eventSentence } from './slips.ts';
import { stepLabel, stepSentence } from './steps.ts';
import { typeset } from './typeset.ts';
import type { PriorId, Tongue } from './tongue.ts';

export type { Tongue } from './tongue.ts';

const isPrior = ({ priors }: Tongue, id: string): id is PriorId => Object.hasOwn(priors, id);

/** A rule is said in full. What nothing in the check rests on stands in English, and says so. */
function saysOf(tongue: Tongue, id: EvidenceId): string {
  const rule = ruleOf(id);
  if (rule) return tongue.grammar.set(tongue.rules[rule].text);
  return isPrior(tongue, id) ? tongue.grammar.set(tongue.priors[id]) : tongue.inEnglish(evidence(id).says);
}

/** Titles stay in the language of the source, and so does the place in it, which is marked. */
function evidenceWords(tongue: Tongue, id: EvidenceId): EvidenceWords {
  const record = evidence(id);
  const { title, body, year } = source(record.source.id);
  const from = `${title}. ${body}${year === null ? '' : `, ${year}`}.`;
  return {
    says: saysOf(tongue, id),
    source: `${from} ${tongue.inEnglish(record.where)}`,
    status: tongue.labels.statuses[record.status],
  };
}

type Names = Pick<
  Words,
  | 'kind'
  | 'role'
  | 'item'
  | 'action'
  | 'technique'
  | 'product'
  | 'agent'
  | 'slip'
  | 'surfaceClass'
  | 'severity'
  | 'findingKind'
  | 'status'
>;

function namesOf({ labels, nouns, grammar: { set } }: Tongue): Names {
  return {
    kind: (kind) => labels.kinds[kind],
    role: (role) => nouns.roles[role].all,
    item: (item) => set(nouns.items[item].all),
    action: (action) => labels.actions[action],
    technique: (technique) => set(labels.techniques[technique]),
    product: (product) => set(labels.products[product]),
    agent: (agent) => labels.agents[agent],
    slip: (slip) => set(labels.slips[slip]),
    surfaceClass: (surfaceClass) => labels.classes[surfaceClass],
    severity: (severity) => labels.severities[severity],
    findingKind: (kind) => labels.findingKinds[kind],
    status: (status) => labels.statuses[status],
  };
}

function comparing(tongue: Tongue): CompareWords {
  const { set } = tongue.grammar;
  const made = compareWords(tongue);
  return {
    supply: (supply) => set(made.supply(supply)),
    quantity: made.quantity,
    field: made.field,
    step: (a, b, row) => set(made.step(a, b, row)),
    gap: (a, b, gap) => set(made.gap(a, b, gap)),
    chance: (one) => set(made.chance(one)),
    time: (one) => set(made.time(one)),
    ...aroundWordsIn(tongue),
  };
}

type Sentences = Pick<
  Words,
  'problem' | 'finding' | 'route' | 'cleaned' | 'turn' | 'edit' | 'mend' | 'measure' | 'limit'
>;

function sentencesOf(tongue: Tongue): Sentences {
  const { set } = tongue.grammar;
  return {
    problem: (setting, problem) => {
      const { wrong, mend } = problemWords(tongue, setting, problem);
      return { wrong: set(wrong), mend: set(mend) };
    },
    finding: (setting, finding) => {
      const { title, text } = findingWords(tongue, setting, finding);
      return { title: set(capital(title)), text: set(text) };
    },
    route: (setting, finding) =>
      routeSentences(routeSayer(tongue), setting, finding).map((one) => ({ ...one, text: set(one.text) })),
    cleaned: (setting, surface, step) => set(cleanedSentence(tongue, setting, surface, step)),
    turn: (setting, turn, step) => set(turnSentence(tongue, setting, turn, step)),
    edit: (setting, edit) => set(editSentence(tongue, setting, edit)),
    mend: (setting, mend) => {
      const { sentence, changes } = mendWords(tongue, setting, mend);
      return { sentence: set(sentence), changes: changes.map(set) };
    },
    measure: (measure) => measureLines(tongue, measure).map(set),
    limit: ({ code, params, agent }) =>
      set(`${tongue.labels.limits[code](params)}${agent ? ` (${tongue.labels.agents[agent]})` : ''}`),
  };
}

/** Every sentence leaves through the language's typesetting. */
export function romanceWords(tongue: Tongue): Words {
  const { set } = tongue.grammar;
  const percent = percentOf(tongue);
  return {
    language: tongue.language,
    review: 'machine-made',
    reviewNote: reviewNote(tongue.language, 'machine-made'),
    isOverridden: () => false,
    cautions: tongue.cautions.map(set),
    ...namesOf(tongue),
    person: (setting, person) => set(personPhrase(tongue, setting, person).text),
    surface: (setting, surface) => set(surfacePhrase(tongue, setting, surface).text),
    fixture: (setting, id) => set(fixturePhrase(tongue, setting, id).text),
    stepLabel: (setting, step) => set(stepLabel(tongue, setting, step)),
    step: (setting, step) => set(stepSentence(tongue, setting, step)),
    event: (setting, key) => set(eventSentence(tongue, setting, key)),
    ...sentencesOf(tongue),
    barriers: (barriers) => barrierWords(tongue, barriers),
    percent,
    chance: (chance, status) => `${percent(chance)} (${tongue.labels.statuses[status]})`,
    evidence: (id) => evidenceWords(tongue, id),
    compare: comparing(tongue),
    guide: typeset(tongue.guiding, set),
    order: orderWordsIn(tongue),
  };
}
