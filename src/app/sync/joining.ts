// Joining a unit with a code: first whether this device's journal may hold the unit's entries at all, because the code works
// only once, then the code.
import { openIndexedDb } from '../../journal/adapters/indexedDb.ts';
import { PROBLEMS } from '../../api/problems.ts';
import { deviceNow } from '../offline/device.ts';
import { exitUnderWay } from '../offline/midExit.ts';
import { JOIN } from './labels.ts';
import { keepPaired } from './paired.ts';
import { call } from './wire.ts';

async function unitHere(): Promise<string | undefined> {
  const store = await openIndexedDb();
  try {
    const [first] = await store.read(1, { most: 1 });
    return first?.entry.unit;
  } finally {
    await store.close();
  }
}

/** Why this device may not join the unit of this server; undefined where it may. */
async function whyNot(): Promise<string | undefined> {
  // Joining changes the name that this device writes by.
  if (await exitUnderWay(deviceNow())) return JOIN.midExit;
  const unit = await call('read-unit');
  if (unit.is !== 'answer' || unit.body.unit === null) return JOIN.noServer;
  const here = await unitHere();
  return here === undefined || here === unit.body.unit.id
    ? undefined
    : JOIN.wrongUnit(here, unit.body.unit.id);
}

/** Returns why it failed; undefined when the device has joined, and the page is to be loaded anew. */
export async function join(code: string): Promise<string | undefined> {
  const why = await whyNot();
  if (why !== undefined) return why;
  const answer = await call('pair', { body: { code, sentAt: new Date().toISOString() } });
  if (answer.is === 'lost') return JOIN.noServer;
  if (answer.is === 'refused') return PROBLEMS[answer.problem.code].says;
  try {
    keepPaired(answer.body);
    return undefined;
  } catch {
    return JOIN.noRoom;
  }
}
