// Who may sign in: the list, and a new account with its first password.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Role } from '../../api/roles.ts';
import { Field, Form } from '../door/Form.tsx';
import { type Refused, sentenceOf } from '../door/model.ts';
import { useDraft } from '../door/useDraft.ts';
import { call } from '../sync/wire.ts';
import { AccountCard } from './AccountCard.tsx';
import { UNIT } from './labels.ts';
import { ACCOUNTS, LISTS } from './leadLabels.ts';
import { isLastLead, nameFault, UNIT_HOUSE } from './model.ts';
import { type Once, OncePassword } from './OncePassword.tsx';
import { RoleField } from './RoleField.tsx';
import { abilitiesOf } from './roles.ts';
import { useList } from '../door/useList.ts';
import { Wrong } from '../parts/Wrong.tsx';

interface Draft {
  readonly name: string;
  readonly role: Role;
}

const NEW: Draft = { name: '', role: 'observer' };

const faultsOf = ({ name }: Draft) => {
  const fault = nameFault(name);
  return fault === '' ? {} : { name: fault };
};

interface NewProps {
  readonly met: (refused: Refused) => string;
  readonly made: () => void;
}

function NewAccount({ met, made }: NewProps) {
  const { draft, put, wrong, missing, refuse, clear } = useDraft(NEW, faultsOf);
  const [once, setOnce] = useState<Once>();
  const send = async (): Promise<string> => {
    const { name, role } = draft;
    const answer = await call('create-account', { body: { name: name.trim(), role } });
    if (answer.is === 'lost') return UNIT.unsure;
    if (answer.is === 'refused')
      return answer.problem.code === 'name-taken'
        ? refuse('name', sentenceOf(UNIT_HOUSE, answer))
        : met(answer);
    setOnce({ name: answer.body.account.name, password: answer.body.password });
    clear();
    made();
    return '';
  };
  return (
    <>
      <Form title={ACCOUNTS.make} level={3} press={ACCOUNTS.press} missing={missing} send={send}>
        {(tried) => (
          <>
            <Field
              label={ACCOUNTS.name}
              hint={ACCOUNTS.nameHint}
              value={draft.name}
              set={(name) => put({ name })}
              purpose="off"
              wrong={wrong('name', tried)}
            />
            <RoleField
              label={ACCOUNTS.role}
              hint={`${ACCOUNTS.may(abilitiesOf(draft.role).join('; '))}${
                draft.role === 'occupational-health' ? ` ${ACCOUNTS.firstIn}` : ''
              }`}
              value={draft.role}
              set={(role) => put({ role })}
            />
          </>
        )}
      </Form>
      <OncePassword once={once} putAway={() => setOnce(undefined)} />
    </>
  );
}

interface AccountsProps {
  /** The id of whoever is signed in. */
  readonly self: string;
  readonly met: (refused: Refused) => string;
}

export function Accounts({ self, met }: AccountsProps) {
  const { list, wrong, load } = useList('list-accounts', met);
  const all = list?.accounts ?? [];
  return (
    <section aria-labelledby="unit-accounts">
      <h2 id="unit-accounts">{ACCOUNTS.title}</h2>
      <p>{list ? ACCOUNTS.says : LISTS.asking}</p>
      <Wrong text={wrong} />
      <ul className="records">
        {all.map((account) => (
          <AccountCard
            key={account.id}
            account={account}
            all={all}
            isSelf={account.id === self}
            isLast={isLastLead(account, all)}
            met={met}
            load={load}
          />
        ))}
      </ul>
      <p className="actions">
        <Button className="button" onPress={load}>
          {LISTS.again}
        </Button>
      </p>
      <NewAccount met={met} made={load} />
    </section>
  );
}
