// The two views: what each entry makes of them, whatever order entries arrive in, and what they refuse.
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { fold } from '../../src/journal/fold.ts';
import { hashOfText } from '../../src/journal/hash.ts';
import type { Bodies } from '../../src/journal/kinds/index.ts';
import { roomNow, roomView } from '../../src/journal/views/room.ts';
import { versionInForce, versionsView } from '../../src/journal/views/versions.ts';
import { BODIES, CONTENT, device } from './samples.ts';

async function acceptedFrom(entries: readonly Entry[]) {
  const store = memoryStore();
  await store.append(entries);
  return store.read(1);
}

const roomAfter = async (entries: readonly Entry[]) => roomNow(fold(roomView, await acceptedFrom(entries)));
const versionsAfter = async (entries: readonly Entry[]) => fold(versionsView, await acceptedFrom(entries));

const entered = (name: string, person: string, hour: number) => ({
  ...BODIES['room.entered'],
  ...visit(name, person, hour),
});
const left = (name: string, person: string, hour: number) => ({
  ...BODIES['room.left'],
  ...visit(name, person, hour),
});

const visit = (name: string, person: string, hour: number) => ({
  visit: name,
  person,
  room: 'red-1',
  happened: new Date(Date.UTC(2026, 10, 25, hour)).toISOString(),
});

describe('the room', () => {
  test('who is in now, the longest first, and since when', async () => {
    const desk = device('desk');
    const now = await roomAfter([
      desk.write('room.entered', entered('v1', 'p-anna', 10)),
      desk.write('room.entered', entered('v2', 'p-bela', 8)),
      desk.write('room.entered', entered('v3', 'p-caro', 9)),
      desk.write('room.left', left('v3', 'p-caro', 11)),
    ]);
    expect(now.inside.map(({ person, entered: since }) => `${person} ${since?.slice(11, 16)}`)).toEqual([
      'p-bela 08:00',
      'p-anna 10:00',
    ]);
    expect(now).toMatchObject({ twice: [], unopened: [] });
  });

  test('says who went in twice and which end has no beginning', async () => {
    const desk = device('desk');
    const now = await roomAfter([
      desk.write('room.entered', entered('v1', 'p-anna', 8)),
      desk.write('room.entered', entered('v2', 'p-anna', 9)),
      desk.write('room.left', left('v9', 'p-bela', 9)),
    ]);
    expect(now.twice).toEqual(['p-anna']);
    expect(now.unopened).toEqual(['v9']);
  });

  property.prop([
    fc.array(fc.nat({ max: 3 }), { minLength: 1, maxLength: 20 }),
    fc.infiniteStream(fc.boolean()),
  ])('is the same in whatever order two devices’ entries arrive', async (stays, choices) => {
    const door = device('door');
    const tablet = device('tablet-1');
    const ins = stays.map((hour, index) =>
      door.write('room.entered', entered(`v${index}`, `p-${1000 + index}`, hour)),
    );
    const outs = stays.flatMap((hour, index) =>
      index % 2 === 0 ? [tablet.write('room.left', left(`v${index}`, `p-${1000 + index}`, hour + 1))] : [],
    );
    const mixed: Entry[] = [];
    const [a, b] = [[...ins], [...outs]];
    for (const choice of choices) {
      if (a.length + b.length === 0) break;
      const from = (choice && a.length > 0) || b.length === 0 ? a : b;
      mixed.push(from.shift()!);
    }
    const { inside, unopened } = await roomAfter(mixed);
    expect(unopened).toEqual([]);
    expect(inside.map(({ visit: name }) => name).sort()).toEqual(
      stays.flatMap((_, index) => (index % 2 === 1 ? [`v${index}`] : [])).sort(),
    );
  });
});

