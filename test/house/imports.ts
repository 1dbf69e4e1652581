// Reads the imports of source files for the tests of the house. Own reading, so that the linter is judged by
// something else than itself.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** One import: the file it stands in and what it names, both relative to the root ('src/cli/main.ts', 'yaml'). */
export interface Import {
  readonly from: string;
  readonly to: string;
  readonly typesOnly: boolean;
}

const STATEMENT =
  /(?:^|[;}\n])\s*(?:import|export)\s+(type\s+)?([^'"();]*?\sfrom\s*)?['"]([^'"\n]+)['"]|\bimport\(\s*['"]([^'"\n]+)['"]\s*\)/g;

const withoutComments = (text: string): string => text.replaceAll(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');

/** True for `{ type A, type B }`, where every name is a type. */
function namesOnlyTypes(clause: string): boolean {
  const names =
    /\{([^}]*)\}/
      .exec(clause)?.[1]
      ?.split(',')
      .filter((name) => name.trim() !== '') ?? [];
  return names.length > 0 && names.every((name) => name.trim().startsWith('type '));
}

/** The imports in `text`, which stands at `file` (relative to the root, with slashes). */
export function importsIn(file: string, text: string): readonly Import[] {
  return [...withoutComments(text).matchAll(STATEMENT)].map(([, type, clause, written, dynamic]) => {
    const name = written ?? dynamic ?? '';
    const to = name.startsWith('.') ? posix.join(posix.dirname(file), name) : name;
    return { from: file, to, typesOnly: type !== undefined || namesOnlyTypes(clause ?? '') };
  });
}

/** Every source file below `folder`, relative to the root. */
export function sourceFiles(folder: string): readonly string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(ROOT.length + 1)
        .replaceAll('\\', '/'),
    );
}

export const importsOf = (file: string): readonly Import[] =>
  importsIn(file, readFileSync(join(ROOT, file), 'utf8'));
