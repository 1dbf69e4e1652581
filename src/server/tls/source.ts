// Where the certificate comes from, and when another one takes its place: the unit's own is renewed before it ends, the
// hospital's is read again when its file changes. A running server takes the new one without a pause.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createSecureContext } from 'node:tls';
import { type Log, toldError } from '../log.ts';
import { foundNames } from '../names.ts';
import type { ServeRequest } from '../request.ts';
import { endOf, type Pair } from './certificates.ts';
import { ownTls } from './files.ts';

export interface Tls {
  readonly now: Pair;
  /** The authority's certificate, where it is the unit's own. */
  readonly authority: string | undefined;
  /** Names that the certificate is for, where we made it. */
  readonly names: readonly string[];
  /** The certificate as it should be by now. */
  readonly again: () => Promise<Pair>;
}

function hospitals(cert: string, key: string): Tls {
  const read = (): Pair => ({ cert: readFileSync(cert, 'utf8'), key: readFileSync(key, 'utf8') });
  const now = read();
  // Both throw where it is no certificate, or not the key’s, before the server listens.
  if (endOf(now.cert).getTime() < Date.now()) throw new Error(`The certificate in ${cert} has ended`);
  createSecureContext(now);
  return { now, authority: undefined, names: [], again: async () => Promise.resolve(read()) };
}

/** Undefined where the server speaks plain http. */
export async function tlsFor(
  { https, cert, key, name }: ServeRequest,
  folder: string,
  found: readonly string[],
): Promise<Tls | undefined> {
  if (cert !== undefined && key !== undefined) return hospitals(cert, key);
  if (!https) return undefined;
  const make = () => ownTls(join(folder, 'tls'), { given: name, found, known: foundNames() }, new Date());
  const { server, authority, names } = await make();
  return { now: server, authority: authority.cert, names, again: async () => (await make()).server };
}

const CHECK_MS = 3_600_000;

/** Looks every hour. `take` gets a certificate that is not the one before. */
export function keepFresh(tls: Tls, log: Log, take: (pair: Pair) => void): () => void {
  let last = tls.now.cert;
  const look = async (): Promise<void> => {
    try {
      const pair = await tls.again();
      if (pair.cert === last) return;
      take(pair);
      last = pair.cert;
      log.info({ until: endOf(pair.cert).toISOString() }, 'the certificate was renewed');
    } catch (error) {
      log.error(toldError(error), 'the certificate could not be renewed');
    }
  };
  const timer = setInterval(() => void look(), CHECK_MS);
  timer.unref();
  return () => clearInterval(timer);
}
