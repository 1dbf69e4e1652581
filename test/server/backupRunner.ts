// Makes or restores a backup as a program of its own, for tests that kill it or give it no room: says that it begins, and
// ends with 0 when all is done. It is bundled and run by the test.
import { writeSync } from 'node:fs';
import { makeBackup, restore } from '../../src/journal/adapters/backup.ts';
import { readJournal } from '../../src/journal/adapters/open.ts';

const [, , what = '', file = '', backup = ''] = process.argv;
const place = { in: 'folder', file } as const;
writeSync(1, 'begins\n');
if (what === 'restore') await restore(backup, place);
else {
  const store = await readJournal(place);
  await makeBackup(place, store!, backup, new Date());
  await store!.close();
}