describe('versions of procedures', () => {
  const draft = (text: string, version = '1'): Bodies['procedure.drafted'] => ({
    procedure: 'suit-doffing',
    version,
    content: hashOfText(text),
    text,
  });

  test('draft, under review, approved, retired; who and when', async () => {
    const desk = device('desk');
    const lines = [
      desk.write('procedure.drafted'),
      desk.write('procedure.sent-for-review'),
      desk.write('departure.accepted'),
      desk.write('procedure.approved'),
    ];
    const { procedures, conflicts } = await versionsAfter(lines);
    expect(conflicts).toEqual([]);
    expect(procedures['suit-doffing']?.['1']).toMatchObject({
      stage: 'approved',
      content: CONTENT,
      drafted: { at: '2026-11-25T08:01:00.000Z', by: 'p-9x2q', unitNumber: 1 },
      sent: { to: ['p-3k7m', 'p-9x2q'], unitNumber: 2 },
      approved: { people: ['p-3k7m'], on: '2026-11-25', reviewOn: '2027-11-25', unitNumber: 4 },
      retired: null,
      departures: [{ finding: 'practice.shield-by-strap', person: 'p-3k7m', reviewOn: '2027-05-01' }],
    });
    const later = await versionsAfter([...lines, desk.write('procedure.retired')]);
    expect(later.procedures['suit-doffing']?.['1']).toMatchObject({
      stage: 'retired',
      retired: { unitNumber: 5, reason: 'The supplier sends another hood.' },
    });
    expect(versionInForce(later, 'suit-doffing')).toBeUndefined();
  });

  test('sent back it is a draft again and cannot be approved; the reason stays until it is sent again', async () => {
    const desk = device('desk');
    const back = [
      desk.write('procedure.drafted'),
      desk.write('procedure.sent-for-review'),
      desk.write('procedure.sent-back'),
      desk.write('procedure.approved'),
    ];
    const { procedures, conflicts } = await versionsAfter(back);
    expect(procedures['suit-doffing']?.['1']).toMatchObject({
      stage: 'draft',
      sentBack: { reason: 'The last look is missing.', unitNumber: 3 },
      approved: null,
    });
    expect(conflicts.map(({ code, kind }) => `${code} ${kind}`)).toEqual(['wrong-stage procedure.approved']);
    const better = draft('better');
    const { text: _text, ...of } = better;
    const again = [...back, desk.write('procedure.drafted', better)];
    expect((await versionsAfter(again)).procedures['suit-doffing']?.['1']?.sentBack?.reason).toBe(
      'The last look is missing.',
    );
    const sent = [...again, desk.write('procedure.sent-for-review', { ...of, to: ['p-3k7m'] })];
    expect((await versionsAfter(sent)).procedures['suit-doffing']?.['1']).toMatchObject({
      stage: 'review',
      sentBack: null,
    });
  });

  test('an approved version is never changed: a later draft under its name is refused and reported', async () => {
    const desk = device('desk');
    const approved = [
      desk.write('procedure.drafted'),
      desk.write('procedure.sent-for-review'),
      desk.write('procedure.approved'),
    ];
    const before = await versionsAfter(approved);
    const after = await versionsAfter([
      ...approved,
      desk.write('procedure.drafted', draft('something else')),
      desk.write('procedure.sent-for-review', {
        ...BODIES['procedure.sent-for-review'],
        content: hashOfText('something else'),
      }),
    ]);
    expect(after.procedures).toEqual(before.procedures);
    expect(after.conflicts).toMatchObject([
      {
        code: 'never-changed',
        kind: 'procedure.drafted',
        version: '1',
        stage: 'approved',
        content: hashOfText('something else'),
        by: 'p-9x2q',
        unitNumber: 4,
      },
      { code: 'other-content', kind: 'procedure.sent-for-review', unitNumber: 5 },
    ]);
  });

  test('an edit during review makes it a draft again; approval is of what was reviewed', async () => {
    const desk = device('desk');
    const { procedures, conflicts } = await versionsAfter([
      desk.write('procedure.drafted'),
      desk.write('procedure.sent-for-review'),
      desk.write('procedure.drafted', draft('better')),
      desk.write('procedure.approved'),
      desk.write('procedure.approved', { ...BODIES['procedure.approved'], content: hashOfText('better') }),
    ]);
    expect(procedures['suit-doffing']?.['1']).toMatchObject({ stage: 'draft', approved: null });
    expect(conflicts.map(({ code }) => code)).toEqual(['other-content', 'wrong-stage']);
  });

  test('what was never drafted cannot be approved, and nothing is retired twice', async () => {
    const desk = device('desk');
    const { procedures, conflicts } = await versionsAfter([
      desk.write('procedure.approved'),
      desk.write('procedure.drafted'),
      desk.write('procedure.retired'),
      desk.write('procedure.retired'),
      desk.write('departure.accepted'),
    ]);
    expect(procedures['suit-doffing']?.['1']?.stage).toBe('retired');
    expect(conflicts.map(({ code, stage }) => `${code} ${stage}`)).toEqual([
      'not-drafted null',
      'wrong-stage retired',
      'wrong-stage retired',
    ]);
  });

  test('the version in force is the one approved last, until it is retired', async () => {
    const desk = device('desk');
    const through = (version: string): readonly Entry[] => {
      const { text, ...of } = draft(`file ${version}`, version);
      return [
        desk.write('procedure.drafted', { ...of, text }),
        desk.write('procedure.sent-for-review', { ...of, to: ['p-3k7m'] }),
        desk.write('procedure.approved', { ...BODIES['procedure.approved'], ...of }),
      ];
    };
    const both = [...through('2'), ...through('1')];
    expect(versionInForce(await versionsAfter(both), 'suit-doffing')?.version).toBe('1');
    const { text: _text, ...of } = draft('file 1', '1');
    const retired = [...both, desk.write('procedure.retired', { ...of, reason: 'Too slow.' })];
    expect(versionInForce(await versionsAfter(retired), 'suit-doffing')?.version).toBe('2');
    expect(versionInForce(await versionsAfter(retired), 'constructor')).toBeUndefined();
  });
});
