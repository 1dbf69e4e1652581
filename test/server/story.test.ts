// The whole way once, over real sockets: the unit is made, somebody signs in, a tablet is paired, sends what it recorded, and
// others read it.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
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
});
