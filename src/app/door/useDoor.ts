// Who is signed in, as the server says; nothing of it is kept. What is shown goes with the door: once it is shut, or the page is
// left, the parts that held it are gone.
import { useCallback, useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { AnswerOf } from '../../api/routes.ts';
import type { Answer } from '../../sync/exchange.ts';
import { call } from '../sync/wire.ts';
import {
  asksAnew,
  type Door,
  doorAfterSignOut,
  doorOf,
  doorWhenEnded,
  type House,
  type Refused,
  sentenceOf,
} from './model.ts';

export interface Doorkeeper {
  readonly door: Door;
  readonly ask: () => void;
  /** Both give the refusal, where there is one. */
  readonly signIn: (name: string, password: string) => Promise<Refused | undefined>;
  readonly changePassword: (old: string, own: string) => Promise<Refused | undefined>;
  readonly signOut: (note?: string) => void;
  readonly says: (refused: Refused) => string;
  /** Asks who is in where a refusal puts that in doubt. Returns what is to be said. */
  readonly met: (refused: Refused) => string;
  /** The session lives on; whoever types has made no request for a while. */
  readonly stay: () => void;
}

const ASKING: Door = { is: 'asking' };

type Asks = <Name extends 'read-session' | 'sign-out'>(
  name: Name,
  then: (answer: Answer<AnswerOf<Name>>) => void,
) => void;

/** Only the latest answer counts: one that was on its way while somebody signed out must not open the door again. */
function useLatest(): Asks {
  const turn = useRef(0);
  return useCallback((name, then) => {
    turn.current += 1;
    const mine = turn.current;
    call(name).then(
      (answer) => mine === turn.current && then(answer),
      () => undefined,
    );
  }, []);
}

/** A page that the browser keeps for its back button must not come back with what it showed. */
export function useGoneWhenLeft(forget: () => void, ask: () => void): void {
  useEffect(() => {
    const leave = (): void => flushSync(forget);
    const back = ({ persisted }: PageTransitionEvent): void => {
      if (persisted) ask();
    };
    window.addEventListener('pagehide', leave);
    window.addEventListener('pageshow', back);
    return () => {
      window.removeEventListener('pagehide', leave);
      window.removeEventListener('pageshow', back);
    };
  }, [forget, ask]);
}

export function useDoor(house: House): Doorkeeper {
  const [door, setDoor] = useState<Door>(ASKING);
  const asked = useLatest();
  const ask = useCallback(
    (): void => asked('read-session', (answer) => setDoor(doorOf(house, answer))),
    [asked, house],
  );
  const askEnded = useCallback(
    (): void => asked('read-session', (answer) => setDoor(doorWhenEnded(house, answer))),
    [asked, house],
  );
  const forget = useCallback(() => setDoor(ASKING), []);
  useEffect(ask, [ask]);
  useGoneWhenLeft(forget, ask);
  const enter = async (name: 'sign-in' | 'change-password', body: object): Promise<Refused | undefined> => {
    const answer = await call(name, { body });
    if (answer.is !== 'answer') return answer;
    setDoor(doorOf(house, answer));
    return undefined;
  };
  const says = useCallback((refused: Refused) => sentenceOf(house, refused), [house]);
  return {
    door,
    ask: () => {
      forget();
      ask();
    },
    signIn: async (name, password) => enter('sign-in', { name, password }),
    changePassword: async (old, own) => enter('change-password', { old, new: own }),
    says,
    signOut: useCallback(
      (note = '') => {
        // What is shown goes at once, whatever the server answers and when.
        forget();
        asked('sign-out', (answer) => setDoor(doorAfterSignOut(answer, note)));
      },
      [asked, forget],
    ),
    met: useCallback(
      (refused) => {
        if (asksAnew(refused)) askEnded();
        return says(refused);
      },
      [askEnded, says],
    ),
    stay: useCallback(() => {
      asked('read-session', (answer) => {
        // What is being typed is not thrown away because one request came to nothing.
        if (answer.is === 'answer' || asksAnew(answer)) setDoor(doorWhenEnded(house, answer));
      });
    }, [asked, house]),
  };
}
