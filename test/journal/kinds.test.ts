// The table of kinds: a sample of each fits, versions upgrade step by step, what is not known stays.
import * as z from 'zod';
import { describe, expect, test } from 'vitest';
import type { PlainObject } from '../../src/journal/canonical.ts';
import { exportLine } from '../../src/journal/export.ts';
import { KINDS } from '../../src/journal/kinds/index.ts';
import { kind, type KindTable, revised } from '../../src/journal/kinds/kind.ts';
import { readBody } from '../../src/journal/reading.ts';
import { BODIES, device, KIND_NAMES, UNIT } from './samples.ts';

describe('every kind', () => {
  test('has a sample, and the sample is read as it stands', () => {
    expect([...KIND_NAMES].sort()).toEqual(Object.keys(KINDS).sort());
    for (const name of KIND_NAMES)
      expect(readBody({ kind: name, version: 1, body: BODIES[name] }), name).toEqual({
        body: BODIES[name],
      });
  });

  test.each(KIND_NAMES)('%s refuses a field more and a field less', (name) => {
    const body = BODIES[name] as PlainObject;
    const [first = ''] = Object.keys(body);
    const { [first]: _gone, ...less } = body;
    for (const wrong of [{ ...body, name: 'Jane Roe' }, less])
      expect(readBody({ kind: name, version: 1, body: wrong })).toMatchObject({ unread: 'body' });
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
    expect(lineOf('room.left', { who: 'Jane Roe' }, 2)).toMatchObject({ body: { withheld: 18 } });
    expect(lineOf('room.entered', BODIES['room.entered'])).toMatchObject({ body: { person: 'p-3k7m' } });
    expect(lineOf('exit.stopped', { ...BODIES['exit.stopped'], text: null })).toMatchObject({
      body: { text: null },
    });
  });

  test('has it all where that is asked for', () => {
    expect(lineOf('note.added', BODIES['note.added'], 1, true)).toMatchObject({ body: BODIES['note.added'] });
  });
});
