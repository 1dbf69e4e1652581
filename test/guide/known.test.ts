// Live answer = check: whatever is recorded, the surfaces that are suspect after a step are those that the explicit-state
// reference reaches. What was recorded alone: contaminated. With all that nobody can rule out: may be contaminated.
import { describe, expect, test } from 'vitest';
import * as fc from 'fast-check';
import { compile } from '../../src/contacts/interpret.ts';
import { ALWAYS, type Plan } from '../../src/contacts/plan.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { run } from '../../src/engine/reference.ts';
import { knownOf } from '../../src/guide/effects.ts';
import type { Known } from '../../src/guide/index.ts';
import { excludedBy, NOTHING_KNOWN, suspectsOf, type Taint } from '../../src/guide/known.ts';
import { reachedAfter, suspectStep, worsened } from '../../src/guide/suspected.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { procedures } from '../support/arbitraryProcedure.ts';
import { beginWith, onward, press, readTo, scriptFor, SMALL } from './support.ts';

interface Record {
  readonly done: number;
  readonly happened: readonly number[];
  readonly seen: readonly number[];
  readonly taints: readonly { readonly step: number; readonly surface: number }[];
}

/** Any step, any slips, any steps seen, any places that the observer saw touched. */
const records: fc.Arbitrary<Record> = fc.record({
  done: fc.nat(1000),
  happened: fc.array(fc.nat(1000), { maxLength: 4 }),
  seen: fc.array(fc.nat(1000), { maxLength: 12 }),
  taints: fc.array(fc.record({ step: fc.nat(1000), surface: fc.nat(1000) }), { maxLength: 2 }),
});

function knownFrom(
  procedure: Procedure,
  plan: Plan,
  record: Record,
): { readonly done: number; readonly known: Known } {
  const done = record.done % (plan.steps.length + 1);
  const before = plan.events.filter(({ step }) => step < done);
  const happened =
    before.length === 0 ? [] : record.happened.map((pick) => before[pick % before.length]!.key);
  const seen = done === 0 ? [] : record.seen.map((pick) => pick % done);
  const taints = record.taints.map(
    ({ step, surface }): Taint => ({
      step: done === 0 ? -1 : step % done,
      surface: plan.surfaces[surface % plan.surfaces.length]!.id,
    }),
  );
  return { done, known: { happened, excluded: excludedBy(procedure, seen, happened), taints } };
}

/** The reference's answer for a plan with the seen contamination put in, by its own hand. */
function reached(
  plan: Plan,
  done: number,
  { taints }: Known,
  events: readonly string[],
): ReadonlySet<string> {
  const added = (step: number) =>
    taints
      .filter((taint) => taint.step === step)
      .map(({ surface }) => ({
        op: 'taint' as const,
        a: plan.surfaces.findIndex(({ id }) => id === surface),
        when: ALWAYS,
      }));
  const seen: Plan = {
    ...plan,
    start: [...plan.start, ...added(-1)],
    steps: plan.steps
      .slice(0, done)
      .map((one, index) => ({ ...one, operations: [...one.operations, ...added(index)] })),
  };
  const numbers = new Set(plan.events.flatMap(({ key }, index) => (events.includes(key) ? [index] : [])));
  const { after, ever } = run(seen, numbers);
  const now = after[done] ?? [];
  const isReached = (index: number): boolean => {
    const { protected: watched, judged } = plan.surfaces[index]!;
    return (watched && judged === 'ever' ? ever[index] : now[index]) === true;
  };
  return new Set(plan.surfaces.flatMap(({ id }, index) => (isReached(index) ? [id] : [])));
}

function holds(procedure: Procedure, agent: Agent, record: Record): void {
  const { plan } = compile(procedure, agent);
  const { done, known } = knownFrom(procedure, plan, record);
  const suspects = suspectsOf(procedure, done, known, [agent]);
  const possible = plan.events.map(({ key }) => key).filter((key) => !known.excluded.includes(key));
  expect(new Set(suspects.map(({ surface }) => surface))).toEqual(reached(plan, done, known, possible));
  const certain = suspects.filter(({ needs }) => needs === 0).map(({ surface }) => surface);
  expect(new Set(certain)).toEqual(reached(plan, done, known, known.happened));
}

describe('suspects are what the reference reaches', () => {
  test.each(files.filter((file) => procedureOf(file).kind === 'doffing'))('%s', (file) => {
    const procedure = procedureOf(file);
    fc.assert(
      fc.property(records, fc.constantFrom(...procedure.agents), (record, agent) =>
        holds(procedure, agent, record),
      ),
      { numRuns: 6 },
    );
  });

  test('in procedures of any kind', () => {
    fc.assert(
      fc.property(procedures(12), records, (procedure, record) => holds(procedure, 'enveloped', record)),
      { numRuns: 60 },
    );
  });
});

