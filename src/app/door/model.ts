// Where somebody stands at the door of a page that needs the unit's server, and what is said where the server does not let them
// on. Each page says for whom it opens, and has sentences of its own.
import { type ApiProblem, PROBLEMS } from '../../api/problems.ts';
import type { AnswerOf } from '../../api/routes.ts';
import type { Answer } from '../../sync/exchange.ts';
import { DOOR, SIGN_IN } from './labels.ts';

type Session = AnswerOf<'read-session'>;
export type Account = Session['account'];
type Unit = Session['unit'];
export type Refused = Exclude<Answer<unknown>, { readonly is: 'answer' }>;
type Code = ApiProblem['code'];

export interface Guest {
  readonly account: Account;
  readonly unit: Unit;
}

export type Door =
  | { readonly is: 'asking' }
  /** The server did not answer, or refused for a reason of its own. */
  | { readonly is: 'shut'; readonly says: string }
  | { readonly is: 'out'; readonly note: string }
  | ({ readonly is: 'first' | 'other' | 'in' } & Guest);

/** A page behind a door. */
export interface House {
  readonly stands: (account: Account) => 'first' | 'other' | 'in';
  /** Where nothing of the server's came back. */
  readonly lost: string;
  /** Where this page says it otherwise, or has more to say. */
  readonly says: Readonly<Partial<Record<Code, string>>>;
}

/** The server takes the browser for nobody, for its device alone, or for somebody who may not: who it is must be asked anew. */
const NOBODY: readonly Code[] = ['not-signed-in', 'not-allowed', 'not-paired', 'device-revoked'];
const ASK_ANEW: readonly Code[] = [...NOBODY, 'not-found', 'first-password', 'not-let-in'];

const inMinutes = (seconds: number): string => {
  const minutes = Math.max(1, Math.ceil(seconds / 60));
  return minutes === 1 ? 'a minute' : `${minutes} minutes`;
};

const SAYS: Readonly<Partial<Record<Code, string>>> = {
  'wrong-password': 'The name or the password is wrong.',
  'weak-password':
    'Take a longer password, one that holds neither your name nor the unit’s, and not the one you had.',
};

/** What is said to somebody whose request came to nothing. */
export function sentenceOf(house: House, refused: Refused): string {
  if (refused.is === 'lost') return house.lost;
  const { code, after = 60 } = refused.problem;
  if (code === 'too-many') return `Too many tries. Wait ${inMinutes(after)}, then try again.`;
  return house.says[code] ?? SAYS[code] ?? PROBLEMS[code].says;
}

/** Whether a refusal says less of the request than of who asks: the session has ended, or the role has changed. */
export const asksAnew = (refused: Refused): boolean =>
  refused.is === 'refused' && ASK_ANEW.includes(refused.problem.code);

/** `note` is said above the fields, where somebody must sign in. */
export function doorOf(house: House, answer: Answer<Session>, note = ''): Door {
  if (answer.is === 'answer') return { is: house.stands(answer.body.account), ...answer.body };
  if (answer.is === 'refused' && NOBODY.includes(answer.problem.code)) return { is: 'out', note };
  return { is: 'shut', says: sentenceOf(house, answer) };
}

/** After signing out nobody is in, unless the server was not reached: then its session may be open still. */
export function doorAfterSignOut(answer: Answer<unknown>, note = ''): Door {
  return answer.is === 'lost' ? { is: 'shut', says: DOOR.leftOpen } : { is: 'out', note };
}

export const doorWhenEnded = (house: House, answer: Answer<Session>): Door =>
  doorOf(house, answer, SIGN_IN.ended);
