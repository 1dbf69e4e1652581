// A list of the server's, loaded when it is first shown and again when asked to. What was loaded stays while the server does
// not answer.
import { useCallback, useEffect, useState } from 'react';
import type { AnswerOf } from '../../api/routes.ts';
import { call } from '../sync/wire.ts';
import type { Refused } from './model.ts';

type ListName = 'list-accounts' | 'list-devices' | 'list-health-accounts';

export interface Listed<Name extends ListName> {
  readonly list: AnswerOf<Name> | undefined;
  /** Why it could not be loaded. */
  readonly wrong: string;
  readonly load: () => void;
}

export function useList<Name extends ListName>(name: Name, met: (refused: Refused) => string): Listed<Name> {
  const [list, setList] = useState<AnswerOf<Name>>();
  const [wrong, setWrong] = useState('');
  const load = useCallback((): void => {
    call(name).then(
      (answer) => {
        setWrong(answer.is === 'answer' ? '' : met(answer));
        if (answer.is === 'answer') setList(answer.body);
      },
      () => undefined,
    );
  }, [name, met]);
  useEffect(load, [load]);
  return { list, wrong, load };
}
