// A code that stands behind the # of an address, which browsers do not send: of a pairing, or of the unit's beginning.

export type CodeName = 'pair' | 'setup';

/** Empty where there is none. */
export const codeIn = (hash: string, name: CodeName): string =>
  new RegExp(`^#${name}=([A-Za-z0-9-]+)$`).exec(hash)?.[1] ?? '';
