// Bodies of who is in the patient's room, and of an emergency there. A visit has an id, made when it begins, so that its
// end finds it even where two devices' entries arrive in another order. `happened` is when it took place, which may be
// earlier than when it was written down.
import * as z from 'zod';
import { code, instant, personId, slug } from './values.ts';

const visit = { visit: slug, person: personId, room: slug, happened: instant };

export const roomEntered = z.strictObject(visit);

/** `exit` is the doffing that followed, where one was recorded. */
export const roomLeft = z.strictObject({ ...visit, exit: slug.nullable() });

export const emergencyOpened = z.strictObject({
  emergency: code,
  room: slug,
  exit: slug.nullable(),
  happened: instant,
});
