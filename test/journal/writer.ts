// A program that writes entries one call after the other and says what was acknowledged, until somebody ends it. It is
// bundled and run by the test that kills it.
import { writeSync } from 'node:fs';
import { openSqlite } from '../../src/journal/adapters/sqlite.ts';
import { LAST } from '../../src/journal/port.ts';
import { device, notes } from './samples.ts';

const [, , file = '', name = ''] = process.argv;
const store = await openSqlite(file);
const [last] = await store.read(LAST, { device: name, backwards: true, most: 1 });
const writer = device(name, undefined, last && { number: last.entry.number, hash: last.entry.hash });
for (let turn = 0; ; turn += 1) {
  const acknowledged = await store.append(notes(1 + (turn % 3), writer));
  writeSync(1, acknowledged.map(({ number, hash }) => `${number} ${hash}\n`).join(''));
}
