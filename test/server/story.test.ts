// The whole way once, over real sockets: the unit is made, somebody signs in, a tablet is paired, sends what it recorded, and
// others read it.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ROLES } from '../../src/api/roles.ts';
import { device } from '../journal/samples.ts';
import { client, LEAD, lead, type Running, start, tablet } from './harness.ts';

let server: Running;
beforeEach(async () => {
  server = await start();
});
afterEach(() => server.stop());

describe('from nothing to a journal that is read', () => {
  test('the unit is made once, by whoever has the code', async () => {
    const one = client(server.port);
    expect(await one.call('read-unit')).toEqual({ unit: null, waitsForLead: true, journalOf: null });
    const body = {
      demo: false,
      code: 'test code',
      id: 'larkmoor-isolation',
      title: 'Larkmoor (invented)',
      ...LEAD,
    };
    expect(await one.refused('create-unit', { body: { ...body, code: 'OTHER' } })).toMatchObject({
      code: 'setup-code-wrong',
      status: 403,
    });
    const made = await one.call('create-unit', { body });
    expect(made.account).toMatchObject({ name: LEAD.name, role: 'lead', disabled: false });
    expect((await one.call('read-session')).account).toEqual(made.account);
    expect(await one.refused('create-unit', { body })).toMatchObject({ code: 'already-created' });
    expect(await one.call('read-unit')).toMatchObject({ unit: made.unit, waitsForLead: false });
    const { entries } = await one.call('read-entries');
    expect(entries).toMatchObject([
      { at: 1, entry: { kind: 'unit.created', device: 'server', by: made.account.person } },
    ]);
  });

  test('sign in, pair, append, read', async () => {
    await lead(server);
    const desk = client(server.port);
    await desk.call('sign-in', { body: { ...LEAD, name: LEAD.name.toUpperCase() } });
    const { client: anteroom, device: id } = await tablet(server, desk);
    const chain = device(id, 'larkmoor-isolation');
    const entries = [chain.write('exit.started'), chain.write('exit.line-shown'), chain.write('exit.ended')];
    const answer = await anteroom.call('append-entries', { body: { entries } });
    expect(answer.acknowledged).toEqual(entries.map(({ number, hash }) => ({ number, hash })));
    expect(answer.head).toEqual({ number: 3, hash: entries[2]!.hash });
    const read = await desk.call('read-entries', { query: { from: 2 } });
    expect(read.entries.map(({ entry }) => entry)).toMatchObject([
      { kind: 'device.paired', body: { device: id } },
      ...entries,
    ]);
    expect(read).toMatchObject({ next: 6, more: false });
    expect(await anteroom.call('read-device')).toMatchObject({ device: id, head: answer.head });
  });

  test('the demonstration is one press', async () => {
    const one = client(server.port);
    const { unit, people } = await one.call('create-unit', { body: { demo: true, code: 'TEST-CODE' } });
    expect(unit).toMatchObject({ invented: true, title: expect.stringContaining('(invented)') as string });
    expect(people.map(({ role }) => role).sort()).toEqual([...ROLES].sort());
    for (const { name, role, password } of people) {
      const { account } = await client(server.port).call('sign-in', { body: { name, password } });
      expect(account).toMatchObject({ role, firstPassword: false });
    }
  });

  test('a first password must be changed before anything else, and the last lead cannot go', async () => {
    const desk = await lead(server);
    const { account, password } = await desk.call('create-account', { body: { name: 'Bo', role: 'lead' } });
    const bo = client(server.port);
    expect((await bo.call('sign-in', { body: { name: 'bo', password } })).account.firstPassword).toBe(true);
    expect(await bo.refused('list-accounts')).toMatchObject({
      code: 'first-password',
      todo: 'change-password',
    });
    const weak = ['short', 'larkmoor-isolation!', 'aaaaaaaaaaaaaaaa', password];
    for (const wanted of weak)
      expect(await bo.refused('change-password', { body: { old: password, new: wanted } })).toMatchObject({
        code: 'weak-password',
      });
    await bo.call('change-password', { body: { old: password, new: 'violet kettle seventeen' } });
    const { accounts } = await bo.call('list-accounts');
    const ada = accounts.find(({ name }) => name === LEAD.name)!;
    await bo.call('change-account', { params: { account: ada.id }, body: { role: 'reader' } });
    expect(await desk.refused('read-session')).toMatchObject({ code: 'not-signed-in' });
    for (const body of [{ role: 'reader' }, { disabled: true }])
      expect(await bo.refused('change-account', { params: { account: account.id }, body })).toMatchObject({
        code: 'last-lead',
      });
  });

  test('a clock that is far off is told, listed and noted once, and changes no entry', async () => {
    const desk = await lead(server);
    const { client: anteroom, device: id } = await tablet(server, desk);
    const chain = device(id, 'larkmoor-isolation');
    const wrong = (): string => new Date(Date.now() - 3_600_000).toISOString();
    for (let turn = 0; turn < 3; turn += 1) {
      const entries = [chain.write('exit.line-shown')];
      const { time } = await anteroom.call('append-entries', { body: { entries, sentAt: wrong() } });
      expect(time.offset).toBeGreaterThan(-3_605_000);
      expect(time.offset).toBeLessThan(-3_595_000);
    }
    const { devices } = await desk.call('list-devices');
    expect(Math.round(devices[0]!.clockOffset! / 60_000)).toBe(-60);
    const { entries } = await desk.call('read-entries');
    const kinds = entries.map(({ entry }) => (entry as { kind: string }).kind);
    expect(kinds.filter((kind) => kind === 'note.added')).toHaveLength(1);
    expect(JSON.stringify(entries)).toMatch(/The clock of this device is 3(599|600|601) seconds behind/);
  });
});

