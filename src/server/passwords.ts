// Passwords, kept as argon2id with the parameters that OWASP's password storage cheat sheet gives first for it (19 MiB,
// two passes, one lane). Asking for an account that is not there costs the same time as for one that is.
import { hash, verify } from '@node-rs/argon2';

/** The package's number for argon2id: its enumeration is a const one, which one-file compilation cannot read. */
const ARGON2ID = 2;
const COST = { algorithm: ARGON2ID, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export const keep = (password: string): Promise<string> => hash(password, COST);

let nobody: Promise<string> | undefined;

/** `kept` undefined: there is no such account; false after the usual time. */
export async function isRight(password: string, kept: string | undefined): Promise<boolean> {
  nobody ??= keep('nobody has this password');
  const right = await verify(kept ?? (await nobody), password);
  return right && kept !== undefined;
}
