// Reads the built page once, when the server starts, into a closed table of addresses. A request can only name an
// entry of this table; there is no path from an address to the disk, so none to climb out of.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';

/** One file that may be served. `forever` says that its name changes with its content. */
export interface ServedFile {
  readonly body: Buffer;
  readonly type: string;
  readonly etag: string;
  readonly forever: boolean;
}

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.mp3': 'audio/mpeg',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.wav': 'audio/wav',
  '.webmanifest': 'application/manifest+json',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.yaml': 'application/yaml; charset=utf-8',
};

function readServed(path: string, address: string): ServedFile {
  const body = readFileSync(path);
  return {
    body,
    type: TYPES[extname(path).toLowerCase()] ?? 'application/octet-stream',
    etag: `"${createHash('sha256').update(body).digest('base64url').slice(0, 22)}"`,
    forever: address.startsWith('/assets/'),
  };
}

/** Every plain file below `root`, by address ('/assets/a.js'). Hidden files and links are left out. */
export function readSite(root: string): ReadonlyMap<string, ServedFile> {
  const site = new Map<string, ServedFile>();
  const walk = (folder: string, prefix: string): void => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      if (entry.name.startsWith('.')) continue;
      const path = join(folder, entry.name);
      const address = `${prefix}/${entry.name}`;
      if (entry.isDirectory()) walk(path, address);
      else if (entry.isFile()) site.set(address, readServed(path, address));
    }
  };
  walk(root, '');
  return site;
}
