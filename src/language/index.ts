// The door to the procedure file: read, print, and what can be wrong in between.
export {
  type Diagnostic,
  type DiagnosticCode,
  describeDiagnostic,
  printDiagnostic,
  type Span,
} from './diagnostics.ts';
export { procedureJsonSchema } from './json-schema.ts';
export { readPlain } from './plain.ts';
export { printProcedure } from './print.ts';
export { readProcedure, type ReadResult } from './read.ts';
