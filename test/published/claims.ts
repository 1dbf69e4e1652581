// All claims, in the order of their numbers.
import type { Claim } from './claims/claim.ts';
import { EVERYDAY } from './claims/everyday.ts';
import { FEET } from './claims/feet.ts';
import { GLOVES } from './claims/gloves.ts';
import { HEAD } from './claims/head.ts';
import { HELPERS } from './claims/helpers.ts';
import { ROOM } from './claims/room.ts';
import { SUIT } from './claims/suit.ts';
import { WHOLE } from './claims/whole.ts';

/** Numbers that were never given to a claim. */
export const NOT_IN_THE_NOTE: readonly string[] = ['V19', 'V33'];

const number = ({ id }: Claim): number => Number(id.slice(1));

export const CLAIMS: readonly Claim[] = [
  ...EVERYDAY,
  ...GLOVES,
  ...HEAD,
  ...HELPERS,
  ...SUIT,
  ...FEET,
  ...ROOM,
  ...WHOLE,
].sort((a, b) => number(a) - number(b));
