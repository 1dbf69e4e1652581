// What speaks against beginning an exit, as it is filled in; and that an exit for real does not begin with it unknowingly.
import { describe, expect, test } from 'vitest';
import { warningsOf } from '../../../src/app/guide/screens/warned.ts';
import type { ExitHead } from '../../../src/app/guide/log/exits.ts';
import { begin, scriptOf } from '../../../src/guide/index.ts';
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
const asked = { wearer: ' ab', assistant: '', procedure: SMALL, staff, exits: [] };

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
