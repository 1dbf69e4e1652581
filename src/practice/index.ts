// Published practice as checks on a compiled procedure. A departure is not yet a fault: published sequences contradict one
// another (docs/practice.md says where), and a unit may accept one in writing.
import type { Compiled } from '../contacts/interpret.ts';
import { declared } from './declared.ts';
import type { Departure, Rule } from './departure.ts';
import { read, type Reading } from './reading.ts';
import { RULES } from './rules.ts';

export type { Departure, Rule } from './departure.ts';
export { gloveOn, type Moment, momentOf, RESPIRATORS } from './reading.ts';
export { RULES } from './rules.ts';

/**
 * All departures, in the order of the steps; at most one of a rule at a step. Step indices are the procedure's. Needs no
 * engine: the contacts of the plan are enough, and they are the same for every agent.
 */
export function departures(compiled: Compiled): readonly Departure[] {
  const known = KNOWN.get(compiled.procedure) ?? departuresIn(read(compiled));
  KNOWN.set(compiled.procedure, known);
  return known;
}

/** The findings ask, and the measure against every agent. */
const KNOWN = new WeakMap<Compiled['procedure'], readonly Departure[]>();

/** The same of the steps that are asked about, and of the whole; by these rules only where they are named. */
export function departuresIn(reading: Reading, rules: readonly Rule[] = RULES): readonly Departure[] {
  const ruled = rules
    .filter((rule) => rule.kinds.includes(reading.procedure.kind))
    .flatMap((rule) => rule.find(reading).map((found): Departure => ({ rule: rule.id, ...found })));
  const seen = new Set<string>();
  return [...ruled, ...declared(reading)]
    .filter(({ rule, step }) => {
      const key = `${rule}@${step}`;
      return seen.has(key) ? false : seen.add(key);
    })
    .toSorted((a, b) => a.step - b.step);
}
