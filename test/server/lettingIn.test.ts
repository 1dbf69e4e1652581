// Who is let in to health records of staff, over SQLite and PostgreSQL alike: whatever a lead does to accounts, no lead comes to
// read a record by it; and whoever is rightly there gets in, by a colleague or by the machine.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client as Sql } from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startPostgres, whyNoPostgres } from '../../scripts/postgres.mjs';
import type { RouteName } from '../../src/api/access.ts';
import type { BodyOf } from '../../src/api/routes.ts';
import { type JournalPlace, openJournal } from '../../src/journal/adapters/open.ts';
import type { Store } from '../../src/journal/port.ts';
import { JournalError } from '../../src/journal/problems.ts';
import { letInByName } from '../../src/server/letIn.ts';
import { verdictOf } from '../journal/contract.ts';
import { type Client, client, LEAD, lead, person, type Running, start } from './harness.ts';

const OWN = 'violet kettle seventeen';
const RECORD = { person: 'p-3k7m', form: 'follow-up-day', version: 1, record: { note: 'MONDAY-MARK' } };
const WHY = { why: 'follow-up' } as const;
const HEALTH_ROUTES = [
  'seal-health-record',
  'read-health-records',
  'list-health-readings',
  'list-health-accounts',
  'let-in-account',
] as const satisfies readonly RouteName[];

interface Place {
  readonly place: JournalPlace;
  /** Loses the accounts, and not the journal. */
  readonly forget: () => Promise<void>;
}