test('after all of it the log names nobody and gives nothing away', async () => {
  const desk = await lead(server);
  const told: string[] = [LEAD.name, LEAD.password, 'Ada', '127.0.0.1', 'Larkmoor', 'TEST-CODE', 'anteroom'];
  const { account } = await desk.call('read-session');
  const made = await desk.call('create-account', {
    body: { name: 'Cleo Invented', role: 'occupational-health' },
  });
  const doctor = client(server.port);
  await doctor.call('sign-in', { body: { name: 'Cleo Invented', password: made.password } });
  await doctor.call('change-password', { body: { old: made.password, new: 'violet kettle seventeen' } });
  const record = { person: 'p-9x2q', form: 'day', version: 1, record: { note: 'Feverish.' } };
  await doctor.call('seal-health-record', { body: record });
  await doctor.call('read-health-records', { body: { why: 'follow-up' } });
  const { client: anteroom, device: id, code } = await tablet(server, desk);
  const chain = device(id, 'larkmoor-isolation');
  await anteroom.call('append-entries', {
    body: { entries: [chain.write('exit.started'), chain.write('room.entered')] },
  });
  await anteroom.call('read-entries');
  await desk.refused('sign-in', { body: { name: 'Dora Invented', password: 'her other password' } });
  await desk.refused('create-account', { body: { name: 'Eve\u0000', role: 'lead' } });
  await desk.call('revoke-device', { params: { device: id }, body: { reason: 'Given to Fay.' } });
  for (const one of [desk, doctor, anteroom]) told.push(...one.cookies.values());
  await desk.call('sign-out');
  told.push(
    'Cleo',
    'Dora',
    'her other',
    'Eve',
    'Fay',
    'kettle',
    'Feverish',
    'p-9x2q',
    'p-3k7m',
    'health',
    code,
  );
  told.push(
    account.id,
    account.person,
    made.account.id,
    made.account.person,
    made.password,
    made.account.name,
  );
  const log = server.log();
  expect(log.trim().split('\n').length).toBeGreaterThan(10);
  for (const line of log.trim().split('\n')) expect(JSON.parse(line)).toHaveProperty('what');
  // Roles are named; that one of them is called occupational-health is no secret.
  const rest = log.replaceAll('"role":"occupational-health"', '');
  expect(told.filter((secret) => secret !== '' && rest.includes(secret))).toEqual([]);
});
