// The one table of who may do what. The server asks it before anything else of a request is looked at, and its tests call
// every line as everybody. `records` says which kinds of entries a device of a role may send.
import { RECORDING_ROLES, type Role, ROLES } from './roles.ts';

export interface Access {
  /** Anybody who reaches the server: what decides, if anything, is a secret in the request. */
  readonly open?: true;
  /** Signed-in people of these roles. */
  readonly people: readonly Role[];
  /** Paired devices of these roles. */
  readonly devices: readonly Role[];
  /** To everybody else there is nothing at this address. */
  readonly hidden?: true;
  /** Only for accounts that are let in to health records (docs/server.md): the role alone is in the lead's gift. */
  readonly letIn?: true;
  /** Also before a first password was changed. */
  readonly early?: true;
}

const OPEN = { open: true, people: [], devices: [] } as const satisfies Access;
const LEAD = { people: ['lead'], devices: [] } as const satisfies Access;
const SIGNED_IN = { people: ROLES, devices: [], early: true } as const satisfies Access;
const OCCUPATIONAL_HEALTH = {
  people: ['occupational-health'],
  devices: [],
  hidden: true,
  letIn: true,
} as const satisfies Access;

export const ACCESS = {
  'read-unit': OPEN,
  'create-unit': OPEN,
  'sign-in': OPEN,
  'read-session': SIGNED_IN,
  'change-password': SIGNED_IN,
  'sign-out': SIGNED_IN,
  'list-accounts': LEAD,
  'create-account': LEAD,
  'change-account': LEAD,
  'list-devices': LEAD,
  'revoke-device': LEAD,
  'offer-pairing': LEAD,
  pair: OPEN,
  'read-device': { people: [], devices: ROLES },
  'append-entries': { people: [], devices: RECORDING_ROLES },
  'read-entries': { people: ROLES, devices: ROLES },
  'read-papers': { people: ROLES, devices: ROLES },
  'set-paper': { people: ROLES, devices: ROLES },
  'seal-health-record': OCCUPATIONAL_HEALTH,
  'read-health-records': OCCUPATIONAL_HEALTH,
  'list-health-readings': OCCUPATIONAL_HEALTH,
  'list-health-accounts': OCCUPATIONAL_HEALTH,
  'let-in-account': OCCUPATIONAL_HEALTH,
} as const satisfies Readonly<Record<string, Access>>;

export type RouteName = keyof typeof ACCESS;

/**
 * Who is told what a wearer answered at the end of an exit (a tear, a sting, a splash, feeling faint). Observers run exits, on
 * several devices that must agree; the lead judges what was seen; occupational health follows people. Nobody else needs it.
 */
const TOLD_ANSWERS: readonly Role[] = ['observer', 'lead', 'occupational-health'];

export const mayReadAnswers = (role: Role): boolean => TOLD_ANSWERS.includes(role);

/** Families of kinds (what stands before the dot) that devices of a role may send. The server's own are in nobody's. */
const EXITS = ['exit', 'room', 'emergency', 'note'] as const;
const RECORDS: Readonly<Record<Role, readonly string[]>> = {
  // A visitor or a stand-in comes at night: whoever signs them in must be able to list them, or nothing after is taken.
  // Whose tablet it is may read a product's label; what it wrote is in its chain, and nothing after is taken without it.
  observer: [...EXITS, 'staff', 'product'],
  lead: [...EXITS, 'procedure', 'departure', 'language', 'staff', 'product'],
  stores: ['note', 'product'],
  'occupational-health': ['note'],
  reader: [],
};

/** Families that only the server writes: who is paired, how the unit began, what is sealed. */
const SERVERS_OWN: readonly string[] = ['unit', 'device', 'health'];

/**
 * Whether a device of a role may send entries of a kind. A kind that this release does not know is kept from devices of the
 * lead and the observers: a tablet may be newer than the server, and what it recorded must not be lost.
 */
export function mayRecord(role: Role, kind: string, known: boolean): boolean {
  const family = kind.split('.')[0] ?? '';
  if (SERVERS_OWN.includes(family)) return false;
  return RECORDS[role].includes(family) || (!known && ['lead', 'observer'].includes(role));
}
