// A run of changed steps beside the base. It keeps only the surfaces whose condition differs from the base's at the same
// place, so a step that the change does not concern costs a glance at each operation, and a run that has come back to
// the base in everything is known to end as the base does. Thousands of variants are tried this way.
import type { Interpreter } from '../contacts/interpret.ts';
import type { Operation } from '../contacts/plan.ts';
import type { Step } from '../domain/procedure.ts';
import { stepOnce } from '../engine/propagate.ts';
import type { Analysis } from './analysis.ts';
import { EditRun } from './editRun.ts';
import { everAt, rowAt, type Track, type Trodden } from './track.ts';

/**
 * Conditions in its moment are those of surfaces that differ from the base's before step `at`; others are not kept up. In
 * `differs`: 1 where the condition differs, 2 where what it ever was does.
 */
export class SideRun extends EditRun {
  readonly #analysis: Analysis;
  readonly #interpreter: Interpreter;
  readonly #track: Track;

  /** `most`: the problems that are let pass. */
  constructor(analysis: Analysis, track: Track, most: number) {
    super(track, track.width + 32, most);
    this.#analysis = analysis;
    this.#interpreter = analysis.compiled.interpreter;
    this.#track = track;
  }

  skip(): void {
    const { changed } = this.#track;
    const { state, ever } = this.moment;
    const surfaces = changed[this.at]!;
    for (const surface of surfaces) {
      state[surface] = this.#state(surface);
      ever[surface] = this.#was(surface);
    }
    this.at += 1;
    for (const surface of surfaces)
      this.#keep(surface, state[surface]!, this.#row(surface), ever[surface]!, this.#ever(surface));
  }

  other(step: Step): void {
    const result = this.#interpreter.perform(this.scene, step, this.at);
    this.#analysis.diagram.extend(this.#interpreter.registry.events.length);
    this.makeRoom(this.#interpreter.registry.surfaces.length);
    for (const operation of result.operations) this.#perform(operation);
    this.problems += result.problems.length;
    this.scene = result.after;
  }

  /** The surfaces that may be judged differently from the base, and as what, at the end of all steps. */
  *outcome(): Generator<readonly [surface: number, judged: number]> {
    const { surfaces } = this.#interpreter.registry;
    for (let surface = 0; surface < surfaces.length; surface += 1) {
      if (this.differs[surface] === 0 || !surfaces[surface]!.protected) continue;
      const [state, ever] = [this.#state(surface), this.#was(surface)];
      yield [surface, surfaces[surface]!.judged === 'ever' ? this.#analysis.diagram.or(ever, state) : state];
    }
  }

  #row = (surface: number): number => rowAt(this.#track, this.at, surface);
  #ever = (surface: number): number =>
    everAt(this.#track, this.at, surface, this.#interpreter.registry.surfaces[surface]!.protected);
  #state = (surface: number): number =>
    this.differs[surface]! & 1 ? this.moment.state[surface]! : this.#row(surface);
  #was = (surface: number): number =>
    this.differs[surface]! & 2 ? this.moment.ever[surface]! : this.#ever(surface);

  protected next(): void {
    if (this.scene !== this.#track.scenes[this.at]) {
      this.other(this.#analysis.compiled.procedure.steps[this.at]!);
      this.skip();
      return;
    }
    for (const trodden of this.#track.steps[this.at]!) this.#follow(trodden);
    this.problems += this.#track.problems[this.at + 1]! - this.#track.problems[this.at]!;
    this.at += 1;
    this.scene = this.#track.scenes[this.at]!;
  }

  #keep(surface: number, state: number, baseState: number, ever: number, baseEver: number): void {
    const differs = (state === baseState ? 0 : 1) | (ever === baseEver ? 0 : 2);
    const before = this.differs[surface]!;
    this.moment.state[surface] = state;
    this.moment.ever[surface] = ever;
    this.differs[surface] = differs;
    if (before === 0 && differs !== 0) this.different += 1;
    if (before !== 0 && differs === 0) this.different -= 1;
  }

  /** An operation that the base has as well: nothing to do unless one of its surfaces differs. */
  #follow({ operations, a, b, before, after }: Trodden): void {
    const differs = this.differs;
    if (differs[a] === 0 && differs[b] === 0) return;
    const { state, ever } = this.moment;
    if ((differs[a]! & 1) === 0) state[a] = before[0];
    if ((differs[b]! & 1) === 0) state[b] = before[1];
    if ((differs[a]! & 2) === 0) ever[a] = before[2];
    stepOnce(this.#analysis.diagram, this.moment, operations);
    this.#keep(a, state[a]!, after[0], ever[a]!, after[2]);
    if (b !== a) this.#keepState(b, state[b]!, after[1]);
  }

  #keepState(surface: number, state: number, baseState: number): void {
    const before = this.differs[surface]!;
    const differs = (before & 2) | (state === baseState ? 0 : 1);
    this.differs[surface] = differs;
    if (before === 0 && differs !== 0) this.different += 1;
    if (before !== 0 && differs === 0) this.different -= 1;
  }

  #perform(operation: Operation): void {
    const { a } = operation;
    const b = operation.op === 'contact' ? operation.b : a;
    const { state, ever } = this.moment;
    state[a] = this.#state(a);
    state[b] = this.#state(b);
    ever[a] = this.#was(a);
    stepOnce(this.#analysis.diagram, this.moment, [operation]);
    this.#keep(a, state[a], this.#row(a), ever[a], this.#ever(a));
    if (b !== a) this.#keepState(b, state[b], this.#row(b));
  }
}
