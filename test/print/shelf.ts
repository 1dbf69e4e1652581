// Papers of the procedures on the shelf, each checked once however many papers are made of it.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Procedure } from '../../src/domain/procedure.ts';
import { readProcedure } from '../../src/language/index.ts';
import { type DocumentKind, type PrintModel, printModel } from '../../src/print/index.ts';
import { type Verdict, verifyProcedure } from '../../src/verify.ts';
import { wordsFor } from '../../src/words/index.ts';

const FOLDER = 'procedures';

export const NAMES: readonly string[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .toSorted();

export function procedureNamed(name: string): Procedure {
  const { procedure } = readProcedure(readFileSync(join(FOLDER, name), 'utf8'), name);
  if (!procedure) throw new Error(`${name} does not read`);
  return procedure;
}

const CHECKED = new Map<string, Verdict>();

/** Without mends and variants, which only a dossier shows, unless `whole`. */
export function checked(name: string, whole = false): Verdict {
  const key = `${name} ${String(whole)}`;
  const known = CHECKED.get(key);
  if (known) return known;
  const made = verifyProcedure(procedureNamed(name), { mends: whole, variants: whole });
  CHECKED.set(key, made);
  return made;
}

export const paper = (name: string, kind: DocumentKind, language = 'en', whole = false): PrintModel =>
  printModel(checked(name, whole), { kind, words: wordsFor(language) });

/** Every text of a model, in order. */
export function textsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(textsOf);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, one]) => (key === 'svg' ? [] : textsOf(one)));
}
