// A table under a head of plain names of columns, wide enough to scroll by itself.
import type { ReactNode } from 'react';
import { Scroll } from './Scroll.tsx';

interface TableProps {
  readonly label: string;
  readonly columns: readonly string[];
  /** The rows. */
  readonly children: ReactNode;
}

export function Table({ label, columns, children }: TableProps) {
  return (
    <Scroll label={label} className="wide-table">
      <table>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </Scroll>
  );
}
