// What is known of a request for the log and the counts: nothing of a person. Addresses, names, ids of people, bodies and
// queries are never written, and requests for health records are not told at all.
import { randomBytes } from 'node:crypto';
import type { ProblemCode } from '../api/problems.ts';
import type { Role } from '../api/roles.ts';

export interface Trace {
  /** Names the request in its answer and in the log. */
  readonly id: string;
  readonly since: number;
  route: string;
  code?: ProblemCode;
  role?: Role;
  device?: string;
  /** A mistake of the server's own. */
  fault?: unknown;
  /** Neither logged nor counted, unless the server failed. */
  untold?: boolean;
}

export const newTrace = (): Trace => ({
  id: randomBytes(6).toString('hex'),
  since: performance.now(),
  route: 'other',
});
