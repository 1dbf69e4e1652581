// An address that leads nowhere.
import { Link } from 'wouter';
import { useTitle } from '../parts/useTitle.ts';

export function NotFound({ what = 'This address' }: { readonly what?: string }) {
  useTitle('Not here');
  return (
    <div className="narrow">
      <h1>Not here</h1>
      <p>
        {what} leads to nothing in this program. <Link href="/">Choose a procedure.</Link>
      </p>
    </div>
  );
}

/** The address of a draft that this browser has not got. */
export function NoDraft() {
  useTitle('No such draft');
  return (
    <div className="narrow">
      <h1>No such draft</h1>
      <p>
        This browser has no draft at this address. A draft is kept only in the browser in which it was
        written, until somebody deletes it there or clears the browser’s store. What was saved as a file can
        be opened again.
      </p>
      <p>
        <Link href="/write" className="button">
          Your drafts in this browser
        </Link>
      </p>
    </div>
  );
}
