// The search and the folded groups of a long page, kept in its address.
import { useSearchParams } from 'wouter';
import { openOf, soughtIn, withOpen, withSearch } from '../model/finder.ts';

/** What the address points to on a page. */
interface Target {
  readonly group: string;
  readonly isFound: (search: string) => boolean;
}

interface Page {
  /** Names of the groups that a search leaves. */
  readonly groups: (search: string) => readonly string[];
  /** Open where nothing is searched. */
  readonly standing: readonly string[];
  readonly target?: Target;
}

export interface Finder {
  readonly search: string;
  readonly names: readonly string[];
  readonly open: ReadonlySet<string>;
  readonly find: (search: string) => void;
  readonly setOpen: (open: readonly string[]) => void;
  readonly fold: (name: string, open: boolean) => void;
}

/** A search that would hide what the address points to is set aside. */
export function useFinder({ groups, standing, target }: Page): Finder {
  const [params, setParams] = useSearchParams();
  const asked = soughtIn(params);
  const kept = target === undefined || target.isFound(asked.search);
  const sought = kept ? asked : { search: '' };
  const names = groups(sought.search);
  const open = openOf({ sought, names, standing, target: target?.group });
  const change = (to: (before: URLSearchParams) => URLSearchParams): void =>
    setParams((before) => to(kept ? before : withSearch(before, '')), { replace: true });
  const setOpen = (now: readonly string[]): void => change((before) => withOpen(before, now));
  return {
    search: sought.search,
    names,
    open,
    find: (search) => change((before) => withSearch(before, search)),
    setOpen,
    fold: (name, isOpen) => setOpen(names.filter((one) => (one === name ? isOpen : open.has(one)))),
  };
}
