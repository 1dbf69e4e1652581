// The authority and the certificate as files in the unit's folder: made when they are missing, renewed before they end,
// never readable by others. The authority is kept for as long as it permits the names: every tablet trusts it by hand.
import { randomBytes, X509Certificate } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isGood, newAuthority, newCertificate, type Pair } from './certificates.ts';
import { permits } from './constraints.ts';

const FILES = {
  authority: ['authority.pem', 'authority-key.pem'],
  server: ['server.pem', 'server-key.pem'],
} as const;

type Which = keyof typeof FILES;

function read(folder: string, which: Which): Pair | undefined {
  const [cert, key] = FILES[which].map((name) => join(folder, name));
  if (!existsSync(cert!) || !existsSync(key!)) return undefined;
  return { cert: readFileSync(cert!, 'utf8'), key: readFileSync(key!, 'utf8') };
}

/** Whole or not at all, and from the first byte on for the owner alone. The key first: a certificate without one is useless. */
function write(folder: string, which: Which, pair: Pair): void {
  const [cert, key] = FILES[which];
  for (const [name, text] of [
    [key, pair.key],
    [cert, pair.cert],
  ] as const) {
    const part = join(folder, `.${name}.${process.pid}`);
    writeFileSync(part, text, { mode: name === key ? 0o600 : 0o644 });
    renameSync(part, join(folder, name));
  }
}

export interface OwnTls {
  readonly authority: Pair;
  readonly server: Pair;
  /** What the certificate is for. */
  readonly names: readonly string[];
  /** Whether the authority was made now: tablets do not know it yet. */
  readonly isNew: boolean;
}

async function authorityIn(folder: string, names: readonly string[], now: Date): Promise<[Pair, boolean]> {
  const there = read(folder, 'authority');
  if (there) return [there, false];
  const made = await newAuthority(names, randomBytes(3).toString('hex'), now);
  write(folder, 'authority', made);
  return [made, true];
}

export interface Names {
  /** They must be in the certificate. */
  readonly given: readonly string[];
  /** They are in it where the authority permits them. */
  readonly found: readonly string[];
  /** A new authority permits them too: the server may be opened to the network later. */
  readonly known: readonly string[];
}

/** The authority and a good certificate in a folder. Throws where the authority was made for other names. */
export async function ownTls(folder: string, { given, found, known }: Names, now: Date): Promise<OwnTls> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const [authority, isNew] = await authorityIn(folder, [...given, ...found, ...known], now);
  const { raw } = new X509Certificate(authority.cert);
  const foreign = given.filter((name) => !permits(raw, name));
  if (foreign.length > 0)
    throw new Error(
      `The authority in ${folder} was not made for ${foreign.join(', ')}. Move that folder away to make a new one, which every tablet must then be told to trust, or leave the name out.`,
    );
  const names = [...new Set([...given, ...found.filter((name) => permits(raw, name))])];
  const there = read(folder, 'server');
  if (there && isGood(there.cert, authority.cert, names, now))
    return { authority, server: there, names, isNew };
  const server = await newCertificate(authority, names, now);
  write(folder, 'server', server);
  return { authority, server, names, isNew };
}
