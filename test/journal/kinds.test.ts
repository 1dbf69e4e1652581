// The table of kinds: a sample of each fits, versions upgrade step by step, what is not known stays.
import * as z from 'zod';
import { describe, expect, test } from 'vitest';
import type { PlainObject } from '../../src/journal/canonical.ts';
import { exportLine } from '../../src/journal/export.ts';
import { KINDS } from '../../src/journal/kinds/index.ts';
import { kind, type KindTable, revised, versionOf } from '../../src/journal/kinds/kind.ts';
import { readBody } from '../../src/journal/reading.ts';
import { BODIES, device, KIND_NAMES, UNIT } from './samples.ts';

describe('every kind', () => {
  test('has a sample, and the sample is read as it stands', () => {
    expect([...KIND_NAMES].sort()).toEqual(Object.keys(KINDS).sort());
    for (const name of KIND_NAMES)
      expect(readBody({ kind: name, version: versionOf(KINDS[name]), body: BODIES[name] }), name).toEqual({
        body: BODIES[name],
      });
  });

  test.each(KIND_NAMES)('%s refuses a field more and a field less', (name) => {
    const body = BODIES[name] as PlainObject;
    const [first = ''] = Object.keys(body);
    const { [first]: _gone, ...less } = body;
    for (const wrong of [{ ...body, name: 'Jane Roe' }, less])
      expect(readBody({ kind: name, version: versionOf(KINDS[name]), body: wrong })).toMatchObject({
        unread: 'body',
      });
  });

  test('names free text by fields that it has', () => {
    for (const name of KIND_NAMES)
      for (const field of KINDS[name].texts) expect(Object.keys(BODIES[name]), name).toContain(field);
  });

  test('a drafted file must be the one that its hash says', () => {
    const body = { ...BODIES['procedure.drafted'], text: 'another' };
    expect(readBody({ kind: 'procedure.drafted', version: 1, body })).toMatchObject({ unread: 'body' });
  });
});

describe('versions of a kind', () => {
  const first = kind(z.strictObject({ minutes: z.int() }));
  const second = revised(first, z.strictObject({ seconds: z.int() }), ({ minutes }) => ({
    seconds: minutes * 60,
  }));
  const third = revised(
    second,
    z.strictObject({ seconds: z.int(), why: z.string().nullable() }),
    ({ seconds }) => ({ seconds, why: null }),
    ['why'],
  );
  const table: KindTable = { 'suit.worn': third };
  const read = (version: number, body: PlainObject) => readBody({ kind: 'suit.worn', version, body }, table);

  test('are upgraded step by step to the newest', () => {
    expect(read(1, { minutes: 3 })).toEqual({ body: { seconds: 180, why: null } });
    expect(read(2, { seconds: 200 })).toEqual({ body: { seconds: 200, why: null } });
    expect(read(3, { seconds: 200, why: 'hot' })).toEqual({ body: { seconds: 200, why: 'hot' } });
  });

  test('are held to their own schema, and a newer one is unknown', () => {
    expect(read(1, { seconds: 200 })).toMatchObject({ unread: 'body' });
    expect(read(4, { seconds: 200, why: null })).toMatchObject({ unread: 'version' });
    expect(readBody({ kind: 'suit.torn', version: 1, body: {} }, table)).toMatchObject({ unread: 'kind' });
  });
});

test('a way in and a way out of the first version are read as saying no more than they said', () => {
  const { visit, person, room, happened } = BODIES['room.entered'];
  const first = { visit, person, room, happened };
  const read = readBody({ kind: 'room.entered', version: 1, body: first });
  expect(read).toEqual({
    body: {
      ...first,
      role: null,
      worn: null,
      ensemble: null,
      items: [],
      observer: null,
      limit: null,
      drill: null,
      late: null,
    },
  });
  expect(readBody({ kind: 'room.left', version: 1, body: { ...first, exit: null } })).toEqual({
    body: { ...first, exit: null, asked: null, late: null },
  });
});

describe('an export line', () => {
  const lineOf = (
    kindName: string,
    body: PlainObject,
    version = 1,
    text = false,
  ): Record<string, unknown> => {
    const entry = device('desk').writeAny(kindName, body, version);
    const accepted = { unitNumber: 1, unitPrevious: '', unitHash: 'h', entry };
    return JSON.parse(exportLine(accepted, { text })) as Record<string, unknown>;
  };

  test('leaves out free text, sealed bytes and what it does not know; people stay ids', () => {
    const note = lineOf('note.added', BODIES['note.added']);
    expect(JSON.stringify(note)).not.toContain('Invented');
    expect(note).toMatchObject({ unit: UNIT, body: { about: 'exit', text: { withheld: 37 } } });
    expect(lineOf('health.sealed', BODIES['health.sealed'])).toMatchObject({
      body: { key: 'follow-up-2026', sealed: { withheld: 48 } },
    });
    expect(lineOf('from.later', { who: 'Jane Roe' })).toMatchObject({ body: { withheld: 18 } });
    expect(lineOf('room.left', { who: 'Jane Roe' }, 99)).toMatchObject({ body: { withheld: 18 } });
    const entered = lineOf('room.entered', BODIES['room.entered'], 2);
    expect(entered).toMatchObject({ body: { person: 'p-3k7m', worn: { version: '1' } } });
    expect(JSON.stringify(entered)).not.toContain('LOT');
    expect(lineOf('exit.stopped', { ...BODIES['exit.stopped'], text: null })).toMatchObject({
      body: { text: null },
    });
  });

  test('does not tell by its length what a wearer answered', () => {
    const bodies = ['no', 'yes', 'not-sure'].map(
      (answer) => lineOf('exit.question-answered', { ...BODIES['exit.question-answered'], answer }).body,
    );
    expect(new Set(bodies.map((body) => JSON.stringify(body))).size).toBe(1);
    expect(bodies[0]).toMatchObject({ question: 'torn-glove', answer: { withheld: 16 } });
  });

  test('has it all where that is asked for', () => {
    expect(lineOf('note.added', BODIES['note.added'], 1, true)).toMatchObject({ body: BODIES['note.added'] });
  });
});
