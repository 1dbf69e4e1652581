// The built server, a shell of its own that lies beside the command line. Nothing of it is loaded for any command that does not
// need it.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Io } from './io.ts';

/** What the built server offers (src/server/serve.ts). It checks what it is asked for. */
interface Server {
  readonly serve: (asked: unknown, world: object) => Promise<0 | 2>;
  readonly letInByName: (asked: unknown, terminal: object) => Promise<0 | 2>;
}

export const beside = (file: string): string => fileURLToPath(new URL(file, import.meta.url));

/** Undefined where it, or something else that is needed, is missing; that is said. */
export async function builtServer(io: Io, command: string, needs: readonly string[] = []) {
  if (![beside('serve.js'), ...needs].every((file) => existsSync(file))) {
    io.err(`error: The server is not built. Run ./doffline ${command}, or npm run build first.\n`);
    return undefined;
  }
  return (await import(new URL('serve.js', import.meta.url).href)) as Server;
}
