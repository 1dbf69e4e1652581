// Text to a tree of plain values, with the place of every value and key. A strict part of YAML 1.2: no anchors,
// aliases, tags or several documents, every key once, little depth. Scalars stay as written (`version: 1.10` is
// "1.10"); only true, false and nothing are told apart. The library's composer recurses, and its exhausted stack
// ends the whole process, so depth is counted while the text is cut into pieces, before anything recurses.
import {
  Composer,
  type CST,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  type Node,
  type Pair,
  Parser,
} from 'yaml';
import type { Spot } from './lines.ts';
import type { Report } from './report.ts';
import { syntaxFault } from './syntax.ts';
import { invisibleIn } from './text.ts';

export type Plain =
  | string
  | boolean
  | null
  | undefined
  | readonly Plain[]
  | { readonly [key: string]: Plain };

const DEEPEST = 40;
/** Entries on the parser's stack per level of nesting are at most this many. */
const ENTRIES_PER_LEVEL = 3;
/** A procedure of 10,000 steps cuts into 250,000 to 600,000 pieces. */
const MOST_PIECES = 800_000;

const NOTHING = new Set(['', '~', 'null', 'Null', 'NULL']);
const YES = new Set(['true', 'True', 'TRUE']);
const NO = new Set(['false', 'False', 'FALSE']);

/** The spots are filled while reading. */
export interface WritableSpots {
  readonly values: Map<string, Spot>;
  readonly keys: Map<string, Spot>;
}

const spotOf = (node: { readonly range?: readonly number[] | null | undefined }): Spot => ({
  start: node.range?.[0] ?? 0,
  end: node.range?.[1] ?? 0,
});

/** The syntax tokens of a text, or undefined when reading on would take too much. */
function tokensOf(text: string, report: Report): readonly CST.Token[] | undefined {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  let offset = 0;
  let pieces = 0;
  for (const piece of new Lexer().lex(text)) {
    for (const token of parser.next(piece)) tokens.push(token);
    offset += piece.length;
    pieces += 1;
    const spot = { start: Math.max(0, offset - piece.length), end: offset };
    if (parser.stack.length > DEEPEST * ENTRIES_PER_LEVEL) {
      report.at(spot, 'too-deep', { limit: DEEPEST });
      return undefined;
    }
    if (pieces > MOST_PIECES) {
      report.at(spot, 'too-large', { size: `${pieces} marks and words`, limit: `${MOST_PIECES}` });
      return undefined;
    }
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
}

function documentsOf(tokens: readonly CST.Token[], length: number): readonly Document.Parsed[] {
  const composer = new Composer({
    schema: 'failsafe',
    uniqueKeys: false,
    prettyErrors: false,
    version: '1.2',
  });
  return [...composer.compose(tokens, true, length)];
}

/** Reads one node after another into plain values. */
interface Reader {
  readonly report: Report;
  readonly spots: WritableSpots;
}

function refuseExtras(node: Node, report: Report): void {
  const { anchor, tag } = node as { anchor?: string; tag?: string };
  if (anchor !== undefined) report.at(spotOf(node), 'aliases-not-allowed');
  if (tag !== undefined) report.at(spotOf(node), 'tags-not-allowed');
}

function readScalar(
  node: Node & { readonly value: unknown; readonly type?: string | undefined },
  report: Report,
): Plain {
  const text = typeof node.value === 'string' ? node.value : '';
  const invisible = invisibleIn(text);
  if (invisible !== undefined) report.at(spotOf(node), 'control-character', { character: invisible });
  if (node.type !== 'PLAIN' && node.type !== undefined) return text;
  if (NOTHING.has(text)) return null;
  if (YES.has(text)) return true;
  return NO.has(text) ? false : text;
}

/** A key as text; undefined, with a diagnostic, when it is none. */
function readKey(key: unknown, holder: string, { report, spots }: Reader): string | undefined {
  const node = key as Node | null;
  if (!isScalar(node) || typeof node.value !== 'string' || node.value === '') {
    const spot = node ? spotOf(node) : (spots.values.get(holder) ?? { start: 0, end: 0 });
    report.at(spot, isAlias(node) ? 'aliases-not-allowed' : 'wrong-type', {
      expected: 'a word in front of the colon',
      found: 'something else',
    });
    return undefined;
  }
  refuseExtras(node, report);
  const invisible = invisibleIn(node.value);
  if (invisible !== undefined) report.at(spotOf(node), 'control-character', { character: invisible });
  if (node.value !== '__proto__') return node.value;
  report.at(spotOf(node), 'bad-name', { name: node.value });
  return undefined;
}

function readMap(pairs: readonly Pair[], path: string, reader: Reader): Plain {
  const { report, spots } = reader;
  const result = Object.create(null) as Record<string, Plain>;
  const lines = new Map<string, number>();
  for (const pair of pairs) {
    const key = readKey(pair.key, path, reader);
    if (key === undefined) continue;
    const keySpot = spotOf(pair.key as Node);
    const first = lines.get(key);
    if (first !== undefined) {
      report.at(keySpot, 'duplicate-key', { name: key, first });
      continue;
    }
    lines.set(key, report.line(keySpot.start));
    const inner = path === '' ? key : `${path}.${key}`;
    spots.keys.set(inner, keySpot);
    result[key] = readNode(pair.value as Node | null, inner, reader, keySpot);
  }
  return result;
}

function readNode(node: Node | null, path: string, reader: Reader, holder: Spot): Plain {
  const spot = node?.range ? spotOf(node) : holder;
  reader.spots.values.set(path, spot.end > spot.start ? spot : holder);
  if (node === null) return null;
  if (isAlias(node)) {
    reader.report.at(spot, 'aliases-not-allowed');
    return undefined;
  }
  refuseExtras(node, reader.report);
  if (isMap(node)) return readMap(node.items, path, reader);
  if (isSeq(node)) {
    return node.items.map((item, index) => readNode(item as Node | null, `${path}.${index}`, reader, spot));
  }
  return isScalar(node) ? readScalar(node, reader.report) : undefined;
}

/** The plain value of a text; undefined when the text is not well-formed (the report then says why). */
export function readYaml(text: string, report: Report, spots: WritableSpots): Plain {
  const tokens = tokensOf(text, report);
  if (!tokens) return undefined;
  for (const token of tokens) {
    if (token.type === 'directive') {
      report.at({ start: token.offset, end: token.offset + token.source.length }, 'tags-not-allowed');
    }
  }
  const [document, second] = documentsOf(tokens, text.length);
  if (second) report.at({ start: second.range[0], end: second.range[1] }, 'several-documents');
  for (const problem of [...(document?.errors ?? []), ...(document?.warnings ?? [])]) {
    const { code, params } = syntaxFault(problem.code);
    const end = code === 'syntax' ? text.length : problem.pos[1];
    report.at({ start: problem.pos[0], end }, code, params);
  }
  if (report.failed() || !document) return undefined;
  return readNode(document.contents, '', { report, spots }, { start: 0, end: 0 });
}
