// What each act on a version writes, through the page's own journal: the view behind it never meets a conflict, what was
// approved is never written over, and what no longer fits the journal is not written.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../../src/journal/adapters/memory.ts';
import { versionInForce } from '../../../src/journal/views/versions.ts';
import { printProcedure, readProcedure } from '../../../src/language/index.ts';
import { type Book, createBook, NoLonger } from '../../../src/app/journal/book.ts';
import {
  allVersions,
  approving,
  entryIdOf,
  nameIn,
  retiring,
  sending,
  sendingBack,
  stageText,
  versionNamed,
  versionPath,
  versionsOf,
} from '../../../src/app/versions/model.ts';
import { hashOf, rowsOf } from '../../../src/app/languages/rows.ts';

const { procedure: file } = readProcedure(readFileSync('procedures/larkmoor-suit-doffing-v2.yaml', 'utf8'));
if (!file) throw new Error('the invented procedure has errors');
const [LEAD, NURSE] = ['p-lead', 'p-nurse'];
const TODAY = '2026-11-25';
const DAYS = { on: TODAY, reviewOn: '2027-11-25', today: TODAY } as const;

const textOf = (version: string): string => printProcedure({ ...file, version });
const fresh = (): Book =>
  createBook({
    open: async () => Promise.resolve(STORE()),
    device: 'd-one',
    unit: () => 'larkmoor',
    now: () => new Date('2026-11-25T08:00:00.000Z'),
    written: () => undefined,
  });
let store = memoryStore();
const STORE = () => store;

const send = async (book: Book, version: string, text = textOf(version)): Promise<unknown> =>
  book.write(
    sending({
      procedure: 'suit',
      version,
      text,
      by: LEAD,
      to: [NURSE],
      accepted: file.accepted,
      today: TODAY,
    }),
  );
const at = (book: Book, version: string) => {
  const found = versionNamed(book.state(), 'suit', version);
  if (!found) throw new Error(`no version ${version}`);
  return found;
};
const approve = async (book: Book, version: string, replaced?: string): Promise<unknown> =>
  book.write(
    approving({
      procedure: 'suit',
      version: at(book, version),
      file,
      people: [NURSE],
      ...DAYS,
      ...(replaced === undefined ? {} : { replaced: at(book, replaced) }),
    }),
  );

async function book(): Promise<Book> {
  store = memoryStore();
  const made = fresh();
  await made.refresh();
  return made;
}

