// Noun phrases with the file's own names: people, zones, fixtures, surfaces. The only wearer's equipment goes without an
// owner, everybody else's with one behind it.
import { type ItemId, itemKind } from '../../domain/items.ts';
import { type Place, placeName, type Side, sideOf } from '../../domain/places.ts';
import { type Fixture, fixtureKind } from '../../domain/room.ts';
import { handOf } from '../contact.ts';
import { isWearer, itemGiven } from '../given.ts';
import { type Named, namedBy } from '../surfaces.ts';
import type { Setting } from '../words.ts';
import { type Noun, partOf, type Phrase, spaced, the } from './grammar.ts';
import type { FixturePart, Tongue } from './tongue.ts';

/** A noun with a name of the file behind it: 'la chaise « x »'. */
const namedNoun = ({ grammar }: Tongue, noun: Noun, name: string): Phrase =>
  the(grammar, noun, `${noun.one} ${name}`, false);

const own = ({ nouns }: Tongue, id: string): Noun | undefined =>
  Object.hasOwn(nouns.own, id) ? nouns.own[id] : undefined;

/** 'wearer-2' -> '2', 'mat-b' -> 'b'; undefined where more than a number or letter is left. */
function numberIn(id: string, word: string): string | undefined {
  const rest = id.startsWith(`${word}-`) ? id.slice(word.length + 1) : undefined;
  return rest !== undefined && /^(\d+|[a-z])$/.test(rest) ? rest : undefined;
}

export function personPhrase(tongue: Tongue, setting: Setting, id: string): Phrase {
  const { grammar, nouns } = tongue;
  const person = setting.people.find((candidate) => candidate.id === id);
  if (!person) return { text: grammar.quoted(id), gender: 'm', many: false };
  const role = nouns.roles[person.role];
  const alone = setting.people.filter((candidate) => candidate.role === person.role).length === 1;
  if (alone) return the(grammar, role);
  return namedNoun(tongue, role, numberIn(id, person.role) ?? grammar.quoted(spaced(id)));
}

export function zonePhrase(tongue: Tongue, setting: Setting, id: string): Phrase {
  const zone = setting.zones.find((candidate) => candidate.id === id);
  const known =
    own(tongue, id) ?? (zone && zone.id === zone.side ? tongue.nouns.zones[zone.side] : undefined);
  return known
    ? the(tongue.grammar, known)
    : namedNoun(tongue, tongue.nouns.zone, tongue.grammar.quoted(spaced(id)));
}

export function fixturePhrase(tongue: Tongue, setting: Setting, id: string): Phrase {
  const { grammar, nouns } = tongue;
  const fixture = setting.fixtures.find((candidate) => candidate.id === id);
  const known = own(tongue, id);
  if (known) return the(grammar, known);
  if (!fixture) return namedNoun(tongue, nouns.thing, grammar.quoted(spaced(id)));
  const noun = nouns.fixtures[fixture.kind];
  if (id === `${fixture.zone}-floor`)
    return partOf(grammar, the(grammar, noun), zonePhrase(tongue, setting, fixture.zone));
  if (id === fixture.kind) return the(grammar, noun);
  const number = numberIn(id, fixture.kind);
  return noun.many && number === undefined
    ? the(grammar, noun, `${noun.all} ${grammar.quoted(spaced(id))}`)
    : namedNoun(tongue, noun, number ?? grammar.quoted(spaced(id)));
}

const isFixturePart = ({ nouns }: Tongue, part: string): part is FixturePart =>
  Object.hasOwn(nouns.fixtureParts, part);

/** Only part of a fixture that is walked on is its surface: 'the mat' is enough. */
function fixturePart(tongue: Tongue, setting: Setting, fixture: Fixture, part: string | undefined): Phrase {
  const whole = fixturePhrase(tongue, setting, fixture.id);
  const needless = part === undefined || ('underfoot' in fixtureKind(fixture.kind) && part === 'surface');
  if (needless || !isFixturePart(tongue, part)) return whole;
  return partOf(tongue.grammar, the(tongue.grammar, tongue.nouns.fixtureParts[part]), whole);
}

/** One side of a noun, or all of it. */
function sided({ grammar }: Tongue, noun: Noun, side: Side | undefined): Phrase {
  if (side === undefined) return the(grammar, noun);
  return the(grammar, noun, noun[side] ?? `${noun.one} ${grammar.sides[side][noun.gender]}`, false);
}

/** The items a person wears, with an owner where one is given. */
export function itemPhrase(tongue: Tongue, item: ItemId, side?: Side, owner?: Phrase): Phrase {
  const phrase = sided(tongue, tongue.nouns.items[item], side);
  return owner ? partOf(tongue.grammar, phrase, owner) : phrase;
}

/** An item named in parameters; 'the item' where none is. */
export function itemIn(tongue: Tongue, text: string | undefined, side?: string, owner?: Phrase): Phrase {
  const given = itemGiven(text, side);
  if (given) return itemPhrase(tongue, given.item, given.side, owner);
  const phrase = the(tongue.grammar, tongue.nouns.item);
  return owner ? partOf(tongue.grammar, phrase, owner) : phrase;
}

export function placePhrase(tongue: Tongue, place: Place, owner?: Phrase): Phrase {
  const phrase = sided(tongue, tongue.nouns.places[placeName(place)], sideOf(place));
  return owner ? partOf(tongue.grammar, phrase, owner) : phrase;
}

function itemPart(tongue: Tongue, setting: Setting, named: Extract<Named, { at: 'item' }>): Phrase {
  const wearers = isWearer(setting, named.person) && !itemKind(named.item).underneath;
  const owner = wearers ? undefined : personPhrase(tongue, setting, named.person);
  const item = itemPhrase(tongue, named.item, named.side, owner);
  if (named.part === undefined) return item;
  return partOf(tongue.grammar, the(tongue.grammar, tongue.nouns.parts[named.part]), item);
}

/** 'la face externe du gant extérieur gauche', 'le visage de la personne équipée'. */
export function surfacePhrase(tongue: Tongue, setting: Setting, id: string): Phrase {
  const named = namedBy(setting, id);
  if (named.at === 'place')
    return placePhrase(tongue, named.place, personPhrase(tongue, setting, named.person));
  if (named.at === 'item') return itemPart(tongue, setting, named);
  if (named.at === 'fixture') return fixturePart(tongue, setting, named.fixture, named.part);
  return { text: tongue.grammar.quoted(named.id), gender: 'm', many: false };
}

/** As one who touches: 'la main gauche (gant intérieur)'. */
export function touchingPhrase(tongue: Tongue, setting: Setting, id: string): Phrase {
  const hand = handOf(setting, id);
  if (!hand) return surfacePhrase(tongue, setting, id);
  const owner = isWearer(setting, hand.person) ? undefined : personPhrase(tongue, setting, hand.person);
  const phrase = placePhrase(tongue, `hand.${hand.side}`, owner);
  const worn = hand.worn === undefined ? tongue.nouns.bareHand : tongue.nouns.items[hand.worn].one;
  return { ...phrase, text: `${phrase.text} (${worn})` };
}
