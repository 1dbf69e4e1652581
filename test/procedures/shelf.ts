// The procedure files as tests use them: read once, with what a run leaves when exactly the named slips happen.
import { readdirSync, readFileSync } from 'node:fs';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { run } from '../../src/engine/reference.ts';
import { readProcedure, type ReadResult } from '../../src/language/index.ts';

const FOLDER = new URL('../../procedures/', import.meta.url);

export const files: readonly string[] = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.yaml'))
  .sort();

export const textOf = (file: string): string => readFileSync(new URL(file, FOLDER), 'utf8');
const READ = new Map(files.map((file) => [file, readProcedure(textOf(file), file)]));

export function reading(file: string): ReadResult {
  const found = READ.get(file);
  if (!found) throw new Error(`no file ${file}`);
  return found;
}

export function procedureOf(file: string): Procedure {
  const { procedure } = reading(file);
  if (!procedure) throw new Error(`${file} does not read`);
  return procedure;
}

export const compiled = (file: string, agent: Agent = 'enveloped'): Compiled =>
  compile(procedureOf(file), agent);

/** Indices of the events with these keys. Throws on a key that the plan does not have, so that no test passes by a typo. */
function eventsOf({ plan }: Compiled, keys: readonly string[]): ReadonlySet<number> {
  const indices = keys.map((key) => plan.events.findIndex((event) => event.key === key));
  const missing = keys.filter((_, at) => (indices[at] ?? -1) < 0);
  if (missing.length > 0) throw new Error(`no such event: ${missing.join(', ')}`);
  return new Set(indices);
}

/** Protected surfaces that end up contaminated when these slips happen and no others. */
export function reached(program: Compiled, ...keys: readonly string[]): readonly string[] {
  const { ever, after } = run(program.plan, eventsOf(program, keys));
  const last = after.at(-1) ?? [];
  return program.plan.surfaces
    .filter((surface, index) => surface.protected && (surface.judged === 'ever' ? ever[index] : last[index]))
    .map((surface) => surface.id)
    .sort();
}

/** Whether a surface is contaminated after each step when nobody slips; entry k is after step k. */
export function course(program: Compiled, surface: string): readonly boolean[] {
  const index = program.plan.surfaces.findIndex(({ id }) => id === surface);
  if (index < 0) throw new Error(`no such surface: ${surface}`);
  return run(program.plan, new Set())
    .after.slice(1)
    .map((state) => state[index] === true);
}

/** Index of the first step that does this to this item. */
export function stepAt({ procedure }: Compiled, action: string, item?: string, from = 0): number {
  const at = procedure.steps.findIndex(
    (step, index) =>
      index >= from &&
      step.action === action &&
      (item === undefined || (step.items as readonly string[]).includes(item)),
  );
  if (at < 0) throw new Error(`no step to ${action} ${item ?? ''}`);
  return at;
}

/** Whether a step has a contact, certain or by a slip, between these two surfaces. */
export function canMeet({ plan }: Compiled, step: number, one: string, other: string): boolean {
  const pair = [one, other].map((name) => plan.surfaces.findIndex(({ id }) => id === name));
  return (plan.steps[step]?.operations ?? []).some(
    (operation) => operation.op === 'contact' && pair.includes(operation.a) && pair.includes(operation.b),
  );
}
