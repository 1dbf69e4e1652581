// A counterexample's short id: which procedure (a hash of its canonical text) and which slips (their numbers). The command
// line, a link in the app and a record can all name the same thing, and a changed procedure is noticed.

/** FNV-1a over UTF-16 code units, 32 bits, as 7 base-36 digits: enough to notice a change, no secret. */
export function hashOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  }
  return (hash >>> 0).toString(36).padStart(7, '0');
}

export interface ReplayRef {
  readonly hash: string;
  readonly agent: 'e' | 'n';
  /** Event numbers of the plan. */
  readonly events: readonly number[];
}

/** `<hash>-<agent><n.n.n>`, numbers in base 36; no slips at all is written `0`-less, e.g. `1a2b3c4-e`. */
export function replayId(ref: ReplayRef): string {
  return `${ref.hash}-${ref.agent}${ref.events.map((event) => event.toString(36)).join('.')}`;
}

const SHAPE = /^([0-9a-z]{7})-([en])((?:[0-9a-z]+(?:\.[0-9a-z]+)*)?)$/;

/** Reads an id; undefined when it is not one. Whether hash and numbers still fit is the caller's question. */
export function parseReplayId(text: string): ReplayRef | undefined {
  const found = SHAPE.exec(text.trim().toLowerCase());
  if (!found) return undefined;
  const [, hash = '', agent, numbers = ''] = found;
  return {
    hash,
    agent: agent === 'n' ? 'n' : 'e',
    events:
      numbers === '' ? [] : [...new Set(numbers.split('.').map((digits) => Number.parseInt(digits, 36)))],
  };
}
