// A step, named ('retirer les gants') or read aloud ('Retirez les gants : ...'): what it speaks of is put together
// here, how it is said stands in the language's table of verbs.
import { itemKind } from '../../domain/items.ts';
import type { Step } from '../../domain/procedure.ts';
import { lookedOver, techniqueOf } from '../given.ts';
import { handsBefore } from '../gloved.ts';
import type { Setting } from '../words.ts';
import { partOf, type Phrase, the, together } from './grammar.ts';
import { capital } from '../capital.ts';
import { fixturePhrase, itemPhrase, personPhrase, placePhrase, zonePhrase } from './phrases.ts';
import type { StepTold, Tongue } from './tongue.ts';

const TIED: ReadonlySet<string> = new Set(['neck-tie', 'waist-tie', 'strings']);

const ownerOf = (tongue: Tongue, setting: Setting, { of, who }: Step): Phrase | undefined =>
  of === undefined || of === who ? undefined : personPhrase(tongue, setting, of);

/** The items of a step, or the part of them that it names; the equipment where it names none. */
function objectOf(tongue: Tongue, setting: Setting, step: Step): Phrase {
  const { grammar, nouns } = tongue;
  const owner = ownerOf(tongue, setting, step);
  const items = together(
    grammar,
    step.items.map((item) => itemPhrase(tongue, item, step.side, owner)),
  );
  const whole = items ?? the(grammar, nouns.equipment);
  return step.part === undefined ? whole : partOf(grammar, the(grammar, nouns.parts[step.part]), whole);
}

function targetOf(tongue: Tongue, setting: Setting, step: Step, object: Phrase): Phrase {
  const owner = ownerOf(tongue, setting, step);
  const target = together(tongue.grammar, [
    ...(step.items.length > 0 ? [object] : []),
    ...(step.place === undefined ? [] : [placePhrase(tongue, step.place, owner)]),
    ...(step.fixture === undefined ? [] : [fixturePhrase(tongue, setting, step.fixture)]),
  ]);
  return target ?? object;
}

function toldOf(tongue: Tongue, setting: Setting, step: Step, verb: StepTold['verb']): StepTold {
  const object = objectOf(tongue, setting, step);
  const [item] = step.items;
  const looked = lookedOver(setting, step);
  return {
    verb,
    object,
    closure: item === undefined || step.part !== undefined ? undefined : itemKind(item).closure,
    tied: step.part !== undefined && TIED.has(step.part),
    target: targetOf(tongue, setting, step, object),
    hasItems: step.items.length > 0,
    toAnother: step.of !== undefined && step.of !== step.who,
    hands: handsBefore(setting, step) ?? 'mixed',
    ...(step.fixture === undefined ? {} : { fixture: fixturePhrase(tongue, setting, step.fixture) }),
    ...(step.zone === undefined ? {} : { zone: zonePhrase(tongue, setting, step.zone) }),
    ...(step.helper === undefined ? {} : { helper: personPhrase(tongue, setting, step.helper) }),
    ...(looked === undefined ? {} : { looked: personPhrase(tongue, setting, looked) }),
    ...(step.product === undefined ? {} : { product: step.product }),
  };
}

/** To refer to a step: 'retirer les gants extérieurs'. */
export const stepLabel = (tongue: Tongue, setting: Setting, step: Step): string =>
  tongue.steps.verbs[step.action](toldOf(tongue, setting, step, (named) => named));

/** How it is done; a part that is named says what is undone, and in which order is then no question. */
function howOf({ steps }: Tongue, step: Step): string {
  const id = techniqueOf(step);
  if (step.side !== undefined && id === 'peel-cuff') return steps.how['peel-one'];
  return id === undefined || step.part !== undefined ? '' : steps.how[id];
}

/** To read a step aloud. */
export function stepSentence(tongue: Tongue, setting: Setting, step: Step): string {
  const told = toldOf(tongue, setting, step, (_, aloud) => aloud);
  const { verbs, helped, discarded } = tongue.steps;
  const help = told.helper && step.action !== 'say' ? helped(told.helper) : '';
  const how = howOf(tongue, step);
  const away = told.fixture && step.action === 'remove' ? discarded(told.object, told.fixture) : '';
  return `${capital(verbs[step.action](told))}${help}${how && `: ${how}`}${away}.`;
}

/** "l'étape 9 (retirer les gants extérieurs)"; 'le départ'. */
export function stepReference(tongue: Tongue, setting: Setting, index: number): Phrase {
  const { grammar, nouns } = tongue;
  const step = setting.steps[index];
  if (!step) return the(grammar, nouns.start);
  return the(grammar, nouns.step, `${nouns.step.one} ${index + 1} (${stepLabel(tongue, setting, step)})`);
}
