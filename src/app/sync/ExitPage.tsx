// One exit as all devices recorded it: two tablets that were cut off from each other tell one account, in the order of the
// unit's chain, each line with the clock of the device that wrote it.
import { Link } from 'wouter';
import { clockNotes, isOfExit, type Told } from '../../sync/account.ts';
import { Table } from '../parts/Table.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { ACCOUNT, LINES } from './labels.ts';
import { clock } from './ServerSection.tsx';
import { useAccount } from './useAccount.ts';
import { useSync } from './useSync.ts';

const lineOf = ({ kind, body }: Told['entry']): string => {
  const says = (LINES as Readonly<Record<string, string | undefined>>)[kind] ?? kind;
  const details = [body.line, body.step, body.slip, body.text].filter(
    (one) => typeof one === 'string' || typeof one === 'number',
  );
  return details.length === 0 ? says : `${says}: ${details.join(', ')}`;
};

function Row({ told: { at, entry } }: { readonly told: Told }) {
  return (
    <tr>
      <td>{at ?? ACCOUNT.notThere}</td>
      <td>
        <code>{entry.device}</code> {entry.number}
      </td>
      <td>{clock(entry.at)}</td>
      <td>{lineOf(entry)}</td>
    </tr>
  );
}

function Clocks({ account }: { readonly account: readonly Told[] }) {
  const offset = useSync()?.state.offset;
  return (
    <>
      <h2>{ACCOUNT.clocks}</h2>
      <ul>
        <li>{typeof offset === 'number' ? ACCOUNT.thisClock(Math.round(offset / 1000)) : ACCOUNT.noClock}</li>
        {[...clockNotes(account)].map(([device, text]) => (
          <li key={device}>
            <code>{device}</code>: {text}
          </li>
        ))}
      </ul>
    </>
  );
}

export function ExitPage({ exit }: { readonly exit: string }) {
  useTitle(ACCOUNT.title);
  const account = useAccount();
  const lines = account?.filter(({ entry }) => isOfExit(entry, exit));
  return (
    <div className="narrow">
      <h1>{ACCOUNT.title}</h1>
      <p>
        <code>{exit}</code>
      </p>
      <p className="quiet">{ACCOUNT.order}</p>
      {lines && (
        <Table label={ACCOUNT.title} columns={[ACCOUNT.place, ACCOUNT.device, ACCOUNT.clock, ACCOUNT.what]}>
          {lines.map((told) => (
            <Row key={told.entry.hash} told={told} />
          ))}
        </Table>
      )}
      {account && <Clocks account={account} />}
    </div>
  );
}

/** Exits of this device's journal, the latest first. */
export function ExitList() {
  const account = useAccount();
  const exits = account?.filter(({ entry }) => entry.kind === 'exit.started').toReversed();
  return (
    <section aria-labelledby="exits-title">
      <h2 id="exits-title">{ACCOUNT.list}</h2>
      {exits?.length === 0 && <p>{ACCOUNT.none}</p>}
      <ul>
        {exits?.map(({ entry: { hash, at, device, body } }) => (
          <li key={hash}>
            <Link href={`/device/exit/${typeof body.exit === 'string' ? body.exit : ''}`}>
              {clock(at)}, <code>{device}</code>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
