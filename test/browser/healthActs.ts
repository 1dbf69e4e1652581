// What the tests of the page of health records do on it, against the unit's real server: signing in, writing, reading.
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { confirm, type Hand } from './hands.ts';
import { leadAt, unitProgram, unitServerOf } from './servers.ts';

export const DOCTOR = 'Olive Invented';
const OWN = 'violet kettle seventeen';
export const MARK = 'Shivers since MONDAY-MARK.';
const PERSON = 'p-3k7m';
/** What must be found nowhere in the browser. */
export const SECRETS = [DOCTOR, OWN, MARK, PERSON, 'follow-up day', 'follow-up-day'];

type Unit = Awaited<ReturnType<typeof unitOf>>;

async function unitOf(program: string, env: Readonly<Record<string, string>>) {
  const server = await unitServerOf(program, env);
  return { server, ask: await leadAt(server.address) };
}

/** A unit of its own for every test of a file. */
export function unitForEach(env: Readonly<Record<string, string>> = {}) {
  let program: string;
  let unit: Unit;
  test.beforeAll(async () => {
    program = await unitProgram();
  });
  test.afterAll(() => rmSync(dirname(program), { recursive: true, force: true }));
  test.beforeEach(async () => {
    unit = await unitOf(program, env);
  });
  test.afterEach(() => unit.server.remove());
  return {
    server: () => unit.server,
    /** Opens the page of health records. */
    open: async (page: Page) => page.goto(`${unit.server.address}/health-records`),
    /** A new account; gives its first password. */
    account: async (name: string, role: string) => (await unit.ask('/api/accounts', { name, role })).password,
  };
}

export type ForEach = ReturnType<typeof unitForEach>;

export const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name });
export const part = (page: Page, name: string): Locator => page.getByRole('region', { name, exact: true });
export const alertsOf = (page: Page): Locator => page.getByRole('alert').filter({ hasText: /./ });

export async function signIn(page: Page, hand: Hand, name: string, password: string): Promise<void> {
  await hand.type(page.getByLabel('Name', { exact: true }), name);
  await hand.type(page.getByLabel('Password', { exact: true }), password);
  await hand.press(button(page, 'Sign in'));
}

/** Signed in with a password of their own. */
export async function doctorIn(page: Page, hand: Hand, { account }: Pick<ForEach, 'account'>): Promise<void> {
  const first = await account(DOCTOR, 'occupational-health');
  await signIn(page, hand, DOCTOR, first);
  await hand.type(page.getByLabel('Password that you were given'), first);
  await hand.type(page.getByLabel('Your own password', { exact: true }), OWN);
  await hand.press(button(page, 'Change the password'));
  // The line above says who is in before the password is changed, too.
  await expect(part(page, 'Read')).toBeVisible();
  // The page asks by itself who is let in: the answer is there before a test ends the server.
  await expect(part(page, 'Who is let in').getByRole('listitem').first()).toBeVisible();
}

export async function writeOne(page: Page, hand: Hand): Promise<void> {
  const write = part(page, 'Write');
  await hand.type(write.getByLabel('Id of the person in the staff list'), PERSON);
  await hand.type(write.getByLabel('What it is'), 'Follow-up day');
  await hand.type(write.getByLabel('What is recorded'), 'Note');
  await hand.type(write.getByLabel('What is to be kept'), MARK);
  const will = /^The record “follow-up-day” of p-3k7m, 1 line, will be sealed and kept\.$/;
  await confirm(page, hand, button(page, 'Seal and keep …'), will);
}

export async function read(page: Page, hand: Hand, reason = /^Follow-up/): Promise<void> {
  const asks = part(page, 'Read');
  await hand.choose(asks.getByLabel('Reason'), reason);
  await hand.type(asks.getByLabel('Id of the person in the staff list'), PERSON);
  await hand.press(button(page, 'Tell the journal and read'));
}
