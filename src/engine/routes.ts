// The route of a combination: the chain of contacts by which contamination got from a source to a surface,
// with the fewest transfers. Each transfer passes on only a part, so
// the shortest chain is the one to show; length never makes a surface clean.

import type { Guard, Operation, Plan } from '../contacts/plan.ts';

export interface RouteLink {
  /** Index of the step, -1 for the start, and of the operation in it. */
  readonly step: number;
  readonly operation: number;
  readonly kind: 'taint' | 'contact';
  /** The surface it came from; absent for the taint where the route begins. */
  readonly from?: number;
  readonly to: number;
  /** The events this link needed; empty when it always happens. */
  readonly guard: Guard;
}

export interface Route {
  /** From the taint to the target, in time. */
  readonly links: readonly RouteLink[];
  /** Contacts on the way. */
  readonly transfers: number;
  /** Contacts between two surfaces that the caller calls hands. */
  readonly handTransfers: number;
}

export interface RouteQuestion {
  readonly target: number;
  /** Contaminated at any moment, or as the procedure ends. */
  readonly judged: 'ever' | 'end';
  /** The last step that is done; all when absent. */
  readonly until?: number;
  /** Whether a surface is a hand (bare or gloved). */
  readonly isHand?: (surface: number) => boolean;
}

interface Chain {
  readonly link: RouteLink;
  readonly before: Chain | null;
  readonly transfers: number;
}

/**
 * The shortest route to the target when exactly these events happen; null when it stays clean. A surface is contaminated
 * exactly while it has a chain, so this is the reference run with the chain in the place of the mark.
 */
export function routeOf(plan: Plan, trueEvents: ReadonlySet<number>, question: RouteQuestion): Route | null {
  const { moments, firstUse, lastMet } = uneventfulOf(plan);
  const happens = new Uint8Array(plan.events.length);
  // After a surface is met for the last time its chain stays as it is.
  const end = Math.min(plan.steps.length, (question.until ?? Infinity) + 1, lastMet[question.target]! + 1);
  let from = end;
  for (const event of trueEvents) {
    happens[event] = 1;
    from = Math.min(from, firstUse[event]!);
  }
  const kept = Math.floor((from + 1) / APART);
  const { chains, ever } = moments[kept]!;
  const run: Run = { happens, chains: [...chains], ever: [...ever] };
  for (let step = kept * APART - 1; step < end; step += 1) perform(run, operationsOf(plan, step), step);
  const chain = (question.judged === 'ever' ? run.ever : run.chains)[question.target]!;
  return chain === null ? null : routeFrom(chain, question.isHand ?? (() => false));
}

const operationsOf = ({ start, steps }: Plan, step: number): readonly Operation[] =>
  step < 0 ? start : steps[step]!.operations;

/** Every so many steps the uneventful run is kept; to perform a few steps again is quicker than to keep them all. */
const APART = 8;

interface Moment {
  /** Per surface: the chain with the fewest transfers, the earliest of equals; null while it is clean. */
  readonly chains: (Chain | null)[];
  /** Per surface: the shortest that it ever had. */
  readonly ever: (Chain | null)[];
}

interface Run extends Moment {
  readonly happens: Uint8Array;
}

/** The run in which nothing happens. Every other is the same up to the first step in which one of its events is asked. */
interface Uneventful {
  /** First nothing, then, APART steps on each time, as the step begins; the start is a step. */
  readonly moments: readonly Moment[];
  /** Per event: the first step that asks for it, -1 for the start, their number for one that none asks for. */
  readonly firstUse: Int32Array;
  /** Per surface: the last step that works on it, -1 for the start and for one that none works on. */
  readonly lastMet: Int32Array;
}

const UNEVENTFUL = new WeakMap<Plan, Uneventful>();

function uneventfulOf(plan: Plan): Uneventful {
  const known = UNEVENTFUL.get(plan) ?? runUneventful(plan);
  UNEVENTFUL.set(plan, known);
  return known;
}

