// A run of changed steps beside the base, whatever it keeps of conditions: where it stands, when it has come back to the base,
// and how it becomes another one.
import type { Interpreter, Performed } from '../contacts/interpret.ts';
import type { Scene } from '../contacts/scene.ts';
import type { Step } from '../domain/procedure.ts';
import type { Moment } from '../engine/propagate.ts';

/** Where the base stands, before each step and at the end. */
export interface Stations {
  readonly scenes: readonly Scene[];
  /** Problems in all steps before this one. */
  readonly problems: readonly number[];
}

export function stationsOf({ start }: Interpreter, performed: readonly Performed[]): Stations {
  const problems = [0];
  for (const { problems: found } of performed) problems.push(problems.at(-1)! + found.length);
  return { scenes: [start.scene, ...performed.map(({ after }) => after)], problems };
}

const grown = <T extends Int32Array | Uint8Array>(from: T, to: T): T => {
  to.set(from);
  return to;
};

/** A run of changed steps beside the base: where it stands, and on which surfaces it is not as the base is. */
export abstract class EditRun {
  /** The base's step that comes next. */
  at = 0;
  /** Problems so far. */
  problems = 0;
  protected scene: Scene;
  protected moment: Moment;
  /** Per surface: 0 where it is as in the base at this place. */
  protected differs: Uint8Array;
  protected different = 0;
  readonly #base: Stations;
  readonly #most: number;

  /** `room`: for so many surfaces, to begin with. `most`: the problems that are let pass. */
  constructor(base: Stations, room: number, most: number) {
    this.#base = base;
    this.#most = most;
    this.scene = base.scenes[0]!;
    this.moment = { state: new Int32Array(room), ever: new Int32Array(room) };
    this.differs = new Uint8Array(room);
  }

  /** Whether everything is as in the base at this place: then all that follows is. */
  get rejoined(): boolean {
    return this.different === 0 && this.scene === this.#base.scenes[this.at];
  }

  /** Whether more cannot be done than is let pass. Problems only add up, so this stays. */
  get stopped(): boolean {
    return this.problems > this.#most;
  }

  /** Goes to before a step of the base. */
  start(at: number): void {
    this.at = at;
    this.problems = this.#base.problems[at]!;
    this.scene = this.#base.scenes[at]!;
    this.differs.fill(0);
    this.different = 0;
  }

  /** Becomes the same as another run beside the same base. */
  copy(other: this): void {
    this.makeRoom(other.differs.length);
    this.start(other.at);
    this.problems = other.problems;
    this.scene = other.scene;
    this.different = other.different;
    this.differs.set(other.differs);
    this.moment.state.set(other.moment.state);
    this.moment.ever.set(other.moment.ever);
  }

  /**
   * By the base's own steps to before step `until`, or until it has stopped; true when the run has rejoined the base on
   * the way.
   */
  follow(until: number): boolean {
    while (this.at < until && !this.stopped && !this.rejoined) this.next();
    if (!this.rejoined) return false;
    const problems = this.problems + this.#base.problems[until]! - this.#base.problems[this.at]!;
    if (this.at < until) this.start(until);
    this.problems = problems;
    return true;
  }

  /** Leaves out the base's next step. */
  abstract skip(): void;

  /** A step that the base does not have here. */
  abstract other(step: Step): void;

  /** The base's next step. */
  protected abstract next(): void;

  protected makeRoom(surfaces: number): void {
    if (surfaces <= this.differs.length) return;
    const { state, ever } = this.moment;
    this.moment = {
      state: grown(state, new Int32Array(surfaces * 2)),
      ever: grown(ever, new Int32Array(surfaces * 2)),
    };
    this.differs = grown(this.differs, new Uint8Array(surfaces * 2));
  }
}
