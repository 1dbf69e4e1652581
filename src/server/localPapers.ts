// Papers from the server of `npm start`, for whoever sits at this machine: the same requests, answers and refusals as the unit's
// server has (src/api), without accounts.
import { randomBytes } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { PROBLEMS } from '../api/problems.ts';
import { mostBody, ROUTES } from '../api/routes.ts';
import { checked, jsonOf } from './body.ts';
import { SECURITY_HEADERS } from './headers.ts';
import { fileHeaders, goneWith, type Papers } from './papers.ts';
import { isOwnPage } from './reach.ts';
import { bodyOf, Refusal, refusalOf } from './refusal.ts';
import { OFFER } from './routes/papers.ts';

/** Whether a request is one for papers. */
export const isForPapers = ({ url = '' }: IncomingMessage): boolean => /^\/api\/papers(\?|$)/.test(url);

const JSON_TYPE = { 'Content-Type': 'application/json' } as const;
const HEADERS = { ...SECURITY_HEADERS, 'Cache-Control': 'no-store' } as const;

async function answered(papers: Papers, request: IncomingMessage, response: ServerResponse): Promise<void> {
  papers.ready();
  if (request.method === 'GET' || request.method === 'HEAD') {
    response.writeHead(200, { ...HEADERS, ...JSON_TYPE });
    return void response.end(request.method === 'HEAD' ? undefined : JSON.stringify(OFFER));
  }
  if (request.method !== 'POST') throw new Refusal('not-found');
  const host = (request.headers.host ?? '').toLowerCase();
  if (!isOwnPage(request, { host }, { secure: false })) throw new Refusal('foreign-page');
  const { body, file: type } = ROUTES['set-paper'];
  const wanted = checked(body, await jsonOf(request, mostBody('set-paper')));
  const file = await papers.set(wanted, goneWith(response));
  response.writeHead(200, { ...HEADERS, ...fileHeaders(type, file) });
  response.end(file.bytes);
}

function refuse(response: ServerResponse, error: unknown): void {
  const refusal = refusalOf(error);
  const { status } = PROBLEMS[refusal.code];
  const { after } = refusal.details;
  response.writeHead(status, {
    ...HEADERS,
    ...JSON_TYPE,
    ...(after === undefined ? {} : { 'Retry-After': String(after) }),
    // What was not read of the request is not waited for.
    ...(refusal.code === 'too-large' ? { Connection: 'close' } : {}),
  });
  response.end(JSON.stringify({ problem: bodyOf(refusal, randomBytes(6).toString('hex')) }));
}

/** Answers requests for papers. */
export const paperListener =
  (papers: Papers) =>
  (request: IncomingMessage, response: ServerResponse): void => {
    answered(papers, request, response).catch((error: unknown) => refuse(response, error));
  };
