// Slips and circumstances as English clauses: what went wrong, as said of this step and this thing. Two records over the
// ids of the slips table: a short name for lists, and the clause.
import type { SlipId } from '../../domain/slips.ts';
import { type EventRead, readEvent } from '../events.ts';
import { eventOf } from '../given.ts';
import type { Setting } from '../words.ts';
import { fixturePhrase, itemPhrase, type Phrase, personPhrase, surfacePhrase } from './phrases.ts';
import { stepReference } from './steps.ts';

/** What a clause can speak of. */
interface Told {
  /** The first item of the step, the fixture, or for the start the surface or layer. */
  readonly on: Phrase;
  readonly who: string;
  readonly helper: string;
  readonly glove: boolean;
}

type Clause = string | ((told: Told) => string);

const is = ({ many }: Phrase): string => (many ? 'are' : 'is');
const s = (verb: string, { many }: Phrase): string => (many ? verb : `${verb}es`);

export const SLIP_NAMES: Readonly<Record<SlipId, string>> = {
  'omitted-hygiene': 'hand hygiene left out',
  'inadequate-hygiene': 'hand hygiene misses a spot',
  'omitted-wipe': 'wipe left out',
  'wipe-missed-area': 'wipe misses a spot',
  'wipe-too-short': 'wiped too short',
  'wrong-grip': 'wrong grip',
  'touch-beneath': 'touch of what lies beneath',
  snap: 'snap back',
  brush: 'brush',
  swing: 'swing',
  bump: 'bump',
  'edge-curls': 'edge curls back',
  'second-hand-on-front': 'second hand on the front',
  'strap-slips': 'strap slips',
  'reach-to-face': 'reach to the face',
  'leg-on-leg': 'leg on leg',
  'loses-balance': 'loss of balance',
  'ankle-touch': 'touch of the ankle',
  'touch-fixture': 'touch of a fixture',
  'cross-line': 'crossing the line',
  'missed-tear': 'hole not noticed',
  pinhole: 'pinhole in a glove',
  'worn-through': 'glove worn through',
  'unclean-hands': 'hands not clean at the start',
  'soiled-strap': 'soiled strap',
  'soiled-back': 'soiled back',
  'full-bin': 'over-full bin',
  'dirty-lever': 'contaminated lever or handle',
  'stated-maybe': 'stated as possible by the file',
};

export const SLIP_CLAUSES: Readonly<Record<SlipId, Clause>> = {
  'omitted-hygiene': 'hand hygiene is left out',
  'inadequate-hygiene': 'hand hygiene misses the contaminated spot',
  'omitted-wipe': 'the wipe is left out',
  'wipe-missed-area': 'the wipe misses the contaminated spot',
  'wipe-too-short': 'the disinfectant does not act long enough',
  'wrong-grip': ({ glove, on }) =>
    glove
      ? `a finger touches the outside of ${on.text}`
      : `a hand takes hold of the wrong part of ${on.text}`,
  'touch-beneath': ({ on }) => `a finger touches what lies under ${on.text}`,
  snap: ({ on }) =>
    `${on.text} ${on.many ? 'snap' : 'snaps'} back and ${on.many ? 'throw what is on them' : 'throws what is on it'}`,
  brush: ({ on }) => `${on.text} ${s('brush', on)} against what is near`,
  swing: ({ on }) => `${on.text} ${on.many ? 'swing' : 'swings'} against the body`,
  bump: ({ who, helper }) => `${who} and ${helper} bump into each other`,
  'edge-curls': 'an open edge curls back onto hands or clothes',
  'second-hand-on-front': ({ on }) => `a second hand takes hold of the front of ${on.text}`,
  'strap-slips': ({ on }) => `the strap slips and the front of ${on.text} falls against the body`,
  'reach-to-face': 'a hand goes to the face',
  'leg-on-leg': 'one leg rests on or brushes the other',
  'loses-balance': ({ who }) => `${who} loses balance`,
  'ankle-touch': 'a hand touches an ankle',
  'touch-fixture': 'something touches a fixture that the step does not name',
  'cross-line': ({ helper }) => `${helper} steps over the line to the clean side`,
  'missed-tear': 'a hole in a glove is not noticed',
  pinhole: ({ on }) => `${on.text} ${on.many ? 'have' : 'has'} a pinhole`,
  'worn-through': ({ on }) => `${on.text} ${on.many ? 'have' : 'has'} worn through`,
  'unclean-hands': ({ who }) => `the hands of ${who} are not clean`,
  'soiled-strap': ({ on }) => `${on.text} ${is(on)} soiled`,
  'soiled-back': ({ on }) => `${on.text} ${is(on)} soiled`,
  'full-bin': 'the bin is over-full and touches hand or item',
  'dirty-lever': ({ on }) => `${on.text} was left contaminated by an earlier hand`,
  'stated-maybe': ({ on }) => `${on.text} ${is(on)} contaminated, which the procedure says may be`,
};

const NOTHING: Phrase = { text: 'the equipment', many: false };

function toldAtStart(setting: Setting, { on }: EventRead): Told {
  const known = setting.people.some((person) => person.id === on);
  return {
    on: on === '' ? NOTHING : surfacePhrase(setting, on),
    who: known ? personPhrase(setting, on) : 'the wearer',
    helper: 'a helper',
    glove: false,
  };
}

function told(setting: Setting, event: EventRead): Told {
  const { step } = event;
  if (!step) return toldAtStart(setting, event);
  const { item, side, owner, fixture, glove } = eventOf(step, event);
  const whose = owner === undefined ? 'the' : `${personPhrase(setting, owner)}'s`;
  const at = fixture === undefined ? NOTHING : { text: fixturePhrase(setting, fixture), many: false };
  return {
    on: item === undefined ? at : itemPhrase(item, side, whose),
    who: personPhrase(setting, step.who),
    helper: step.helper === undefined ? 'a helper' : personPhrase(setting, step.helper),
    glove,
  };
}

/** What happened, without where: 'a finger touches the outside of the outer gloves'. */
export function eventClause(setting: Setting, key: string): string {
  const event = readEvent(setting, key);
  if (!event) return `"${key}" happens`;
  const clause = SLIP_CLAUSES[event.what];
  return typeof clause === 'string' ? clause : clause(told(setting, event));
}

/** What happened, with where: '... at step 9 (remove the outer gloves)'. */
export function eventSentence(setting: Setting, key: string): string {
  const event = readEvent(setting, key);
  return event
    ? `${eventClause(setting, key)} at ${stepReference(setting, event.index)}`
    : eventClause(setting, key);
}
