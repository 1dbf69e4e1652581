// What stands around the steps, on one page.
import type { Checked } from '../checked.ts';
import type { Editing } from '../editing.ts';
import { Accepted } from './Accepted.tsx';
import { Policy } from './Policy.tsx';
import { Source } from './Source.tsx';
import { Start } from './Start.tsx';

export function Rules({ checked, ...editing }: Editing & { readonly checked: Checked }) {
  return (
    <>
      <Start {...editing} />
      <Policy {...editing} />
      <Accepted {...editing} checked={checked} />
      <Source {...editing} />
    </>
  );
}