function suite(name: string, make: () => Place): void {
  describe(name, () => {
    let at: Place;
    let server: Running;
    let desk: Client;
    let doctor: Client;

    beforeEach(async () => {
      at = make();
      server = await start({ place: at.place });
      desk = await lead(server);
      doctor = await person(server, desk, 'occupational-health');
      await doctor.call('seal-health-record', { body: RECORD });
    });
    afterEach(() => server.stop());

    const accountOf = async (one: Client) => (await one.call('read-session')).account;
    const change = (id: string, body: BodyOf<'change-account'>, by = desk) =>
      by.call('change-account', { params: { account: id }, body });

    /** Signed in, as far as signing in goes, and nothing of health records. */
    async function isKeptOut(one: Client): Promise<void> {
      const { role, health } = await accountOf(one);
      expect([role, health]).toEqual(['occupational-health', 'waits']);
      await one.call('read-entries');
      for (const route of HEALTH_ROUTES) {
        const { text, status } = await one.raw(route, route.startsWith('read') ? { body: WHY } : {});
        expect([route, status]).toEqual([route, 403]);
        expect(text).toContain('"not-let-in"');
        expect(text).toContain('"ask-occupational-health"');
        expect(text).not.toContain('MONDAY');
      }
    }

    const reads = async (one: Client) =>
      expect((await one.call('read-health-records', { body: WHY })).records).toMatchObject([RECORD]);

    const waiting = async (by: Client, id: string) => {
      const { accounts } = await by.call('list-health-accounts');
      const found = accounts.find((one) => one.id === id)!;
      return { params: { account: id }, body: { since: found.since } };
    };

    test('the first account is let in at once; every later one waits until it is let in, and the journal says by whom', async () => {
      await reads(doctor);
      const before = await desk.call('read-entries');
      const next = await person(server, desk, 'occupational-health');
      await isKeptOut(next);
      const [first, second] = [await accountOf(doctor), await accountOf(next)];
      await doctor.call('let-in-account', await waiting(doctor, second.id));
      expect((await accountOf(next)).health).toBe('in');
      await reads(next);
      const { accounts, lettings } = await next.call('list-health-accounts');
      expect(accounts.map(({ health }) => health)).toEqual(['in', 'in']);
      const ada = await accountOf(desk);
      expect(lettings).toMatchObject([
        {
          number: 2,
          account: second.id,
          person: second.person,
          how: 'occupational-health',
          by: first.person,
          byAccount: first.id,
        },
        { number: 1, account: first.id, how: 'first', by: ada.person, byAccount: ada.id },
      ]);
      // To everybody else the journal is as it was.
      expect((await desk.call('read-entries')).entries).toEqual(before.entries);
      expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
      expect(server.log()).not.toMatch(/Some occupational|letting-in|MONDAY/);
    });

    test('a lead who closes the only account and makes another reads nothing, and opening the old one again neither', async () => {
      const first = await accountOf(doctor);
      await change(first.id, { disabled: true });
      await isKeptOut(await person(server, desk, 'occupational-health'));
      await change(first.id, { disabled: false });
      const again = client(server.port);
      await again.call('sign-in', { body: { name: first.name, password: OWN } });
      await isKeptOut(again);
    });

    test('a lead who gives the role to their own account reads nothing', async () => {
      const other = await person(server, desk, 'lead');
      const ada = await accountOf(desk);
      await change(ada.id, { role: 'occupational-health' });
      const again = client(server.port);
      await again.call('sign-in', { body: LEAD });
      await isKeptOut(again);
      // Nor where the only one there was has another role meanwhile, or had: it counts for good.
      await change((await accountOf(doctor)).id, { role: 'reader' }, other);
      await change(ada.id, { role: 'reader' }, other);
      await change(ada.id, { role: 'occupational-health' }, other);
      await again.call('sign-in', { body: LEAD });
      await isKeptOut(again);
    });

    test('a lead who takes the role from an account and gives it back reads nothing', async () => {
      const { id, name: called } = await accountOf(doctor);
      expect((await change(id, { role: 'stores' })).account.health).toBe('none');
      expect((await change(id, { role: 'occupational-health' })).account.health).toBe('waits');
      const again = client(server.port);
      await again.call('sign-in', { body: { name: called, password: OWN } });
      await isKeptOut(again);
    });

    test.each<BodyOf<'change-account'>>([
      { newPassword: true },
      { newPassword: true, role: 'occupational-health' },
      { newPassword: true, disabled: false },
    ])(
      'a lead who gives a first password, %j, reads nothing by it, before it is changed and after',
      async (body) => {
        const { id, name: called } = await accountOf(doctor);
        const { account, password } = await change(id, body);
        expect(account).toMatchObject({ health: 'waits', firstPassword: true });
        const thief = client(server.port);
        await thief.call('sign-in', { body: { name: called, password: password! } });
        expect(await thief.refused('read-health-records')).toMatchObject({ code: 'first-password' });
        await thief.call('change-password', { body: { old: password!, new: OWN } });
        await isKeptOut(thief);
      },
    );

    test('what is no act of a lead’s keeps: an own password, a role that stays, a closing of another', async () => {
      await doctor.call('change-password', { body: { old: OWN, new: 'another violet kettle' } });
      await reads(doctor);
      const { id, name: called } = await accountOf(doctor);
      await change(id, { role: 'occupational-health', disabled: false });
      const next = await person(server, desk, 'occupational-health');
      await change((await accountOf(next)).id, { disabled: true });
      const again = client(server.port);
      await again.call('sign-in', { body: { name: called, password: 'another violet kettle' } });
      await reads(again);
    });

    test('nobody is let in who did not choose the password, was changed meanwhile, is closed, in, or of another role', async () => {
      const made = await desk.call('create-account', {
        body: { name: 'Next', role: 'occupational-health' },
      });
      const { id } = made.account;
      const refusal = async (asked: object) => (await doctor.refused('let-in-account', asked)).code;
      expect(await refusal(await waiting(doctor, id))).toBe('still-first-password');
      const next = client(server.port);
      const own = async (password: string) => {
        await next.call('sign-in', { body: { name: 'Next', password } });
        await next.call('change-password', { body: { old: password, new: OWN } });
      };
      await own(made.password);
      const seen = await waiting(doctor, id);
      // Between the look and the press a lead gives another first password, and uses it.
      server.wait(1000);
      const { password } = await change(id, { newPassword: true });
      await own(password!);
      expect(await refusal(seen)).toBe('not-waiting');
      const since = await waiting(doctor, id);
      await change(id, { disabled: true });
      expect(await refusal(since)).toBe('not-waiting');
      await change(id, { disabled: false, role: 'reader' });
      expect(await refusal(since)).toBe('not-waiting');
      const self = (await accountOf(doctor)).id;
      expect(await refusal({ ...(await waiting(doctor, self)), params: { account: self } })).toBe(
        'not-waiting',
      );
      expect(await refusal({ ...since, params: { account: 'a-nobody' } })).toBe('not-waiting');
      expect((await doctor.call('list-health-accounts')).lettings).toHaveLength(1);
    });

    test('of two first ones at once one is let in', async () => {
      const other = make();
      const fresh = await start({ place: other.place });
      const first = await lead(fresh);
      const made = await Promise.all(
        ['One', 'Two', 'Three'].map((one) =>
          first.call('create-account', { body: { name: one, role: 'occupational-health' } }),
        ),
      );
      const listed = (await first.call('list-accounts')).accounts.filter(({ health }) => health === 'in');
      expect(listed).toHaveLength(1);
      expect(made.filter(({ account }) => account.health === 'in')).toHaveLength(1);
      await fresh.stop();
    });

    test('beside an account from before this release, of which no journal tells, another waits; of another role now it counts too', async () => {
      const fresh = await start({ place: make().place });
      const first = await lead(fresh);
      const { records } = fresh.context;
      // As the migration leaves it.
      await records.write(({ run }) =>
        run(
          `insert into @account (id, folded, name, person, role, password, first_password, disabled, created_at, health)
            values ('a-old', 'old', 'Old', 'p-5t8w', 'occupational-health', 'x', 0, 0, '2026-01-01T00:00:00.000Z', 'in')`,
        ),
      );
      const accessOf = async (called: string) =>
        (await first.call('create-account', { body: { name: called, role: 'occupational-health' } })).account
          .health;
      expect(await accessOf('Next')).toBe('waits');
      const { accounts } = await first.call('list-accounts');
      for (const { id, role } of accounts) if (role !== 'lead') await change(id, { role: 'reader' }, first);
      expect(await accessOf('Another')).toBe('waits');
      expect((await change('a-old', { role: 'occupational-health' }, first)).account.health).toBe('waits');
      await fresh.stop();
    });

    test('where records were kept before, a first account waits: accounts may be lost and made anew', async () => {
      await server.stop();
      await at.forget();
      server = await start({ place: at.place });
      desk = await lead(server);
      const next = await person(server, desk, 'occupational-health');
      await isKeptOut(next);
      const { name: called } = await accountOf(next);
      const { status, out } = await onMachine(called);
      expect([status, out]).toEqual([0, expect.stringContaining(`${called} is let in`)]);
      await reads(next);
    });

    /** As the command line does it, beside the server that runs. */
    async function onMachine(called: string) {
      const said = { out: '', err: '' };
      const { place } = at;
      const status = await letInByName(
        { name: called, ...(place.in === 'folder' ? { data: join(place.file, '..') } : {}) },
        {
          env: place.in === 'database' ? { DATABASE_URL: place.address } : {},
          out: (text) => {
            said.out += text;
          },
          err: (text) => {
            said.err += text;
          },
        },
      );
      return { status, ...said };
    }

    test('whoever runs the machine lets in where nobody else is; it is told what cannot be', async () => {
      const { id, name: called } = await accountOf(doctor);
      const says = async (one: string) => {
        const { status, out, err } = await onMachine(one);
        expect([status, out]).toEqual([2, '']);
        return err;
      };
      expect(await says(called)).toMatch(/^error: .* is let in already\. No account waits/);
      const { password } = await change(id, { newPassword: true });
      expect(await says(called)).toMatch(/still has the password that the lead gave/);
      expect(await says('Nobody')).toMatch(
        /No account of occupational health is called that\. These wait: Some/,
      );
      expect(await says(LEAD.name)).toMatch(/No account of occupational health/);
      await doctor.call('sign-in', { body: { name: called, password: password! } });
      await doctor.call('change-password', { body: { old: password!, new: OWN } });
      await isKeptOut(doctor);
      const done = await onMachine(called.toUpperCase());
      expect([done.status, done.err]).toEqual([0, '']);
      await reads(doctor);
      const { lettings } = await doctor.call('list-health-accounts');
      expect(lettings[0]).toMatchObject({ account: id, how: 'machine', by: null, byAccount: null });
      expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
      await change(id, { disabled: true });
      expect(await says(called)).toMatch(/is closed/);
    });
  });
}

