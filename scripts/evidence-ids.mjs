// Writes src/evidence/ids.ts from evidence/*.json, so that an id misspelt anywhere is a compile error.
// Why generated: TypeScript widens imported JSON to plain strings and so cannot derive the union itself.
// Run `node scripts/evidence-ids.mjs` after editing evidence/; a test fails while the file is out of date.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

const evidenceDir = fileURLToPath(new URL('../evidence/', import.meta.url));
const target = fileURLToPath(new URL('../src/evidence/ids.ts', import.meta.url));

/**
 * @param {string} file
 * @returns {string[]} the ids of one file's records, in file order
 */
function idsIn(file) {
  const records = /** @type {{ id: string }[]} */ (JSON.parse(readFileSync(`${evidenceDir}${file}`, 'utf8')));
  return records.map((record) => record.id);
}

/** @returns {string[]} names of the record files, sorted; sources.json is not one of them */
export function recordFiles() {
  return readdirSync(evidenceDir)
    .filter((name) => name.endsWith('.json') && name !== 'sources.json')
    .sort();
}

/**
 * @param {string} name
 * @param {string[]} ids
 */
function constArray(name, ids) {
  return `export const ${name} = [\n${ids.map((id) => `  '${id}',\n`).join('')}] as const;\n`;
}

/** @returns {string} the text that src/evidence/ids.ts must have */
export function renderIds() {
  return [
    '// Every evidence id and source id, from evidence/*.json. Written by scripts/evidence-ids.mjs: edit the JSON, not this.\n/* oxlint-disable max-lines -- a plain table */\n',
    constArray('evidenceIds', recordFiles().flatMap(idsIn)),
    'export type EvidenceId = (typeof evidenceIds)[number];\n',
    constArray('sourceIds', idsIn('sources.json')),
    'export type SourceId = (typeof sourceIds)[number];\n',
  ].join('\n');
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  writeFileSync(target, renderIds());
}
