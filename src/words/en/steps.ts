// A step as an English instruction: verb and object first, how it is done after a colon.
import type { ActionId } from '../../domain/actions.ts';
import { itemKind } from '../../domain/items.ts';
import { isPaired, placeName, sideOf } from '../../domain/places.ts';
import type { Step } from '../../domain/procedure.ts';
import { lookedOver, techniqueOf } from '../given.ts';
import { handsBefore } from '../gloved.ts';
import type { Setting } from '../words.ts';
import { CLOSURE_VERBS, PART_NOUNS, PLACE_NOUNS, PRODUCT_NOUNS } from './nouns.ts';
import { fixturePhrase, itemPhrase, joined, personPhrase, zonePhrase } from './phrases.ts';
import { capital } from '../capital.ts';
import { TECHNIQUE_PHRASES } from './techniques.ts';

type Say = (setting: Setting, step: Step) => string;

const ownerOf: Say = (setting, step) =>
  step.of === undefined || step.of === step.who ? 'the' : `${personPhrase(setting, step.of)}'s`;

/** 'the outer gloves', 'the wearer's gown and gloves', 'the waist tie of the gown'. */
const object: Say = (setting, step) => {
  const owner = ownerOf(setting, step);
  const items = joined(step.items.map((item) => itemPhrase(item, step.side, owner).text));
  return step.part === undefined ? items : `the ${PART_NOUNS[step.part].all} of ${items}`;
};

const placeTouched: Say = (setting, { place, of, who }) => {
  if (place === undefined) return '';
  const name = placeName(place);
  const owner = of === undefined || of === who ? 'the' : `${personPhrase(setting, of)}'s`;
  return `${owner} ${isPaired(name) ? `${sideOf(place) ?? ''} ` : ''}${PLACE_NOUNS[name].all}`;
};

const closing =
  (open: 'open' | 'close'): Say =>
  (setting, step) => {
    const [item] = step.items;
    const verb =
      item === undefined || step.part !== undefined ? open : CLOSURE_VERBS[itemKind(item).closure][open];
    return `${verb} ${object(setting, step)}`;
  };

const product = ({ product: id }: Step): string => (id === undefined ? '' : ` with ${PRODUCT_NOUNS[id]}`);

const HANDS = {
  gloved: 'both gloved hands',
  bare: 'both bare hands',
  mixed: 'both hands, gloved or bare',
} as const;

const sanitise: Say = (setting, step) =>
  `clean ${HANDS[handsBefore(setting, step) ?? 'mixed']}${product(step)}`;

const onto: Say = (setting, { fixture }) =>
  fixture === undefined ? '' : ` onto ${fixturePhrase(setting, fixture)}`;

const target: Say = (setting, step) =>
  [
    ...(step.items.length > 0 ? [object(setting, step)] : []),
    ...(step.place === undefined ? [] : [placeTouched(setting, step)]),
    ...(step.fixture === undefined ? [] : [fixturePhrase(setting, step.fixture)]),
  ].join(', ');

/** Without items the one who wears them is looked over: by themselves, or by whoever stands by. */
const inspect: Say = (setting, step) => {
  if (step.items.length > 0) return `look over ${object(setting, step)}`;
  const looked = lookedOver(setting, step);
  return looked === undefined ? 'look over all equipment' : `look ${personPhrase(setting, looked)} over`;
};

const VERBS: Readonly<Record<ActionId, Say>> = {
  remove: (setting, step) => `remove ${object(setting, step)}`,
  'put-on': (setting, step) => `put on ${object(setting, step)}`,
  unfasten: closing('open'),
  fasten: closing('close'),
  sanitise,
  wipe: (setting, step) => `wipe ${target(setting, step)}${product(step)}`,
  inspect,
  say: (setting, { helper }) =>
    `call${helper === undefined ? '' : ` to ${personPhrase(setting, helper)}`} and wait for the answer`,
  move: (setting, step) =>
    `go to ${step.zone === undefined ? 'the next zone' : zonePhrase(setting, step.zone)}${onto(setting, step)}`,
  'step-on': (setting, step) => `step${onto(setting, step)}`,
  sit: (setting, { fixture }) =>
    `sit down${fixture === undefined ? '' : ` on ${fixturePhrase(setting, fixture)}`}`,
  stand: (setting, { fixture }) =>
    fixture === undefined ? 'stand up' : `stand up with the feet on ${fixturePhrase(setting, fixture)}`,
  touch: (setting, step) => `touch ${target(setting, step)}`,
};

const NOT_HELPED: ReadonlySet<ActionId> = new Set(['say']);

const helped: Say = (setting, { helper, action }) =>
  helper === undefined || NOT_HELPED.has(action) ? '' : `, helped by ${personPhrase(setting, helper)}`;

/** Where what was taken off goes. */
const discarded: Say = (setting, { action, fixture }) =>
  fixture === undefined || action !== 'remove' ? '' : `; put it into ${fixturePhrase(setting, fixture)}`;

/** 'remove the outer gloves': to refer to a step. */
export const stepLabel: Say = (setting, step) => VERBS[step.action](setting, step);

/** 'Remove the outer gloves: peel ...': to read a step aloud. */
export const stepSentence: Say = (setting, step) => {
  const id = techniqueOf(step);
  // A named part says what is undone; in which order is then no question.
  const how = id === undefined || step.part !== undefined ? '' : TECHNIQUE_PHRASES[id];
  const detail = step.side !== undefined && id === 'peel-cuff' ? TECHNIQUE_PHRASES['peel-one'] : how;
  return `${capital(stepLabel(setting, step))}${helped(setting, step)}${detail && `: ${detail}`}${discarded(setting, step)}.`;
};

/** 'step 9 (remove the outer gloves)'; 'the start'. */
export function stepReference(setting: Setting, index: number): string {
  const step = setting.steps[index];
  return step ? `step ${index + 1} (${stepLabel(setting, step)})` : 'the start';
}

/** Actions as lists of choices show them. */
export const ACTION_NAMES: Readonly<Record<ActionId, string>> = {
  remove: 'remove',
  'put-on': 'put on',
  unfasten: 'unfasten',
  fasten: 'fasten',
  sanitise: 'clean hands',
  wipe: 'wipe',
  inspect: 'look over',
  say: 'say',
  move: 'go to',
  'step-on': 'step onto',
  sit: 'sit down',
  stand: 'stand up',
  touch: 'touch',
};