const folders: string[] = [];
const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-letting-'));
  folders.push(folder);
  return folder;
};
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

suite('SQLite', () => {
  const folder = newFolder();
  return {
    place: { in: 'folder', file: join(folder, 'journal.sqlite') },
    forget: () => Promise.resolve(rmSync(join(folder, 'unit.sqlite'))),
  };
});

const why = whyNoPostgres();

describe.skipIf(why !== undefined)(`PostgreSQL${why === undefined ? '' : ` (not run: ${why})`}`, () => {
  let postgres: Awaited<ReturnType<typeof startPostgres>>;
  let count = 0;
  beforeAll(async () => {
    postgres = await startPostgres();
  });
  afterAll(() => postgres.stop());

  suite('records', () => {
    count += 1;
    const schema = `letting_${count}`;
    const forget = async (): Promise<void> => {
      const sql = new Sql({ connectionString: postgres.url });
      await sql.connect();
      await sql.query(`drop schema ${schema}_server cascade`);
      await sql.end();
    };
    return { place: { in: 'database', address: `${postgres.url}?schema=${schema}` }, forget };
  });
});

describe('a journal that cannot be written to lets nobody in', () => {
  let server: Running;
  let journal: Store;
  const disk = { isFull: false };
  beforeEach(async () => {
    journal = await openJournal({ in: 'folder', file: join(newFolder(), 'journal.sqlite') });
    const append: typeof journal.append = (entries) =>
      disk.isFull
        ? Promise.reject(new JournalError({ code: 'full', detail: 'no room' }))
        : journal.append(entries);
    disk.isFull = false;
    server = await start({ journal: { ...journal, append } });
  });
  afterEach(() => server.stop());

  test('a first account is made all the same, with its password, and waits', async () => {
    const desk = await lead(server);
    disk.isFull = true;
    const one = await person(server, desk, 'occupational-health');
    expect(await one.refused('read-health-records')).toMatchObject({ code: 'not-let-in' });
    expect(server.log()).toContain('a first account could not be let in');
    disk.isFull = false;
    expect(await one.refused('list-health-readings')).toMatchObject({ code: 'not-let-in' });
  });

  test('nor one that a colleague lets in', async () => {
    const desk = await lead(server);
    const doctor = await person(server, desk, 'occupational-health');
    const next = await person(server, desk, 'occupational-health');
    const { account } = await next.call('read-session');
    const { accounts } = await doctor.call('list-health-accounts');
    const { since } = accounts.find(({ id }) => id === account.id)!;
    const asked = { params: { account: account.id }, body: { since } };
    disk.isFull = true;
    expect(await doctor.refused('let-in-account', asked)).toMatchObject({ code: 'full' });
    expect(await next.refused('list-health-readings')).toMatchObject({ code: 'not-let-in' });
    disk.isFull = false;
    await doctor.call('let-in-account', asked);
    await next.call('list-health-readings');
  });
});

