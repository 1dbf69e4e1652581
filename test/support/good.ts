// The good doffing (test/cases/good-doffing.yaml): whole, possible, and without a departure, so that one edit is one fault.
import { readFileSync } from 'node:fs';
import type { Procedure } from '../../src/domain/procedure.ts';
import { readProcedure, type ReadResult } from '../../src/language/index.ts';

const FILE = new URL('../cases/good-doffing.yaml', import.meta.url);

export const goodText: string = readFileSync(FILE, 'utf8');

export const goodReading: ReadResult = readProcedure(goodText, 'good-doffing.yaml');

export function goodDoffing(): Procedure {
  if (!goodReading.procedure) throw new Error('the good doffing does not read');
  return goodReading.procedure;
}
