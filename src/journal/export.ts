// An entry for somebody outside the unit: without free text, in which a name may have been typed, without sealed bytes, and
// without what a wearer answered at the end of an exit, which is of their health.
// People stay ids of the staff list. Hashes stay too, so that a line can be found again in the journal; what was left out
// cannot be worked out from them here, and the entry's hash cannot be worked out again without it.
import { canonical, faultIn, type Plain, type PlainObject } from './canonical.ts';
import type { Accepted } from './entry.ts';
import { JournalError } from './problems.ts';
import { KINDS } from './kinds/index.ts';
import type { KindTable } from './kinds/kind.ts';

/** Shorter values all look alike: the length of 'no' would tell it from 'yes'. */
const LEAST = 16;

/** What stands in place of what was left out: how many characters of canonical text. */
const withheld = (value: Plain): Plain =>
  value === null ? null : { withheld: Math.max(LEAST, canonical(value).length) };

/** A body without its free text; one of a kind or version that is not known here is left out whole. */
function withoutText(kind: string, version: number, body: PlainObject): Plain {
  const known = (KINDS as KindTable)[kind];
  if (!known || version > known.versions.length) return withheld(body);
  return Object.fromEntries(
    Object.entries(body).map(([key, value]) => [key, known.texts.includes(key) ? withheld(value) : value]),
  );
}

/** One line of an export. `text`: with everything that was typed. A body that was altered past all form is an error. */
export function exportLine({ unitNumber, unitHash, entry }: Accepted, { text }: { readonly text: boolean }) {
  const { unit, device, number, kind, version, at, by, hash } = entry;
  if (faultIn(entry.body) !== undefined)
    throw new JournalError({ code: 'damaged', detail: `entry ${unitNumber} cannot be read` });
  const body = text ? entry.body : withoutText(kind, version, entry.body);
  return canonical({ unitNumber, unitHash, unit, device, number, kind, version, at, by, body, hash });
}
