// Which accounts of occupational health are let in and which wait, letting one in, and who let whom in.
import { Fragment, type RefObject, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useList } from '../door/useList.ts';
import type { Refused } from '../door/model.ts';
import { Confirm } from '../parts/Confirm.tsx';
import { clock } from '../sync/ServerSection.tsx';
import { call } from '../sync/wire.ts';
import { LET_IN } from './labels.ts';
import { Lettings } from './Lettings.tsx';
import type { HealthAccount } from './model.ts';
import { Wrong } from '../parts/Wrong.tsx';

interface PressProps {
  readonly account: HealthAccount;
  readonly met: (refused: Refused) => string;
  readonly done: (name: string) => void;
  readonly then: RefObject<HTMLElement | null>;
}

function Press({ account: { id, name, since, firstPassword }, met, done, then }: PressProps) {
  if (since === null) return null;
  const write = async (): Promise<void> => {
    const answer = await call('let-in-account', { params: { account: id }, body: { since } });
    if (answer.is === 'lost') throw new Error(LET_IN.unknown);
    if (answer.is === 'refused') throw new Error(met(answer));
    done(name);
  };
  return (
    <p className="actions">
      <Confirm
        label={LET_IN.press(name)}
        title={LET_IN.confirm}
        sentence={LET_IN.will(name)}
        act={LET_IN.act}
        bar={firstPassword ? LET_IN.first : undefined}
        write={write}
        then={then}
      >
        <p>{LET_IN.ask(name)}</p>
      </Confirm>
    </p>
  );
}

const stateOf = ({ health, since }: HealthAccount): string => {
  if (health === 'in') return since === null ? LET_IN.in : LET_IN.inSince(clock(since));
  return since === null ? LET_IN.waits : LET_IN.waitsSince(clock(since));
};

function Card({ isSelf, ...props }: PressProps & { readonly isSelf: boolean }) {
  const { account } = props;
  const marks = [...(isSelf ? [LET_IN.you] : []), ...(account.disabled ? [LET_IN.closed] : [])];
  return (
    <li className="record">
      <p>
        <b>{account.name}</b>: {stateOf(account)}{' '}
        {marks.map((mark) => (
          <Fragment key={mark}>
            <span className="badge">{mark}</span>{' '}
          </Fragment>
        ))}
      </p>
      {account.health === 'waits' && !account.disabled && <Press {...props} />}
    </li>
  );
}

interface LetInProps {
  /** The id of whoever is signed in. */
  readonly self: string;
  readonly met: (refused: Refused) => string;
}

export function LetIn({ self, met }: LetInProps) {
  const { list, wrong, load } = useList('list-health-accounts', met);
  const [said, setSaid] = useState('');
  const told = useRef<HTMLOutputElement>(null);
  return (
    <section aria-labelledby="health-let-in">
      <h2 id="health-let-in">{LET_IN.title}</h2>
      <p>{list ? LET_IN.says : LET_IN.asking}</p>
      <Wrong text={wrong} />
      <ul className="records" aria-label={LET_IN.list}>
        {list?.accounts.map((account) => (
          <Card
            key={account.id}
            account={account}
            isSelf={account.id === self}
            met={met}
            done={(name) => {
              setSaid(LET_IN.done(name));
              load();
            }}
            then={told}
          />
        ))}
      </ul>
      <output ref={told} tabIndex={-1} className="told">
        {said}
      </output>
      <p className="actions">
        <Button className="button" onPress={load}>
          {LET_IN.again}
        </Button>
      </p>
      {list && <Lettings {...list} />}
    </section>
  );
}
