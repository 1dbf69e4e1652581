// A finding's route is real: it starts at a source, each link is a contact of the plan at that step under those slips, each
// goes on where the last one ended, and the reference, run with exactly the finding's slips, reaches every surface named.
import { describe, expect, test } from 'vitest';
import type { Operation, Plan } from '../../src/contacts/plan.ts';
import type { Finding, RouteLink } from '../../src/check/finding.ts';
import { parseReplayId } from '../../src/check/replayId.ts';
import { planOf, reachedBy } from './reference.ts';
import { SUBJECTS, verdictOf } from './subjects.ts';

const keysOf = (plan: Plan, guard: readonly number[]): readonly string[] =>
  guard.map((event) => plan.events[event]!.key);

/** Whether the plan has this link: a taint where it starts, a contact between its two surfaces elsewhere. */
function exists(plan: Plan, { step, from, to, events }: RouteLink): boolean {
  const operations: readonly Operation[] = step < 0 ? plan.start : plan.steps[step]!.operations;
  const number = (id: string): number => plan.surfaces.findIndex((surface) => surface.id === id);
  return operations.some((operation) => {
    if (operation.op !== 'contact' && operation.op !== 'taint') return false;
    if (keysOf(plan, operation.when).join() !== events.join()) return false;
    if (operation.op === 'taint') return from === undefined && operation.a === number(to);
    if (from === undefined) return false;
    const ends = [operation.a, operation.b];
    return ends.includes(number(from)) && ends.includes(number(to));
  });
}

function expectReal(plan: Plan, { route, surface, events }: Finding): void {
  expect(route[0]?.from).toBeUndefined();
  expect(route.at(-1)?.to).toBe(surface);
  route.forEach((link, at) => {
    expect(exists(plan, link)).toBe(true);
    expect(events).toEqual(expect.arrayContaining([...link.events]));
    if (at > 0) expect(link.from).toBe(route[at - 1]!.to);
    if (at > 0) expect(link.step).toBeGreaterThanOrEqual(route[at - 1]!.step);
  });
}

const ROUTED = ['open', 'one-slip', 'accepted'];

describe.each(SUBJECTS)('%s', (_, procedure) => {
  const verdict = verdictOf(procedure);
  const routed = verdict.findings.filter(({ kind }) => ROUTED.includes(kind));

  test('has findings with a route, and every one of these kinds has one', () => {
    expect(routed.length).toBeGreaterThan(0);
    for (const { route } of routed) expect(route.length).toBeGreaterThan(0);
  });

  test('tells only routes that are there', () => {
    for (const finding of routed) expectReal(planOf(procedure, finding.agent!), finding);
  });

  test('reaches by the reference every surface that it names, with exactly the slips named', () => {
    for (const { agent, events, surface, surfaces } of routed) {
      const reached = reachedBy(planOf(procedure, agent!), events);
      expect([...reached]).toEqual(expect.arrayContaining([surface, ...surfaces]));
    }
  });

  test('does not need a slip for what is open, and needs one for what is one slip away', () => {
    for (const { kind, agent, events, surfaces } of routed) {
      const without = reachedBy(planOf(procedure, agent!), []);
      expect(events).toHaveLength(kind === 'one-slip' ? 1 : 0);
      if (kind === 'one-slip') expect(surfaces.filter((surface) => without.has(surface))).toEqual([]);
    }
  });

  test('names every protected surface that the reference reaches without a slip, and by each single one', () => {
    for (const agent of verdict.agents) {
      const plan = planOf(procedure, agent);
      const watched = plan.surfaces.filter((surface) => surface.protected).map(({ id }) => id);
      const of = (kind: string) =>
        verdict.findings.filter((finding) => finding.kind === kind && finding.agent === agent);
      const open = watched.filter((id) => reachedBy(plan, []).has(id));
      expect(
        of('open')
          .flatMap(({ surfaces }) => surfaces)
          .toSorted(),
      ).toEqual(open.toSorted());
      const lone = plan.events.flatMap(({ key }) => {
        const more = watched.filter((id) => !open.includes(id) && reachedBy(plan, [key]).has(id));
        return more.map((id) => `${key} ${id}`);
      });
      const told = of('one-slip').flatMap(({ events, surfaces }) =>
        surfaces.map((id) => `${events[0]} ${id}`),
      );
      expect(told.toSorted()).toEqual(lone.toSorted());
    }
  });

  test('gives each a replay id that reads back to its slips, and replays to its surface', () => {
    for (const { replay, agent, events, surface } of routed) {
      const read = parseReplayId(replay!);
      const plan = planOf(procedure, agent!);
      expect(read?.hash).toBe(verdict.hash);
      expect(read?.agent).toBe(agent === 'enveloped' ? 'e' : 'n');
      expect(keysOf(plan, read!.events)).toEqual(events);
      expect(reachedBy(plan, keysOf(plan, read!.events)).has(surface!)).toBe(true);
    }
  });
});
