// Contact, rubbing and drying times of the unit's own products, as somebody read them from the label and wrote them down. The
// latest entry about a product holds; one without a time takes back what was said before.
import type { View } from '../fold.ts';

export type LabelTime = {
  readonly product: string;
  readonly contactSeconds: number | null;
  readonly rubSeconds: number | null;
  readonly drySeconds: number | null;
  /** Which label: product and edition, in the unit's words. */
  readonly label: string;
  readonly by: string | null;
  readonly at: string;
};

export type TimesState = Readonly<Record<string, LabelTime>>;

export const timesView: View<TimesState> = {
  name: 'times',
  version: 1,
  kinds: ['product.time-recorded'],
  start: {},
  next: (state, entry) => {
    if (entry.kind !== 'product.time-recorded') return state;
    const { by, at, body } = entry;
    return { ...state, [body.product]: { ...body, by, at } };
  },
};