function runUneventful(plan: Plan): Uneventful {
  const { surfaces, events, steps } = plan;
  const nothing = (): null[] => surfaces.map(() => null);
  const run: Run = { happens: new Uint8Array(events.length), chains: nothing(), ever: nothing() };
  const moments: Moment[] = [];
  const firstUse = new Int32Array(events.length).fill(steps.length);
  const lastMet = new Int32Array(surfaces.length).fill(-1);
  for (let step = -1; step <= steps.length; step += 1) {
    if ((step + 1) % APART === 0) moments.push({ chains: [...run.chains], ever: [...run.ever] });
    if (step === steps.length) break;
    perform(run, operationsOf(plan, step), step);
    noteUses(firstUse, operationsOf(plan, step), step);
    noteMeetings(lastMet, operationsOf(plan, step), step);
  }
  return { moments, firstUse, lastMet };
}

function noteMeetings(lastMet: Int32Array, operations: readonly Operation[], step: number): void {
  for (const operation of operations) {
    lastMet[operation.a] = step;
    if (operation.op === 'contact') lastMet[operation.b] = step;
  }
}

function noteUses(firstUse: Int32Array, operations: readonly Operation[], step: number): void {
  const note = (guard: Guard): void => {
    for (const event of guard) firstUse[event] = Math.min(firstUse[event]!, step);
  };
  for (const operation of operations) {
    if (operation.op === 'contact' || operation.op === 'taint') note(operation.when);
    else if (operation.op === 'sanitise') operation.failure.forEach(note);
  }
}

function holds({ happens }: Run, guard: Guard): boolean {
  for (let i = 0; i < guard.length; i++) if (happens[guard[i]!] === 0) return false;
  return true;
}

function perform(run: Run, operations: readonly Operation[], step: number): void {
  const { chains } = run;
  for (let index = 0; index < operations.length; index++) {
    const operation = operations[index]!;
    const { a } = operation;
    if (operation.op === 'contact') {
      const [one, other] = [chains[a]!, chains[operation.b]!];
      if (one === other || !holds(run, operation.when)) continue;
      if (other !== null)
        pass(run, { step, operation: index, other, from: operation.b, to: a }, operation.when);
      if (one !== null)
        pass(run, { step, operation: index, other: one, from: a, to: operation.b }, operation.when);
    } else if (operation.op === 'taint') {
      if (holds(run, operation.when) && (chains[a]?.transfers ?? 1) > 0)
        keep(run, {
          link: { step, operation: index, kind: 'taint', to: a, guard: operation.when },
          before: null,
          transfers: 0,
        });
    } else if (operation.op !== 'sanitise' || !operation.failure.some((guard) => holds(run, guard))) {
      chains[a] = null;
    }
  }
}

interface Passing {
  readonly step: number;
  readonly operation: number;
  readonly other: Chain;
  readonly from: number;
  readonly to: number;
}

/** From one surface to another, unless that has a chain as short. */
function pass(run: Run, { step, operation, other, from, to }: Passing, guard: Guard): void {
  const transfers = other.transfers + 1;
  const known = run.chains[to]!;
  if (known !== null && known.transfers <= transfers) return;
  keep(run, { link: { step, operation, kind: 'contact', from, to, guard }, before: other, transfers });
}

function keep({ chains, ever }: Run, chain: Chain): void {
  const { to } = chain.link;
  chains[to] = chain;
  const shortest = ever[to]!;
  if (shortest === null || chain.transfers < shortest.transfers) ever[to] = chain;
}

function routeFrom(end: Chain, isHand: (surface: number) => boolean): Route {
  const links: RouteLink[] = [];
  for (let chain: Chain | null = end; chain !== null; chain = chain.before) links.push(chain.link);
  const handTransfers = links.filter(
    ({ from, to }) => from !== undefined && isHand(from) && isHand(to),
  ).length;
  return { links: links.reverse(), transfers: end.transfers, handTransfers };
}
