// Every address of the server's interface: what goes in, what comes out, and who may ask (access.ts). The server answers
// from this table, its description (schema/openapi.json) is made of it, and the page calls by it.
import type * as z from 'zod';
import { ACCESS, type RouteName } from './access.ts';
import type { ProblemCode } from './problems.ts';
import { nothing } from './shapes/common.ts';
import * as devices from './shapes/devices.ts';
import * as entries from './shapes/entries.ts';
import * as health from './shapes/health.ts';
import * as papers from './shapes/papers.ts';
import * as people from './shapes/people.ts';

export interface Route {
  readonly method: 'get' | 'post' | 'patch' | 'delete';
  /** `{name}` stands for a parameter. */
  readonly path: string;
  readonly does: string;
  readonly params?: z.ZodObject;
  readonly query?: z.ZodObject;
  readonly body?: z.ZodType;
  readonly answer: z.ZodType;
  /** The answer is a file of this type, not JSON. */
  readonly file?: 'application/pdf';
  /** What it may refuse besides what every route may. */
  readonly refuses: readonly ProblemCode[];
}

/** Bytes of a request's body, at most. */
export const MOST_BODY = 64 * 1024;
export const MOST_BATCH = 8 * 1024 * 1024;

const BODIES: Readonly<Partial<Record<RouteName, number>>> = {
  'append-entries': MOST_BATCH,
  'set-paper': papers.MOST_PAPER_BODY,
};

export const mostBody = (name: RouteName): number => BODIES[name] ?? MOST_BODY;

