// Steps to choose from while somebody types: everything the vocabulary can say with the people, equipment, room and
// products of this draft, as whole sentences. The usual way of each comes before the others.
import { type ActionId, ACTION_IDS } from '../../../domain/actions.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { fixtureKind } from '../../../domain/room.ts';
import type { TechniqueId } from '../../../domain/techniques/index.ts';
import {
  fixtureChoices,
  itemChoices,
  othersThan,
  productChoices,
  techniqueChoices,
  togetherChoices,
} from './fields.ts';
import { refitted } from './refit.ts';
import type { NewStep } from './steps.ts';

type Make = (procedure: Procedure, base: NewStep) => readonly NewStep[];

const byItem: Make = (procedure, base) =>
  itemChoices(procedure, base).flatMap((item) => {
    const single: NewStep = { ...base, items: [item] };
    return [
      single,
      ...togetherChoices(procedure, single).map((other) => ({ ...base, items: [item, other] })),
    ];
  });

const byProduct: Make = (procedure, base) =>
  productChoices(procedure, base.action).map((product) => ({ ...base, product }));

const byFixture: Make = (procedure, base) =>
  fixtureChoices(procedure, base.action).map((fixture) => ({ ...base, fixture }));

const walkable: Make = (procedure, base) =>
  procedure.fixtures
    .filter(({ kind }) => fixtureKind(kind).underfoot)
    .map(({ id }) => ({ ...base, fixture: id }));

const MAKERS: Readonly<Record<ActionId, Make>> = {
  remove: byItem,
  'put-on': byItem,
  unfasten: byItem,
  fasten: byItem,
  sanitise: byProduct,
  wipe: (procedure, base) =>
    [...byItem(procedure, base), ...byFixture(procedure, base)].flatMap((one) => byProduct(procedure, one)),
  inspect: (procedure, base) => [
    base,
    ...othersThan(procedure, base.who).map((of) => ({ ...base, of })),
    ...byItem(procedure, base),
  ],
  say: (procedure, base) => [base, ...othersThan(procedure, base.who).map((helper) => ({ ...base, helper }))],
  move: ({ zones }, base) => zones.map(({ id }) => ({ ...base, zone: id })),
  'step-on': walkable,
  sit: byFixture,
  stand: (procedure, base) => [base, ...walkable(procedure, base)],
  touch: byFixture,
};

/** The usual way first, named nowhere; then each other way that fits. */
function ways(procedure: Procedure, step: NewStep): readonly NewStep[] {
  const others = techniqueChoices(step).slice(1);
  return [step, ...others.map((technique: TechniqueId) => ({ ...step, technique }))].map((one) =>
    refitted(procedure, one),
  );
}

export interface Suggestion {
  readonly key: string;
  readonly step: NewStep;
  readonly sentence: string;
  /** Words it is found by, in lower case. */
  readonly found: readonly string[];
}

/** Other words for the same, as people type them. */
const ALSO: Readonly<Record<ActionId, string>> = {
  remove: 'take off doff peel',
  'put-on': 'don wear',
  unfasten: 'open undo unzip untie',
  fasten: 'close zip tie',
  sanitise: 'hygiene rub disinfect wash sanitise hands',
  wipe: 'disinfect clean',
  inspect: 'inspect check look',
  say: 'say tell call',
  move: 'move walk enter leave',
  'step-on': 'step',
  sit: 'sit',
  stand: 'stand rise',
  touch: 'touch use press',
};

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}.%]+/u)
    .filter((word) => word !== '');

/** All steps that can be said. `say`: the sentence of a step with its doer; `names`: further words for it. */
export function suggestionsFor(
  procedure: Procedure,
  say: (step: NewStep) => string,
  names: (step: NewStep) => string,
): readonly Suggestion[] {
  const found = new Map<string, Suggestion>();
  for (const { id: who } of procedure.people) {
    for (const action of ACTION_IDS) {
      const steps = MAKERS[action](procedure, { who, action, items: [] });
      for (const step of steps.flatMap((one) => ways(procedure, one))) {
        const key = JSON.stringify(step);
        if (found.has(key)) continue;
        const sentence = say(step);
        found.set(key, {
          key,
          step,
          sentence,
          found: wordsIn(`${sentence} ${names(step)} ${ALSO[action]} ${action}`),
        });
      }
    }
  }
  return [...found.values()];
}

/** How far into a sentence the place of a word still tells what it is about. */
const HEAD = 6;

/** Those in which every typed word begins a word; where they stand at its head first, else in the given order. */
export function searched(
  suggestions: readonly Suggestion[],
  typed: string,
  most = 40,
): readonly Suggestion[] {
  const wanted = wordsIn(typed);
  const rank = ({ found }: Suggestion): number =>
    wanted.reduce((sum, word) => {
      const at = found.findIndex((candidate) => candidate.startsWith(word));
      return at < 0 ? Infinity : sum + Math.min(at, HEAD);
    }, 0);
  return suggestions
    .map((one) => ({ one, at: rank(one) }))
    .filter(({ at }) => at < Infinity)
    .sort((a, b) => a.at - b.at)
    .slice(0, most)
    .map(({ one }) => one);
}
