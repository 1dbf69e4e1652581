// What the unit's page works out: for whom it opens, what is missing in what was typed, how long a code is good, who is the last
// lead. Pure.
import type * as z from 'zod';
import { isStrong } from '../../api/passwordRule.ts';
import type { AnswerOf } from '../../api/routes.ts';
import { label, line, loginName, slug } from '../../api/shapes/common.ts';
import { revocation } from '../../api/shapes/devices.ts';
import type { Account, House } from '../door/model.ts';
import type { Faults } from '../door/useDraft.ts';
import { UNIT, WRONG } from './labels.ts';
import { ACCOUNTS } from './leadLabels.ts';

export type UnitState = AnswerOf<'read-unit'>;
export type Device = AnswerOf<'list-devices'>['devices'][number];
export type Offer = AnswerOf<'offer-pairing'>;
export type People = AnswerOf<'create-unit'>['people'];

/** Everybody comes in here: a first password is changed by whoever has one, and a lead finds more behind the door. */
export const UNIT_HOUSE: House = {
  stands: ({ role, firstPassword }) => {
    if (firstPassword) return 'first';
    return role === 'lead' ? 'in' : 'other';
  },
  lost: UNIT.lost,
  says: {
    'not-found': UNIT.none,
    'last-lead': 'This is the last lead. Make another lead first; then this one can be closed or changed.',
    'name-taken': 'Somebody has this name already. Take another, or change that account below.',
  },
};

/** The unit whose lead is to be made, where it is there already; undefined where it is to be made as well. */
export function knownUnit({
  unit,
  journalOf,
}: UnitState): { readonly id: string; readonly title: string } | undefined {
  if (unit) return { id: unit.id, title: unit.title };
  return journalOf === null ? undefined : { id: journalOf, title: journalOf };
}

export interface SetupDraft {
  readonly code: string;
  readonly title: string;
  readonly id: string;
  readonly name: string;
  readonly password: string;
  readonly repeat: string;
}

export const MOST_ID = 40;
const MOST_TITLE = 120;
const MOST_NAME = 64;
const MOST_LABEL = 80;

const textFault = (shape: z.ZodType, typed: string, what: string, most: number): string => {
  if (typed.trim() === '') return WRONG.empty(what);
  return shape.safeParse(typed).success ? '' : WRONG.long(most);
};

/** Only what is wrong. */
const onlyWrong = <Draft extends object>(faults: { readonly [Key in keyof Draft]?: string }): Faults<Draft> =>
  Object.fromEntries(Object.entries(faults).filter(([, says]) => says !== '')) as Faults<Draft>;

export const nameFault = (name: string): string => textFault(loginName, name, 'a name', MOST_NAME);
export const labelFault = (typed: string): string =>
  textFault(label, typed, 'what the tablet is called', MOST_LABEL);

export const setupFaults = ({ code, title, id, name, password, repeat }: SetupDraft): Faults<SetupDraft> =>
  onlyWrong<SetupDraft>({
    code: code.trim() === '' ? WRONG.code : '',
    title: textFault(line, title, 'the unit’s name', MOST_TITLE),
    id: id.length <= MOST_ID && slug.safeParse(id).success ? '' : WRONG.id,
    name: nameFault(name),
    password: isStrong(password, name.trim(), id) ? '' : WRONG.password,
    repeat: password === repeat ? '' : WRONG.repeat,
  });

/** Where a refusal of the setup belongs. */
export const SETUP_FIELD: Readonly<Record<string, keyof SetupDraft>> = {
  'setup-code-wrong': 'code',
  'weak-password': 'password',
  'name-taken': 'name',
};

/** The only account that can still make leads: it can be neither closed nor changed. */
export const isLastLead = (account: Account, all: readonly Account[]): boolean =>
  account.role === 'lead' &&
  !account.disabled &&
  !all.some(({ id, role, disabled }) => id !== account.id && role === 'lead' && !disabled);

/** Whether nobody else could let an account of occupational health in again. */
const isOnlyLetIn = (account: Account, all: readonly Account[]): boolean =>
  account.health === 'in' &&
  !all.some(({ id, health, disabled }) => id !== account.id && health === 'in' && !disabled);

/** What a lead must know before a change that makes an account wait to be let in to health records; empty where it makes none wait. */
export function waitText(account: Account, all: readonly Account[], role = account.role): string {
  if (role !== 'occupational-health') return '';
  if (!all.some(({ health }) => health !== 'none')) return ` ${ACCOUNTS.firstIn}`;
  const nobody = isOnlyLetIn(account, all) ? ` ${ACCOUNTS.nobodyElse}` : '';
  return ` ${ACCOUNTS.willWait(account.name)}${nobody}`;
}

/** The same before an account that is let in is closed or loses the role. */
export function lossText(account: Account, all: readonly Account[]): string {
  if (account.health !== 'in' || account.disabled) return '';
  return ` ${ACCOUNTS.wouldWait}${isOnlyLetIn(account, all) ? ` ${ACCOUNTS.nobodyElse}` : ''}`;
}

/** Whole seconds as minutes and seconds: 9:05. */
export const leftText = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

/** An address that only this machine reaches is of no use to a tablet. */
export const isOwnMachine = (address: string): boolean =>
  /^(localhost|127(\.\d+){3}|\[::1\])$/.test(new URL(address).hostname);

/** Whether the device of an offer is in: one that was there before has been paired anew. */
export const hasJoined = (
  offer: Pick<Offer, 'device'>,
  before: readonly Device[],
  now: readonly Device[],
): boolean => {
  const pairedAt = (devices: readonly Device[]) => devices.find(({ id }) => id === offer.device)?.pairedAt;
  return pairedAt(now) !== pairedAt(before);
};

/** What the journal takes as the reason of taking a device out. */
export const isReason = (reason: string): boolean => revocation.safeParse({ reason }).success;

/** The journal notes a clock from here on (docs/server.md); below it is not worth a word. */
const NOTED_MS = 30_000;
export const clockOff = (offset: number | null): number | undefined =>
  offset === null || Math.abs(offset) < NOTED_MS ? undefined : Math.round(offset / 1000);

export const NO_SETUP: SetupDraft = { code: '', title: '', id: '', name: '', password: '', repeat: '' };
