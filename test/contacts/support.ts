// Reading a compiled procedure in tests: who would be touched where, which contacts a step makes under which events, and
// what is contaminated when exactly the named events happen (by the reference engine, so that no diagram is in doubt).
import { type Body, outermost } from '../../src/contacts/body.ts';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Operation } from '../../src/contacts/plan.ts';
import type { ProblemCode } from '../../src/contacts/problem.ts';
import type { ItemId } from '../../src/domain/items.ts';
import type { Place } from '../../src/domain/places.ts';
import type { Person, Procedure, Step } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { run } from '../../src/engine/reference.ts';
import { person, procedure } from '../support/procedure.ts';

/** A doffing by one wearer in the anteroom who wears these items, in the order of putting on. */
export const doffing = (
  wears: readonly ItemId[],
  steps: readonly Step[],
  fields: Partial<Procedure> = {},
  wearer: Partial<Person> = {},
): Procedure =>
  procedure({ people: [person({ id: 'wearer', role: 'wearer', wears, ...wearer })], steps, ...fields });

export const compiledOf = (from: Procedure, agent: Agent = 'enveloped'): Compiled => compile(from, agent);

const indexOfStep = (compiled: Compiled, step: string): number => {
  const index = compiled.procedure.steps.findIndex(({ id }) => id === step);
  if (index < 0) throw new Error(`no step ${step}`);
  return index;
};

/** A body as it stands after a step, or at the start. */
export function bodyAfter(compiled: Compiled, step: string | undefined, who = 'wearer'): Body {
  const scene =
    step === undefined
      ? compiled.interpreter.start.scene
      : compiled.performed[indexOfStep(compiled, step)]?.after;
  const body = scene?.bodies[who];
  if (!body) throw new Error(`nobody called ${who}`);
  return body;
}

/** What a place of the wearer touches with at the start when these items are worn. */
export const touchesWith = (wears: readonly ItemId[], place: Place): string | undefined =>
  outermost(bodyAfter(compiledOf(doffing(wears, [])), undefined), place);

const keysOf = (compiled: Compiled, guard: readonly number[]): string =>
  guard
    .map((event) => compiled.plan.events[event]?.key ?? '?')
    .sort()
    .join(' & ');

const surfaceId = (compiled: Compiled, surface: number): string => compiled.plan.surfaces[surface]?.id ?? '?';

/** An operation as one line: `a ~ b` for a contact, with `if` and its events where a slip makes it. */
export function lineOf(compiled: Compiled, operation: Operation): string {
  const a = surfaceId(compiled, operation.a);
  switch (operation.op) {
    case 'contact': {
      const [one, other] = [a, surfaceId(compiled, operation.b)].sort();
      const when = keysOf(compiled, operation.when);
      return `${one} ~ ${other}${when && ` if ${when}`}`;
    }
    case 'sanitise': {
      const fails = operation.failure.map((guard) =>
        guard.length === 0 ? 'always' : keysOf(compiled, guard),
      );
      return `clean ${a} fails ${fails.join(' | ') || 'never'}`;
    }
    case 'taint': {
      const when = keysOf(compiled, operation.when);
      return `taint ${a}${when && ` if ${when}`}`;
    }
    default:
      return `${operation.op} ${a}`;
  }
}

/** The operations of a step, or of the start, as lines in their order. */
export const linesOf = (compiled: Compiled, step: string | undefined): readonly string[] =>
  (step === undefined
    ? compiled.plan.start
    : (compiled.plan.steps[indexOfStep(compiled, step)]?.operations ?? [])
  ).map((operation) => lineOf(compiled, operation));

/** Surfaces that two ids' contact is always made with in a step. */
export const always = (compiled: Compiled, step: string, one: string, other: string): boolean =>
  linesOf(compiled, step).includes([one, other].sort().join(' ~ '));

/** The events under which a step brings two surfaces into contact, sorted; '' for a contact always made. */
export function under(compiled: Compiled, step: string, one: string, other: string): readonly string[] {
  const pair = [one, other].sort().join(' ~ ');
  const found = linesOf(compiled, step).filter((line) => line === pair || line.startsWith(`${pair} if `));
  return [...new Set(found.map((line) => line.slice(pair.length).replace(' if ', '')))].sort();
}

/** Events by key. Throws on a key the plan does not have, so that no test passes by a typo. */
function eventsOf({ plan }: Compiled, ...keys: readonly string[]): ReadonlySet<number> {
  return new Set(
    keys.map((key) => {
      const index = plan.events.findIndex((event) => event.key === key);
      if (index < 0)
        throw new Error(`no event ${key} among ${plan.events.map((event) => event.key).join(', ')}`);
      return index;
    }),
  );
}

/** Surfaces contaminated after a step (undefined: the start) when exactly these events happen. */
export function soiledAfter(
  compiled: Compiled,
  step: string | undefined,
  ...keys: readonly string[]
): ReadonlySet<string> {
  const row = step === undefined ? 0 : indexOfStep(compiled, step) + 1;
  const after = run(compiled.plan, eventsOf(compiled, ...keys)).after[row] ?? [];
  return new Set(compiled.plan.surfaces.filter((_, index) => after[index]).map(({ id }) => id));
}

/** Surfaces contaminated at any moment when exactly these events happen. */
export function everSoiled(compiled: Compiled, ...keys: readonly string[]): ReadonlySet<string> {
  const { ever } = run(compiled.plan, eventsOf(compiled, ...keys));
  return new Set(compiled.plan.surfaces.filter((_, index) => ever[index]).map(({ id }) => id));
}

/** Codes of a procedure's problems with the steps they are at. */
export const problemsOf = (from: Procedure): readonly string[] =>
  compiledOf(from).problems.map(({ code, step }) => `${from.steps[step]?.id ?? step}: ${code}`);

export const codesOf = (from: Procedure): readonly ProblemCode[] =>
  compiledOf(from).problems.map(({ code }) => code);
