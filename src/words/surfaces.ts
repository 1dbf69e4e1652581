// A surface's id, read back into what it names: the same in every language. The ids are made in contacts/.
import { ITEM_IDS, type ItemId, type PartId, PART_IDS } from '../domain/items.ts';
import { type Place, PLACES, type Side, SIDES } from '../domain/places.ts';
import type { Fixture } from '../domain/room.ts';
import type { Setting } from './words.ts';

export type Named =
  | { readonly at: 'place'; readonly person: string; readonly place: Place }
  /** `part` is absent where a whole item or layer is meant. */
  | {
      readonly at: 'item';
      readonly person: string;
      readonly item: ItemId;
      readonly side?: Side;
      readonly part?: PartId;
    }
  | { readonly at: 'fixture'; readonly fixture: Fixture; readonly part?: string }
  | { readonly at: 'unknown'; readonly id: string };

const isOneOf = <Name extends string>(names: readonly Name[], text: string | undefined): text is Name =>
  text !== undefined && (names as readonly string[]).includes(text);

function namedOfPerson(person: string, rest: readonly string[], id: string): Named {
  const place = rest.join('.');
  if (isOneOf(PLACES, place)) return { at: 'place', person, place };
  const [item, second, third] = rest;
  if (!isOneOf(ITEM_IDS, item)) return { at: 'unknown', id };
  const side = isOneOf(SIDES, second) ? second : undefined;
  const part = side === undefined ? second : third;
  return {
    at: 'item',
    person,
    item,
    ...(side === undefined ? {} : { side }),
    ...(isOneOf(PART_IDS, part) ? { part } : {}),
  };
}

/** What a surface id names in this procedure; `unknown` where it names nothing. */
export function namedBy(setting: Setting, id: string): Named {
  const [owner = '', ...rest] = id.split('.');
  if (setting.people.some((person) => person.id === owner)) return namedOfPerson(owner, rest, id);
  const [name, part] = owner === 'room' ? rest : [owner];
  const fixture = setting.fixtures.find((candidate) => candidate.id === name);
  if (!fixture) return { at: 'unknown', id };
  return { at: 'fixture', fixture, ...(part === undefined ? {} : { part }) };
}
