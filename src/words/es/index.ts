// Spanish: its tables together.
import { romanceWords, type Tongue } from '../romance/index.ts';
import type { Words } from '../words.ts';
import { AROUND } from './around.ts';
import { COMPARING, MENDS } from './changes.ts';
import { FINDINGS, ROUTES } from './findings.ts';
import { SPANISH as GRAMMAR } from './grammar.ts';
import { GUIDE } from './guide.ts';
import { CAUTIONS, LABELS } from './labels.ts';
import { NOUNS } from './nouns.ts';
import { ORDERING } from './order.ts';
import { PROBLEMS } from './problems.ts';
import { PRIORS } from './priors.ts';
import { RULES } from './rules.ts';
import { SLIPS } from './slips.ts';
import { STEPS } from './steps.ts';

const TONGUE: Tongue = {
  language: 'es',
  cautions: CAUTIONS,
  percentSpace: '\u00a0',
  grammar: GRAMMAR,
  nouns: NOUNS,
  labels: LABELS,
  steps: STEPS,
  slips: SLIPS,
  problems: PROBLEMS,
  findings: FINDINGS,
  routes: ROUTES,
  mends: MENDS,
  comparing: COMPARING,
  around: AROUND,
  guiding: GUIDE,
  ordering: ORDERING,
  rules: RULES,
  priors: PRIORS,
  inEnglish: (text) => `(en inglés) ${text}`,
};

export const SPANISH: Words = romanceWords(TONGUE);
