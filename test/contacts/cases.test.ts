// A folder per phenomenon in test/cases/contacts: procedure.yaml, and in expected.txt what each step touches and what is
// contaminated when nobody slips. `UPDATE=1 npx vitest run test/contacts/cases` writes the expected files; read the difference.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Agent } from '../../src/domain/products.ts';
import { readProcedure } from '../../src/language/index.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { lineOf, linesOf, soiledAfter } from './support.ts';

const FOLDER = new URL('../cases/contacts/', import.meta.url);
const NAMES = readdirSync(FOLDER).sort();

const indented = (lines: readonly string[], none = 'nothing'): readonly string[] =>
  (lines.length > 0 ? lines : [none]).map((line) => `  ${line}`);

function problems({ problems: found, procedure }: Compiled): readonly string[] {
  return found.map(({ code, step, params }) => {
    const told = Object.entries(params).flatMap(([name, value]) => (value === '' ? [] : `${name} ${value}`));
    return [`${procedure.steps[step]?.id}: ${code}`, ...told].join(', ');
  });
}

/** What became contaminated and what no longer is, when nobody slips. */
function changes(before: ReadonlySet<string>, after: ReadonlySet<string>): readonly string[] {
  const more = [...after].filter((id) => !before.has(id)).sort();
  const less = [...before].filter((id) => !after.has(id)).sort();
  return [...more.map((id) => `+ ${id}`), ...less.map((id) => `- ${id}`)];
}

function course(compiled: Compiled): readonly string[] {
  let before = soiledAfter(compiled, undefined);
  return compiled.performed.flatMap(({ step, technique, operations }) => {
    const after = soiledAfter(compiled, step.id);
    const lines = [...new Set(operations.map((operation) => lineOf(compiled, operation)))];
    const changed = changes(before, after);
    before = after;
    return [
      '',
      `${step.id}: ${step.action}, ${technique.id}`,
      ...indented(lines),
      ...indented(changed, '= as before'),
    ];
  });
}

function told(procedure: Procedure, agent: Agent): string {
  const compiled = compile(procedure, agent);
  const starts = [...new Set(linesOf(compiled, undefined))];
  return [
    `agent: ${agent}`,
    'problems:',
    ...indented(problems(compiled), 'none'),
    '',
    'start',
    ...indented(starts),
    ...course(compiled),
    '',
  ].join('\n');
}

function outcome(name: string): string {
  const read = readProcedure(readFileSync(new URL(`${name}/procedure.yaml`, FOLDER), 'utf8'), name);
  if (!read.procedure) throw new Error(`${name}: ${read.diagnostics.map(({ code }) => code).join(', ')}`);
  const { procedure } = read;
  return procedure.agents.map((agent) => told(procedure, agent)).join('\n');
}

describe('cases', () => {
  test.each(NAMES)('%s', (name) => {
    const file = new URL(`${name}/expected.txt`, FOLDER);
    if (process.env.UPDATE === '1') writeFileSync(file, outcome(name));
    expect(outcome(name)).toBe(existsSync(file) ? readFileSync(file, 'utf8') : '');
  });
});
