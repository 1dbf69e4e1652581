// The page's end of the wire: requests to the server that it came from. An answer counts only in the form that the interface
// promises; anything else, a proxy's error page as much as silence, is no answer.
import type * as z from 'zod';
import type { RouteName } from '../../api/access.ts';
import { problem } from '../../api/problems.ts';
import { type AnswerOf, type Route, ROUTES } from '../../api/routes.ts';
import type { Answer, Wire } from '../../sync/exchange.ts';

/** Longer than the server takes at its worst. The house's own choice. */
const PATIENCE_MS = 20_000;

function refusalIn(json: unknown): Answer<never> {
  const told = problem.safeParse((json as { readonly problem?: unknown } | null)?.problem);
  return told.success ? { is: 'refused', problem: told.data } : { is: 'lost' };
}

/** Never throws. */
export async function call<Name extends RouteName>(
  name: Name,
  { query = {}, body }: { readonly query?: Readonly<Record<string, string>>; readonly body?: unknown } = {},
): Promise<Answer<AnswerOf<Name>>> {
  const { method, path, answer }: Route = ROUTES[name];
  const search = new URLSearchParams(query).toString();
  try {
    const response = await fetch(search === '' ? path : `${path}?${search}`, {
      method: method.toUpperCase(),
      cache: 'no-store',
      signal: AbortSignal.timeout(PATIENCE_MS),
      ...(body === undefined
        ? {}
        : { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }),
    });
    const json: unknown = await response.json();
    if (!response.ok) return refusalIn(json);
    const read: z.ZodSafeParseResult<unknown> = answer.safeParse(json);
    return read.success ? { is: 'answer', body: read.data as AnswerOf<Name> } : { is: 'lost' };
  } catch {
    return { is: 'lost' };
  }
}

const sentAt = (): string => new Date().toISOString();

export const wire: Wire = {
  ask: async () => call('read-device', { query: { sentAt: sentAt() } }),
  send: async (entries) => call('append-entries', { body: { entries, sentAt: sentAt() } }),
  read: async (from) => call('read-entries', { query: { from: String(from), sentAt: sentAt() } }),
};
