// How an edited procedure is run beside its base: from the first step that the edit changes, by the base's own steps in
// between, and from where the same step was left out for the edit before.
import type { Step } from '../domain/procedure.ts';
import type { Edit } from './edit.ts';
import type { EditRun } from './editRun.ts';

export class EditRuns<Run extends EditRun> {
  readonly run: Run;
  /** The base with step `#left` left out, as far as it was followed: every later place for that step goes on from here. */
  readonly #without: Run;
  /** -1 while there is none. */
  #left = -1;
  readonly #steps: readonly Step[];

  /** `steps` of the base, beside which `make` makes runs. */
  constructor(steps: readonly Step[], make: () => Run) {
    this.#steps = steps;
    this.run = make();
    this.#without = make();
  }

  /** Forgets what it could go on from. */
  forget(): void {
    this.#left = -1;
  }

  /** Runs the edited procedure; false where it ends as the base does, or where a later step becomes impossible. */
  differs(edit: Edit): boolean {
    this.#change(edit);
    return !this.run.follow(this.#steps.length) && !this.run.stopped;
  }

  /** Takes the run past what the edit changes; the base's own steps follow. */
  #change(edit: Edit): void {
    const { run } = this;
    if (edit.do === 'move') {
      if (edit.to < edit.from) this.#moveEarlier(edit);
      else this.#moveLater(edit);
      return;
    }
    run.start(edit.at);
    if (edit.do === 'insert') for (const step of edit.steps) run.other(step);
    if (edit.do === 'replace') run.other(edit.step);
    if (edit.do !== 'insert') run.skip();
  }

  #moveEarlier({ from, to }: { readonly from: number; readonly to: number }): void {
    const { run } = this;
    run.start(to);
    run.other(this.#steps[from]!);
    run.follow(from);
    run.skip();
  }

  #moveLater({ from, to }: { readonly from: number; readonly to: number }): void {
    const run = this.run;
    const without = this.#without;
    if (this.#left !== from || without.at > to + 1) {
      without.start(from);
      without.skip();
      this.#left = from;
    }
    without.follow(to + 1);
    run.copy(without);
    if (!run.stopped) run.other(this.#steps[from]!);
  }
}
