// The moves: the small language in which a technique says what it touches. A technique is data, a list of
// moves read in order; contacts/ interprets them against who wears what at that moment. A move with a `slip`
// happens only when that slip does.
import type { PartId } from './items.ts';
import type { PlaceName } from './places.ts';
import type { ProductId } from './products.ts';
import type { SlipId } from './slips.ts';

/** Which hand: of a pair taken off, `first` is on the side that goes first; `dominant` is the doer's. */
export type Which = 'both' | 'dominant' | 'other' | 'first' | 'second';
/** `actor` does the step, `helper` helps, `owner` wears the item (usually the actor). */
export type Whose = 'actor' | 'helper' | 'owner';

export type Ref =
  /** The outermost layer of a hand at that moment. */
  | { readonly at: 'hand'; readonly whose: Whose; readonly which: Which }
  /** A part of the step's item; `item` picks one when several are taken off together. */
  | { readonly at: 'part'; readonly parts: readonly PartId[]; readonly side: Which; readonly item: number }
  /** The outermost layer, under the item, at the places its parts lie on. */
  | { readonly at: 'beneath'; readonly side: Which; readonly item: number }
  /** The outermost layer at a place of a body. */
  | {
      readonly at: 'place';
      readonly whose: Whose;
      readonly places: readonly PlaceName[];
      readonly side: Which;
    }
  /** The step's fixture, or the bin, dispenser and so on of the zone the actor is in. */
  | { readonly at: 'fixture'; readonly kind?: string; readonly part?: string }
  /** The item part or place that the step itself names. */
  | { readonly at: 'named' }
  /** The clean side's floor, or the floor stood on. */
  | { readonly at: 'floor'; readonly which: 'clean' | 'here' };

export interface Condition {
  /** Only while the item is still fastened (its removal unfastens it), or only once it is open. */
  readonly fastened?: boolean;
  /** Only if a helper is named, or only if none is. */
  readonly helped?: boolean;
  /** Only where the fixture is worked this way. */
  readonly worked?: 'hand';
  /** Only with one of these products, or where the step names the fixture. */
  readonly product?: readonly ProductId[];
  /** Only while the actor sits, or only while not. */
  readonly seated?: boolean;
}

export type Move = { readonly slip?: SlipId; readonly only?: Condition } & (
  | { readonly do: 'touch'; readonly a: Ref; readonly b: Ref }
  /** Cleaned with the step's product; it fails by any of these slips. */
  | {
      readonly do: 'clean';
      readonly what: Ref;
      readonly fails: readonly SlipId[];
      readonly sprayed?: boolean;
    }
  | { readonly do: 'off'; readonly side: Which; readonly item: number }
  | { readonly do: 'on'; readonly side: Which; readonly item: number }
  | { readonly do: 'open' | 'close' }
  /** Look for a tear: from here a hole matters only if it was missed. */
  | { readonly do: 'look'; readonly misses: SlipId }
  | { readonly do: 'sit' | 'stand' }
  | { readonly do: 'go' }
  /** Bend down: an open garment's edge may touch what is beneath it. */
  | { readonly do: 'bend' }
  | { readonly do: 'wet' | 'dry' }
);

export type Need = 'seated' | 'helper' | 'open' | 'standing';

export interface Use {
  readonly what: 'wipe' | 'hand-rub' | 'product' | 'fresh-item' | 'mat';
  readonly count: number;
}

/** Hands. */
export const hands = (whose: Whose = 'actor'): Ref => ({ at: 'hand', whose, which: 'both' });
export const hand = (which: Which, whose: Whose = 'actor'): Ref => ({ at: 'hand', whose, which });
/** Parts of the item; `side` matters for pairs only. */
export const part = (parts: PartId | readonly PartId[], side: Which = 'both', item = 0): Ref => ({
  at: 'part',
  parts: typeof parts === 'string' ? [parts] : parts,
  side,
  item,
});
export const beneath = (side: Which = 'both', item = 0): Ref => ({ at: 'beneath', side, item });
export const place = (places: readonly PlaceName[], side: Which = 'both', whose: Whose = 'owner'): Ref => ({
  at: 'place',
  whose,
  places,
  side,
});
export const fixture = (kind?: string, partOf?: string): Ref => ({
  at: 'fixture',
  ...(kind === undefined ? {} : { kind }),
  ...(partOf === undefined ? {} : { part: partOf }),
});
export const floor = (which: 'clean' | 'here'): Ref => ({ at: 'floor', which });

/** What the technique always does. */
export const touch = (a: Ref, b: Ref, only?: Condition): Move => ({
  do: 'touch',
  a,
  b,
  ...(only ? { only } : {}),
});
/** What only a slip does. */
export const slip = (id: SlipId, a: Ref, b: Ref, only?: Condition): Move => ({
  do: 'touch',
  a,
  b,
  slip: id,
  ...(only ? { only } : {}),
});
export const off = (side: Which = 'both', item = 0): Move => ({ do: 'off', side, item });
export const on = (side: Which = 'both', item = 0): Move => ({ do: 'on', side, item });
export const clean = (what: Ref, ...fails: readonly SlipId[]) =>
  ({ do: 'clean', what, fails }) as const satisfies Move;
