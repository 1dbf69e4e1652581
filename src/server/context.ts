// What every handler works with: the unit's records and journal, the clock, and how the server is reached. One value, made
// once; tests make their own.
import type { AnswerOf, BodyOf, ParamsOf, QueryOf } from '../api/routes.ts';
import type { RouteName } from '../api/access.ts';
import type { Store } from '../journal/port.ts';
import type { Clock } from './clock.ts';
import type { HealthKeys } from './health/keys.ts';
import type { Limits } from './limits.ts';
import type { Log } from './log.ts';
import type { Metrics } from './metrics.ts';
import type { Papers } from './papers.ts';
import type { Reach } from './reach.ts';
import { Refusal } from './refusal.ts';
import type { Sights } from './seen.ts';
import type { Account } from './store/accounts.ts';
import type { Device } from './store/devices.ts';
import type { Database } from './store/sql.ts';

export interface Context {
  readonly records: Database;
  readonly journal: Store;
  readonly clock: Clock;
  readonly limits: Limits;
  readonly log: Log;
  readonly metrics: Metrics;
  readonly sights: Sights;
  readonly papers: Papers;
  /** Undefined where the server was started without them. */
  readonly healthKeys: HealthKeys | undefined;
  /** Who shows this may read the counts; undefined: this machine alone. */
  readonly metricsToken: string | undefined;
  /** How it is reached; asked each time, because the port is known late. */
  readonly reach: () => Reach;
  /** The code by which a first lead is made; undefined where there is one. */
  readonly setup: { code: string | undefined };
}

export type Who =
  | { readonly is: 'nobody' }
  | { readonly is: 'person'; readonly account: Account }
  | { readonly is: 'device'; readonly device: Device };

export interface Call<Name extends RouteName> {
  readonly context: Context;
  readonly who: Who;
  /** The address that the request came from: counted, never kept. */
  readonly peer: string;
  readonly now: Date;
  readonly body: BodyOf<Name>;
  readonly params: ParamsOf<Name>;
  readonly query: QueryOf<Name>;
  /** The session's token that came with the request, whatever it is worth. */
  readonly session: string | undefined;
  /** The device's token that it came with. */
  readonly deviceToken: string | undefined;
  /** Aborts when whoever asked has gone. */
  readonly gone: AbortSignal;
  readonly setSession: (token: string | undefined) => void;
  readonly setDevice: (token: string) => void;
}

export type Handler<Name extends RouteName> = (call: Call<Name>) => Promise<AnswerOf<Name>>;
export type Handlers = { readonly [Name in RouteName]: Handler<Name> };

/** The signed-in person. The guard has let nobody else through. */
export function personOf({ who }: { readonly who: Who }): Account {
  if (who.is !== 'person') throw new Refusal('not-signed-in');
  return who.account;
}

export function deviceOf({ who }: { readonly who: Who }): Device {
  if (who.is !== 'device') throw new Refusal('not-paired');
  return who.device;
}
