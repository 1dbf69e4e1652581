// What a procedure cannot do, in English: what is wrong, and how to mend it. A record over the problem codes.
import type { Problem, ProblemCode } from '../../contacts/problem.ts';
import { PRODUCT_IDS } from '../../domain/products.ts';
import { FIXTURE_KIND_IDS } from '../../domain/room.ts';
import { itemGiven, oneOf } from '../given.ts';
import type { Setting, WrongAndMend } from '../words.ts';
import { PRODUCT_NOUNS } from './nouns.ts';
import { fixturePhrase, itemPhrase, personPhrase, surfacePhrase } from './phrases.ts';
import { ACTION_NAMES } from './steps.ts';
import type { ActionId } from '../../domain/actions.ts';

type Params = Problem['params'];

/** Names found in the parameters, each with a fallback, so that a sentence is whole whatever is missing. */
interface Told {
  readonly item: string;
  readonly by: string;
  readonly who: string;
  readonly fixture: string;
  readonly product: string;
  readonly surface: string;
  readonly side: string;
  readonly action: string;
  /** Verb 'is' or 'are' for the item. */
  readonly is: string;
  /** Pronoun of the item. */
  readonly it: string;
}

/** 'the left outer glove' also from 'outer-gloves (left)'. */
export function itemIn(text: string | undefined, side?: string): { text: string; many: boolean } {
  const given = itemGiven(text, side);
  return given === undefined ? { text: 'the item', many: false } : itemPhrase(given.item, given.side);
}

function fixtureIn(setting: Setting, id: string | undefined): string {
  if (id === undefined || id === '') return 'the fixture';
  const kind = oneOf(FIXTURE_KIND_IDS, id);
  const named = setting.fixtures.some((fixture) => fixture.id === id);
  return named || kind === undefined ? fixturePhrase(setting, id) : `a ${kind}`;
}

function told(setting: Setting, params: Params): Told {
  const item = itemIn(params.item, params.side);
  const product = oneOf(PRODUCT_IDS, params.product);
  const action = params.action;
  return {
    item: item.text,
    is: item.many ? 'are' : 'is',
    it: item.many ? 'them' : 'it',
    by: itemIn(params.by).text,
    who: params.person === undefined ? 'the wearer' : personPhrase(setting, params.person),
    fixture: fixtureIn(setting, params.fixture),
    product: product === undefined ? 'the product' : PRODUCT_NOUNS[product],
    surface: params.surface === undefined ? 'this surface' : surfacePhrase(setting, params.surface).text,
    side: params.side === undefined || params.side === '' ? 'hand' : `${params.side} hand`,
    action: action !== undefined && action in ACTION_NAMES ? ACTION_NAMES[action as ActionId] : 'do it to',
  };
}

type Say = (told: Told) => WrongAndMend;
const say = (wrong: string, mend: string): WrongAndMend => ({ wrong, mend });

export const PROBLEM_WORDS: Readonly<Record<ProblemCode, Say>> = {
  'not-worn': ({ item, is, who }) =>
    say(
      `${item} ${is} not worn by ${who} at this step`,
      'Correct what is worn at the start, or drop or move the step.',
    ),
  'held-by': ({ item, is, it, by }) =>
    say(`${item} ${is} held by ${by}, still on and lying over ${it}`, `Take ${by} off before this step.`),
  'already-worn': ({ item, is, who }) =>
    say(`${item} ${is} on ${who} already`, 'Drop the step, or take the first one off before it.'),
  'no-glove-beneath': ({ side }) =>
    say(
      `an outer glove goes on a ${side} that wears no glove`,
      'Put an inner glove on first, or name plain gloves.',
    ),
  'still-fastened': ({ item, is }) =>
    say(`${item} ${is} still fastened`, `Unfasten ${item} before this step.`),
  'already-open': ({ item, is }) => say(`${item} ${is} open already`, 'Drop the step.'),
  'helper-missing': () =>
    say(
      'this cannot be done without a helper, and none is named',
      'Name a helper, or choose a way that needs none.',
    ),
  'helper-elsewhere': ({ who }) =>
    say(
      `${who} is to help but stands in another zone`,
      'Let the helper come before this step, or name another.',
    ),
  'owner-elsewhere': ({ who }) =>
    say(
      `${who}, whose equipment this is, stands in another zone`,
      'Bring both into one zone before this step.',
    ),
  'fixture-missing': ({ fixture }) =>
    say(`${fixture} is needed and not there`, `Add ${fixture} to the zone, or choose another way.`),
  'fixture-elsewhere': ({ fixture }) =>
    say(`${fixture} stands in another zone`, 'Go there before this step, or use one that stands here.'),
  'not-a-seat': ({ fixture }) => say(`${fixture} is not a seat`, 'Name a chair.'),
  'not-seated': () => say('this is done seated, and nobody sat down', 'Sit down before this step.'),
  'not-standing': () => say('this is done standing, and the wearer sits', 'Stand up before this step.'),
  'dirty-seat': ({ fixture }) =>
    say(
      `this is done on a clean seat, and ${fixture} is not one`,
      'Change to the clean chair before this step.',
    ),
  'product-unsuited': ({ product, surface }) =>
    say(
      `${product} must not be used on ${surface}, so it cleans nothing here`,
      'Choose a product made for it.',
    ),
  'technique-unclear': ({ action }) =>
    say(`there are several ways to ${action} this, and none is named`, 'Name the technique.'),
  'nothing-to-clean': () =>
    say('there is nothing here that this step could clean', 'Name what is to be cleaned, or drop the step.'),
};

/** Without a capital and a full stop, so that it can stand after 'Step 9:'. */
export const problemWords = (setting: Setting, code: ProblemCode, params: Params): WrongAndMend =>
  PROBLEM_WORDS[code](told(setting, params));

const LAYERING: Readonly<Record<string, (item: string, by: string) => WrongAndMend>> = {
  'never-put-on': (item) =>
    say(
      `the doffing takes off ${item}, which the donning never put on`,
      'Make both name the same equipment.',
    ),
  'never-taken-off': (item) =>
    say(
      `the donning puts on ${item}, which the doffing does not know of`,
      'Make both name the same equipment.',
    ),
  'other-way-round': (item, by) =>
    say(
      `the donning puts ${by} over ${item}, the doffing assumes the other way round`,
      'Make both say what lies over what.',
    ),
};

export function layeringWords(params: Params): WrongAndMend {
  const sentence = LAYERING[params.what ?? ''];
  const [item, by] = [itemIn(params.item).text, itemIn(params.by).text];
  return sentence
    ? sentence(item, by)
    : say(
        'the doffing contradicts how the donning layered the equipment',
        'Make both say what lies over what.',
      );
}

/** Heads the findings of a procedure whose slips could not be worked out. */
export const NOT_WORKED_OUT: WrongAndMend = say(
  'slips were not looked at, because there are too many or they are too tangled to be worked out exactly',
  'Split the procedure; what is listed below holds, but it is not the whole answer.',
);
