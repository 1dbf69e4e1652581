// The server's records, wherever its journal is: beside the file, or in the same database.
import type { JournalPlace } from '../../journal/adapters/open.ts';
import { recordsBeside } from '../../journal/adapters/recordsFile.ts';
import { migrate } from './migrations.ts';
import { openPostgresRecords } from './postgres.ts';
import type { Database } from './sql.ts';
import { openSqliteRecords } from './sqlite.ts';

export async function openRecords(place: JournalPlace): Promise<Database> {
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
