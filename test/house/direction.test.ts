// Folders are the architecture: imports go down only, and the core knows neither Node nor the page. The table below
// is the house's plan; the linter's settings say the same and are checked apart from this.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Import, importsIn, importsOf, ROOT, sourceFiles } from './imports.ts';

/** What each folder (or file) of src may import: own folders, `types:` for types alone, and packages. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  evidence: ['/evidence'],
  domain: ['evidence'],
  language: ['domain', 'evidence', 'yaml', 'zod'],
  contacts: ['domain', 'evidence'],
  engine: ['domain', 'contacts', 'evidence'],
  guide: ['domain', 'contacts', 'engine', 'check', 'words', 'evidence'],
  practice: ['domain', 'contacts', 'evidence'],
  check: ['domain', 'contacts', 'engine', 'practice', 'evidence'],
  costing: ['domain', 'contacts', 'engine', 'evidence', 'yaml'],
  compare: ['domain', 'contacts', 'engine', 'check', 'costing', 'evidence'],
  order: ['domain', 'contacts', 'engine', 'practice', 'check', 'evidence'],
  words: [
    'domain',
    'contacts',
    'practice',
    'evidence',
    'types:engine',
    'check',
    'types:compare',
    'types:costing',
    'types:order',
  ],
  journal: ['zod', '@noble/hashes'],
  versions: ['domain', 'check', 'compare', 'words', 'journal', 'evidence'],
  'journal/adapters': ['journal', 'node:fs', 'node:path', 'libsql', 'pg', 'idb'],
  api: ['journal', 'zod'],
  sync: ['journal', 'types:api'],
  drawing: ['domain'],
  print: ['domain', 'contacts', 'engine', 'check', 'words', 'drawing', 'evidence', 'types:verify.ts'],
  /** On Node alone, for the shells there. */
  typeset: [
    'domain',
    'language',
    'print',
    'words',
    'verify.ts',
    'node:module',
    'node:path',
    '@myriaddreamin/typst-ts-node-compiler',
  ],
  'verify.ts': [
    'domain',
    'contacts',
    'practice',
    'evidence',
    'language',
    'engine',
    'guide',
    'words',
    'check',
  ],
};

const CORE = Object.keys(MAY_IMPORT);
const SHELLS: readonly string[] = ['cli', 'server', 'app'];
/** What a shell leaves to those below it: databases, and the stores of the other side. */
const NOT_FOR_SHELLS = /^(libsql|pg|idb)(\/|$)/;
const FOR_ITS_SIDE: Readonly<Record<string, RegExp>> = {
  app: /^src\/(journal\/adapters\/(sqlite|postgres|open)|typeset\/)/,
  cli: /^src\/journal\/adapters\/indexedDb/,
  server: /^src\/journal\/adapters\/indexedDb/,
};

/** The part of the house a file belongs to: 'engine', 'verify.ts', '/evidence' for data outside src; or a package. */
function partOf(path: string): string {
  if (path.startsWith('src/journal/adapters/')) return 'journal/adapters';
  const inside = /^src\/([^/]+)/.exec(path)?.[1];
  if (inside !== undefined) return inside;
  const outside = /^(evidence|procedures)\//.exec(path)?.[1];
  if (outside !== undefined) return `/${outside}`;
  return /^@noble\/[a-z]+/.exec(path)?.[0] ?? path;
}

function isAllowed({ from, to, typesOnly }: Import): boolean {
  const here = partOf(from);
  const there = partOf(to);
  if (here === there) return true;
  if (SHELLS.includes(here))
    return !SHELLS.includes(there) && !NOT_FOR_SHELLS.test(to) && !FOR_ITS_SIDE[here]?.test(to);
  const allowed = MAY_IMPORT[here] ?? [];
  return allowed.includes(there) || (typesOnly && allowed.includes(`types:${there}`));
}

const wrongIn = (file: string, text: string): readonly string[] =>
  importsIn(file, text)
    .filter((one) => !isAllowed(one))
    .map((one) => one.to);

describe('the check itself', () => {
  test('sees what it must refuse', () => {
    expect(wrongIn('src/domain/a.ts', "import { x } from '../engine/x.ts';")).toEqual(['src/engine/x.ts']);
    expect(wrongIn('src/domain/a.ts', "export * from '../words/x.ts';")).toEqual(['src/words/x.ts']);
    expect(wrongIn('src/domain/a.ts', "const x = await import('../cli/x.ts');")).toEqual(['src/cli/x.ts']);
    expect(wrongIn('src/engine/a.ts', "import { readFileSync } from 'node:fs';")).toEqual(['node:fs']);
    expect(wrongIn('src/app/a.tsx', "import '../server/main.ts';")).toEqual(['src/server/main.ts']);
    expect(wrongIn('src/words/a.ts', "import { x } from '../engine/x.ts';")).toEqual(['src/engine/x.ts']);
    expect(wrongIn('src/journal/a.ts', "import { x } from './adapters/sqlite.ts';")).toEqual([
      'src/journal/adapters/sqlite.ts',
    ]);
    expect(wrongIn('src/journal/a.ts', "import { statSync } from 'node:fs';")).toEqual(['node:fs']);
    expect(wrongIn('src/journal/a.ts', "import { x } from '../domain/x.ts';")).toEqual(['src/domain/x.ts']);
    expect(wrongIn('src/engine/a.ts', "import { x } from '../journal/x.ts';")).toEqual(['src/journal/x.ts']);
    expect(wrongIn('src/cli/a.ts', "import x from 'libsql';")).toEqual(['libsql']);
    expect(wrongIn('src/app/a.ts', "import { x } from '../journal/adapters/sqlite.ts';")).toEqual([
      'src/journal/adapters/sqlite.ts',
    ]);
  });

  test('lets through what the plan allows', () => {
    expect(wrongIn('src/words/a.ts', "import type { X } from '../engine/x.ts';")).toEqual([]);
    expect(wrongIn('src/words/a.ts', "import {\n  type X,\n  type Y,\n} from '../engine/x.ts';")).toEqual([]);
    expect(wrongIn('src/words/en/a.ts', "import { x } from '../../practice/x.ts';")).toEqual([]);
    expect(wrongIn('src/cli/a.ts', "import { verify } from '../verify.ts';")).toEqual([]);
    expect(wrongIn('src/journal/adapters/sqlite.ts', "import { statSync } from 'node:fs';")).toEqual([]);
    expect(wrongIn('src/app/a.ts', "import { x } from '../journal/adapters/indexedDb.ts';")).toEqual([]);
    expect(wrongIn('src/domain/a.ts', "// import { x } from '../engine/x.ts';")).toEqual([]);
  });
});

describe('the house', () => {
  const files = sourceFiles('src');
  const imports = files.flatMap(importsOf);

  test('has a plan for every folder of src', () => {
    expect(files.length).toBeGreaterThan(0);
    const known = [...CORE, ...SHELLS];
    expect([...new Set(files.map(partOf))].filter((part) => !known.includes(part))).toEqual([]);
  });

  test('imports go down only', () => {
    expect(imports.length).toBeGreaterThan(files.length / 2);
    expect(imports.filter((one) => !isAllowed(one)).map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
  });

  test('every import of our own names a file that exists, with its ending', () => {
    const own = imports.filter(({ to }) => /^(src|evidence|procedures)\//.test(to));
    expect(own.filter(({ to }) => !existsSync(join(ROOT, to.split('?')[0] ?? to)))).toEqual([]);
  });
});
