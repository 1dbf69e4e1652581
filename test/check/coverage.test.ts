// Coverage and layering: what a donning leaves bare or open, what a doffing leaves on, and where the two halves of a
// published pair contradict each other once one of them is edited.
import { describe, expect, test } from 'vitest';
import { coverage, layering } from '../../src/check/coverage.ts';
import { compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { DONNING, RESPIRATOR_GOWN } from '../practice/procedures.ts';
import { inserted, step, without, withPerson } from '../support/procedure.ts';

const compiled = (procedure: Procedure) => compile(procedure, 'enveloped');
const cover = (procedure: Procedure) => coverage(compiled(procedure));
const errors = (procedure: Procedure) => cover(procedure).filter(({ severity }) => severity === 'error');
const leftIn = (procedure: Procedure, code: string) =>
  cover(procedure)
    .filter((finding) => finding.code === code)
    .map(({ params }) => `${params.person} ${params.item}`);

describe('places left bare', () => {
  // What lies bare once one item is missing from the respirator ensemble; nothing else covers these places.
  test.each([
    ['n95-respirator', ['wearer.nose', 'wearer.mouth'], 'face-shield'],
    // A shield covers face and eyes; what is breathed goes round it (training module: shield over respirator or mask).
    ['n95-respirator', ['wearer.nose', 'wearer.mouth'], undefined],
    ['surgical-hood', ['wearer.scalp', 'wearer.ears', 'wearer.neck'], undefined],
    ['face-shield', ['wearer.face', 'wearer.eyes'], undefined],
    ['boot-covers', ['wearer.ankle.left', 'wearer.ankle.right'], undefined],
    ['gown', ['wearer.back', 'wearer.seat', 'wearer.arm.left', 'wearer.arm.right'], undefined],
  ] as const)('of a doffing without %s are each named', (item, places, also) => {
    const wears = RESPIRATOR_GOWN.people[0]!.wears.filter((worn) => worn !== item && worn !== also);
    const bare = errors(withPerson(RESPIRATOR_GOWN, 'wearer', { wears }));
    const surfaces = bare.filter(({ code }) => code === 'coverage.bare').map(({ surface }) => surface);
    for (const place of places) expect(surfaces).toContain(place);
    for (const finding of bare) expect(finding.surfaces).toEqual([finding.surface]);
  });

  test('of a colleague who was in the room are named too, and of a helper who was not are not', () => {
    const named = (starts: string) =>
      errors(withPerson(RESPIRATOR_GOWN, 'assistant', { starts }))
        .map(({ surface }) => surface)
        .filter((surface) => surface?.startsWith('assistant.'));
    expect(named('room')).toContain('assistant.neck');
    expect(named('anteroom')).toEqual([]);
  });

  test('of a donning are named by what is missing at its end, at the last step', () => {
    const whole = cover(DONNING).map(({ surface }) => surface);
    const bare = errors(without(DONNING, 'hood-on'));
    const fresh = bare.filter(({ surface }) => !whole.includes(surface));
    expect(fresh.map(({ surface }) => String(surface)).toSorted()).toEqual([
      'wearer.ears',
      'wearer.neck',
      'wearer.scalp',
    ]);
    for (const { steps } of fresh) expect(steps).toEqual([DONNING.steps.length - 2]);
  });

  test('are named where somebody walks in too early, or back in when the equipment is off', () => {
    const enter = step('enter', 'move', { zone: 'room' });
    const early = errors(inserted(DONNING, 'shield-on', enter)).find(
      ({ surface }) => surface === 'wearer.eyes',
    );
    expect(early?.steps).toEqual([DONNING.steps.findIndex(({ id }) => id === 'shield-on')]);
    const back = errors(inserted(RESPIRATOR_GOWN, 'last-look', enter));
    expect(back.map(({ surface }) => surface)).toEqual(
      expect.arrayContaining(['wearer.eyes', 'wearer.mouth']),
    );
    expect(errors(inserted(RESPIRATOR_GOWN, 'look', enter))).toEqual(errors(RESPIRATOR_GOWN));
  });

  test('on purpose are notes, and accepted ones too', () => {
    const wears = RESPIRATOR_GOWN.people[0]!.wears.filter((worn) => worn !== 'surgical-hood');
    const bare = withPerson(RESPIRATOR_GOWN, 'wearer', { wears, leavesBare: ['scalp'] });
    const accepted: Procedure = {
      ...bare,
      accepted: [
        {
          finding: 'coverage.bare',
          surface: 'wearer.ears',
          reason: 'Long hair is tied back (invented).',
          by: 'Committee (invented)',
          date: '2026-01-01',
          review: '2027-01-01',
        },
      ],
    };
    const grade = (surface: string) =>
      cover(accepted).find((finding) => finding.surface === surface)?.severity;
    expect([grade('wearer.scalp'), grade('wearer.ears'), grade('wearer.neck')]).toEqual([
      'note',
      'note',
      'error',
    ]);
  });
});

describe('items left', () => {
  test('on at the end of a doffing are named once a pair', () => {
    expect(leftIn(RESPIRATOR_GOWN, 'coverage.left-on')).toEqual([]);
    expect(leftIn(without(RESPIRATOR_GOWN, 'inner-off', 'n95-off'), 'coverage.left-on')).toEqual([
      'wearer n95-respirator',
      'wearer inner-gloves',
    ]);
  });

  test('on helpers are named once the procedure starts to take something off them', () => {
    const assistant = step('assistant-gloves', 'remove', { who: 'assistant', items: ['outer-gloves'] });
    expect(leftIn(inserted(RESPIRATOR_GOWN, 'go', assistant), 'coverage.left-on')).toEqual([
      'assistant inner-gloves',
      'assistant gown',
    ]);
  });

  test('open at the end of a donning are named; straps and strings that nobody ties are not', () => {
    expect(leftIn(DONNING, 'coverage.left-open')).toEqual(['wearer gown']);
    const tied = inserted(DONNING, 'n95-on', step('tie', 'fasten', { items: ['gown'] }));
    expect(leftIn(tied, 'coverage.left-open')).toEqual([]);
  });
});

const pairs = files.flatMap((file) => {
  const { donning } = procedureOf(file);
  return donning === undefined ? [] : [[file, procedureOf(file), procedureOf(donning)] as const];
});

/** What contradicts, and which items. */
const contradictions = (doffing: Procedure, donning: Procedure) =>
  layering(compiled(doffing), compiled(donning)).map(
    ({ params }) => `${params.what} ${params.item}${params.by ? ` ${params.by}` : ''}`,
  );

describe.each(pairs)('%s against its donning', (_, doffing, donning) => {
  const puts = donning.steps.filter(({ action }) => action === 'put-on');

  test('says nothing as published', () => {
    expect(contradictions(doffing, donning)).toEqual([]);
  });

  test('names every item that the donning leaves out', () => {
    for (const put of puts) {
      const found = contradictions(doffing, without(donning, put.id));
      const [item = ''] = put.items;
      expect(found.filter((text) => text.startsWith(`never-put-on ${item}`))).not.toEqual([]);
    }
  });

  test('names every item that the doffing does not know of', () => {
    for (const person of doffing.people.filter(({ role }) => role === 'wearer')) {
      for (const item of person.wears) {
        const wears = person.wears.filter((worn) => worn !== item);
        const found = contradictions(withPerson(doffing, person.id, { wears }), donning);
        expect(found.filter((text) => text.startsWith(`never-taken-off ${item}`))).not.toEqual([]);
      }
    }
  });

  const worn = doffing.people.find(({ wears }) => wears.length > 2)!;
  const garment = worn.wears.findIndex((item) => /gown|coverall|apron/.test(item));

  // An apron has no sleeves, so it does not matter whether gloves go on before or after it.
  test('names the gloves and the sleeves that lie the other way round', () => {
    const glove = worn.wears.findLastIndex((item) => /gloves/.test(item));
    const wears = worn.wears.toSpliced(glove, 1).toSpliced(garment, 0, worn.wears[glove]!);
    const found = contradictions(withPerson(doffing, worn.id, { wears }), donning);
    const sleeves = worn.wears[garment] !== 'apron';
    expect(found.some((text) => text.startsWith('other-way-round'))).toBe(sleeves);
  });
});
