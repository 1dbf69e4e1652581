// The server's records, wherever its journal is: beside the file, or in the same database.
import type { JournalPlace } from '../../journal/adapters/open.ts';
import { recordsBeside } from '../../journal/adapters/recordsFile.ts';
import { JournalError } from '../../journal/problems.ts';
import { migrate } from './migrations.ts';
import { openPostgresRecords } from './postgres.ts';
import type { Database } from './sql.ts';
import { openSqliteRecords } from './sqlite.ts';

/** Says which file failed: the sentence alone would have one look at the journal. */
function named(error: unknown, place: JournalPlace): unknown {
  if (place.in !== 'folder' || !(error instanceof JournalError) || !('detail' in error.problem)) return error;
  const { code, detail } = error.problem;
  return new JournalError({ code, detail: `${recordsBeside(place.file)}: ${detail}` }, error);
}

async function opened(place: JournalPlace): Promise<Database> {
  const database =
    place.in === 'folder'
      ? await openSqliteRecords(recordsBeside(place.file))
      : await openPostgresRecords(place.address);
  try {
    await migrate(database);
    return database;
  } catch (error) {
    await database.close();
    throw error;
  }
}

export async function openRecords(place: JournalPlace): Promise<Database> {
  try {
    return await opened(place);
  } catch (error) {
    throw named(error, place);
  }
}