test('against several agents the worse answer stands', () => {
  const procedure = procedureOf('larkmoor-suit-doffing-v2.yaml');
  const each = procedure.agents.map((agent) => suspectsOf(procedure, 20, NOTHING_KNOWN, [agent]));
  for (const { surface, needs } of suspectsOf(procedure, 20, NOTHING_KNOWN)) {
    const worst = each.flatMap((all) => all.filter((one) => one.surface === surface).map((one) => one.needs));
    expect(needs).toBe(Math.min(...worst));
  }
});

test('more that is recorded never makes a surface less suspect, and what was seen never makes it more so', () => {
  const procedure = procedureOf('national-papr-gown-doffing.yaml');
  const { plan } = compile(procedure, 'enveloped');
  fc.assert(
    fc.property(records, (record) => {
      const { done, known } = knownFrom(procedure, plan, { ...record, taints: [] });
      const needs = (what: Known): ReadonlyMap<string, number> =>
        new Map(suspectsOf(procedure, done, what, ['enveloped']).map((one) => [one.surface, one.needs]));
      const [plain, told] = [needs({ ...known, happened: [] }), needs(known)];
      for (const [surface, before] of plain)
        expect(told.get(surface) ?? Infinity).toBeLessThanOrEqual(before);
      const unseen = needs({ ...known, excluded: [] });
      for (const [surface, after] of told) expect(unseen.get(surface) ?? Infinity).toBeLessThanOrEqual(after);
    }),
    { numRuns: 30 },
  );
});

test('only what could be seen is ruled out, and only where it was seen', () => {
  const reading = beginWith(scriptFor(SMALL));
  const after = (answer: 'seen' | 'not-seen'): readonly string[] => {
    const look = readTo(reading, 'gloves-off/look');
    return knownOf(press(look, { is: answer }).state.core).excluded.filter((key) =>
      key.startsWith('gloves-off'),
    );
  };
  const slips = compile(SMALL, 'enveloped').plan.events.filter(({ key }) => key.startsWith('gloves-off:'));
  const visible = slips.filter(({ kind, visible: seen }) => kind === 'slip' && seen).map(({ key }) => key);
  expect(slips.length).toBeGreaterThan(visible.length);
  expect(visible.length).toBeGreaterThan(0);
  expect(new Set(after('seen'))).toEqual(new Set(visible));
  expect(after('not-seen')).toEqual([]);
});

test('the live exit says what its record says: slips happened, steps seen, the rest open', () => {
  const slips = [...SMALL.steps.keys()].flatMap((step) =>
    compile(SMALL, 'enveloped').plan.events.filter((e) => e.step === step),
  );
  fc.assert(
    fc.property(fc.infiniteStream(fc.nat(9)), (stream) => {
      let exit = beginWith(scriptFor(SMALL));
      for (let guard = 0; guard < 60 && !exit.state.core.ended; guard += 1) {
        const choice = stream.next().value as number;
        const here = exit.state.core.script.lines[exit.state.core.line]!;
        const own = slips.filter(({ step }) => step === here.step);
        if (choice < 2 && here.kind === 'look' && own.length > 0)
          exit = press(exit, { is: 'slip', event: own[(guard * 7 + choice) % own.length]!.key });
        const dodge = choice === 9 && here.kind === 'look' ? press(exit, { is: 'not-seen' }) : exit;
        exit = dodge.state.refusal === null && dodge !== exit ? dodge : onward(exit);
      }
      const { core } = exit.state;
      const known = knownOf(core);
      const { plan } = compile(SMALL, 'enveloped');
      const done = suspectStep(core);
      const certain = (worsened(core) ?? []).filter(({ needs }) => needs === 0).map(({ surface }) => surface);
      const all = reached(plan, done, known, known.happened);
      const planned = reached(plan, done, NOTHING_KNOWN, []);
      expect(new Set(certain)).toEqual(new Set([...all].filter((surface) => !planned.has(surface))));
      expect(known.excluded.some((key) => known.happened.includes(key))).toBe(false);
    }),
    { numRuns: 25 },
  );
});

describe('the picture of an exit', () => {
  const looking = readTo(beginWith(scriptFor(SMALL)), 'gloves-off/look');

  test('is the plan’s while nothing was recorded', () => {
    expect(reachedAfter(looking.state.core, 2)).toBeUndefined();
  });

  test('holds all that the list holds, as sure, and never less than the plan', () => {
    const { core } = press(looking, { is: 'slip', event: 'gloves-off:wrong-grip' }).state;
    const drawn = new Map(
      reachedAfter(core, suspectStep(core))?.map(({ surface, needs }) => [surface, needs]),
    );
    const told = worsened(core) ?? [];
    expect(told.some(({ needs }) => needs === 0)).toBe(true);
    for (const { surface, needs } of told) expect(drawn.get(surface)).toBeLessThanOrEqual(needs);
    const planned = suspectsOf(SMALL, suspectStep(core), NOTHING_KNOWN);
    for (const { surface, needs } of planned) expect(drawn.get(surface)).toBeLessThanOrEqual(needs);
  });
});
