// A whole table of sentences through the language's typesetting: its strings, and what its functions give.

/** The same table, every text in it set. */
export function typeset<Table>(table: Table, set: (text: string) => string): Table {
  const walk = (value: unknown): unknown => {
    if (typeof value === 'string') return set(value);
    if (typeof value === 'function')
      return (...given: readonly unknown[]) =>
        walk((value as (...all: readonly unknown[]) => unknown)(...given));
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, walk(inner)]));
  };
  return walk(table) as Table;
}
