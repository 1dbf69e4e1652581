// How a kind of entry is described: the schema of each version of its body and the pure step from each to the next. A
// body is stored as it was written and upgraded when it is read, so that no release ever rewrites a journal.
import type * as z from 'zod';
import type { PlainObject } from '../canonical.ts';

interface Version {
  readonly schema: z.ZodType;
  /** From the version before to this one; absent for the first. */
  readonly upgrade?: (body: never) => unknown;
}

/** `Body` is what the newest version reads. */
export interface Kind<Body = unknown> {
  readonly versions: readonly Version[];
  /** Fields of free text, in which somebody may have typed a name, or of somebody's health: exports leave them out. */
  readonly texts: readonly string[];
  /** For the compiler alone. */
  readonly body?: Body;
}

export const kind = <Body extends PlainObject>(
  schema: z.ZodType<Body>,
  texts: readonly (keyof Body & string)[] = [],
): Kind<Body> => ({ versions: [{ schema }], texts });

/** A kind's next version. `texts` names the free text of all versions. */
export const revised = <Old, Body extends PlainObject>(
  older: Kind<Old>,
  schema: z.ZodType<Body>,
  upgrade: (body: Old) => Body,
  texts: readonly string[] = older.texts,
): Kind<Body> => ({ versions: [...older.versions, { schema, upgrade }], texts });

export type BodyOf<K> = K extends Kind<infer Body> ? Body : never;

export type KindTable = Readonly<Record<string, Kind>>;

export const versionOf = (one: Kind): number => one.versions.length;
