// The small words of the file as schemas: each enumeration comes from its domain table, and its error is the code of
// the diagnostic that a wrong word gets. Descriptions are what an editor shows.
import * as z from 'zod';
import { evidenceIds } from '../evidence/index.ts';
import { LONGEST } from '../domain/lengths.ts';
import { ITEM_IDS, PART_IDS } from '../domain/items.ts';
import { isPaired, PLACE_NAMES, PLACES, SIDES } from '../domain/places.ts';
import { DEPENDENCES, KINDS, ROLES } from '../domain/procedure.ts';
import { AGENTS, PRODUCT_IDS } from '../domain/products.ts';
import { FIXTURE_KIND_IDS, ZONE_SIDES } from '../domain/room.ts';
import type { DiagnosticCode } from './diagnostics.ts';

/** Compiling schemas to code would need `unsafe-eval`, which the page's content policy forbids. */
z.config({ jitless: true });

const words = <const Words extends readonly string[]>(
  list: Words,
  error: DiagnosticCode,
  description: string,
) => z.enum(list, { error }).meta({ id: error.replace('unknown-', ''), description });

export const kind = words(KINDS, 'unknown-kind', 'Putting on (donning) or taking off (doffing).');
export const item = words(ITEM_IDS, 'unknown-item', 'A piece of equipment or clothing.');
export const part = words(PART_IDS, 'unknown-part', 'A part of an item with its own contamination.');
export const side = words(SIDES, 'unknown-side', 'Left or right, as the person sees it.');
export const role = words(ROLES, 'unknown-role', 'Part in the exit.');
export const agent = words(AGENTS, 'unknown-agent', 'Kind of agent: decides which products work.');
export const product = words(PRODUCT_IDS, 'unknown-product', 'What cleans hands or things.');
export const zoneSide = words(
  ZONE_SIDES,
  'unknown-zone-side',
  "The patient's side, the doffing area or the clean side.",
);
export const fixtureKind = words(FIXTURE_KIND_IDS, 'unknown-fixture-kind', 'Kind of fixture.');
export const dependence = words(DEPENDENCES, 'unknown-dependence', 'How far observer and doer err together.');
/** What may stand for an observer's chance to miss a slip: the numbers about one person checking another. */
export const observerEvidence = words(
  evidenceIds.filter((id) => id.startsWith('hep.checker.')),
  'unknown-evidence',
  "Evidence for the observer's chance to miss a visible slip.",
);
export const worked = words(
  ['hand', 'elbow', 'pedal', 'sensor', 'open'],
  'unknown-worked',
  'How it is worked; only by hand is a contact.',
);
export const state = words(
  ['contaminated', 'uncontaminated', 'maybe'],
  'unknown-state',
  'State at the start.',
);
export const place = words(PLACES, 'unknown-place', 'A place of the body.');
export const placeOrPair = z
  .enum([...PLACES, ...PLACE_NAMES.filter(isPaired)], { error: 'unknown-place' })
  .meta({ id: 'place-or-pair', description: 'A place of the body; without left or right both are meant.' });

/** Names that a file gives to people, zones, fixtures and steps: surfaces are built from them with dots. */
const NAME_PATTERN = /^\p{L}[\p{L}\p{M}\p{N}-]*$/u;
const nameError = { error: 'bad-name' satisfies DiagnosticCode };

const nameUpTo = (most: number) => z.string().max(most, { abort: true }).regex(NAME_PATTERN, nameError);

export const name = nameUpTo(LONGEST.name).meta({
  id: 'name',
  description: 'A name: letters, digits and hyphens.',
});
export const zoneName = nameUpTo(LONGEST.zone).meta({
  id: 'zone-name',
  description: 'A name of a zone: letters, digits and hyphens.',
});
/** A character that leaves a mark on paper; blanks, direction marks and joiners alone leave none. */
const MARK = /[^\p{Z}\p{C}\u115F\u1160\u3164\uFFA0\u2800]/u;
const nothingSeen = { error: 'empty-value' satisfies DiagnosticCode };
const textUpTo = (most: number) =>
  z
    .string()
    .trim()
    .min(1, { abort: true })
    .max(most, { abort: true })
    .refine((written) => MARK.test(written), nothingSeen);
export const text = textUpTo(LONGEST.text);
/** Beside a step or a surface. */
export const note = textUpTo(LONGEST.note);
const lineError = { error: 'several-lines' satisfies DiagnosticCode };
/**
 * One line, as it stands on every page: a second one could pass for the stamp below it. It may look like a number: an editor
 * must not ask for quotes that the reader does not need.
 */
const lineUpTo = (most: number) =>
  textUpTo(most)
    .refine((written) => !/[\r\n\u0085\u2028\u2029]/.test(written), lineError)
    .meta({ type: ['string', 'number'] });
export const label = lineUpTo(LONGEST.label);
export const version = lineUpTo(LONGEST.version);
/** As long as a line, and over several if need be. */
export const short = textUpTo(LONGEST.label);

const DATE = /^\d{4}-\d{2}-\d{2}$/;

function isDate(written: string): boolean {
  const time = DATE.test(written) ? Date.parse(`${written}T00:00:00Z`) : Number.NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(written);
}

export const date = z
  .string()
  .refine(isDate, { error: 'bad-date' satisfies DiagnosticCode })
  .meta({ id: 'date', description: 'A date as year-month-day.', format: 'date', pattern: DATE.source });
