// Steps written down for conditions that are cut off at an order (truncated.ts): four numbers an operation, its events by
// the names they go by there. An event that no other step asks about gets a name of its step's own, the same in every
// step, so that steps which do alike make the same conditions.
import type { Performed } from '../contacts/interpret.ts';
import type { Guard, Operation } from '../contacts/plan.ts';
import type { Step } from '../domain/procedure.ts';
import { type Moment, UNWATCHED } from '../engine/propagate.ts';
import { CERTAIN, LASTING, NEVER, type Truncated } from '../engine/truncated.ts';

export interface ShortStep {
  /** Four an operation: what it does, its surfaces, and its guard or list of guards. */
  readonly code: Int32Array;
  readonly failures: readonly (readonly number[])[];
  /** Every surface it works on, once. */
  readonly surfaces: Int32Array;
}

const DO = { contact: 0, taint: 1, sanitise: 2, fresh: 3, retire: 3 } as const;

/** An event that was taken for a step's own is asked about by another one: all has to be worked out anew. */
export class Lasting extends Error {
  readonly event: number;

  constructor(event: number) {
    super(`event ${event} outlives its step`);
    this.event = event;
    this.name = 'Lasting';
  }
}

export class ShortSteps {
  readonly #truncated: Truncated;
  readonly #lasting: (event: number) => boolean;
  readonly #owners = new Map<number, Step | undefined>();
  readonly #known = new Map<readonly Operation[], ShortStep>();

  /** `lasting`: whether more than one step may ask about the event. */
  constructor(truncated: Truncated, lasting: (event: number) => boolean) {
    this.#truncated = truncated;
    this.#lasting = lasting;
  }

  /** The step, or the start where there is none. Throws `Lasting`. */
  of(operations: readonly Operation[], step: Performed['step'] | undefined): ShortStep {
    const known = this.#known.get(operations) ?? this.#write(operations, step);
    this.#known.set(operations, known);
    return known;
  }

  #write(operations: readonly Operation[], step: Step | undefined): ShortStep {
    const namer = new Namer(this.#truncated, (event) => this.#name(event, step));
    const code = new Int32Array(operations.length * 4);
    const failures: (readonly number[])[] = [];
    const surfaces = new Set<number>();
    operations.forEach((operation, index) => {
      const { op, a } = operation;
      const b = op === 'contact' ? operation.b : a;
      surfaces.add(a).add(b);
      code[index * 4] = DO[op];
      code[index * 4 + 1] = a;
      code[index * 4 + 2] = b;
      if ('when' in operation) code[index * 4 + 3] = namer.guard(operation.when);
      if ('failure' in operation)
        code[index * 4 + 3] = failures.push(operation.failure.map((guard) => namer.guard(guard))) - 1;
    });
    return { code, failures, surfaces: Int32Array.from(surfaces) };
  }

  /** Its lasting name, or none where it is the step's own. */
  #name(event: number, step: Step | undefined): number | undefined {
    if (this.#lasting(event)) return LASTING + event;
    if (this.#owners.has(event) && this.#owners.get(event) !== step) throw new Lasting(event);
    this.#owners.set(event, step);
    return undefined;
  }
}

/** The guards of one step by number; its own events are named in the order in which they turn up. */
class Namer {
  readonly #truncated: Truncated;
  readonly #lasting: (event: number) => number | undefined;
  readonly #names = new Map<number, number>();
  readonly #single = new Map<number, number>();
  #own = 0;

  constructor(truncated: Truncated, lasting: (event: number) => number | undefined) {
    this.#truncated = truncated;
    this.#lasting = lasting;
  }

  guard(events: Guard): number {
    if (events.length === 0) return 0;
    if (events.length > 1) return this.#number(events);
    const known = this.#single.get(events[0]!) ?? this.#number(events);
    this.#single.set(events[0]!, known);
    return known;
  }

  #number(events: Guard): number {
    return this.#truncated.guard(
      [...new Set(events.map((event) => this.#name(event)))].sort((a, b) => a - b),
    );
  }

  #name(event: number): number {
    const known = this.#names.get(event) ?? this.#lasting(event) ?? this.#own++;
    this.#names.set(event, known);
    return known;
  }
}

function touch(truncated: Truncated, state: Int32Array, a: number, b: number, guard: number): void {
  const [one, other] = [state[a]!, state[b]!];
  if (one === other) return;
  const either = truncated.under(truncated.or(one, other), guard);
  state[a] = truncated.or(one, either);
  state[b] = truncated.or(other, either);
}

function clean(truncated: Truncated, { state, ever }: Moment, a: number, left: number): void {
  if (ever[a] !== UNWATCHED) ever[a] = truncated.or(ever[a]!, state[a]!);
  state[a] = left;
}

/** What is left of a condition where the cleaning may fail in these ways. */
const failed = (truncated: Truncated, condition: number, failures: readonly number[]): number =>
  failures.reduce((left, guard) => truncated.or(left, truncated.under(condition, guard)), NEVER);

/** Performs a step on the moment, in place. */
export function performShort(truncated: Truncated, moment: Moment, step: ShortStep): void {
  const { code, failures, surfaces } = step;
  const { state, ever } = moment;
  truncated.work += code.length / 4;
  for (let at = 0; at < code.length; at += 4) {
    const [a, guard] = [code[at + 1]!, code[at + 3]!];
    if (code[at] === DO.contact) touch(truncated, state, a, code[at + 2]!, guard);
    else if (code[at] === DO.taint) state[a] = truncated.or(state[a]!, truncated.under(CERTAIN, guard));
    else if (code[at] === DO.sanitise)
      clean(truncated, moment, a, failed(truncated, state[a]!, failures[guard]!));
    else clean(truncated, moment, a, NEVER);
  }
  for (const surface of surfaces) {
    state[surface] = truncated.forget(state[surface]!);
    if (ever[surface] !== UNWATCHED) ever[surface] = truncated.forget(ever[surface]!);
  }
}
