// The rest of an exit, worked out from where it stands with what is known: can it be done, which routes stand open, how many
// slips and circumstances it takes to reach each protected surface, and how likely that is. A rest that begins like
// another one goes on from where they part.
import { CLASS_GROUPS } from '../check/analysis.ts';
import { eventChances } from '../check/chances.ts';
import { LeastTable } from '../check/leastTable.ts';
import { secondsOf } from '../check/measure.ts';
import type { Compiled, Performed } from '../contacts/interpret.ts';
import { ALWAYS, type Operation } from '../contacts/plan.ts';
import type { Scene } from '../contacts/scene.ts';
import type { Step } from '../domain/procedure.ts';
import { ChanceTable } from '../engine/chanceTable.ts';
import { Diagram, FALSE } from '../engine/diagram.ts';
import { ranksOf } from '../engine/order.ts';
import { copyOf, type Moment, stepOnce, UNWATCHED } from '../engine/propagate.ts';
import { union } from '../engine/walk.ts';
import { type Events, given } from './given.ts';

/** One number per class: mucosa, skin, clothes and shoes, clean side. */
export type Four = readonly [number, number, number, number];

/** What a rest comes to; less is better, the weightiest first. */
export interface Worth {
  readonly problems: number;
  /** Protected surfaces that are contaminated though nothing more goes wrong. */
  readonly open: Four;
  /** Those that are one event away from it. */
  readonly single: Four;
  readonly chance: Four;
  readonly seconds: number;
}

/** A rest, worked out. */
export interface Rest {
  readonly steps: readonly Step[];
  readonly performed: readonly Performed[];
  /** Before each step and after the last. */
  readonly moments: readonly Moment[];
  readonly worth: Worth;
  /** Per protected surface, by index: events it takes at least; Infinity where none reaches it. */
  readonly barriers: ReadonlyMap<number, number>;
}

/** An exit as it stands: what the rest is worked out from. */
export interface Standing {
  readonly compiled: Compiled;
  readonly done: number;
  readonly scene: Scene;
  readonly known: Events;
  readonly now: Moment;
  /** Operations with what is known put in; the same lists come back in every rest. */
  readonly lists: Map<readonly Operation[], readonly Operation[]>;
  readonly diagram: Diagram;
  readonly least: LeastTable;
  readonly chances: ChanceTable;
}

const wide = ({ state, ever }: Moment, { registry }: Compiled['interpreter']): Moment => {
  const { surfaces } = registry;
  if (state.length === surfaces.length) return { state, ever };
  const more = new Int32Array(surfaces.length);
  more.set(state);
  const watched = surfaces.map((surface, at) => ever[at] ?? (surface.protected ? FALSE : UNWATCHED));
  return { state: more, ever: Int32Array.from(watched) };
};

const four = (of: (at: number) => number): Four => [of(0), of(1), of(2), of(3)];

/** How many steps two lists begin with alike. */
function alike(steps: readonly Step[], others: readonly Step[]): number {
  let at = 0;
  while (at < steps.length && steps[at] === others[at]) at += 1;
  return at;
}

/** Contamination that was seen at the end of a step where no slip puts it. */
export interface Taint {
  readonly step: number;
  readonly surface: string;
}

type Model = Omit<Standing, 'now'>;

function carried(
  { compiled, diagram, known, lists }: Model,
  moment: Moment,
  operations: readonly Operation[],
): Moment {
  const { registry } = compiled.interpreter;
  diagram.extend(registry.events.length);
  const next = copyOf(wide(moment, compiled.interpreter));
  const open = lists.get(operations) ?? given(registry, known, operations);
  lists.set(operations, open);
  stepOnce(diagram, next, open);
  return next;
}

/** The exit after `done` steps of a procedure, knowing this. */
export function standingAt(
  compiled: Compiled,
  done: number,
  known: Events,
  taints: readonly Taint[],
): Standing {
  const { interpreter, plan, performed } = compiled;
  const diagram = new Diagram(interpreter.registry.events.length);
  diagram.order(ranksOf(plan));
  const numbers = new Map(plan.surfaces.map(({ id }, at) => [id, at]));
  const seen = (step: number): readonly Operation[] =>
    taints.flatMap((taint): readonly Operation[] => {
      const a = numbers.get(taint.surface);
      return taint.step === step && a !== undefined ? [{ op: 'taint', a, when: ALWAYS }] : [];
    });
  const scene = performed[done - 1]?.after ?? interpreter.start.scene;
  const [least, chances] = [new LeastTable(diagram), new ChanceTable(diagram, [])];
  const model: Model = { compiled, done, scene, known, lists: new Map(), diagram, least, chances };
  const nothing: Moment = { state: new Int32Array(), ever: new Int32Array() };
  const past = [plan.start, ...plan.steps.slice(0, done).map(({ operations }) => operations)];
  const now = past.reduce(
    (moment, operations, at) => carried(model, moment, [...operations, ...seen(at - 1)]),
    nothing,
  );
  return { ...model, now };
}

/** A protected surface by index, and the condition it is judged by. */
type Judged = readonly [surface: number, condition: number];

function judgedIn({ compiled, diagram }: Model, last: Moment): readonly Judged[] {
  const { interpreter } = compiled;
  const { state, ever } = wide(last, interpreter);
  return interpreter.registry.surfaces.flatMap((surface, at): readonly Judged[] => {
    if (!surface.protected) return [];
    const stands = state[at]!;
    return [[at, surface.judged === 'ever' ? diagram.or(ever[at]!, stands) : stands]];
  });
}

function worthOf(model: Model, performed: readonly Performed[], judged: readonly Judged[]): Worth {
  const { compiled, diagram, least, chances } = model;
  const { surfaces, events } = compiled.interpreter.registry;
  chances.know(eventChances(events, compiled.procedure.policy));
  const inClass = CLASS_GROUPS.map((group) =>
    judged.filter(([at]) => group.includes(surfaces[at]!.class)).map(([, condition]) => condition),
  );
  const of = (group: number): readonly number[] => inClass[group] ?? [];
  const taking = (needed: number) => (group: number) =>
    of(group).filter((condition) => least.of(condition) === needed).length;
  return {
    problems: performed.reduce((sum, { problems }) => sum + problems.length, 0),
    open: four(taking(0)),
    single: four(taking(1)),
    chance: four((group) => chances.of(union(diagram, of(group)))),
    seconds: secondsOf(performed.map(({ technique }) => technique)),
  };
}

/** These steps as the rest; `like` is one that they may begin like. */
export function restOf(standing: Standing, steps: readonly Step[], like?: Rest): Rest {
  const { compiled, scene, done, now, least } = standing;
  const same = like ? alike(steps, like.steps) : 0;
  const performed = like?.performed.slice(0, same) ?? [];
  const moments = like?.moments.slice(0, same + 1) ?? [now];
  for (let at = same; at < steps.length; at += 1) {
    const before = performed.at(-1)?.after ?? scene;
    const result = compiled.interpreter.perform(before, steps[at]!, done + at);
    performed.push(result);
    moments.push(carried(standing, moments.at(-1) ?? now, result.operations));
  }
  const judged = judgedIn(standing, moments.at(-1) ?? now);
  const barriers = new Map(judged.map(([at, condition]) => [at, least.of(condition)]));
  return { steps, performed, moments, worth: worthOf(standing, performed, judged), barriers };
}
