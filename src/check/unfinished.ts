// What can still be said of a procedure whose conditions are too many or too tangled to be worked out exactly: what it
// cannot do, its departures, its bare places, and what is contaminated though nobody slips, by running it once. The
// finding that heads the list says that slips were not looked at, so that nobody takes the rest for a whole answer.
import { type Compiled, compile } from '../contacts/interpret.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { run } from '../engine/reference.ts';
import { coverage } from './coverage.ts';
import type { Finding } from './finding.ts';
import { problemFindings } from './judge.ts';
import { practice } from './practice.ts';

const EMPTY = { params: {}, events: [], route: [], mends: [], evidence: [] } as const;

function nominal(compiled: Compiled): readonly Finding[] {
  const { ever, after } = run(compiled.plan, new Set());
  const end = after.at(-1) ?? [];
  return compiled.plan.surfaces.flatMap((surface, index): readonly Finding[] => {
    const reached = surface.judged === 'end' ? end[index] : ever[index];
    if (!surface.protected || !reached) return [];
    return [
      {
        ...EMPTY,
        code: `open.${surface.class}`,
        kind: 'open',
        severity: 'error',
        agent: compiled.agent,
        steps: [0],
        surface: surface.id,
        surfaces: [surface.id],
      },
    ];
  });
}

/** Findings without the exact analysis. */
export function unfinishedFindings(procedure: Procedure, agents: readonly Agent[]): readonly Finding[] {
  const all = agents.map((agent) => compile(procedure, agent));
  const [first] = all;
  const head: Finding = {
    ...EMPTY,
    code: 'impossible.not-worked-out',
    kind: 'impossible',
    severity: 'error',
    steps: [0],
    surfaces: [],
    params: { events: String(first?.plan.events.length ?? 0), steps: String(procedure.steps.length) },
  };
  const conduct = first ? [...problemFindings(first), ...practice(first), ...coverage(first)] : [];
  return [head, ...conduct, ...all.flatMap(nominal)];
}
