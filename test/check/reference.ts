// What the explicit-state reference says of one procedure: the second opinion in the tests of the check.
import type { Plan } from '../../src/contacts/plan.ts';
import { compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { run } from '../../src/engine/reference.ts';

const PLANS = new Map<Procedure, Map<Agent, Plan>>();

/** The plan of a procedure, compiled apart from the check's own. */
export function planOf(procedure: Procedure, agent: Agent): Plan {
  const known = PLANS.get(procedure) ?? new Map<Agent, Plan>();
  PLANS.set(procedure, known);
  const plan = known.get(agent) ?? compile(procedure, agent).plan;
  known.set(agent, plan);
  return plan;
}

/** Surfaces that are reached, as the check judges them, when exactly these slips happen. Unknown keys throw. */
export function reachedBy(plan: Plan, keys: readonly string[]): ReadonlySet<string> {
  const events = keys.map((key) => plan.events.findIndex((event) => event.key === key));
  if (events.includes(-1)) throw new Error(`no such event in ${keys.join(', ')}`);
  const { ever, after } = run(plan, new Set(events));
  const last = after.at(-1) ?? [];
  return new Set(
    plan.surfaces.flatMap(({ id, judged }, index) =>
      (judged === 'ever' ? ever[index] : last[index]) ? [id] : [],
    ),
  );
}
