// One account: who it is, and behind it what the lead can change, each asked about first.
import { useRef, useState } from 'react';
import type { BodyOf } from '../../api/routes.ts';
import type { Account, Refused } from '../door/model.ts';
import { Confirm } from '../parts/Confirm.tsx';
import { call } from '../sync/wire.ts';
import { UNIT } from './labels.ts';
import { ACCOUNTS, ROLE } from './leadLabels.ts';
import { type Once, OncePassword } from './OncePassword.tsx';
import { RoleField } from './RoleField.tsx';
import { abilitiesOf } from './roles.ts';

type Change = BodyOf<'change-account'>;

interface CardProps {
  readonly account: Account;
  /** Whoever is signed in. */
  readonly isSelf: boolean;
  readonly isLast: boolean;
  readonly met: (refused: Refused) => string;
  readonly load: () => void;
}

interface ActsProps {
  readonly account: Account;
  readonly isSelf: boolean;
  readonly change: (body: Change) => Promise<void>;
}

function RoleAct({ account: { name, role }, isSelf, change }: ActsProps) {
  const [chosen, setChosen] = useState(role);
  return (
    <>
      <div className="fields lined roomy">
        <RoleField
          label={ACCOUNTS.role}
          hint={ACCOUNTS.may(abilitiesOf(chosen).join('; '))}
          value={chosen}
          set={setChosen}
        />
      </div>
      <p className="actions">
        <Confirm
          label={ACCOUNTS.changeRole}
          title={ACCOUNTS.changeTitle}
          sentence={`${ACCOUNTS.willChange(name, role, chosen)}${isSelf ? ` ${ACCOUNTS.self}` : ''}`}
          main={false}
          act={ACCOUNTS.act}
          isDisabled={chosen === role}
          write={async () => change({ role: chosen })}
        />
      </p>
    </>
  );
}

function StateActs({ account: { name, disabled }, isSelf, change }: ActsProps) {
  return (
    <p className="actions">
      {!isSelf && (
        <Confirm
          label={ACCOUNTS.renew}
          title={ACCOUNTS.renewTitle}
          sentence={ACCOUNTS.willRenew(name)}
          main={false}
          act={ACCOUNTS.act}
          write={async () => change({ newPassword: true })}
        />
      )}
      <Confirm
        label={disabled ? ACCOUNTS.open : ACCOUNTS.close}
        title={disabled ? ACCOUNTS.openTitle : ACCOUNTS.closeTitle}
        sentence={`${disabled ? ACCOUNTS.willOpen(name) : ACCOUNTS.willClose(name)}${isSelf ? ` ${ACCOUNTS.self}` : ''}`}
        main={false}
        act={ACCOUNTS.act}
        write={async () => change({ disabled: !disabled })}
      />
    </p>
  );
}

function Head({ account: { name, role, disabled, firstPassword }, isSelf }: Omit<ActsProps, 'change'>) {
  const marks = [
    ...(isSelf ? [ACCOUNTS.you] : []),
    ...(disabled ? [ACCOUNTS.closed] : firstPassword ? [ACCOUNTS.first] : []),
  ];
  return (
    <summary>
      <b>{name}</b>, {ROLE[role]}{' '}
      {marks.map((mark) => (
        <span key={mark} className="badge">
          {mark}
        </span>
      ))}
    </summary>
  );
}

export function AccountCard({ account, isSelf, isLast, met, load }: CardProps) {
  const [once, setOnce] = useState<Once>();
  const [said, setSaid] = useState('');
  const told = useRef<HTMLOutputElement>(null);
  const change = async (body: Change): Promise<void> => {
    const answer = await call('change-account', { params: { account: account.id }, body });
    if (answer.is !== 'answer') throw new Error(answer.is === 'lost' ? UNIT.unsure : met(answer));
    const { password } = answer.body;
    setOnce(password === null ? undefined : { name: account.name, password });
    setSaid(ACCOUNTS.changed);
    load();
  };
  return (
    <li className="record">
      <details>
        <Head account={account} isSelf={isSelf} />
        {isLast ? (
          <p>{ACCOUNTS.onlyLead}</p>
        ) : (
          <>
            <RoleAct key={account.role} account={account} isSelf={isSelf} change={change} />
            <StateActs account={account} isSelf={isSelf} change={change} />
          </>
        )}
        <output ref={told} tabIndex={-1} className="told">
          {said}
        </output>
        <OncePassword once={once} putAway={() => setOnce(undefined)} />
      </details>
    </li>
  );
}
