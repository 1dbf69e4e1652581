// The page's end of the wire: requests to the server that it came from. An answer counts only in the form that the interface
// promises; anything else, a proxy's error page as much as silence, is no answer.
import type * as z from 'zod';
import type { RouteName } from '../../api/access.ts';
import { type ApiProblem, problem } from '../../api/problems.ts';
import type { PaperRequest } from '../../api/shapes/papers.ts';
import { type AnswerOf, type Route, ROUTES } from '../../api/routes.ts';
import type { Answer, Wire } from '../../sync/exchange.ts';
import { keepRole } from './paired.ts';

/** Longer than the server takes at its worst. The house's own choice. */
const PATIENCE_MS = 20_000;

/** Whatever is no answer: a refusal with all that it tells, or nothing of the server's. */
type Refused = { readonly is: 'refused'; readonly problem: ApiProblem } | { readonly is: 'lost' };

function refusalIn(json: unknown): Refused {
  const told = problem.safeParse((json as { readonly problem?: unknown } | null)?.problem);
  return told.success ? { is: 'refused', problem: told.data } : { is: 'lost' };
}

interface Asked {
  /** What stands for the parameters in the path. */
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: unknown;
}

const addressOf = (path: string, { params = {}, query = {} }: Asked): string => {
  const place = path.replaceAll(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(params[name] ?? ''));
  const search = new URLSearchParams(query).toString();
  return search === '' ? place : `${place}?${search}`;
};

/** Never throws. */
export async function call<Name extends RouteName>(
  name: Name,
  asked: Asked = {},
): Promise<Answer<AnswerOf<Name>>> {
  const { method, path, answer }: Route = ROUTES[name];
  const { body } = asked;
  try {
    const response = await fetch(addressOf(path, asked), {
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

/** Others' papers may be set first. The house's own choice. */
const PAPER_PATIENCE_MS = 180_000;

interface Paper {
  readonly file: Blob;
  readonly name: string;
}

/** A paper set by the server. Never throws. */
export async function callForPaper(
  body: PaperRequest,
): Promise<{ readonly is: 'answer'; readonly body: Paper } | Refused> {
  const { method, path, file: type } = ROUTES['set-paper'];
  try {
    const response = await fetch(path, {
      method: method.toUpperCase(),
      cache: 'no-store',
      signal: AbortSignal.timeout(PAPER_PATIENCE_MS),
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (!response.ok) return refusalIn(await response.json());
    const [, name] = /filename="([\w.-]+)"/.exec(response.headers.get('Content-Disposition') ?? '') ?? [];
    const isPaper = response.headers.get('Content-Type') === type && name !== undefined;
    return isPaper ? { is: 'answer', body: { file: await response.blob(), name } } : { is: 'lost' };
  } catch {
    return { is: 'lost' };
  }
}

const sentAt = (): string => new Date().toISOString();

export const wire: Wire = {
  ask: async () => {
    const answer = await call('read-device', { query: { sentAt: sentAt() } });
    if (answer.is === 'answer') keepRole(answer.body);
    return answer;
  },
  send: async (entries) => call('append-entries', { body: { entries, sentAt: sentAt() } }),
  read: async (from) => call('read-entries', { query: { from: String(from), sentAt: sentAt() } }),
};
