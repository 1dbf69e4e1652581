// The engine alone on the invented exit of 100 steps: from operations to conditions, barriers, counts of combinations and exact
// chances of every protected surface, from a cold diagram; importance and 10,000 draws on the finished one.
import { barriersOf } from '../src/engine/barriers.ts';
import { chancesOf, importanceOf } from '../src/engine/chance.ts';
import { countsOf } from '../src/engine/cutSets.ts';
import { TRUE } from '../src/engine/diagram.ts';
import { mean } from '../src/engine/distributions.ts';
import { drawChances } from '../src/engine/draws.ts';
import { Families } from '../src/engine/families.ts';
import { judgedOf, propagate } from '../src/engine/propagate.ts';
import { size, union } from '../src/engine/walk.ts';
import { distributionOf } from '../src/check/chances.ts';
import { compile } from '../src/contacts/interpret.ts';
import { hundred } from './hundred.ts';
import { report, timed } from './harness.ts';

const { plan } = compile(hundred(), 'enveloped');
const watched = plan.surfaces.flatMap((surface, at) => (surface.protected ? [at] : []));
const p = Float64Array.from(plan.events, ({ prior }) => mean(distributionOf(prior)));

const cold = () => {
  const conditions = propagate(plan);
  return { ...conditions, roots: watched.map((at) => judgedOf(conditions, at)) };
};

function whole() {
  const { diagram, roots } = cold();
  const families = new Families(diagram);
  barriersOf(diagram, roots, plan.events);
  for (const root of roots) countsOf(families, families.minimal(root));
  return chancesOf(diagram, roots, p);
}

const { diagram, roots } = cold();
const any = union(
  diagram,
  roots.filter((root) => root !== TRUE),
);
const question = {
  diagram,
  roots,
  events: plan.events,
  distributionOf,
  setting: null,
  draws: 10_000,
  seed: 1,
};

const rows = timed(
  [
    { name: 'conditions from a cold diagram', work: cold },
    { name: 'conditions, barriers, counts, chances', work: whole, goal: 'under 10 ms' },
    { name: 'any surface not open: importance of every slip', work: () => importanceOf(diagram, any, p) },
    { name: '10,000 draws of every surface', work: () => drawChances(question), goal: 'under 100 ms' },
  ],
  { warm: 10, runs: 30 },
);

report(rows, [
  `${plan.steps.length} steps, ${plan.surfaces.length} surfaces (${watched.length} protected), ${plan.events.length} events`,
  `${diagram.count} nodes made, ${size(diagram, ...roots)} in use, ${size(diagram, any)} for any surface that does not stand open`,
]);
