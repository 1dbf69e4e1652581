// What changed around the steps: the table stands in the language, the names it leans on are found here.
import { aroundWords } from '../aroundWords.ts';
import type { AroundWords } from '../compare.ts';
import { evidence } from '../../evidence/index.ts';
import { ruleOf } from '../figures.ts';
import { findingWords } from './findings.ts';
import { fixturePhrase, personPhrase, surfacePhrase, zonePhrase } from './phrases.ts';
import { stepReference } from './steps.ts';
import type { PriorId, Tongue } from './tongue.ts';

const isPrior = ({ priors }: Tongue, id: string): id is PriorId => Object.hasOwn(priors, id);

export const aroundWordsIn = (tongue: Tongue): AroundWords =>
  aroundWords(
    {
      table: tongue.around,
      ground: {
        person: (setting, id) => personPhrase(tongue, setting, id).text,
        surface: (setting, id) => surfacePhrase(tongue, setting, id).text,
        zone: (setting, id) => zonePhrase(tongue, setting, id).text,
        fixture: (setting, id) => fixturePhrase(tongue, setting, id).text,
        stepAt: (setting, index) => stepReference(tongue, setting, index).text,
        item: (item) => tongue.nouns.items[item].all,
        fixtureKind: (kind) => tongue.nouns.fixtures[kind].one,
        product: (product) => tongue.labels.products[product],
        agent: (agent) => tongue.labels.agents[agent],
        evidence: (id) => {
          const rule = ruleOf(id);
          if (rule) return tongue.rules[rule].text;
          return isPrior(tongue, id) ? tongue.priors[id] : tongue.inEnglish(evidence(id).says);
        },
        finding: (setting, finding) => findingWords(tongue, setting, finding),
        joined: tongue.grammar.joined,
        quoted: tongue.grammar.quoted,
      },
    },
    tongue.grammar.set,
  );
