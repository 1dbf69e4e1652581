// Prices are the user's own: there is no default. A price list is a small YAML file,
//   currency: EUR
//   prices: {outer-gloves: 0.2, alcohol-hand-rub: 6, disinfectant-wipe: 0.05}
// An item, wipe or mat is priced a piece (each glove, each cover), hand rub a litre, a product without a known volume a use,
// an item that is used again by its reprocessing.
import { LineCounter, parseDocument } from 'yaml';
import { ITEM_IDS } from '../domain/items.ts';
import { PRODUCT_IDS } from '../domain/products.ts';
import type { Cost } from './cost.ts';
import { isReprocessed } from './items.ts';
import { type Supply, supplyKey } from './supply.ts';

export interface Prices {
  readonly currency: string;
  readonly prices: ReadonlyMap<string, number>;
}

export type PriceFaultCode = 'not-yaml' | 'not-a-list' | 'unknown-supply' | 'not-a-price';

export interface PriceFault {
  readonly code: PriceFaultCode;
  readonly line: number;
  /** Name in the list. */
  readonly name: string;
}

export type PriceList = { readonly prices: Prices } | { readonly faults: readonly PriceFault[] };

/** Every name that a price list may use. */
export const PRICE_KEYS: readonly string[] = [
  ...ITEM_IDS,
  ...PRODUCT_IDS,
  ...PRODUCT_IDS.map((product) => supplyKey({ kind: 'wipe', product })),
  'mat',
  ...PRODUCT_IDS.map((product) => supplyKey({ kind: 'mat', product })),
].filter((key, at, all) => all.indexOf(key) === at);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isPrice = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value) && value >= 0;

/** A price list has no use for aliases: they are refused. */
function plain(document: ReturnType<typeof parseDocument>): unknown {
  try {
    return document.toJS({ maxAliasCount: 0 });
  } catch {
    return undefined;
  }
}

/** Reads a price list; what is wrong with it is told line by line. */
export function readPrices(text: string): PriceList {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines });
  const [error] = document.errors;
  if (error) return { faults: [{ code: 'not-yaml', line: lines.linePos(error.pos[0]).line, name: '' }] };
  const value = plain(document);
  if (!isRecord(value) || !isRecord(value.prices))
    return { faults: [{ code: 'not-a-list', line: 1, name: '' }] };
  const lineOf = (name: string): number => {
    const node = document.getIn(['prices', name], true) as { readonly range?: readonly number[] } | undefined;
    return lines.linePos(node?.range?.[0] ?? 0).line;
  };
  const entries = Object.entries(value.prices);
  const faults = entries.flatMap(([name, price]): readonly PriceFault[] => {
    if (!PRICE_KEYS.includes(name)) return [{ code: 'unknown-supply', line: lineOf(name), name }];
    return isPrice(price) ? [] : [{ code: 'not-a-price', line: lineOf(name), name }];
  });
  if (faults.length > 0) return { faults };
  const currency = typeof value.currency === 'string' ? value.currency : '';
  return {
    prices: {
      currency,
      prices: new Map(entries.flatMap(([name, price]) => (isPrice(price) ? [[name, price]] : []))),
    },
  };
}

export type PricedBy = 'piece' | 'reprocessing' | 'litre' | 'use';

export interface PricedLine {
  readonly supply: Supply;
  readonly by: PricedBy;
  /** Pieces, litres or uses of one run. */
  readonly amount: number;
  /** Of one piece, litre or use; null where the list has none. */
  readonly price: number | null;
  readonly sum: number | null;
}

export interface Priced {
  readonly currency: string;
  readonly lines: readonly PricedLine[];
  /** Of the lines that have a price, for one run. */
  readonly total: number;
  /** Supplies without a price: the total leaves them out. */
  readonly unpriced: readonly Supply[];
}

interface Amount {
  readonly supply: Supply;
  readonly by: PricedBy;
  readonly amount: number;
}

/** What has to be paid for: single-use items needed, items reprocessed, and everything used up. */
function amounts({ items, uses }: Cost): readonly Amount[] {
  const ofItems = items.map(({ item, needed, reprocessed }): Amount => {
    const again = isReprocessed(item);
    return {
      supply: { kind: 'item', item },
      by: again ? 'reprocessing' : 'piece',
      amount: again ? reprocessed.count : needed.count,
    };
  });
  const ofUses = uses.map(({ supply, quantity, millilitres }): Amount => {
    if (typeof millilitres === 'number') return { supply, by: 'litre', amount: millilitres / 1000 };
    return { supply, by: supply.kind === 'product' ? 'use' : 'piece', amount: quantity.count };
  });
  return [...ofItems, ...ofUses].filter(({ amount }) => amount > 0);
}

/** One run at these prices. */
export function priced(cost: Cost, { currency, prices }: Prices): Priced {
  const lines = amounts(cost).map((line): PricedLine => {
    const price = prices.get(supplyKey(line.supply)) ?? null;
    return { ...line, price, sum: price === null ? null : price * line.amount };
  });
  return {
    currency,
    lines,
    total: lines.reduce((sum, line) => sum + (line.sum ?? 0), 0),
    unpriced: lines.filter(({ price }) => price === null).map(({ supply }) => supply),
  };
}
