// One account: who it is, and behind it what the lead can change, each asked about first.
import { Fragment, useRef, useState } from 'react';
import type { BodyOf } from '../../api/routes.ts';
import type { Account, Refused } from '../door/model.ts';
import { Confirm } from '../parts/Confirm.tsx';
import { call } from '../sync/wire.ts';
import { UNIT } from './labels.ts';
import { ACCOUNTS, ROLE } from './leadLabels.ts';
import { type Once, OncePassword } from './OncePassword.tsx';
import { lossText, waitText } from './model.ts';
import { RoleField } from './RoleField.tsx';
import { abilitiesOf } from './roles.ts';

type Change = BodyOf<'change-account'>;

interface CardProps {
  readonly account: Account;
  readonly all: readonly Account[];
  /** Whoever is signed in. */
  readonly isSelf: boolean;
  readonly isLast: boolean;
  readonly met: (refused: Refused) => string;
  readonly load: () => void;
}

interface ActsProps {
  readonly account: Account;
  readonly all: readonly Account[];
  readonly isSelf: boolean;
  readonly change: (body: Change) => Promise<void>;
}

/** What stands below the sentence: being let in to health records again is not the lead's to give. */
const actBefore = (loss: string) =>
  loss === '' ? ACCOUNTS.act : { ...ACCOUNTS.act, stays: ACCOUNTS.staysOut };

function RoleAct({ account, all, isSelf, change }: ActsProps) {
  const { name, role } = account;
  const [chosen, setChosen] = useState(role);
  const after = role === 'occupational-health' ? lossText(account, all) : waitText(account, all, chosen);
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
          sentence={`${ACCOUNTS.willChange(name, role, chosen)}${after}${isSelf ? ` ${ACCOUNTS.self}` : ''}`}
          main={false}
          act={actBefore(after)}
          isDisabled={chosen === role}
          write={async () => change({ role: chosen })}
        />
      </p>
    </>
  );
}

function StateActs({ account, all, isSelf, change }: ActsProps) {
  const { name, disabled } = account;
  const renewed = waitText(account, all);
  const after = disabled ? renewed : lossText(account, all);
  const will = `${disabled ? ACCOUNTS.willOpen(name) : ACCOUNTS.willClose(name)}${after}`;
  return (
    <p className="actions">
      {!isSelf && (
        <Confirm
          label={ACCOUNTS.renew}
          title={ACCOUNTS.renewTitle}
          sentence={`${ACCOUNTS.willRenew(name)}${renewed}`}
          main={false}
          act={actBefore(renewed)}
          write={async () => change({ newPassword: true })}
        />
      )}
      <Confirm
        label={disabled ? ACCOUNTS.open : ACCOUNTS.close}
        title={disabled ? ACCOUNTS.openTitle : ACCOUNTS.closeTitle}
        sentence={`${will}${isSelf ? ` ${ACCOUNTS.self}` : ''}`}
        main={false}
        act={actBefore(after)}
        write={async () => change({ disabled: !disabled })}
      />
    </p>
  );
}

const HEALTH_MARKS = { none: [], waits: [ACCOUNTS.waits], in: [ACCOUNTS.letIn] } as const;

function Head({ account, isSelf }: Pick<ActsProps, 'account' | 'isSelf'>) {
  const { name, role, disabled, firstPassword, health } = account;
  const marks = [
    ...(isSelf ? [ACCOUNTS.you] : []),
    ...(disabled ? [ACCOUNTS.closed] : firstPassword ? [ACCOUNTS.first] : []),
    ...(disabled ? [] : HEALTH_MARKS[health]),
  ];
  return (
    <summary>
      <b>{name}</b>, {ROLE[role]}{' '}
      {marks.map((mark) => (
        <Fragment key={mark}>
          <span className="badge">{mark}</span>{' '}
        </Fragment>
      ))}
    </summary>
  );
}

export function AccountCard({ account, all, isSelf, isLast, met, load }: CardProps) {
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
        {account.health === 'waits' && !account.disabled && <p>{ACCOUNTS.waitsSays(account.name)}</p>}
        {isLast ? (
          <p>{ACCOUNTS.onlyLead}</p>
        ) : (
          <>
            <RoleAct key={account.role} account={account} all={all} isSelf={isSelf} change={change} />
            <StateActs account={account} all={all} isSelf={isSelf} change={change} />
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
