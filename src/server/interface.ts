// The interface as a Hono application: one path for every route, from the table of src/api/routes.ts. In this order: is it
// our own page, who asks and may they, how often, then the body, and only then the handler.
import type { IncomingMessage } from 'node:http';
import type { HttpBindings } from '@hono/node-server';
import { type Context as HonoContext, Hono, type MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { ACCESS, type RouteName } from '../api/access.ts';
import { PROBLEMS } from '../api/problems.ts';
import type { PdfFile } from '../api/shapes/papers.ts';
import { mostBody, type Route, ROUTE_NAMES, ROUTES } from '../api/routes.ts';
import { checked, jsonOf } from './body.ts';
import type { Call, Context, Handlers, Who } from './context.ts';
import { admitted, type Tokens } from './guard.ts';
import { fileHeaders, goneWith } from './papers.ts';
import { type Arrival, isOwnPage } from './reach.ts';
import { bodyOf, Refusal, refusalOf } from './refusal.ts';
import type { Trace } from './trace.ts';

export interface Arrived {
  readonly trace: Trace;
  readonly arrival: Arrival;
}

export interface Env {
  readonly Bindings: HttpBindings & Arrived;
}

type Http = HonoContext<Env>;

/** A device stays paired until it is revoked; browsers keep a cookie for so long at most and are given it anew. */
const DEVICE_SECONDS = 400 * 86_400;

function cookiesOf(http: Http, secure: boolean) {
  const name = (what: string): string => `${secure ? '__Host-' : ''}doffline-${what}`;
  const common = { path: '/', httpOnly: true, sameSite: 'Strict', secure } as const;
  const tokens: Tokens = {
    session: getCookie(http, name('session')),
    device: getCookie(http, name('device')),
  };
  return {
    tokens,
    setSession: (token: string | undefined): void =>
      setCookie(http, name('session'), token ?? '', {
        ...common,
        ...(token === undefined ? { maxAge: 0 } : {}),
      }),
    setDevice: (token: string): void =>
      setCookie(http, name('device'), token, { ...common, maxAge: DEVICE_SECONDS }),
  };
}

async function countRequest({ limits }: Context, who: Who, peer: string): Promise<void> {
  if (who.is === 'nobody') return limits.unknown.count(peer);
  return limits.known.count(who.is === 'person' ? who.account.id : who.device.id);
}

/** A guesser of tokens is nobody too, and is counted as such. */
async function whoAsks(context: Context, name: RouteName, tokens: Tokens, peer: string, now: Date) {
  try {
    return await admitted(context, name, tokens, now);
  } catch (error) {
    if (refusalOf(error).code !== 'fault') await context.limits.unknown.count(peer);
    throw error;
  }
}

function noteWho(trace: Trace, who: Who): void {
  if (who.is === 'person') trace.role = who.account.role;
  if (who.is === 'device') {
    trace.role = who.device.role;
    trace.device = who.device.id;
  }
}

const fileAnswer = (type: string, file: PdfFile): Response =>
  new Response(file.bytes, { headers: fileHeaders(type, file) });

async function bodyFor({ limits }: Context, name: RouteName, who: Who, incoming: IncomingMessage) {
  const { body }: Route = ROUTES[name];
  if (!body) return undefined;
  const isBatch = name === 'append-entries' && who.is === 'device';
  const leave = isBatch ? limits.batches.enter(who.device.id) : undefined;
  try {
    return checked(body, await jsonOf(incoming, mostBody(name)));
  } finally {
    leave?.();
  }
}

async function answer(context: Context, handlers: Handlers, name: RouteName, http: Http): Promise<Response> {
  const { trace, arrival, incoming } = http.env;
  const route: Route = ROUTES[name];
  const reach = context.reach();
  const now = context.clock();
  const { tokens, ...cookies } = cookiesOf(http, reach.secure);
  if (route.method !== 'get' && !isOwnPage(incoming, arrival, reach)) throw new Refusal('foreign-page');
  const whoNow = (): Promise<Who> => whoAsks(context, name, tokens, arrival.peer, now);
  const first = await whoNow();
  noteWho(trace, first);
  await countRequest(context, first, arrival.peer);
  const body = await bodyFor(context, name, first, incoming);
  const call = {
    context,
    // A body may be long on its way: who was taken out meanwhile is out.
    who: body === undefined ? first : await whoNow(),
    now,
    peer: arrival.peer,
    session: tokens.session,
    deviceToken: tokens.device,
    gone: goneWith(http.env.outgoing),
    ...cookies,
    params: route.params && checked(route.params, http.req.param()),
    query: route.query && checked(route.query, http.req.query()),
    body,
  };
  const handle = handlers[name] as (call: unknown) => Promise<object>;
  const answered = await handle(call satisfies Omit<Call<RouteName>, 'body' | 'params' | 'query'>);
  return route.file ? fileAnswer(route.file, answered as PdfFile) : http.json(answered);
}

function refuse(http: Http, context: Context, error: unknown): Response {
  const refusal = refusalOf(error);
  const { trace } = http.env;
  trace.code = refusal.code;
  if (refusal.code === 'fault') trace.fault = refusal.cause;
  context.metrics.refused(refusal.code);
  const { after } = refusal.details;
  const { status } = PROBLEMS[refusal.code];
  // What was not read of the request is not waited for.
  if (refusal.code === 'too-large') http.header('Connection', 'close');
  const wait = after ?? (status === 503 ? 10 : undefined);
  if (wait !== undefined) http.header('Retry-After', String(wait));
  return http.json({ problem: bodyOf(refusal, trace.id) }, status);
}

/** All of /api. What is not in the table is not found. */
export function apiOf(context: Context, handlers: Handlers): Hono<Env> {
  const app = new Hono<Env>();
  for (const name of ROUTE_NAMES) {
    const { method, path } = ROUTES[name];
    const hidden = 'hidden' in ACCESS[name];
    const named: MiddlewareHandler<Env> = async ({ env }, next) => {
      env.trace.route = hidden ? 'other' : name;
      await next();
      env.trace.untold = hidden && env.trace.code === undefined;
    };
    const address = path.replaceAll(/\{(\w+)\}/g, ':$1');
    app.on(method.toUpperCase(), address, named, (http) => answer(context, handlers, name, http));
  }
  app.notFound((http) => refuse(http, context, new Refusal('not-found')));
  app.onError((error, http) => refuse(http, context, error));
  return app;
}
