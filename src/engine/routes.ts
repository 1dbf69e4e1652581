// The route of a combination: the chain of contacts by which contamination got from a source to a surface,
// with the fewest transfers, from the reference run's traces. Each transfer passes on only a part, so
// the shortest chain is the one to show; length never makes a surface clean.

import type { Guard, Plan } from '../contacts/plan.ts';
import { run, type Trace } from './reference.ts';

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
  /** Whether a surface is a hand (bare or gloved). */
  readonly isHand?: (surface: number) => boolean;
}

interface Chain {
  readonly link: RouteLink;
  readonly before: Chain | null;
  readonly transfers: number;
}

/** The shortest route to the target when exactly these events happen; null when it stays clean. */
export function routeOf(plan: Plan, trueEvents: ReadonlySet<number>, question: RouteQuestion): Route | null {
  const best = new Map<number, Chain>();
  let ever: Chain | undefined;
  for (const trace of run(plan, trueEvents).traces) {
    follow(best, trace);
    const now = best.get(question.target);
    if (now !== undefined && (ever === undefined || now.transfers < ever.transfers)) ever = now;
  }
  const chain = question.judged === 'ever' ? ever : best.get(question.target);
  return chain === undefined ? null : routeFrom(chain, question.isHand ?? (() => false));
}

/** Keeps, per contaminated surface, the chain with the fewest transfers; the earliest of equals. */
function follow(best: Map<number, Chain>, trace: Trace): void {
  const { kind, step, operation, from, to, guard } = trace;
  if (kind === 'clear') {
    best.delete(to);
    return;
  }
  const before = from === undefined ? null : best.get(from)!;
  const transfers = before === null ? 0 : before.transfers + 1;
  const known = best.get(to);
  if (known !== undefined && known.transfers <= transfers) return;
  const source = from === undefined ? {} : { from };
  best.set(to, { link: { step, operation, kind, ...source, to, guard }, before, transfers });
}

function routeFrom(end: Chain, isHand: (surface: number) => boolean): Route {
  const links: RouteLink[] = [];
  for (let chain: Chain | null = end; chain !== null; chain = chain.before) links.push(chain.link);
  const handTransfers = links.filter(
    ({ from, to }) => from !== undefined && isHand(from) && isHand(to),
  ).length;
  return { links: links.reverse(), transfers: end.transfers, handTransfers };
}
