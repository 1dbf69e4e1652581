// How the journal stands, where a page needs it: being opened, or closed and why.
import { Button } from 'react-aria-components';
import { book, useBook } from '../journal/useBook.ts';

export function Opening() {
  const { is, why } = useBook();
  if (is === 'ready') return null;
  if (is === 'opening') return <output className="waiting">Opening the journal …</output>;
  return (
    <div role="alert" className="wrong">
      <p>The journal cannot be opened: {why} Nothing can be sent, approved or signed off until it is.</p>
      <Button
        className="button"
        onPress={() => {
          book.refresh().catch(() => undefined);
        }}
      >
        Try again
      </Button>
    </div>
  );
}
