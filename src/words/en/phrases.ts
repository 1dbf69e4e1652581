// English noun phrases with the file's own names: people, zones, fixtures, surfaces. The only wearer's equipment goes
// without an owner ('the outside of the left outer glove'), everybody else's with one ('the assistant's ...').
import { type ItemId, itemKind } from '../../domain/items.ts';
import { type Place, placeName, type Side, sideOf } from '../../domain/places.ts';
import { type Fixture, fixtureKind } from '../../domain/room.ts';
import { handOf } from '../contact.ts';
import { isWearer } from '../given.ts';
import { type Named, namedBy } from '../surfaces.ts';
import type { Setting } from '../words.ts';
import { FIXTURE_NOUNS, ITEM_NOUNS, PART_NOUNS, PLACE_NOUNS, ROLE_NOUNS, ZONE_NOUNS } from './nouns.ts';

/** `many`: takes a plural verb. */
export interface Phrase {
  readonly text: string;
  readonly many: boolean;
}

export const joined = (texts: readonly string[]): string =>
  texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1) ?? ''}`;
const spaced = (id: string): string => id.replaceAll('-', ' ');
const possessive = (text: string): string => `${text}'s`;
const has = (text: string, word: string): boolean => ` ${text} `.includes(` ${word} `);

/** 'the wearer', 'the assistant'; the file's name too where a role is there more than once. */
export function personPhrase(setting: Setting, id: string): string {
  const person = setting.people.find((candidate) => candidate.id === id);
  if (!person) return `"${id}"`;
  const role = ROLE_NOUNS[person.role];
  if (setting.people.filter((candidate) => candidate.role === person.role).length === 1) return `the ${role}`;
  const name = spaced(id);
  return has(name, role) ? `the ${name}` : `the ${role} "${id}"`;
}

const ownerOf = (setting: Setting, id: string): string => possessive(personPhrase(setting, id));

export function zonePhrase(setting: Setting, id: string): string {
  const zone = setting.zones.find((candidate) => candidate.id === id);
  if (zone && zone.id === zone.side) return `the ${ZONE_NOUNS[zone.side]}`;
  return `the ${spaced(id)}`;
}

function floorPhrase(setting: Setting, fixture: Fixture): string | undefined {
  return fixture.id === `${fixture.zone}-floor`
    ? `the floor of ${zonePhrase(setting, fixture.zone)}`
    : undefined;
}

export function fixturePhrase(setting: Setting, id: string): string {
  const fixture = setting.fixtures.find((candidate) => candidate.id === id);
  if (!fixture) return `the ${spaced(id)}`;
  const noun = FIXTURE_NOUNS[fixture.kind];
  const name = spaced(id);
  const named = has(name, noun) ? (/\d$/.test(name) ? name : `the ${name}`) : `the ${noun} "${id}"`;
  return floorPhrase(setting, fixture) ?? named;
}

/** Only part of a fixture that is walked on is its surface: 'the mat' is enough. */
function fixturePart(setting: Setting, fixture: Fixture, part: string | undefined): Phrase {
  const whole = fixturePhrase(setting, fixture.id);
  const needless = part === undefined || ('underfoot' in fixtureKind(fixture.kind) && part === 'surface');
  return { text: needless ? whole : `the ${spaced(part)} of ${whole}`, many: false };
}

/** The items a person wears, with an owner where `owner` is given: 'the gown', 'the wearer's left inner glove'. */
export function itemPhrase(item: ItemId, side?: Side, owner = 'the'): Phrase {
  const { one, all, many } = ITEM_NOUNS[item];
  return side === undefined
    ? { text: `${owner} ${all}`, many }
    : { text: `${owner} ${side} ${one}`, many: false };
}

function placePhrase(setting: Setting, person: string, place: Place): Phrase {
  const side = sideOf(place);
  const { all, many } = PLACE_NOUNS[placeName(place)];
  return { text: `${ownerOf(setting, person)} ${side === undefined ? '' : `${side} `}${all}`, many };
}

function partPhrase(setting: Setting, named: Extract<Named, { at: 'item' }>): Phrase {
  const own = isWearer(setting, named.person) && !itemKind(named.item).underneath;
  const item = itemPhrase(named.item, named.side, own ? 'the' : ownerOf(setting, named.person));
  if (named.part === undefined) return item;
  const part = PART_NOUNS[named.part];
  return { text: `the ${part.all} of ${item.text}`, many: part.many };
}

function namedPhrase(setting: Setting, named: Named): Phrase {
  if (named.at === 'place') return placePhrase(setting, named.person, named.place);
  if (named.at === 'item') return partPhrase(setting, named);
  if (named.at === 'fixture') return fixturePart(setting, named.fixture, named.part);
  return { text: `"${named.id}"`, many: false };
}

/** 'the outside of the left outer glove', 'the wearer's face', 'the seat of the clean chair'. */
export const surfacePhrase = (setting: Setting, id: string): Phrase =>
  namedPhrase(setting, namedBy(setting, id));

/** As one who touches: 'the left hand (inner glove)', 'the assistant's right hand (bare)'. */
export function touchingPhrase(setting: Setting, id: string): Phrase {
  const hand = handOf(setting, id);
  if (!hand) return surfacePhrase(setting, id);
  const owner = isWearer(setting, hand.person) ? 'the' : ownerOf(setting, hand.person);
  const worn = hand.worn ? ITEM_NOUNS[hand.worn].one : 'bare';
  return { text: `${owner} ${hand.side} hand (${worn})`, many: false };
}
