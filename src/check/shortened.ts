// Where a variant is worse than the base, told from conditions that are cut off where they no longer matter: to leave fewer
// barriers somewhere, a variant needs a cut set shorter than those that are there. Only where the base had none at all may
// one that is cut off count; such a variant is left to be worked out whole.
import { NEVER, Truncated } from '../engine/truncated.ts';
import { copyOf, type Moment, UNWATCHED } from '../engine/propagate.ts';
import type { Analysis } from './analysis.ts';
import type { Edit } from './edit.ts';
import { stationsOf } from './editRun.ts';
import { EditRuns } from './editRuns.ts';
import { isTangled } from './limits.ts';
import { ShortRun, type ShortTrack } from './shortRun.ts';
import { Lasting, performShort, ShortSteps } from './shortSteps.ts';

/** So many look-ups cost what one pair costs in a diagram. */
const LOOK_UPS = 8;

/** Longer cut sets are too many for this to be the quicker way. */
const LONGEST = 3;

/**
 * What happens in the events that more than one step asks about (a hole in a glove): in a variant, others of the kind may
 * come to last as well.
 */
function lastingKinds({ compiled }: Analysis): Set<string> {
  const owners = new Map<number, number>();
  const lasting = new Set<string>();
  const { start, steps, events } = compiled.plan;
  [start, ...steps.map(({ operations }) => operations)].forEach((operations, step) => {
    for (const operation of operations) {
      const guards = 'failure' in operation ? operation.failure : 'when' in operation ? [operation.when] : [];
      for (const event of guards.flat()) {
        if ((owners.get(event) ?? step) !== step) lasting.add(events[event]!.what);
        owners.set(event, step);
      }
    }
  });
  return lasting;
}

type Simple = Extract<Edit, { do: 'move' | 'remove' }>;

/** An event turned out to outlive its step: the base is written down anew. */
const ANEW = 'anew';

function trackOf(analysis: Analysis, order: number, lasting: ReadonlySet<string>): ShortTrack {
  const { interpreter, performed, plan } = analysis.compiled;
  const truncated = new Truncated(order);
  const { events } = interpreter.registry;
  const written = new ShortSteps(truncated, (event) => lasting.has(events[event]!.what));
  const moment: Moment = {
    state: new Int32Array(plan.surfaces.length),
    ever: Int32Array.from(plan.surfaces, (surface) => (surface.protected ? NEVER : UNWATCHED)),
  };
  performShort(truncated, moment, written.of(plan.start, undefined));
  const moments = [copyOf(moment)];
  const steps = performed.map((done) => {
    const step = written.of(done.operations, done.step);
    performShort(truncated, moment, step);
    moments.push(copyOf(moment));
    return step;
  });
  return {
    ...stationsOf(interpreter, performed),
    interpreter,
    truncated,
    written,
    performed,
    steps,
    moments,
  };
}

/** A surface with fewer barriers than in the base; Infinity where nothing reached it. */
export interface Lessened {
  readonly surface: number;
  readonly before: number;
  readonly after: number;
}

export class Shortened {
  readonly #analysis: Analysis;
  /** Per surface: the fewest events of the base; Infinity where nothing reaches it. */
  readonly #before: ReadonlyMap<number, number>;
  readonly #lasting: Set<string>;
  #track: ShortTrack | undefined;
  #runs!: EditRuns<ShortRun>;

  constructor(analysis: Analysis, before: ReadonlyMap<number, number>) {
    this.#analysis = analysis;
    this.#before = before;
    this.#lasting = lastingKinds(analysis);
    this.#begin();
  }

  /**
   * The surfaces on which the variant is worse, none where a later step becomes impossible; undefined where it cannot tell.
   * Spends the diagram's work; throws `Tangled` beyond what is allowed.
   */
  worse(edit: Edit): readonly Lessened[] | undefined {
    if (!this.#track || (edit.do !== 'move' && edit.do !== 'remove')) return undefined;
    const { truncated } = this.#track;
    const before = truncated.work;
    const answer = this.#tell(edit);
    this.#analysis.diagram.spend((truncated.work - before) / LOOK_UPS);
    return answer === ANEW ? this.worse(edit) : answer;
  }

  #tell(edit: Simple): readonly Lessened[] | undefined | typeof ANEW {
    try {
      return this.#runs.differs(edit) ? this.#lessened() : [];
    } catch (error) {
      if (error instanceof Lasting) {
        this.#lasting.add(this.#analysis.compiled.interpreter.registry.events[error.event]!.what);
        this.#begin();
        return ANEW;
      }
      if (!isTangled(error)) throw error;
      this.#track = undefined;
      return undefined;
    }
  }

  #begin(): void {
    const finite = [...this.#before.values()].filter(Number.isFinite);
    const order = Math.max(0, ...finite.map((events) => events - 1));
    this.#track = undefined;
    if (order > LONGEST) return;
    try {
      const track = trackOf(this.#analysis, order, this.#lasting);
      const { problems, procedure } = this.#analysis.compiled;
      this.#runs = new EditRuns(procedure.steps, () => new ShortRun(track, problems.length));
      this.#track = track;
    } catch (error) {
      if (!isTangled(error)) throw error;
    }
  }

  #lessened(): readonly Lessened[] | undefined {
    const { truncated } = this.#track!;
    const lessened: Lessened[] = [];
    for (const [surface, judged] of this.#runs.run.outcome()) {
      const before = this.#before.get(surface) ?? Infinity;
      const after = truncated.least(judged);
      if (after < before) lessened.push({ surface, before, after });
      else if (before === Infinity && judged !== NEVER) return undefined;
    }
    return lessened;
  }
}
