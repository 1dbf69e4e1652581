// A real procedure, read and analysed once, for the tests of the page's models.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { analyse } from '../../src/check/analysis.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { type Agent, AGENTS } from '../../src/domain/products.ts';
import { readProcedure } from '../../src/language/index.ts';
import { type Board, boardOf } from '../../src/app/model/board.ts';

const FOLDER = join(import.meta.dirname, '../../procedures');

export const FILES: readonly string[] = readdirSync(FOLDER).filter((name) => name.endsWith('.yaml'));

export const textOf = (file: string): string => readFileSync(join(FOLDER, file), 'utf8');

export function procedureIn(file: string): Procedure {
  const { procedure } = readProcedure(textOf(file), file);
  if (!procedure) throw new Error(`${file} does not read`);
  return procedure;
}

export const analysisOf = (procedure: Procedure, agent: Agent) => analyse(procedure, agent);

export function boardFor(procedure: Procedure, agent: Agent = 'enveloped'): Board {
  const { compiled, conditions } = analyse(procedure, agent);
  return boardOf(compiled, conditions);
}

export const boardsFor = (procedure: Procedure): readonly Board[] =>
  AGENTS.map((agent) => boardFor(procedure, agent));

export const LARKMOOR = 'larkmoor-suit-doffing.yaml';
