// What of a procedure something else could stand for, and what: items for items, products for products, those that cover the
// most of the same places first. What an item leaves bare that another covered is no matter of the steps, and is said apart.
import { type ItemId, ITEM_IDS, itemKind } from '../../../domain/items.ts';
import type { PlaceName } from '../../../domain/places.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { PRODUCT_IDS, type ProductId } from '../../../domain/products.ts';
import { whyNoSubstitute } from '../../../order/substitute.ts';
import { coversOf } from '../../compose/model/covering.ts';

export interface Things {
  readonly items: readonly ItemId[];
  readonly products: readonly ProductId[];
}

/** What there is to replace, in the order of the program's own lists. */
export const thingsOf = ({ people, products }: Procedure): Things => ({
  items: ITEM_IDS.filter((item) => people.some(({ wears }) => wears.includes(item))),
  products: PRODUCT_IDS.filter((product) => products.includes(product)),
});

const placesOf = (item: ItemId): ReadonlySet<PlaceName> =>
  new Set(itemKind(item).parts.flatMap(({ covers }) => covers));

const LIKENESS = ['all', 'some', 'none'] as const;
export type Likeness = (typeof LIKENESS)[number];

/** How much of what the first covers the second covers too. */
function likeness(from: ItemId, to: ItemId): Likeness {
  const other = placesOf(to);
  const shared = [...placesOf(from)].filter((place) => other.has(place)).length;
  if (shared === 0) return 'none';
  return shared === placesOf(from).size ? 'all' : 'some';
}

export const isItem = (id: string): id is ItemId => (ITEM_IDS as readonly string[]).includes(id);
export const isProduct = (id: string): id is ProductId => (PRODUCT_IDS as readonly string[]).includes(id);

export interface StandIns {
  readonly like: Likeness;
  readonly ids: readonly (ItemId | ProductId)[];
}

/** What can be tried in its place, by how much alike it is; groups with nothing in them are left out. */
export function standInsFor(procedure: Procedure, from: string): readonly StandIns[] {
  const equipment = ITEM_IDS.filter((item) => !itemKind(item).underneath);
  const ids = [...equipment, ...PRODUCT_IDS].filter(
    (to) => to !== from && whyNoSubstitute(procedure, from, to) === undefined,
  );
  const likeOf = (to: ItemId | ProductId): Likeness =>
    isItem(from) && isItem(to) ? likeness(from, to) : 'all';
  return LIKENESS.map((like) => ({ like, ids: ids.filter((to) => likeOf(to) === like) })).filter(
    (group) => group.ids.length > 0,
  );
}

/** Surfaces of people that something covered at the start and nothing covers any more. */
export function leftBare(before: Procedure, after: Procedure): readonly string[] {
  return before.people.flatMap((person) => {
    const now = after.people.find(({ id }) => id === person.id);
    const bare = new Set(
      (now ? coversOf(now) : []).filter(({ layers }) => layers.length === 0).map(({ place }) => place),
    );
    return coversOf(person)
      .filter(({ place, layers }) => layers.length > 0 && bare.has(place))
      .map(({ place }) => `${person.id}.${place}`);
  });
}
