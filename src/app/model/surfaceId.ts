// Surface ids read back into what they name: a part of somebody's item, a place of a body, a part of a fixture. The
// picture and the ledger hang on this; the check itself never looks inside an id.
import { ITEM_IDS, type ItemId, type PartId } from '../../domain/items.ts';
import type { Place, Side } from '../../domain/places.ts';

export type Named =
  | {
      readonly is: 'part';
      readonly person: string;
      readonly item: ItemId;
      readonly side?: Side;
      readonly part: PartId;
    }
  | { readonly is: 'place'; readonly person: string; readonly place: Place }
  | { readonly is: 'fixture'; readonly fixture: string; readonly part: string };

const ITEMS: ReadonlySet<string> = new Set(ITEM_IDS);

/** What a surface id names; ids are made in contacts/ and never misspelt. */
export function namedBy(id: string): Named {
  const [owner = '', first = '', ...rest] = id.split('.');
  if (owner === 'room') return { is: 'fixture', fixture: first, part: rest[0] ?? '' };
  if (!ITEMS.has(first)) return { is: 'place', person: owner, place: [first, ...rest].join('.') as Place };
  const item = first as ItemId;
  const [last = ''] = rest.slice(-1);
  const part = last as PartId;
  return rest.length > 1
    ? { is: 'part', person: owner, item, side: rest[0] as Side, part }
    : { is: 'part', person: owner, item, part };
}
