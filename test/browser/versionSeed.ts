// A journal for browser tests, made on this side by the same code that the page uses, and laid into the browser's own store:
// two versions of the invented unit's doffing, the first approved and in force, the second under review.
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { Procedure } from '../../src/domain/procedure.ts';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { headOf, nextEntry, type Row, START } from '../../src/journal/entry.ts';
import { hashOfText } from '../../src/journal/hash.ts';
import { KINDS, type KindName, type Bodies } from '../../src/journal/kinds/index.ts';
import { versionOf } from '../../src/journal/kinds/kind.ts';
import { printProcedure, readProcedure } from '../../src/language/index.ts';

const LEAD = 'p-leadaaaa';
const NURSE = 'p-nurseaaa';
export const PROCEDURE = 'suit-doffing';
export const DEVICE = 'd-seed';

type Change = (procedure: Procedure) => Procedure;

function textOf(name: string, change: Change): string {
  const { procedure } = readProcedure(readFileSync(`procedures/${name}.yaml`, 'utf8'), name);
  if (!procedure) throw new Error(`${name} has errors`);
  return printProcedure(change(procedure));
}

type Line = { readonly [Name in KindName]: readonly [kind: Name, body: Bodies[Name]] }[KindName];

export function seedLines(change: Change = (procedure) => procedure): readonly Line[] {
  const one = textOf('larkmoor-suit-doffing', change);
  const two = textOf('larkmoor-suit-doffing-v2', change);
  const first = { procedure: PROCEDURE, version: '1', content: hashOfText(one) };
  const second = { procedure: PROCEDURE, version: '2', content: hashOfText(two) };
  return [
    ['staff.listed', { person: LEAD, role: 'infection-prevention lead', initials: 'IL' }],
    ['staff.listed', { person: NURSE, role: 'charge nurse', initials: 'CN' }],
    ['procedure.drafted', { ...first, text: one }],
    ['procedure.sent-for-review', { ...first, to: [NURSE] }],
    ['procedure.approved', { ...first, people: [NURSE], on: '2026-03-02', reviewOn: '2027-03-02' }],
    ['procedure.drafted', { ...second, text: two }],
    ['procedure.sent-for-review', { ...second, to: [NURSE] }],
  ];
}

async function rowsOf(lines: readonly Line[]): Promise<readonly Row[]> {
  const store = memoryStore();
  let head = START;
  for (const [index, [kind, body]] of lines.entries()) {
    const at = new Date(Date.UTC(2026, 10, 25, 8, index)).toISOString();
    const version = versionOf(KINDS[kind]);
    const entry = nextEntry(head, { unit: 'larkmoor', device: DEVICE, kind, version, at, by: LEAD, body });
    head = headOf(entry);
    await store.append([entry]);
  }
  return store.rows(1, lines.length);
}

/** Lays rows into the store that the page has made, as they are: a row may have been altered on purpose. */
export async function seed(
  page: Page,
  lines: readonly Line[] = seedLines(),
  alter: (row: Row) => Row = (row) => row,
): Promise<void> {
  const rows = (await rowsOf(lines)).map(alter);
  await page.goto('/journal');
  await page.getByText(/^Journal: 0 entries/).waitFor();
  await page.evaluate(
    ([all, device]) =>
      new Promise<void>((resolve, reject) => {
        localStorage.setItem('doffline-device', device);
        localStorage.setItem(
          'doffline-unit',
          JSON.stringify({ id: 'larkmoor', title: 'Larkmoor General Hospital (invented)' }),
        );
        const opening = indexedDB.open('doffline-journal');
        opening.addEventListener('error', () => reject(opening.error ?? new Error('not opened')));
        opening.addEventListener('success', () => {
          const transaction = opening.result.transaction(['entries', 'head'], 'readwrite');
          for (const row of all) transaction.objectStore('entries').add(row);
          const last = all.at(-1);
          if (last)
            transaction.objectStore('head').put({ number: last.unitNumber, hash: last.unitHash }, 'head');
          transaction.addEventListener('complete', () => resolve());
          transaction.addEventListener('error', () => reject(transaction.error ?? new Error('not stored')));
        });
      }),
    [rows, DEVICE] as const,
  );
}
