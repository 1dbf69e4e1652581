// The way on after something went wrong: never nearer to contamination than carrying on, always possible, and its state that of the
// reference engine for the same events.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { run } from '../../src/engine/reference.ts';
import { type Continuation, continueFrom, type KnownOfExit } from '../../src/order/continue.ts';
import { departures } from '../../src/practice/index.ts';
import { procedureOf } from '../procedures/shelf.ts';

const FILES = [
  'larkmoor-suit-doffing-v2.yaml',
  'larkmoor-suit-doffing.yaml',
  'everyday-example-1-doffing.yaml',
  'international-gown-doffing.yaml',
];

interface Case {
  readonly given: Procedure;
  readonly plan: Compiled;
  readonly done: number;
  readonly known: KnownOfExit;
}

const SHELF = FILES.map((file) => {
  const given = procedureOf(file);
  return { given, plan: compile(given, 'enveloped') };
});

/** An exit at a random step, with some events of what was done known to have happened and some known not to have. */
const cases: fc.Arbitrary<Case> = fc
  .record({
    which: fc.nat(SHELF.length - 1),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    seed: fc.infiniteStream(fc.nat(9)),
  })
  .map(({ which, at, seed }) => {
    const { given, plan } = SHELF[which]!;
    const done = Math.floor(at * given.steps.length);
    const past = plan.plan.events.filter(({ step }) => step < done);
    const drawn = past.map(({ key }) => ({ key, draw: seed.next().value as number }));
    const happened = drawn.filter(({ draw }) => draw === 0).map(({ key }) => key);
    const excluded = drawn.filter(({ draw }) => draw > 5).map(({ key }) => key);
    return { given, plan, done, known: { happened, excluded } };
  });

const withRest = ({ given, done }: Case, { steps }: Continuation): Procedure => ({
  ...given,
  steps: [...given.steps.slice(0, done), ...steps],
});

/** Whether each protected surface is contaminated when exactly these events are true, as it is judged. */
function contaminated({ plan }: Compiled, keys: ReadonlySet<string>): ReadonlyMap<string, boolean> {
  const events = new Set(plan.events.flatMap(({ key }, at) => (keys.has(key) ? [at] : [])));
  const { ever, after } = run(plan, events);
  return new Map(
    plan.surfaces.flatMap(({ id, protected: watched, judged }, at) =>
      watched ? [[id, (judged === 'ever' ? ever[at] : after.at(-1)?.[at]) === true] as const] : [],
    ),
  );
}

const barriers = (events: number | null): number => events ?? Infinity;

test('no surface is nearer to contamination than as written, and no route is open that was not', () => {
  let better = 0;
  fc.assert(
    fc.property(cases, (one) => {
      const found = continueFrom(one.given, one.done, one.known, { agent: 'enveloped' });
      for (const { asWritten, proposed } of found.barriers)
        expect(barriers(proposed)).toBeGreaterThanOrEqual(barriers(asWritten));
      found.proposed.open.forEach((open, at) => {
        expect(open).toBeLessThanOrEqual(found.asWritten.open[at]!);
      });
      if (found.kept) expect(found.steps).toEqual(one.given.steps.slice(one.done));
      else better += 1;
    }),
    { numRuns: 30 },
  );
  expect(better).toBeGreaterThan(1);
});

test('what it proposes can be done and departs from practice no more than before', () => {
  fc.assert(
    fc.property(cases, (one) => {
      const found = continueFrom(one.given, one.done, one.known, { agent: 'enveloped' });
      if (found.kept) return;
      const whole = compile(withRest(one, found), 'enveloped');
      expect(whole.problems.filter(({ step }) => step >= one.done)).toEqual([]);
      expect(departures(whole).length).toBeLessThanOrEqual(departures(one.plan).length);
      const ids = whole.procedure.steps.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }),
    { numRuns: 20 },
  );
});

describe('the state is that of the reference engine', () => {
  test('what stands open is contaminated by what happened alone, as written and as proposed', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const found = continueFrom(one.given, one.done, one.known, { agent: 'enveloped' });
        const happened = new Set(one.known.happened);
        const [before, after] = [one.plan, compile(withRest(one, found), 'enveloped')].map((compiled) =>
          contaminated(compiled, happened),
        );
        for (const { surface, asWritten, proposed } of found.barriers) {
          expect(asWritten === 0).toBe(before?.get(surface) ?? false);
          expect(proposed === 0).toBe(after?.get(surface) ?? false);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('one event away is what one more event reaches that was not ruled out', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const found = continueFrom(one.given, one.done, one.known, { agent: 'enveloped' });
        const { happened, excluded } = one.known;
        const free = one.plan.plan.events.filter(
          ({ key }) => !happened.includes(key) && !excluded.includes(key),
        );
        const reached = free.map(({ key }) => contaminated(one.plan, new Set([...happened, key])));
        for (const { surface, asWritten } of found.barriers)
          if (asWritten !== 0)
            expect(asWritten === 1).toBe(reached.some((state) => state.get(surface) === true));
      }),
      { numRuns: 4 },
    );
  });
});

describe('the suit of the invented unit', () => {
  const given = procedureOf('larkmoor-suit-doffing-v2.yaml');
  const stepsTo = (id: string): number => given.steps.findIndex((step) => step.id === id) + 1;
  const HAPPENED = 'rub-boot-covers:omitted-hygiene';
  /** As the guide records it: what could be seen and was not did not happen. */
  const KNOWN: KnownOfExit = {
    happened: [HAPPENED],
    excluded: compile(given, 'enveloped')
      .plan.events.filter(
        ({ key, step, visible }) => key !== HAPPENED && visible && step < stepsTo('rub-boot-covers'),
      )
      .map(({ key }) => key),
  };

  test('hygiene that was left out is made up for at once', () => {
    const found = continueFrom(given, stepsTo('rub-boot-covers'), KNOWN);
    expect(found.kept).toBe(false);
    expect(found.changes.map(({ what, step }) => [what, step.action, step.who])).toEqual([
      ['new', 'sanitise', 'wearer'],
    ]);
    expect(found.barriers.some(({ asWritten, proposed }) => barriers(proposed) > barriers(asWritten))).toBe(
      true,
    );
  });

  test('the same every time, and cut short it still answers', () => {
    const [one, other] = [1, 2].map(() => continueFrom(given, stepsTo('rub-boot-covers'), KNOWN));
    expect(one).toEqual(other);
    const none = continueFrom(given, stepsTo('rub-boot-covers'), KNOWN, { tried: 0 });
    expect([none.kept, none.tried]).toEqual([true, 0]);
  });

  test('contamination that no slip tells of counts, and is dealt with', () => {
    const done = stepsTo('rub-inner');
    const taints = ['left', 'right'].map((side) => ({
      step: done - 1,
      surface: `wearer.inner-gloves.${side}.outside`,
    }));
    const found = continueFrom(given, done, { happened: [], excluded: [], taints });
    expect(found.kept).toBe(false);
    expect(found.changes.some(({ step }) => ['sanitise', 'put-on'].includes(step.action))).toBe(true);
  });

  test('with nothing left to do there is nothing to propose', () => {
    const found = continueFrom(given, given.steps.length, KNOWN);
    expect([found.kept, found.steps, found.changes]).toEqual([true, [], []]);
  });
});
