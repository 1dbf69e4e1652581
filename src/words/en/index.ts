// English: every sentence of the program, assembled from its tables.
import { reviewNote } from '../review.ts';
import { routeSentences } from '../routes.ts';
import type { Words } from '../words.ts';
import { AROUND } from './around.ts';
import { CAUTIONS } from './cautions.ts';
import { COMPARE } from './compare.ts';
import { evidenceWords } from './evidence.ts';
import { findingWords } from './findings.ts';
import { GUIDE } from './guide.ts';
import { KIND_TITLES, SEVERITY_WORDS } from './kinds.ts';
import { limitSentence } from './limits.ts';
import { editSentence, measureLines, mendWords } from './mends.ts';
import { AGENT_NOUNS, CLASS_NOUNS, ITEM_NOUNS, KIND_NOUNS, PRODUCT_NOUNS, ROLE_NOUNS } from './nouns.ts';
import { barrierWords, chanceWords, percent, STATUS_WORDS } from './numbers.ts';
import { ORDER } from './order.ts';
import { fixturePhrase, personPhrase, surfacePhrase } from './phrases.ts';
import { problemWords } from './problems.ts';
import { cleanedSentence, ROUTE, turnSentence } from './routes.ts';
import { eventSentence, SLIP_NAMES } from './slips.ts';
import { ACTION_NAMES, stepLabel, stepSentence } from './steps.ts';
import { techniqueName } from './techniques.ts';

export const ENGLISH: Words = {
  language: 'en',
  review: 'machine-made',
  reviewNote: reviewNote('en', 'machine-made'),
  isOverridden: () => false,
  cautions: CAUTIONS,
  kind: (kind) => KIND_NOUNS[kind],
  role: (role) => ROLE_NOUNS[role],
  item: (item) => ITEM_NOUNS[item].all,
  action: (action) => ACTION_NAMES[action],
  technique: techniqueName,
  product: (product) => PRODUCT_NOUNS[product],
  agent: (agent) => AGENT_NOUNS[agent],
  slip: (slip) => SLIP_NAMES[slip],
  surfaceClass: (surfaceClass) => CLASS_NOUNS[surfaceClass],
  severity: (severity) => SEVERITY_WORDS[severity],
  findingKind: (kind) => KIND_TITLES[kind],
  status: (status) => STATUS_WORDS[status],
  person: personPhrase,
  surface: (setting, surface) => surfacePhrase(setting, surface).text,
  fixture: fixturePhrase,
  stepLabel,
  step: stepSentence,
  event: eventSentence,
  problem: (setting, { code, params }) => problemWords(setting, code, params),
  finding: findingWords,
  route: (setting, finding) => routeSentences(ROUTE, setting, finding),
  cleaned: cleanedSentence,
  turn: turnSentence,
  edit: editSentence,
  mend: mendWords,
  measure: measureLines,
  limit: (limit) => `${limitSentence(limit)}${limit.agent ? ` (${AGENT_NOUNS[limit.agent]})` : ''}`,
  barriers: barrierWords,
  percent,
  chance: chanceWords,
  evidence: evidenceWords,
  compare: { ...COMPARE, ...AROUND },
  guide: GUIDE,
  order: ORDER,
};
