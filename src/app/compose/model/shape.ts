// What a kept draft must be made of before it is opened. The browser's store is a place where others may write, and a draft that
// half fits would break every page that lists it. Only kinds of values are looked at: whether names lead anywhere is the
// check's to say, since a draft may be unfinished.
import * as z from 'zod';
import { ACTION_IDS } from '../../../domain/actions.ts';
import { ITEM_IDS, PART_IDS } from '../../../domain/items.ts';
import { PLACES, SIDES } from '../../../domain/places.ts';
import { DEPENDENCES, KINDS, type Procedure, ROLES } from '../../../domain/procedure.ts';
import { AGENTS, PRODUCT_IDS } from '../../../domain/products.ts';
import { FIXTURE_KIND_IDS, ZONE_SIDES } from '../../../domain/room.ts';
import { TECHNIQUE_IDS } from '../../../domain/techniques/index.ts';

const text = z.string();
const items = z.array(z.enum(ITEM_IDS));

const person = z.looseObject({
  id: text,
  role: z.enum(ROLES),
  wears: items,
  underneath: items,
  starts: text,
  hand: z.enum(SIDES),
  leavesBare: z.array(z.enum(PLACES)),
});

const fixture = z.looseObject({
  id: text,
  kind: z.enum(FIXTURE_KIND_IDS),
  zone: text,
  clean: z.boolean(),
  worked: text.optional(),
  product: z.enum(PRODUCT_IDS).optional(),
});

const step = z.looseObject({
  id: text,
  who: text,
  action: z.enum(ACTION_IDS),
  items,
  side: z.enum(SIDES).optional(),
  part: z.enum(PART_IDS).optional(),
  of: text.optional(),
  technique: z.enum(TECHNIQUE_IDS).optional(),
  product: z.enum(PRODUCT_IDS).optional(),
  fixture: text.optional(),
  zone: text.optional(),
  helper: text.optional(),
  place: z.enum(PLACES).optional(),
  note: text.optional(),
});

const texts = z.record(text, text);

/** One entry of each list. */
export const ENTRIES = {
  agents: z.enum(AGENTS),
  people: person,
  zones: z.looseObject({ id: text, side: z.enum(ZONE_SIDES) }),
  fixtures: fixture,
  products: z.enum(PRODUCT_IDS),
  start: texts,
  steps: step,
  accepted: texts,
} as const satisfies Partial<Record<keyof Procedure, z.ZodType>>;

/** What was done, in a word. */
export const DONE = text;

/** What of a procedure is no list. */
export const REST = z.looseObject({
  title: text,
  kind: z.enum(KINDS),
  version: text,
  invented: z.boolean(),
  about: text.optional(),
  donning: text.optional(),
  source: texts.optional(),
  policy: z.looseObject({
    creditSpraying: z.boolean(),
    observer: z.looseObject({ misses: text, dependence: z.enum(DEPENDENCES) }).optional(),
  }),
});