test('the demonstration’s account of occupational health is let in', async () => {
  const server = await start();
  const made = await client(server.port).call('create-unit', { body: { demo: true, code: 'TEST-CODE' } });
  const { name, password } = made.people.find(({ role }) => role === 'occupational-health')!;
  const one = client(server.port);
  await one.call('sign-in', { body: { name, password } });
  await one.call('read-health-records', { body: WHY });
  expect((await one.call('list-health-accounts')).lettings).toMatchObject([
    { how: 'first', by: made.account.person },
  ]);
  await server.stop();
});

describe('the command', () => {
  const COMMAND = join(process.cwd(), 'doffline');
  const run = async (...args: readonly string[]) => {
    const child = spawn(COMMAND, ['account', 'let-in', ...args], {
      env: { PATH: process.env.PATH ?? '', HOME: process.env.HOME ?? '' },
    });
    const said: Buffer[] = [];
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (part: Buffer) => void said.push(part));
    const [status] = (await once(child, 'close')) as [number];
    return { status, said: Buffer.concat(said).toString() };
  };

  test('lets in beside a server that runs', async () => {
    const folder = newFolder();
    const server = await start({ place: { in: 'folder', file: join(folder, 'journal.sqlite') } });
    const desk = await lead(server);
    await person(server, desk, 'occupational-health');
    const next = await person(server, desk, 'occupational-health');
    const { account } = await next.call('read-session');
    expect(await next.refused('list-health-readings')).toMatchObject({ code: 'not-let-in' });
    const { status, said } = await run(account.name, '--data', folder);
    expect([status, said]).toEqual([
      0,
      `${account.name} is let in to health records. The journal says so, and occupational health sees it on its page.\n`,
    ]);
    await next.call('list-health-readings');
    await server.stop();
  });

  test('makes nothing in a folder that was mistyped, and says what it does', async () => {
    const folder = newFolder();
    const { status, said } = await run('Olive', '--data', join(folder, 'nowhere'));
    expect([status, said]).toEqual([2, expect.stringMatching(/^error: There is no unit at .*--data\.\n$/)]);
    const help = await run('--help');
    expect([help.status, help.said]).toEqual([0, expect.stringContaining('Ask the person first')]);
  });
});
