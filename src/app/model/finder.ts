// What of a long page is shown: what was typed, and which groups are open. Both stand in the address, so that a link, a
// reload and the way back show the same; nothing in it stands for itself alone, and an address without either is short.

/** A part of a long page that folds. */
export interface Group<Item, Name extends string = string> {
  readonly name: Name;
  readonly items: readonly Item[];
}

export interface Sought {
  readonly search: string;
  /** Groups that were opened or left open by hand; absent where nobody folded anything yet. */
  readonly open?: readonly string[];
}

const [FIND, OPEN] = ['find', 'open'] as const;

export function soughtIn(params: URLSearchParams): Sought {
  const open = params.get(OPEN);
  return {
    search: params.get(FIND) ?? '',
    ...(open === null ? {} : { open: open.split(',').filter(Boolean) }),
  };
}

/** Another search opens whatever it finds. */
export function withSearch(params: URLSearchParams, search: string): URLSearchParams {
  const next = new URLSearchParams(params);
  next.delete(OPEN);
  if (search === '') next.delete(FIND);
  else next.set(FIND, search);
  return next;
}

export function withOpen(params: URLSearchParams, open: readonly string[]): URLSearchParams {
  const next = new URLSearchParams(params);
  next.set(OPEN, open.join(','));
  return next;
}

const wordsIn = (search: string): readonly string[] => search.toLowerCase().split(/\s+/).filter(Boolean);

/** Every word of the search, in any order. */
export const holds = (text: string, search: string): boolean => {
  const all = text.toLowerCase();
  return wordsIn(search).every((word) => all.includes(word));
};

/** Groups in the order in which their first item comes. */
export function groupsOf<Item, Name extends string>(
  items: readonly Item[],
  nameOf: (item: Item) => Name,
): readonly Group<Item, Name>[] {
  const groups = new Map<Name, Item[]>();
  for (const item of items) {
    const name = nameOf(item);
    groups.set(name, [...(groups.get(name) ?? []), item]);
  }
  return [...groups].map(([name, own]) => ({ name, items: own }));
}

export interface OpenAsk {
  readonly sought: Sought;
  readonly names: readonly string[];
  /** Open where nothing is searched and nobody folded anything. */
  readonly standing: readonly string[];
  /** The group of what the address points to. */
  readonly target: string | undefined;
}

/** What a search finds is open, and what the address points to; what a hand opened or folded is as it left it. */
export function openOf({ sought, names, standing, target }: OpenAsk): ReadonlySet<string> {
  const own = sought.open ?? (sought.search === '' ? standing : names);
  return new Set([...names.filter((name) => own.includes(name)), ...(target === undefined ? [] : [target])]);
}