describe('a version', () => {
  test('is sent, sent back, sent again, approved with its departures, replaced, retired, without a conflict', async () => {
    const one = await book();
    await send(one, '1');
    await one.write(sendingBack('suit', at(one, '1'), NURSE, 'Say who looks.'));
    expect(at(one, '1')).toMatchObject({ stage: 'draft', sentBack: { reason: 'Say who looks.', by: NURSE } });
    await send(one, '1');
    await approve(one, '1');
    expect(at(one, '1').departures.map(({ finding, person }) => [finding, person])).toEqual(
      file.accepted.map(({ finding }) => [finding, NURSE]),
    );
    await send(one, '2');
    await approve(one, '2', '1');
    expect(at(one, '1')).toMatchObject({ stage: 'retired', retired: { reason: 'Replaced by version 2.' } });
    expect(versionInForce(one.state().versions, 'suit')?.version).toBe('2');
    expect(allVersions(one.state()).map((known) => [known.version.version, stageText(known)])).toEqual([
      ['2', 'approved, in force'],
      ['1', 'retired'],
    ]);
    await one.write(retiring('suit', at(one, '2'), LEAD, 'Another suit.'));
    expect(versionInForce(one.state().versions, 'suit')).toBeUndefined();
    expect(one.state().versions.conflicts).toEqual([]);
  });

  test('that was approved is never written over, whatever is sent under its name', async () => {
    const one = await book();
    await send(one, '1');
    await approve(one, '1');
    const before = at(one, '1');
    await expect(send(one, '1', textOf('other'))).rejects.toBeInstanceOf(NoLonger);
    expect(at(one, '1')).toEqual(before);
    expect(one.state().versions.conflicts).toEqual([]);
  });

  test('is not approved when it, or what it replaces, is no longer what the screen showed', async () => {
    const one = await book();
    await send(one, '1');
    await approve(one, '1');
    await send(one, '2');
    const shown = { procedure: 'suit', version: at(one, '2'), file, people: [NURSE], ...DAYS };
    const replacing = approving({ ...shown, replaced: at(one, '1') });
    await one.write(retiring('suit', at(one, '1'), LEAD, 'Too slow.'));
    await expect(one.write(replacing)).rejects.toBeInstanceOf(NoLonger);
    await send(one, '2', textOf('2b'));
    await expect(one.write(approving(shown))).rejects.toBeInstanceOf(NoLonger);
    expect(at(one, '2').stage).toBe('review');
  });

  test('is neither sent nor approved with what is accepted past its day of review, as when the page stood open over night', async () => {
    const one = await book();
    const [accepted] = file.accepted;
    const later = `${Number(accepted!.review.slice(0, 4)) + 1}-01-01`;
    const to = { procedure: 'suit', version: '1', text: textOf('1'), by: LEAD, to: [NURSE] };
    const late = sending({ ...to, accepted: file.accepted, today: later });
    await expect(one.write(late)).rejects.toBeInstanceOf(NoLonger);
    expect(versionNamed(one.state(), 'suit', '1')).toBeUndefined();
    await one.write(sending({ ...to, accepted: file.accepted, today: accepted!.review }));
    const shown = { procedure: 'suit', version: at(one, '1'), file, people: [NURSE], ...DAYS };
    await expect(one.write(approving({ ...shown, today: later }))).rejects.toBeInstanceOf(NoLonger);
    expect(at(one, '1').stage).toBe('review');
    await one.write(approving({ ...shown, today: accepted!.review }));
    expect(at(one, '1').stage).toBe('approved');
  });

  test('of a name like any other object’s is no trap', async () => {
    const one = await book();
    expect(versionNamed(one.state(), 'constructor', 'toString')).toBeUndefined();
    expect(versionsOf(one.state(), '__proto__')).toEqual([]);
  });
});

describe('addresses', () => {
  test.each(['1', '1.2', 'a/b', 'spring 2026', '50%', 'déjà'])('of version %s lead back to it', (version) => {
    const path = versionPath('suit', version);
    expect(path.split('/').at(-1)).toBe('read');
    // The router reads the address once before the name is taken out of it.
    expect(nameIn(decodeURI(path).split('/').slice(3, -1).join('/'))).toBe(version);
  });

  test('of a file are by its content', async () => {
    const one = await book();
    await send(one, '1');
    await send(one, '2');
    expect(entryIdOf(at(one, '1'))).toMatch(/^v-[0-9a-f]{16}$/);
    expect(entryIdOf(at(one, '1'))).not.toBe(entryIdOf(at(one, '2')));
  });
});

describe('the rows that are signed', () => {
  test('have the unit’s own sentences on top, and another hash with them', () => {
    const plain = rowsOf('fr', {});
    const own = rowsOf('fr', {
      fr: {
        steps: new Map([['apron', { insteadOf: 'Retirez le tablier.', say: 'Rompre, tenir, rouler.' }]]),
        sentences: new Map([['caution.real-breach', 'Appelez le poste.']]),
      },
    });
    expect(own.slice(0, 2).map(({ group, text }) => [group, text])).toEqual([
      ['own', 'Rompre, tenir, rouler.'],
      ['own', 'Appelez le poste.'],
    ]);
    expect(own).toHaveLength(plain.length + 2);
    expect(hashOf(own)).not.toBe(hashOf(plain));
    expect(hashOf(rowsOf('es', { fr: { steps: new Map(), sentences: new Map() } }))).toBe(
      hashOf(rowsOf('es', {})),
    );
  });

  test('stand beside English, row by row', () => {
    for (const { english, text } of rowsOf('pt', {})) {
      expect(english.trim()).not.toBe('');
      expect(text.trim()).not.toBe('');
    }
  });
});
