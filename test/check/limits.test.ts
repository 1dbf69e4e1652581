// Whatever the procedure, the check ends, says what it left undone, and what it does say holds. Sizes here are far beyond
// any procedure; how long they take is for bench/.
import { describe, expect, test } from 'vitest';
import { isTangled, LIMITS } from '../../src/check/limits.ts';
import { AGENTS, type Agent } from '../../src/domain/products.ts';
import { Diagram } from '../../src/engine/diagram.ts';
import { evaluate, union } from '../../src/engine/walk.ts';
import { verify } from '../../src/verify.ts';
import { wordsFor } from '../../src/words/index.ts';

const HEAD = `doffline: 1
title: Too much (invented)
kind: doffing
version: "1"
invented: true
people:
  wearer:
    wears: [inner-gloves, gown, face-shield, outer-gloves]
room:
  zones: {patient-room: patient, doffing-area: doffing, clean-side: clean}
products: [alcohol-hand-rub]
steps:
`;
const RUB = '{do: sanitise, with: alcohol-hand-rub}';
const CHANGES = [
  '{do: remove, item: outer-gloves}',
  RUB,
  '{do: put-on, item: outer-gloves}',
  '{do: touch, place: face}',
];
const steps = (count: number, cycle: readonly string[]): string =>
  HEAD + Array.from({ length: count }, (_, at) => `  - ${cycle[at % cycle.length]}\n`).join('');

function verdictOf(text: string, agents: readonly Agent[] = AGENTS) {
  const { read, verdict } = verify(text, { agents });
  expect(read.diagnostics).toEqual([]);
  return verdict!;
}

describe('a procedure beyond every size', () => {
  test('of too many slips is answered without them, says so first, and shows no chance', () => {
    const { findings, limits, surfaces } = verdictOf(steps(LIMITS.events / 2 + 1, [RUB]));
    expect(findings[0]).toMatchObject({ code: 'impossible.not-worked-out', severity: 'error' });
    expect(limits).toEqual([{ code: 'exact', params: {} }]);
    expect(surfaces).toEqual([]);
  });

  test('of ten thousand steps still has its open routes and departures told', () => {
    const { findings } = verdictOf(steps(10_000, CHANGES));
    const kinds = new Set(findings.map(({ kind }) => kind));
    for (const kind of ['impossible', 'open', 'practice']) expect(kinds).toContain(kind);
  });

  test('of four hundred tangled steps has every finding, fewer mends and variants, and the count of those tried', () => {
    const { findings, limits, analyses } = verdictOf(steps(400, CHANGES), ['enveloped']);
    expect(limits.map(({ code }) => code)).toEqual(expect.arrayContaining(['mends', 'variants']));
    for (const { agent } of limits) expect(agent).toBe('enveloped');
    const variants = limits.find(({ code }) => code === 'variants')!;
    expect(variants.params.all).toBe(String(400 * 399 + 1));
    // Every step left out comes first, so whatever the limit those were tried.
    expect(Number(variants.params.tried)).toBeGreaterThan(400);
    expect(findings.some(({ code }) => code === 'variant.omission')).toBe(true);
    expect(findings.some(({ mends }) => mends.length > 0)).toBe(true);
    // What is asked of the analysis afterwards is not refused for what mends and variants took.
    for (const { diagram } of analyses) expect(diagram.enough - diagram.work).toBe(LIMITS.exactWork);
  }, 180_000);
});

test('what was left undone is said in words, with its agent', () => {
  for (const language of ['en', 'fr', 'es', 'pt'] as const) {
    const words = wordsFor(language);
    for (const agent of AGENTS) {
      const said = words.limit({ code: 'variants', params: { tried: '7', all: '9' }, agent });
      for (const part of ['7', '9', words.agent(agent)]) expect(said).toContain(part);
    }
  }
});

test('a diagram stops at the work allowed, and goes on from there to the same answer', () => {
  const build = (diagram: Diagram): number =>
    union(
      diagram,
      Array.from({ length: 12 }, (_, at) => diagram.conjunction([at, at + 12])),
    );
  const whole = new Diagram(24);
  const halting = new Diagram(24);
  let stops = 0;
  let answer: number | undefined;
  while (answer === undefined) {
    halting.allow(40);
    try {
      answer = build(halting);
    } catch (error) {
      expect(isTangled(error)).toBe(true);
      stops += 1;
    }
  }
  expect(stops).toBeGreaterThan(0);
  const root = build(whole);
  for (const events of [[], [0, 12], [3, 14], [5, 17, 2], [11]]) {
    const isTrue = (event: number): boolean => events.includes(event);
    expect(evaluate(halting, answer, isTrue)).toBe(evaluate(whole, root, isTrue));
  }
});
