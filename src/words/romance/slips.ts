// Slips and circumstances as clauses, and with where they happen.
import { type EventRead, readEvent } from '../events.ts';
import { eventOf } from '../given.ts';
import type { Setting } from '../words.ts';
import { the } from './grammar.ts';
import { fixturePhrase, itemPhrase, personPhrase, surfacePhrase } from './phrases.ts';
import { stepReference } from './steps.ts';
import type { SlipTold, Tongue } from './tongue.ts';

function toldAtStart(tongue: Tongue, setting: Setting, { on }: EventRead): SlipTold {
  const { grammar, nouns } = tongue;
  const known = setting.people.some((person) => person.id === on);
  return {
    on: on === '' ? the(grammar, nouns.equipment) : surfacePhrase(tongue, setting, on),
    who: known ? personPhrase(tongue, setting, on) : the(grammar, nouns.roles.wearer),
    helper: the(grammar, nouns.roles.assistant),
    glove: false,
  };
}

function told(tongue: Tongue, setting: Setting, event: EventRead): SlipTold {
  const { step } = event;
  if (!step) return toldAtStart(tongue, setting, event);
  const { grammar, nouns } = tongue;
  const { item, side, owner, fixture, glove } = eventOf(step, event);
  const whose = owner === undefined ? undefined : personPhrase(tongue, setting, owner);
  const at = fixture === undefined ? the(grammar, nouns.equipment) : fixturePhrase(tongue, setting, fixture);
  const role = nouns.roles.assistant;
  return {
    on: item === undefined ? at : itemPhrase(tongue, item, side, whose),
    who: personPhrase(tongue, setting, step.who),
    helper:
      step.helper === undefined
        ? { text: grammar.some(role.one, role.gender), gender: role.gender, many: false }
        : personPhrase(tongue, setting, step.helper),
    glove,
  };
}

/** What happened, without where. */
export function eventClause(tongue: Tongue, setting: Setting, key: string): string {
  const event = readEvent(setting, key);
  return event ? tongue.slips[event.what](told(tongue, setting, event)) : tongue.grammar.quoted(key);
}

/** What happened, with where: "... à l'étape 9 (retirer les gants extérieurs)". */
export function eventSentence(tongue: Tongue, setting: Setting, key: string): string {
  const event = readEvent(setting, key);
  const clause = eventClause(tongue, setting, key);
  return event ? `${clause} ${tongue.grammar.at(stepReference(tongue, setting, event.index).text)}` : clause;
}
