// The rest of an exit after something went wrong: from where it stands, with what is known to have happened, the best way on that
// can be found within a bounded number of tries. Hygiene may come in between, gloves be changed, two removals change
// places. What is answered never leaves anything nearer to contamination than carrying on as written does.
import { isAccepted } from '../check/acceptance.ts';
import type { Compiled } from '../contacts/interpret.ts';
import { compile } from '../contacts/interpret.ts';
import type { SurfaceClass } from '../contacts/plan.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { Tangled } from '../engine/nodeTable.ts';
import { departures } from '../practice/index.ts';
import { type Change, changesBetween } from './changes.ts';
import { compareWorth, gains, safer } from './worth.ts';
import { detoursFrom } from './detours.ts';
import { type Rest, restOf, type Standing, standingAt, type Taint, type Worth } from './rest.ts';

export interface KnownOfExit {
  /** Keys of events that happened. */
  readonly happened: readonly string[];
  /** Keys of events that were looked for and did not. */
  readonly excluded: readonly string[];
  readonly taints?: readonly Taint[];
}

export interface ContinueOptions {
  /** The procedure's first when absent; the answer is not worse for any of its agents. */
  readonly agent?: Agent;
  /** Other ways on that are tried at most. */
  readonly tried?: number;
}

/** Slips and circumstances that it takes at least to reach a protected surface; null where nothing reaches it. */
export interface Barriers {
  readonly surface: string;
  readonly class: SurfaceClass;
  readonly asWritten: number | null;
  readonly proposed: number | null;
}

export interface Continuation {
  readonly agent: Agent;
  /** In place of the steps after `doneSteps`; those themselves where nothing better was found. */
  readonly steps: readonly Step[];
  readonly kept: boolean;
  readonly changes: readonly Change[];
  /** Of the whole exit, what was done included; the time is that of the rest. */
  readonly asWritten: Worth;
  readonly proposed: Worth;
  readonly barriers: readonly Barriers[];
  readonly tried: number;
}

const MOST_TRIED = 40;
/** Pairs of conditions worked out for other ways on at most (diagram.ts): the limit where conditions are large. */
const MOST_WORK = 150_000;
/** Ways on from which others are tried. */
const ROUNDS = 3;

const COMPILED = new WeakMap<Procedure, Map<Agent, Compiled>>();

/** A procedure is asked about many times in an exit. */
function compiledFor(procedure: Procedure, agent: Agent): Compiled {
  const known = COMPILED.get(procedure) ?? new Map<Agent, Compiled>();
  COMPILED.set(procedure, known);
  const found = known.get(agent) ?? compile(procedure, agent);
  known.set(agent, found);
  return found;
}

/** Departures from practice that are not accepted, with this rest. */
function unaccepted({ compiled, done }: Standing, { steps, performed }: Rest): number {
  const procedure = { ...compiled.procedure, steps: [...compiled.procedure.steps.slice(0, done), ...steps] };
  const { surfaces, events } = compiled.interpreter.registry;
  const whole: Compiled = {
    ...compiled,
    procedure,
    performed: [...compiled.performed.slice(0, done), ...performed],
    plan: { ...compiled.plan, surfaces, events },
  };
  return departures(whole).filter(
    ({ rule, step }) => !isAccepted(procedure.accepted, rule, procedure.steps[step]?.id),
  ).length;
}

interface Tried {
  readonly found: readonly Rest[];
  readonly tried: number;
}

/** A detour, worked out; undefined where it takes more work than is left. */
function triedRest(standing: Standing, steps: readonly Step[], from: Rest): Rest | undefined {
  try {
    return restOf(standing, steps, from);
  } catch (error) {
    if (error instanceof Tangled) return undefined;
    throw error;
  }
}

/** Best first: from the best way on so far, every detour once, until tries or work are used up. Each must gain by itself. */
function detours(standing: Standing, written: Rest, most: number): Tried {
  const found: Rest[] = [];
  const waiting = [written];
  let tried = 0;
  for (let round = 0; round < ROUNDS && tried < most; round += 1) {
    const from = waiting.sort((a, b) => compareWorth(a.worth, b.worth)).shift();
    if (!from) break;
    for (const steps of detoursFrom(standing, from)) {
      const rest = tried < most ? triedRest(standing, steps, from) : undefined;
      if (!rest) break;
      tried += 1;
      if (rest.worth.problems > 0 || !gains(from.worth, rest.worth)) continue;
      found.push(rest);
      waiting.push(rest);
    }
  }
  return { found: found.sort((a, b) => compareWorth(a.worth, b.worth)), tried };
}

/** Whether a rest is at least as good for this agent in everything that counts. */
function holds(standing: Standing, written: Rest, rest: Rest): boolean {
  return safer(written, rest) && unaccepted(standing, rest) <= unaccepted(standing, written);
}

const finite = (events: number | undefined): number | null =>
  events === undefined || events === Infinity ? null : events;

function barriersOf({ compiled }: Standing, written: Rest, proposed: Rest): readonly Barriers[] {
  return compiled.interpreter.registry.surfaces.flatMap((surface, at): readonly Barriers[] =>
    surface.protected
      ? [
          {
            surface: surface.id,
            class: surface.class,
            asWritten: finite(written.barriers.get(at)),
            proposed: finite(proposed.barriers.get(at)),
          },
        ]
      : [],
  );
}

/** The best of what was tried that no agent is against; the rest as written otherwise. */
function chosen(standings: readonly Standing[], given: readonly Step[], most: number) {
  const [first, ...others] = standings;
  if (!first) throw new RangeError('a procedure without an agent');
  const written = restOf(first, given);
  first.diagram.allow(MOST_WORK);
  const { found, tried } = detours(first, written, most);
  first.diagram.allow(Infinity);
  const against = others.map((standing) => ({ standing, written: restOf(standing, given) }));
  const proposed = found.find(
    (rest) =>
      holds(first, written, rest) &&
      against.every((other) =>
        holds(other.standing, other.written, restOf(other.standing, rest.steps, other.written)),
      ),
  );
  return { first, written, proposed: proposed ?? written, tried };
}

/**
 * The best way on after `doneSteps` steps (a count) of a procedure, knowing which events happened (keys of basic events, as the
 * check has them) and which did not: steps in place of the rest, and per protected surface how many more slips or
 * circumstances it takes at least, as written and this way. No surface needs fewer than as written, no route is open that was
 * not, every step can be carried out, and no departure from practice is added; where no way is better, the rest as
 * written. The same answer on every machine. Throws `Tangled` where the exit is too tangled to be worked out.
 */
export function continueFrom(
  procedure: Procedure,
  doneSteps: number,
  known: KnownOfExit,
  options: ContinueOptions = {},
): Continuation {
  const agent = options.agent ?? procedure.agents[0] ?? 'enveloped';
  const agents = [agent, ...procedure.agents.filter((other) => other !== agent)];
  const events = { happened: new Set(known.happened), excluded: new Set(known.excluded) };
  const standings = agents.map((one) =>
    standingAt(compiledFor(procedure, one), doneSteps, events, known.taints ?? []),
  );
  const given = procedure.steps.slice(doneSteps);
  const { first, written, proposed, tried } = chosen(standings, given, options.tried ?? MOST_TRIED);
  const kept = proposed === written;
  return {
    agent,
    steps: proposed.steps,
    kept,
    changes: kept
      ? []
      : changesBetween({ ...procedure, steps: given }, { ...procedure, steps: proposed.steps }),
    asWritten: written.worth,
    proposed: proposed.worth,
    barriers: barriersOf(first, written, proposed),
    tried,
  };
}
