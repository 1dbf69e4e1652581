// The table of all rules that look at the steps. Rules that techniques declare themselves are in declared.ts; those that
// a procedure's data cannot show are in unchecked.ts, each with the reason.
import type { Rule } from './departure.ts';
import { GLOVES } from './gloves.ts';
import { HYGIENE } from './hygiene.ts';
import { LOOKS } from './looks.ts';
import { ORDER } from './order.ts';
import { PLACES_TOUCHED } from './places.ts';
import { TEAM } from './team.ts';

export const RULES: readonly Rule[] = [...HYGIENE, ...GLOVES, ...ORDER, ...PLACES_TOUCHED, ...LOOKS, ...TEAM];
