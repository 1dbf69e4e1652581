// On top of a long page: a field to type into, how much of it is shown, and all groups opened or folded at once. Below it
// the groups, each with its count, so that what is folded is not forgotten.
import type { ReactNode } from 'react';
import { Button, Input, Label, SearchField } from 'react-aria-components';
import type { Finder as Found } from './useFinder.ts';

interface FinderProps {
  readonly label: string;
  /** 'records' */
  readonly what: string;
  readonly found: number;
  readonly all: number;
  readonly finder: Found;
}

export function Finder({ label, what, found, all, finder }: FinderProps) {
  const { search, names, open, find, setOpen } = finder;
  const everyOpen = names.every((name) => open.has(name));
  return (
    <div className="finder">
      <SearchField className="search" value={search} onChange={find}>
        <Label>{label}</Label>
        <Input />
      </SearchField>
      <p className="finder-state">
        <output>
          {found === all ? `${all} ${what}` : `${found} of ${all} ${what}`}
          {found === 0 && ': none has every word of it. Fewer words find more.'}
        </output>
        {names.length > 1 && (
          <Button className="button" onPress={() => setOpen(everyOpen ? [] : names)}>
            {everyOpen ? 'Fold all groups' : 'Open all groups'}
          </Button>
        )}
      </p>
    </div>
  );
}

interface FoldProps {
  readonly name: string;
  /** The heading, at the level that the page has. */
  readonly children: readonly [heading: ReactNode, content: ReactNode];
  /** '12 records' */
  readonly count: string;
  readonly finder: Found;
}

export function Fold({ name, children: [heading, content], count, finder }: FoldProps) {
  const isOpen = finder.open.has(name);
  return (
    <details
      className="fold"
      open={isOpen}
      onToggle={({ currentTarget }) => {
        // It also tells of what the address has opened by itself.
        if (currentTarget.open !== isOpen) finder.fold(name, currentTarget.open);
      }}
    >
      <summary>
        {heading} <span className="badge">{count}</span>
      </summary>
      {content}
    </details>
  );
}
