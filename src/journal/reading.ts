// Reading a body by the table of kinds: by the schema of the version that wrote it, then upgraded step by step to the
// newest. What this release does not know is kept and shown as unknown, with the reason, never dropped.
import type { Accepted } from './entry.ts';
import type { PlainObject } from './canonical.ts';
import { type Bodies, type KindName, KINDS } from './kinds/index.ts';
import { type Kind, type KindTable, versionOf } from './kinds/kind.ts';

/** Why a body cannot be read: an unknown kind, a version newer than this release, or a body that breaks its schema. */
export const UNREAD = ['kind', 'version', 'body'] as const;
export type Unread = (typeof UNREAD)[number];

type Read = { readonly body: unknown } | { readonly unread: Unread; readonly why: string };

/** The body in the newest version of its kind. */
export function readBody(
  { kind, version, body }: { readonly kind: string; readonly version: number; readonly body: PlainObject },
  table: KindTable = KINDS,
): Read {
  const known: Kind | undefined = Object.hasOwn(table, kind) ? table[kind] : undefined;
  if (!known) return { unread: 'kind', why: `no kind is called ${kind}` };
  if (version > versionOf(known))
    return { unread: 'version', why: `version ${version} is newer than ${versionOf(known)}` };
  const read = known.versions[version - 1]!.schema.safeParse(body);
  if (!read.success) {
    const issue = read.error.issues[0];
    return { unread: 'body', why: `${issue?.path.map(String).join('.') ?? ''}: ${issue?.message ?? ''}` };
  }
  const later = known.versions.slice(version);
  return { body: later.reduce<unknown>((old, next) => next.upgrade?.(old as never) ?? old, read.data) };
}

interface Around {
  readonly unitNumber: number;
  readonly unitHash: string;
  readonly device: string;
  readonly number: number;
  readonly hash: string;
  readonly at: string;
  readonly by: string | null;
}

export type Known = {
  readonly [Name in KindName]: Around & { readonly kind: Name; readonly body: Bodies[Name] };
}[KindName];

/** An entry as views see it: its kind decides the body's type. `kind` is `unknown` for what cannot be read. */
export type Seen =
  | Known
  | (Around & {
      readonly kind: 'unknown';
      /** As it is written in the entry. */
      readonly written: string;
      readonly version: number;
      readonly unread: Unread;
      readonly why: string;
      readonly body: PlainObject;
    });

export function seen({ unitNumber, unitHash, entry }: Accepted): Seen {
  const { device, number, hash, at, by, kind, version, body } = entry;
  const around: Around = { unitNumber, unitHash, device, number, hash, at, by };
  const read = readBody(entry);
  return 'unread' in read
    ? { ...around, kind: 'unknown', written: kind, version, ...read, body }
    : ({ ...around, kind, body: read.body } as Known);
}
