// From a procedure file's text to the script of the guide, once per text and settings.
import { type Script, scriptOf, type UnitSettings } from '../../../guide/index.ts';
import { hashOfText } from '../../../journal/hash.ts';
import { readProcedure } from '../../../language/index.ts';
import { MOST_VERSION, slugOf } from '../../../versions/naming.ts';

/** Id of a procedure in the journal, from the name of its file. */
const procedureIdOf = (fileName: string): string => slugOf(fileName.replace(/\.ya?ml$/, '')) || 'procedure';

/** Undefined where the text has errors. */
export function scriptFrom(text: string, fileName: string, unit: UnitSettings): Script | undefined {
  const { procedure } = readProcedure(text, fileName);
  if (!procedure) return undefined;
  const version = procedure.version.slice(0, MOST_VERSION) || '1';
  const identity = { procedure: procedureIdOf(fileName), version, content: hashOfText(text) };
  return scriptOf({ identity, procedure, unit });
}
