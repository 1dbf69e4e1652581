// Who let whom in to health records, and when, as the journal says.
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { Scroll } from '../parts/Scroll.tsx';
import { clock } from '../sync/ServerSection.tsx';
import { LET_IN } from './labels.ts';
import type { HealthAccounts, Letting } from './model.ts';

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
        <Scroll label={LET_IN.log} className="wide-table">
          <table>
            <thead>
              <tr>
                {LET_IN.columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {lettings.map((letting) => (
                <Row key={letting.number} letting={letting} accounts={accounts} />
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {isCut && <p className="quiet">{LET_IN.older}</p>}
    </>
  );
}
