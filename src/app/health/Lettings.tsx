// Who let whom in to health records, and when, as the journal says.
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { clock } from '../sync/ServerSection.tsx';
import { LET_IN } from './labels.ts';
import type { HealthAccounts, Letting } from './model.ts';
import { Table } from '../parts/Table.tsx';

interface WhoProps {
  readonly account: string | null;
  readonly person: string | null;
  readonly accounts: HealthAccounts['accounts'];
}

/** By name where the account is in the list; the journal itself has ids alone. */
function Whom({ account, person, accounts }: WhoProps) {
  const { staff } = useBook();
  const known = accounts.find(({ id }) => id === account);
  return (
    <>
      {known ? known.name : person !== null && memberText(staff, person)}{' '}
      {account !== null && <span className="quiet">{LET_IN.account(account)}</span>}
    </>
  );
}

function Row({ letting, accounts }: { readonly letting: Letting } & Pick<HealthAccounts, 'accounts'>) {
  const { at, account, person, how, by, byAccount } = letting;
  return (
    <tr>
      <th scope="row">{clock(at)}</th>
      <td>
        <Whom account={account} person={person} accounts={accounts} />
      </td>
      <td>
        {LET_IN.how[how]} <Whom account={byAccount} person={by} accounts={accounts} />
      </td>
    </tr>
  );
}

export function Lettings({ accounts, lettings }: HealthAccounts) {
  const isCut = (lettings.at(-1)?.number ?? 1) > 1;
  return (
    <>
      <h3>{LET_IN.log}</h3>
      <p>{lettings.length === 0 ? LET_IN.none : LET_IN.logSays}</p>
      {lettings.length > 0 && (
        <Table label={LET_IN.log} columns={LET_IN.columns}>
          {lettings.map((letting) => (
            <Row key={letting.number} letting={letting} accounts={accounts} />
          ))}
        </Table>
      )}
      {isCut && <p className="quiet">{LET_IN.older}</p>}
    </>
  );
}
