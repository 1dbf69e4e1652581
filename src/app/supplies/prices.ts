// The user's own prices, kept in this browser: there is no default, and they are sent nowhere.
import { useState } from 'react';

const KEPT = 'doffline-prices';

export interface OwnPrices {
  readonly currency: string;
  /** By the name of the supply, as typed. */
  readonly typed: Readonly<Record<string, string>>;
}

const NONE: OwnPrices = { currency: '', typed: {} };

const isText = (value: unknown): value is string => typeof value === 'string';

function restored(): OwnPrices {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return NONE;
    const { currency, typed } = kept as { readonly currency?: unknown; readonly typed?: unknown };
    const entries = typeof typed === 'object' && typed !== null ? Object.entries(typed) : [];
    return {
      currency: isText(currency) ? currency : '',
      typed: Object.fromEntries(entries.filter((entry): entry is [string, string] => isText(entry[1]))),
    };
  } catch {
    return NONE;
  }
}

/** A number from 0, with a point or a comma; undefined where it is none. */
export function priceIn(text: string): number | undefined {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && value >= 0 ? value : undefined;
}

export function useOwnPrices(): readonly [OwnPrices, (next: OwnPrices) => void] {
  const [own, set] = useState(restored);
  const keep = (next: OwnPrices): void => {
    set(next);
    try {
      localStorage.setItem(KEPT, JSON.stringify(next));
    } catch {
      // Not allowed here: the prices stand until the page is left.
    }
  };
  return [own, keep];
}
