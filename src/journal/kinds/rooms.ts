// Bodies of who is in the patient's room, and of an emergency there. A visit has an id, made when it begins, so that its
// end finds it even where two devices' entries arrive in another order. `happened` is when it took place, which may be
// earlier than when it was written down: then `late` says why. What was written is never altered: a correction is a further
// entry. Health data do not belong here: that the wearer was asked at the end is recorded, not what was answered.
import * as z from 'zod';
import { code, freeText, instant, personId, sha256Hex, slug, versionName } from './values.ts';

/** As what somebody goes in. */
export const ROOM_ROLES = [
  'wearer',
  'observer',
  'assistant',
  'rescuer',
  'cleaner',
  'laboratory',
  'waste',
  'transport',
  'maintenance',
  'visitor',
  'other',
] as const;
export type RoomRole = (typeof ROOM_ROLES)[number];

/** Whether whoever came out was asked at the end; `later`: at the end of the exit that follows. */
export const ASKED = ['asked', 'later', 'not-asked'] as const;
export type Asked = (typeof ASKED)[number];

const visit = { visit: slug, person: personId, room: slug, happened: instant };

const MOST_ITEMS = 40;

/** Text of one line. */
const short = freeText.max(80);

/** The version of a procedure by which the ensemble was put on. */
const worn = z.strictObject({ procedure: slug, version: versionName, content: sha256Hex });

/** One piece of equipment: its size and lot as they stand on it. */
const item = z.strictObject({ item: short, size: short.nullable(), lot: short.nullable() });

/** How long somebody may stay, and who says so. */
const limit = z.strictObject({ minutes: z.int().min(1), source: freeText.max(300) });

const equipment = {
  worn: worn.nullable(),
  /** What is worn where no approved version says it. */
  ensemble: freeText.max(300).nullable(),
  items: z.array(item).max(MOST_ITEMS),
};

export const roomEnteredFirst = z.strictObject(visit);

/** `role` and `drill` null: not recorded. `late`: why it was written down afterwards; null where it was not. */
export const roomEntered = z.strictObject({
  ...visit,
  role: z.enum(ROOM_ROLES).nullable(),
  ...equipment,
  observer: personId.nullable(),
  limit: limit.nullable(),
  drill: z.boolean().nullable(),
  late: freeText.nullable(),
});

type FirstVisit = z.infer<typeof roomEnteredFirst>;

export const enteredFrom = (first: FirstVisit): z.infer<typeof roomEntered> => ({
  ...first,
  role: null,
  worn: null,
  ensemble: null,
  items: [],
  observer: null,
  limit: null,
  drill: null,
  late: null,
});

/** `exit` is the doffing that followed, where one was recorded. */
export const roomLeftFirst = z.strictObject({ ...visit, exit: slug.nullable() });

export const roomLeft = z.strictObject({
  ...visit,
  exit: slug.nullable(),
  asked: z.enum(ASKED).nullable(),
  late: freeText.nullable(),
});

export const leftFrom = (first: z.infer<typeof roomLeftFirst>): z.infer<typeof roomLeft> => ({
  ...first,
  asked: null,
  late: null,
});

/** Somebody else watches from then on. */
export const observerChanged = z.strictObject({
  visit: slug,
  observer: personId,
  happened: instant,
  late: freeText.nullable(),
});

/** What a correction takes back: the whole visit (it never was), or the way out (the person is still in). */
const UNDONE = ['visit', 'way-out'] as const;

/** What a visit really was. Whatever is null stays as it was written. */
export const roomCorrected = z.strictObject({
  visit: slug,
  undone: z.enum(UNDONE).nullable(),
  person: personId.nullable(),
  room: slug.nullable(),
  role: z.enum(ROOM_ROLES).nullable(),
  entered: instant.nullable(),
  left: instant.nullable(),
  worn: equipment.worn,
  ensemble: equipment.ensemble,
  items: equipment.items.nullable(),
  limit: limit.nullable(),
  asked: z.enum(ASKED).nullable(),
  reason: freeText,
});

export const emergencyOpened = z.strictObject({
  emergency: code,
  room: slug,
  exit: slug.nullable(),
  happened: instant,
});
