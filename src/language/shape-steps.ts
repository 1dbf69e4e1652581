// The shape of a step, one variant per action: the actions table says which fields each one needs and may have, the
// techniques table which techniques it knows. An editor so offers, after `do: remove`, only what fits.
import * as z from 'zod';
import { type ActionId, ACTIONS, type StepField } from '../domain/actions.ts';
import type { ItemId, PartId } from '../domain/items.ts';
import type { Place, Side } from '../domain/places.ts';
import type { ProductId } from '../domain/products.ts';
import { type TechniqueId, TECHNIQUES } from '../domain/techniques/index.ts';
import * as w from './words.ts';

/** The key in the file for each field of a step; the table's order is that of the canonical form. */
export const FIELD_KEYS = {
  items: 'item',
  side: 'side',
  part: 'part',
  of: 'of',
  place: 'place',
  zone: 'to',
  fixture: 'on',
  product: 'with',
  technique: 'technique',
  helper: 'helper',
} as const satisfies Readonly<Record<StepField, string>>;

export interface StepShape {
  readonly do: ActionId;
  readonly id?: string | undefined;
  readonly who?: string | undefined;
  readonly item?: ItemId | readonly ItemId[] | undefined;
  readonly side?: Side | undefined;
  readonly part?: PartId | undefined;
  readonly of?: string | undefined;
  readonly place?: Place | undefined;
  readonly to?: string | undefined;
  readonly on?: string | undefined;
  readonly with?: ProductId | undefined;
  readonly technique?: TechniqueId | undefined;
  readonly helper?: string | undefined;
  readonly pinned?: boolean | undefined;
  readonly note?: string | undefined;
}

/** Actions that make no sense without one of these. */
export const NEEDS_ONE_OF: Readonly<Partial<Record<ActionId, readonly StepField[]>>> = {
  wipe: ['items', 'fixture'],
  touch: ['items', 'fixture', 'place'],
};

const ACTION_WORDS: Readonly<Record<ActionId, string>> = {
  remove: 'Take off.',
  'put-on': 'Put on.',
  unfasten: 'Open ties, zip, strap, hose or buckle.',
  fasten: 'Close ties, zip, strap, hose or buckle.',
  sanitise: 'Clean the hands, gloved or bare.',
  wipe: 'Wipe an item or a fixture.',
  inspect: 'Look for tears and soil.',
  say: 'Say and confirm.',
  move: 'Go to another zone.',
  'step-on': 'Step on a mat or another fixture.',
  sit: 'Sit down on a chair.',
  stand: 'Stand up.',
  touch: 'Touch a fixture, an item or a place of the body.',
};

const FIELDS: Readonly<Record<Exclude<StepField, 'technique'>, z.ZodType>> = {
  items: z
    .union([w.item, z.array(w.item).min(1)])
    .describe('The item; several only where one technique takes them off together.'),
  side: w.side,
  part: w.part,
  of: w.name.describe("Whose item, when not the doer's own."),
  place: w.place,
  zone: w.name.describe('Zone to go to.'),
  fixture: w.name.describe('Fixture it is done to, on or at.'),
  product: w.product,
  helper: w.name.describe('Who helps.'),
};

function fieldOf(action: ActionId, field: StepField): z.ZodType {
  if (field !== 'technique') return FIELDS[field];
  const ways = TECHNIQUES.filter((technique) => technique.action === action).map(({ id }) => id);
  return z
    .enum(ways, { error: 'unknown-technique' })
    .describe('The way to do it; the usual one unless said.');
}

function variant({ id, needs, may }: (typeof ACTIONS)[number]) {
  const required: readonly StepField[] = needs;
  const fields = [...required, ...(may satisfies readonly StepField[])].map((field) => {
    const schema = fieldOf(id, field);
    return [FIELD_KEYS[field], required.includes(field) ? schema : schema.optional()] as const;
  });
  return z.strictObject({
    do: z.literal(id).describe(ACTION_WORDS[id]),
    who: w.name.optional().describe('Who does it; the wearer unless said.'),
    ...Object.fromEntries(fields),
    id: w.name.optional().describe('A lasting name of the step; s1, s2 and so on unless said.'),
    pinned: z
      .boolean()
      .optional()
      .describe('The order search keeps this step as it is, and in this order among its like.'),
    note: w.note.optional().describe('A remark for the reader.'),
  });
}

const [first, ...others] = ACTIONS.map(variant);
if (!first) throw new Error('there is no action');

export const step = z.discriminatedUnion('do', [first, ...others]) as unknown as z.ZodType<StepShape>;

/** Every key that some action knows. */
export const STEP_KEYS: readonly string[] = [
  'do',
  'who',
  ...Object.values(FIELD_KEYS),
  'id',
  'pinned',
  'note',
];

/** The keys that steps of one action can have. */
export function stepKeys(action: ActionId): readonly string[] {
  const found = ACTIONS.find(({ id }) => id === action);
  const fields: readonly StepField[] = found ? [...found.needs, ...found.may] : [];
  return ['do', 'who', ...fields.map((field) => FIELD_KEYS[field]), 'id', 'pinned', 'note'];
}
