// What bodies are made of. People are ids of the unit's staff list, never names; a day, an instant, a hash and an id are
// text of one form each. Free text is where a name might be typed after all: kinds say which of their fields it is.
import * as z from 'zod';
import { isPlainObject, type PlainObject } from '../canonical.ts';

// Pages forbid code made from text (their content security policy); zod would try it once and be told off in the console.
z.config({ jitless: true });

/** Units, devices, procedures, rooms, exits, visits, timers, questions: chosen by the unit or made by a device. */
export const slug = z
  .string()
  // First, and alone: a text of millions of characters would exhaust the pattern.
  .max(64, { abort: true })
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);

/** A person of the staff list. The prefix keeps a name from passing for one; the rest is made, not chosen. */
export const personId = z.string().regex(/^p-[a-z0-9]{4,32}$/);

export const sha256Hex = z.string().regex(/^[0-9a-f]{64}$/);

/** As `Date.prototype.toISOString` writes it. */
export const instant = z.iso.datetime({ precision: 3 });

export const day = z.iso.date();

/** A version as the unit writes it in the procedure file. */
export const versionName = z.string().min(1).max(32);

/** Codes and ids of the check, of steps, slips and surfaces, in any script: `one-slip.mucosa`, `s4:snap`, `wearer.hand.left`. */
export const code = z
  .string()
  .regex(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}._:-]*$/u)
  .max(256);

export const freeText = z.string().trim().min(1).max(2000);

export const whole = z.int().min(0);

/** Data of another part of the house, kept as it is; what may stand in it is what has a canonical form. */
export const plainObject = z.custom<PlainObject>(isPlainObject);
