// From what a step does, for whoever asks, to the operations of one plan against one agent: its own numbers, given in the
// order of asking, so that they do not tell what else was worked out before.
import type { Step } from '../domain/procedure.ts';
import { type Agent, works } from '../domain/products.ts';
import type { Acted, Credit, Performed } from './performed.ts';
import { ALWAYS, type Guard, type Operation } from './plan.ts';
import type { Performer } from './performer.ts';
import type { Registry } from './registry.ts';
import type { Scene } from './scene.ts';

export class Binder {
  readonly #names: Performer['names'];
  readonly #registry: Registry;
  readonly #agent: Agent;
  readonly #surfaces: number[] = [];
  readonly #events: (number | undefined)[] = [];
  readonly #single: Guard[] = [];
  readonly #bound = new Map<readonly Operation[], readonly Operation[]>();

  constructor({ names }: Performer, registry: Registry, agent: Agent) {
    this.#names = names;
    this.#registry = registry;
    this.#agent = agent;
  }

  /** The operations; `index` is where the events that are new are said to be. */
  operations(acted: Acted, index: number): readonly Operation[] {
    const bound = this.#bound.get(acted.operations) ?? this.#bind(acted, index);
    this.#bound.set(acted.operations, bound);
    return bound;
  }

  #bind({ surfaces, events, operations, credits }: Acted, index: number): readonly Operation[] {
    let same = credits.every(([, credit]) => this.#works(credit));
    for (const surface of surfaces) {
      this.#surfaces[surface] ??= this.#registry.surface(this.#names.surfaces[surface]!);
      same &&= this.#surfaces[surface] === surface;
    }
    for (const { event, credit } of events) {
      if (!credit || this.#works(credit)) same = this.#event(event, index) === event && same;
    }
    // Where the numbers are the same, so are the operations: usually, where one procedure is checked against one agent.
    if (same) return operations;
    const creditOf = new Map(credits);
    return operations.map((operation) => this.#operation(operation, creditOf.get(operation)));
  }

  performed(acted: Acted, before: Scene, step: Step, index: number): Performed {
    const { problems, technique, after } = acted;
    return {
      step,
      operations: this.operations(acted, index),
      problems: problems.map((found) => ({ ...found, step: index })),
      technique,
      before,
      after,
    };
  }

  #works = ({ product, material }: Credit): boolean => works(product, this.#agent, material);

  #event(event: number, index: number): number {
    const known = this.#events[event];
    if (known !== undefined) return known;
    const { key, what, who, on } = this.#names.events[event]!;
    const number = this.#registry.event(key, what, key.startsWith('start:') ? -1 : index, who, on);
    this.#events[event] = number;
    this.#single[event] = [number];
    return number;
  }

  #guard = (guard: Guard): Guard => {
    if (guard.length === 0) return ALWAYS;
    return guard.length === 1 ? this.#single[guard[0]!]! : guard.map((event) => this.#events[event]!);
  };

  #operation(operation: Operation, credit: Credit | undefined): Operation {
    const a = this.#surfaces[operation.a]!;
    switch (operation.op) {
      case 'contact':
        return { op: 'contact', a, b: this.#surfaces[operation.b]!, when: this.#guard(operation.when) };
      case 'taint':
        return { op: 'taint', a, when: this.#guard(operation.when) };
      case 'sanitise': {
        const counts = !credit || this.#works(credit);
        return { op: 'sanitise', a, failure: counts ? operation.failure.map(this.#guard) : [ALWAYS] };
      }
      default:
        return { op: operation.op, a };
    }
  }
}
