// A linter that looks at nothing is green too. Here faults are planted in a copy of the house's settings, each alone
// in its file, and each must be found, by the rule that is there for it.
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from './imports.ts';

interface Report {
  readonly number_of_files: number;
  readonly diagnostics: readonly {
    readonly filename: string;
    readonly code: string;
    readonly message: string;
  }[];
}

/** Files that hold no fault; the planted ones lean on them. */
const SOUND: Readonly<Record<string, string>> = {
  'src/domain/thing.ts': 'export type Thing = number;\nexport const thing: Thing = 1;\n',
  'src/engine/result.ts': 'export type Result = number;\nexport const result: Result = 1;\n',
  'src/words/fine.ts': "import type { Result } from '../engine/result.ts';\nexport const fine: Result = 1;\n",
  'src/cli/entry.ts': 'export const entry = 1;\n',
  'src/verify.ts': "export { result } from './engine/result.ts';\n",
};

/** File, fault, and the rule that must name it. */
const FAULTS: readonly (readonly [string, string, string])[] = [
  [
    'src/cli/floating.ts',
    'const later = async (): Promise<number> => Promise.resolve(1);\nexport function f(): void {\n  later();\n}\n',
    'typescript(no-floating-promises)',
  ],
  [
    'src/cli/misused.ts',
    'const later = async (): Promise<boolean> => Promise.resolve(true);\nexport const f = (): number => {\n  if (later()) return 1;\n  return 2;\n};\n',
    'typescript(no-misused-promises)',
  ],
  [
    'src/cli/unsafe.ts',
    "export const f = (): string => {\n  const read = JSON.parse('1');\n  return read.name;\n};\n",
    'typescript(no-unsafe-assignment)',
  ],
  [
    'src/domain/missing-case.ts',
    "type Kind = 'on' | 'off';\nexport function f(kind: Kind): void {\n  switch (kind) {\n    case 'on':\n      break;\n  }\n}\n",
    'typescript(switch-exhaustiveness-check)',
  ],
  [
    'src/domain/ring-a.ts',
    "import { b } from './ring-b.ts';\nexport const a = (): number => b();\n",
    'import(no-cycle)',
  ],
  [
    'src/domain/ring-b.ts',
    "import { a } from './ring-a.ts';\nexport const b = (): number => a();\n",
    'import(no-cycle)',
  ],
  [
    'src/domain/types-ring-a.ts',
    "import type { B } from './types-ring-b.ts';\nexport interface A {\n  readonly b: B;\n}\n",
    'import(no-cycle)',
  ],
  [
    'src/domain/types-ring-b.ts',
    "import type { A } from './types-ring-a.ts';\nexport interface B {\n  readonly a: A;\n}\n",
    'import(no-cycle)',
  ],
  ...[
    ['evidence', '../domain/thing.ts'],
    ['domain', '../engine/result.ts'],
    ['language', '../engine/result.ts'],
    ['contacts', '../engine/result.ts'],
    ['engine', '../words/fine.ts'],
    ['guide', '../verify.ts'],
    ['practice', '../engine/result.ts'],
    ['words', '../engine/result.ts'],
    ['words', '../verify.ts'],
    ['engine', '../verify.ts'],
    ['engine', 'node:fs'],
    ['domain', 'react'],
    ['journal', '../domain/thing.ts'],
    ['journal', './adapters/sqlite.ts'],
    ['journal', 'node:fs'],
    ['engine', '../journal/entry.ts'],
    ['cli', 'pg'],
    ['cli', '../journal/adapters/indexedDb.ts'],
    ['app', '../journal/adapters/sqlite.ts'],
    ['app', '../cli/entry.ts'],
    ['app', '../typeset/entry.ts'],
    ['typeset', '../cli/entry.ts'],
    ['print', '../typeset/entry.ts'],
    ['app', 'node:fs'],
    ['server', '../cli/entry.ts'],
    ['cli', '../server/entry.ts'],
    ['cli', 'react'],
  ].map(
    ([folder, target], index) =>
      [
        `src/${folder}/upward-${index}.ts`,
        `export * from '${target}';\n`,
        'eslint(no-restricted-imports)',
      ] as const,
  ),
];

const folder = mkdtempSync(join(tmpdir(), 'house-'));
let report: Report;

function plant(file: string, text: string): void {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), text);
}

beforeAll(() => {
  const settings = readdirSync(ROOT).filter(
    (name) => name === '.oxlintrc.json' || /^tsconfig.*\.json$/.test(name),
  );
  for (const name of settings) copyFileSync(join(ROOT, name), join(folder, name));
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  for (const [file, text] of Object.entries(SOUND)) plant(file, text);
  for (const [file, text] of FAULTS) plant(file, text);
  const linter = spawnSync(join(ROOT, 'node_modules/.bin/oxlint'), ['--format=json'], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(linter.status, linter.stderr).toBe(1);
  report = JSON.parse(linter.stdout) as Report;
});

afterAll(() => rmSync(folder, { recursive: true }));

const codesIn = (file: string): readonly string[] =>
  report.diagnostics.filter((one) => one.filename === file).map((one) => one.code);

describe('the linter', () => {
  test('looked at every planted file', () => {
    expect(report.number_of_files).toBe(Object.keys(SOUND).length + FAULTS.length);
  });

  test.each(FAULTS)('%s: %j is found by %s', (file, _text, code) => {
    expect(codesIn(file)).toContain(code);
  });

  test.each(Object.keys(SOUND))('%s is left alone', (file) => {
    expect(codesIn(file)).toEqual([]);
  });
});

describe('the checks that npm test runs', () => {
  test('the linter reads the sources of this house', () => {
    const linter = spawnSync(join(ROOT, 'node_modules/.bin/oxlint'), ['--debug=files'], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(linter.stdout).toMatch(/src\/server\/static\.ts/);
    expect(linter.stdout).toMatch(/scripts\/test\.mjs/);
    expect(linter.stdout).not.toMatch(/node_modules|dist\//);
  });

  test('the compiler keeps Node and the page out of the core', () => {
    plant('src/domain/platform.ts', 'export const a = process.pid;\nexport const b = document.title;\n');
    const compiler = spawnSync(join(ROOT, 'node_modules/.bin/tsc'), ['-p', 'tsconfig.core.json'], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(compiler.status).not.toBe(0);
    expect(compiler.stdout).toMatch(/platform\.ts.*'process'/);
    expect(compiler.stdout).toMatch(/platform\.ts.*'document'/);
  });
});
