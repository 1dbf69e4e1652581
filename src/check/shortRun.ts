// A run of changed steps beside the base, its conditions cut off at an order: what sideRun.ts does exactly, for a small
// part of the work. A step on whose surfaces nothing differs is passed over, and a run that has come back to the base in
// everything is known to end as the base does.
import type { Interpreter, Performed } from '../contacts/interpret.ts';
import type { Step } from '../domain/procedure.ts';
import type { Moment } from '../engine/propagate.ts';
import { NEVER, type Truncated } from '../engine/truncated.ts';
import { EditRun, type Stations } from './editRun.ts';
import { performShort, type ShortStep, type ShortSteps } from './shortSteps.ts';

/** The base, before each step and at the end; surfaces that only a variant knows are clean there. */
export interface ShortTrack extends Stations {
  readonly interpreter: Interpreter;
  readonly truncated: Truncated;
  readonly written: ShortSteps;
  readonly performed: readonly Performed[];
  readonly steps: readonly ShortStep[];
  readonly moments: readonly Moment[];
}

export class ShortRun extends EditRun {
  readonly #track: ShortTrack;

  /** `most`: the problems that are let pass. */
  constructor(track: ShortTrack, most: number) {
    super(track, track.moments[0]!.state.length, most);
    this.#track = track;
  }

  override start(at: number): void {
    super.start(at);
    const { state, ever } = this.#track.moments[at]!;
    this.moment.state.fill(NEVER).set(state);
    this.moment.ever.fill(NEVER).set(ever);
  }

  skip(): void {
    const { surfaces } = this.#track.steps[this.at]!;
    this.at += 1;
    this.#compare(surfaces);
  }

  other(step: Step): void {
    const { interpreter, written, truncated } = this.#track;
    const done = interpreter.perform(this.scene, step, this.at);
    this.makeRoom(interpreter.registry.surfaces.length);
    const short = written.of(done.operations, step);
    performShort(truncated, this.moment, short);
    this.problems += done.problems.length;
    this.scene = done.after;
    this.#compare(short.surfaces);
  }

  /** Surfaces that are not as in the base, and the condition by which each is judged. */
  *outcome(): Generator<readonly [surface: number, judged: number]> {
    const { surfaces } = this.#track.interpreter.registry;
    const { state, ever } = this.moment;
    for (let at = 0; at < surfaces.length; at += 1) {
      if (this.differs[at] === 0 || !surfaces[at]!.protected) continue;
      const now = state[at]!;
      yield [at, surfaces[at]!.judged === 'ever' ? this.#track.truncated.or(ever[at]!, now) : now];
    }
  }

  protected next(): void {
    const { scenes, steps, performed, truncated, problems } = this.#track;
    const short = steps[this.at]!;
    if (this.scene !== scenes[this.at]) {
      this.other(performed[this.at]!.step);
      this.skip();
      return;
    }
    if (this.#concerns(short)) {
      performShort(truncated, this.moment, short);
      this.at += 1;
      this.#compare(short.surfaces);
    } else {
      this.at += 1;
      this.#take(short.surfaces);
    }
    this.problems += problems[this.at]! - problems[this.at - 1]!;
    this.scene = scenes[this.at]!;
  }

  #concerns({ surfaces }: ShortStep): boolean {
    for (let at = 0; at < surfaces.length; at += 1) if (this.differs[surfaces[at]!] === 1) return true;
    return false;
  }

  /** As the base has them here. */
  #take(surfaces: Int32Array): void {
    const { state, ever } = this.#track.moments[this.at]!;
    for (let at = 0; at < surfaces.length; at += 1) {
      const surface = surfaces[at]!;
      this.moment.state[surface] = state[surface]!;
      this.moment.ever[surface] = ever[surface]!;
    }
  }

  #compare(surfaces: Int32Array): void {
    const { state, ever } = this.#track.moments[this.at]!;
    for (let at = 0; at < surfaces.length; at += 1) {
      const surface = surfaces[at]!;
      const same =
        this.moment.state[surface] === (state[surface] ?? NEVER) &&
        this.moment.ever[surface] === (ever[surface] ?? NEVER);
      this.different += (same ? 0 : 1) - this.differs[surface]!;
      this.differs[surface] = same ? 0 : 1;
    }
  }
}
