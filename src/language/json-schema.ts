// The published JSON Schema of a procedure file (draft 2020-12), for completion and checking in any editor. Made from
// the shape that the reader uses, so the two cannot disagree; names inside a file are the reader's alone to check.
import * as z from 'zod';
import { procedureFile } from './shape.ts';

export function procedureJsonSchema(): object {
  const schema = z.toJSONSchema(procedureFile, {
    target: 'draft-2020-12',
    io: 'input',
    unrepresentable: 'throw',
  });
  return {
    ...schema,
    title: 'Procedure file of Doffline, format version 1',
    description:
      'Who puts on or takes off what, in which room, step by step. The text is docs/procedure-file.md.',
  };
}
