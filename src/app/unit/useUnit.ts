// Whether there is a unit on the server, as it says; and the code for its first lead that stood in the page's address.
import { useCallback, useEffect, useState } from 'react';
import { sentenceOf } from '../door/model.ts';
import { useGoneWhenLeft } from '../door/useDoor.ts';
import { codeIn } from '../parts/hashCode.ts';
import { call } from '../sync/wire.ts';
import { UNIT_HOUSE, type UnitState } from './model.ts';

export type UnitStage =
  | { readonly is: 'asking' }
  | { readonly is: 'shut'; readonly says: string }
  | { readonly is: 'there'; readonly state: UnitState };

const ASKING: UnitStage = { is: 'asking' };

export function useUnit(): { readonly stage: UnitStage; readonly ask: () => void } {
  const [stage, setStage] = useState<UnitStage>(ASKING);
  const load = useCallback((): void => {
    call('read-unit').then(
      (answer) =>
        setStage(
          answer.is === 'answer'
            ? { is: 'there', state: answer.body }
            : { is: 'shut', says: sentenceOf(UNIT_HOUSE, answer) },
        ),
      () => undefined,
    );
  }, []);
  const forget = useCallback(() => setStage(ASKING), []);
  useEffect(load, [load]);
  // What was typed or shown to make the unit goes too.
  useGoneWhenLeft(forget, load);
  const ask = useCallback((): void => {
    forget();
    load();
  }, [forget, load]);
  return { stage, ask };
}

/** Read once, and taken out of the address bar and the history: whoever comes next must not find it there. */
export function useSetupCode(): string {
  const [code, setCode] = useState(() => codeIn(window.location.hash, 'setup'));
  useEffect(() => {
    const take = (): void => {
      const found = codeIn(window.location.hash, 'setup');
      if (found === '') return;
      setCode(found);
      window.history.replaceState(window.history.state, '', window.location.pathname);
    };
    take();
    window.addEventListener('hashchange', take);
    return () => window.removeEventListener('hashchange', take);
  }, []);
  return code;
}
