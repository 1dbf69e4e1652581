// What a run uses up, as data: items of equipment, wipes, portions of a product, mats. A quantity keeps pairs and singles
// apart, because a torn glove is changed alone and a box is counted in pieces.
import { type ItemId, itemKind } from '../domain/items.ts';
import type { ProductId } from '../domain/products.ts';

export type Supply =
  | { readonly kind: 'item'; readonly item: ItemId }
  /** Wipes of this product, or cloths wetted with it. */
  | { readonly kind: 'wipe'; readonly product: ProductId }
  /** Portions of a product: hands cleaned with it, or something sprayed. */
  | { readonly kind: 'product'; readonly product: ProductId }
  /** Mats; with the product that soaks them, where one does. */
  | { readonly kind: 'mat'; readonly product?: ProductId };

export interface Quantity {
  readonly unit: 'piece' | 'wipe' | 'use' | 'mat';
  /** Pieces, wipes, uses or mats. */
  readonly count: number;
  /** Of an item that comes in pairs: whole pairs, and pieces left over. */
  readonly pairs?: number;
  readonly singles?: number;
}

/** Stable name of a supply: the key of a price, of a line, of a difference. */
export function supplyKey(supply: Supply): string {
  if (supply.kind === 'item') return supply.item;
  if (supply.kind === 'mat') return supply.product === undefined ? 'mat' : `mat.${supply.product}`;
  if (supply.kind === 'wipe')
    return supply.product === 'disinfectant-wipe' ? supply.product : `cloth.${supply.product}`;
  return supply.product;
}

/** Pieces of an item, by side; an item that is no pair counts on neither. */
export interface Pieces {
  readonly left: number;
  readonly right: number;
  readonly whole: number;
}

export const NO_PIECES: Pieces = { left: 0, right: 0, whole: 0 };

export const plus = (a: Pieces, b: Pieces): Pieces => ({
  left: a.left + b.left,
  right: a.right + b.right,
  whole: a.whole + b.whole,
});

export function quantityOf(item: ItemId, { left, right, whole }: Pieces): Quantity {
  const count = left + right + whole;
  if (!itemKind(item).pair) return { unit: 'piece', count };
  const pairs = Math.min(left, right);
  return { unit: 'piece', count, pairs, singles: count - 2 * pairs };
}

/** The same for several runs: singles stay singles, they are of the same side each time. */
export const times = (quantity: Quantity, runs: number): Quantity => ({
  ...quantity,
  count: quantity.count * runs,
  ...(quantity.pairs === undefined ? {} : { pairs: quantity.pairs * runs }),
  ...(quantity.singles === undefined ? {} : { singles: quantity.singles * runs }),
});
