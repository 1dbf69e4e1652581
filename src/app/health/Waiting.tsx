// For an account of occupational health that is not let in: what it waits for, and who can do it. To other roles it is nothing.
import { Button } from 'react-aria-components';
import type { InsideProps } from '../door/Door.tsx';
import { WAITING } from './labels.ts';

export function Waiting({ guest: { account }, keeper }: InsideProps) {
  if (account.health !== 'waits') return null;
  return (
    <section aria-labelledby="health-waiting">
      <h2 id="health-waiting">{WAITING.title}</h2>
      <p>
        <b>{WAITING.what}</b>
      </p>
      <p>{WAITING.why}</p>
      <p>{WAITING.who}</p>
      <p>
        <code>{WAITING.command(account.name)}</code>
      </p>
      <p className="actions">
        <Button className="button main" onPress={keeper.ask}>
          {WAITING.ask}
        </Button>
      </p>
    </section>
  );
}
