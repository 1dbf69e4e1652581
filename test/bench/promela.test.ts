// The model given to SPIN says what the plan says: word for word on a tiny plan, and, where SPIN is installed, with the same
// answer as ours on it.
import { expect, test } from 'vitest';
import { ask, whyNoSpin } from '../../bench/checker.ts';
import { promelaOf } from '../../bench/promela.ts';
import type { BasicEvent, Plan, Surface } from '../../src/contacts/plan.ts';
import { leastEvents } from '../../src/engine/barriers.ts';
import { judgedOf, propagate } from '../../src/engine/propagate.ts';

const surface = (id: string, kind: Surface['class']): Surface => ({
  id,
  class: kind,
  protected: kind === 'skin',
  judged: 'ever',
});
const event = (key: string): BasicEvent => ({
  key,
  kind: 'slip',
  what: 'wrong-grip',
  step: 0,
  prior: 'slip.wrong-grip',
  visible: true,
});

/** A dirty gown meets a glove, which a rub may fail to clean; a slip brings the glove to the hand. The lid matters to nobody. */
const PLAN: Plan = {
  surfaces: [
    surface('wearer.hand.left', 'skin'),
    surface('wearer.gown.front', 'equipment'),
    surface('wearer.gloves.left.outside', 'equipment'),
    surface('room.bin.lid', 'fixture'),
  ],
  events: [event('rub:omitted'), event('off:grip'), event('bin:touch')],
  start: [{ op: 'taint', a: 1, when: [] }],
  steps: [
    { id: 'gown', operations: [{ op: 'contact', a: 1, b: 2, when: [] }] },
    { id: 'rub', operations: [{ op: 'sanitise', a: 2, failure: [[0]] }] },
    {
      id: 'off',
      operations: [
        { op: 'contact', a: 2, b: 0, when: [1] },
        { op: 'contact', a: 3, b: 2, when: [2] },
        { op: 'retire', a: 2 },
      ],
    },
  ],
};

const BODY = `bit s0, s1, s2;
bit e0, e1;
byte count;
hidden byte u;
active proctype procedure() {
  d_step { s1 = s1 | (1); u = s1 | s2; s1 = u; s2 = u; s1 = 0 };
  if :: skip :: count < MOST -> d_step { e0 = 1; count++ } fi; /* rub:omitted */
  d_step { s2 = s2 & ((e0)); e0 = 0 };
  if :: skip :: count < MOST -> d_step { e1 = 1; count++ } fi; /* off:grip */
  d_step { u = (s2 | s0) & e1; s2 = s2 | u; s0 = s0 | u; c_code { NOTE(s0, 0) }; s2 = 0; s0 = 0; e1 = 0 };
  skip
}
`;

test('a tiny plan becomes this model, without what can matter to no target', () => {
  const text = promelaOf(PLAN);
  expect(text.startsWith('#define MOST 2\n')).toBe(true);
  expect(text.slice(text.indexOf('bit s'))).toBe(BODY);
  expect(promelaOf(PLAN, { most: 1 }).startsWith('#define MOST 1\n')).toBe(true);
});

const why = whyNoSpin();
if (why !== undefined) console.warn(`The comparison with SPIN is skipped: ${why}`);

test.skipIf(why !== undefined)('SPIN gives the same least number of slips', () => {
  const conditions = propagate(PLAN);
  const [least] = leastEvents(conditions.diagram, [judgedOf(conditions, 0)]);
  const answer = ask(PLAN, { seconds: 30, megabytes: 1000 });
  expect(answer.finished).toBe(true);
  expect([...answer.least]).toEqual([[0, least]]);
  expect(least).toBe(2);
  expect([...ask(PLAN, { seconds: 30, megabytes: 1000 }, { most: 1 }).least]).toEqual([]);
});