export const ROUTES = {
  'read-unit': {
    method: 'get',
    path: '/api/unit',
    does: 'Whether the unit is created, and what it is called.',
    answer: people.unitState,
    refuses: [],
  },
  'create-unit': {
    method: 'post',
    path: '/api/unit',
    does: 'Create the unit and its first lead, with the code that the server showed when it started.',
    body: people.creation,
    answer: people.created,
    refuses: ['setup-code-wrong', 'already-created', 'other-unit-there', 'weak-password'],
  },
  'sign-in': {
    method: 'post',
    path: '/api/session',
    does: 'Sign in. Always begins a new session, and ends the one that the request came with.',
    body: people.signIn,
    answer: people.session,
    refuses: ['wrong-password'],
  },
  'read-session': {
    method: 'get',
    path: '/api/session',
    does: 'Who is signed in.',
    answer: people.session,
    refuses: [],
  },
  'change-password': {
    method: 'post',
    path: '/api/session/password',
    does: 'Change one’s own password. Ends all sessions of the account, and begins a new one.',
    body: people.passwordChange,
    answer: people.session,
    refuses: ['wrong-password', 'weak-password'],
  },
  'sign-out': {
    method: 'delete',
    path: '/api/session',
    does: 'End this session.',
    answer: nothing,
    refuses: [],
  },
  'list-accounts': {
    method: 'get',
    path: '/api/accounts',
    does: 'Everybody who may sign in.',
    answer: people.accounts,
    refuses: [],
  },
  'create-account': {
    method: 'post',
    path: '/api/accounts',
    does: 'Let somebody sign in. The password is shown once.',
    body: people.newAccount,
    answer: people.accountMade,
    refuses: ['name-taken'],
  },
  'change-account': {
    method: 'patch',
    path: '/api/accounts/{account}',
    does: 'Change a role, disable or enable an account, or give it a new first password. Ends its sessions.',
    params: people.accountPath,
    body: people.accountChange,
    answer: people.accountChanged,
    refuses: ['last-lead'],
  },
  'list-devices': {
    method: 'get',
    path: '/api/devices',
    does: 'All devices that were ever paired.',
    answer: devices.devices,
    refuses: [],
  },
  'revoke-device': {
    method: 'post',
    path: '/api/devices/{device}/revocation',
    does: 'Take a device out of the unit, at once.',
    params: devices.devicePath,
    body: devices.revocation,
    answer: nothing,
    refuses: [],
  },
  'offer-pairing': {
    method: 'post',
    path: '/api/pairings',
    does: 'Make a code, for one use within minutes, with which a tablet joins the unit.',
    body: devices.pairingOffer,
    answer: devices.pairing,
    refuses: ['too-many-pairings'],
  },
  pair: {
    method: 'post',
    path: '/api/device',
    does: 'Join the unit with a code. The answer sets the device’s cookie.',
    body: devices.redemption,
    answer: devices.deviceState,
    refuses: ['code-wrong'],
  },
  'read-device': {
    method: 'get',
    path: '/api/device',
    does: 'What the server knows of the device that asks.',
    query: devices.deviceQuery,
    answer: devices.deviceState,
    refuses: [],
  },
  'append-entries': {
    method: 'post',
    path: '/api/entries',
    does: 'Store entries, all or none. Answers when they are durable; what is stored already is acknowledged again.',
    body: entries.batch,
    answer: entries.acknowledged,
    refuses: [
      'forged-device',
      'kind-not-allowed',
      'malformed',
      'entry-too-large',
      'hash-wrong',
      'body-wrong',
      'other-unit',
      'fork',
      'gap',
      'chain-broken',
    ],
  },
  'read-entries': {
    method: 'get',
    path: '/api/entries',
    does: 'Entries of the unit from a place on, in their order.',
    query: entries.readQuery,
    answer: entries.page,
    refuses: ['cursor-ahead'],
  },
  'read-papers': {
    method: 'get',
    path: '/api/papers',
    does: 'Which papers this server sets.',
    answer: papers.offer,
    refuses: ['papers-missing'],
  },
  'set-paper': {
    method: 'post',
    path: '/api/papers',
    does: 'Set a paper of the procedure that is sent, as tagged PDF. Nothing of it is kept.',
    body: papers.paperRequest,
    answer: papers.pdf,
    file: 'application/pdf',
    refuses: ['paper-unreadable', 'paper-not-set', 'paper-too-slow', 'papers-busy', 'papers-missing'],
  },
  'seal-health-record': {
    method: 'post',
    path: '/api/health-records',
    does: 'Keep a health record of a member of staff, encrypted.',
    body: health.healthRecord,
    answer: health.healthSealed,
    refuses: ['malformed', 'health-key-missing'],
  },
  'read-health-records': {
    method: 'post',
    path: '/api/health-records/readings',
    does: 'Read health records from a number on, or one alone. Who reads whose and why is in the journal before anything is shown.',
    body: health.healthReading,
    answer: health.healthRecords,
    refuses: ['health-key-missing', 'health-key-unknown'],
  },
  'list-health-readings': {
    method: 'get',
    path: '/api/health-records/readings',
    does: 'Who read whose health records, when and why, from a number on.',
    query: health.readingsQuery,
    answer: health.readings,
    refuses: [],
  },
  'list-health-accounts': {
    method: 'get',
    path: '/api/health-records/accounts',
    does: 'Which accounts of occupational health are let in to health records, which wait, and who let whom in.',
    answer: health.healthAccounts,
    refuses: [],
  },
  'let-in-account': {
    method: 'post',
    path: '/api/health-records/accounts/{account}/letting-in',
    does: 'Let an account of occupational health in to health records. The journal says so before it is let in.',
    params: people.accountPath,
    body: health.lettingIn,
    answer: nothing,
    refuses: ['not-waiting', 'still-first-password'],
  },
} as const satisfies Readonly<Record<RouteName, Route>>;

export const ROUTE_NAMES = Object.keys(ACCESS) as RouteName[];

type Of<Name extends RouteName, Key extends string> = (typeof ROUTES)[Name] extends {
  readonly [K in Key]: infer S;
}
  ? S extends z.ZodType
    ? z.output<S>
    : undefined
  : undefined;

export type BodyOf<Name extends RouteName> = Of<Name, 'body'>;
export type ParamsOf<Name extends RouteName> = Of<Name, 'params'>;
export type QueryOf<Name extends RouteName> = Of<Name, 'query'>;
export type AnswerOf<Name extends RouteName> = Of<Name, 'answer'>;
