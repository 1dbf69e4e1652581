// An address that leads nowhere.
import { Link } from 'wouter';

export function NotFound({ what = 'This address' }: { readonly what?: string }) {
  return (
    <div className="narrow">
      <h1>Not here</h1>
      <p>
        {what} leads to nothing in this program. <Link href="/">Choose a procedure.</Link>
      </p>
    </div>
  );
}
