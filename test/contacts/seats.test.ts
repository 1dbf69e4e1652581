// Who has to sit for a step: the one whose boot covers come off, also when somebody else takes them off (training module,
// boot-cover page 14: the wearer sits).
import { expect, test } from 'vitest';
import { compile } from '../../src/contacts/interpret.ts';
import { person, procedure, step, without } from '../support/procedure.ts';

const byAssistant = procedure({
  people: [
    person({ id: 'wearer', role: 'wearer', wears: ['boot-covers'] }),
    person({ id: 'assistant', role: 'assistant' }),
  ],
  steps: [
    step('sit', 'sit', { fixture: 'chair' }),
    step('off', 'remove', { who: 'assistant', of: 'wearer', items: ['boot-covers'] }),
  ],
});

test('an assistant stands while the wearer sits', () => {
  expect(compile(byAssistant, 'enveloped').problems).toEqual([]);
});

test('and cannot do it while the wearer stands', () => {
  const codes = compile(without(byAssistant, 'sit'), 'enveloped').problems.map(({ code }) => code);
  expect(codes).toEqual(['not-seated']);
});
