// What speaks against beginning an exit, as it is filled in; and that an exit for real does not begin with it unknowingly.
import { describe, expect, test } from 'vitest';
import { warningsOf } from '../../../src/app/guide/screens/warned.ts';
import type { Acceptance } from '../../../src/domain/procedure.ts';
import type { ExitHead } from '../../../src/app/guide/log/exits.ts';
import { begin, scriptOf } from '../../../src/guide/index.ts';
import { freeText } from '../../../src/journal/kinds/values.ts';
import { LANGUAGES, wordsFor } from '../../../src/words/index.ts';
import { APPROVAL, NOON, OBSERVER, PEOPLE, setupOf, SMALL } from '../../guide/support.ts';
import { person, step } from '../../support/procedure.ts';

const ASSISTED = {
  ...SMALL,
  people: [...SMALL.people, person({ id: 'assistant', role: 'assistant', wears: [] })],
  steps: [...SMALL.steps, step('help', 'remove', { items: ['gown'], helper: 'assistant' })],
};
const HEAD: ExitHead = {
  exit: 'x-other',
  drill: false,
  procedure: 'a-test',
  version: '1',
  content: 'a'.repeat(64),
  room: 'room-1',
  wearer: 'p-wea1',
  observer: 'p-obs1',
  at: '2026-11-25T12:00:00.000Z',
  from: 1,
  ended: null,
};
const staff = { 'p-wea1': { person: 'p-wea1', role: 'nurse', initials: 'AB' } };
const asked = {
  wearer: ' ab',
  assistant: '',
  procedure: SMALL,
  staff,
  exits: [],
  today: '2026-11-25',
  words: wordsFor('en'),
};

describe('what is warned of', () => {
  test('steps that need an assistant, by their numbers, until one is named', () => {
    const needs = { ...asked, procedure: ASSISTED };
    const [told, ...others] = warningsOf(needs);
    expect(told?.warned).toBe('no-assistant');
    expect(told?.says).toContain(`: ${ASSISTED.steps.length}.`);
    expect(others).toEqual([]);
    expect(warningsOf({ ...needs, assistant: 'EF' })).toEqual([]);
    expect(warningsOf(asked)).toEqual([]);
  });

  test('the same wearer in an exit that has not ended, with the way there', () => {
    const [told, ...others] = warningsOf({ ...asked, exits: [HEAD] });
    expect(told).toMatchObject({ warned: 'wearer-in-another', exit: 'x-other' });
    expect(told?.says).toContain('Room 1');
    expect(others).toEqual([]);
    expect(warningsOf({ ...asked, exits: [{ ...HEAD, ended: 'finished' }] })).toEqual([]);
    expect(warningsOf({ ...asked, wearer: 'GH', exits: [HEAD] })).toEqual([]);
  });
});

describe('what the version accepts past its day of review', () => {
  const accepted = (review: string, more: Partial<Acceptance> = {}): Acceptance => ({
    finding: 'practice.shield-by-rear-strap',
    reason: 'The straps of this model break (invented).',
    by: 'infection-prevention lead',
    date: '2026-01-01',
    review,
    ...more,
  });
  const [first] = SMALL.steps;
  const with_ = (...all: readonly Acceptance[]) => ({ ...asked, procedure: { ...SMALL, accepted: all } });

  test('is told with what and since when, the longest overdue first, once each; not on the day itself', () => {
    const told = warningsOf(
      with_(
        accepted('2026-11-24'),
        accepted('2026-05-01', { step: first!.id }),
        accepted('2026-05-01', { step: first!.id }),
        accepted('2026-11-25', { finding: 'practice.lower-strap-first' }),
      ),
    );
    expect(told.map(({ warned }) => warned)).toEqual(['departure-overdue', 'departure-overdue']);
    expect(told[0]?.says).toContain('2026-05-01');
    expect(told[0]?.says).toContain('step 1');
    expect(told[1]?.says).toContain('2026-11-24');
    expect(warningsOf(with_(accepted('2026-11-25')))).toEqual([]);
  });

  test.each(LANGUAGES)('%s: is recorded in words that the journal takes and that name nobody', (language) => {
    const words = wordsFor(language);
    const [told] = warningsOf({ ...with_(accepted('2026-05-01')), words });
    expect(told?.language).toBe(language);
    expect(freeText.safeParse(told?.note).success).toBe(true);
    expect(told?.note).toContain('2026-05-01');
    expect(told?.note).not.toContain('infection-prevention lead');
    expect(told?.note).not.toBe(told?.says);
  });

  test('does not keep an exit for real from beginning', () => {
    const procedure = { ...SMALL, accepted: [accepted('2026-05-01')] };
    const real = { is: 'exit', approval: APPROVAL } as const;
    const [told] = warningsOf({ ...asked, procedure });
    const knowingly = [{ warned: told!.warned, text: told!.note }];
    const occasion = { exit: 'x1', room: 'room-1', at: NOON, by: OBSERVER, knowingly };
    const begun = begin(scriptOf(setupOf(procedure)), PEOPLE, real, occasion);
    expect(begun.ok && begun.state.saving[1]).toMatchObject({
      kind: 'note.added',
      body: { about: 'exit', id: 'x1', text: told!.note },
    });
  });
});

describe('an exit for real whose steps need an assistant', () => {
  const script = scriptOf(setupOf(ASSISTED));
  const people = { ...PEOPLE, assistants: [] };
  const occasion = { exit: 'x1', room: 'room-1', at: NOON, by: OBSERVER };
  const real = { is: 'exit', approval: APPROVAL } as const;

  test('does not begin without one unknowingly; a drill does', () => {
    expect(begin(script, people, real, occasion)).toEqual({ ok: false, bar: 'no-assistant' });
    expect(begin(script, PEOPLE, real, occasion).ok).toBe(true);
    expect(begin(script, people, { is: 'drill' }, occasion).ok).toBe(true);
  });

  test('begins knowingly, and records what was known', () => {
    const knowingly = [{ warned: 'no-assistant', text: 'Begun knowingly' }] as const;
    const begun = begin(script, people, real, { ...occasion, knowingly });
    expect(begun.ok && begun.state.saving.map(({ kind }) => kind)).toEqual([
      'exit.started',
      'note.added',
      'exit.line-shown',
    ]);
    expect(begun.ok && begun.state.saving[1]).toMatchObject({
      body: { about: 'exit', id: 'x1', text: 'Begun knowingly' },
    });
  });
});
