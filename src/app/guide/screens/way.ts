// Another way on beside the rest as written: which of its steps are new or stand elsewhere, behind what, and what is left out.
import type { Procedure, Step } from '../../../domain/procedure.ts';
import type { Words } from '../../../words/index.ts';

interface WayStep {
  /** From 1: on the new way, or of what is left out as written. */
  readonly number: number;
  readonly label: string;
}

export interface WayChange {
  readonly what: 'new' | 'moved' | 'left out';
  readonly label: string;
  /** The same instruction may come in several places: their numbers, in order. */
  readonly numbers: readonly number[];
  /** What comes before it on the new way, where it is one place; absent for what is left out and what comes at once. */
  readonly after?: WayStep;
}

type OneChange = Omit<WayChange, 'numbers'> & Pick<WayStep, 'number'>;

/** Equal instructions of one kind as one, where the first of them stands. */
function grouped(changes: readonly OneChange[]): readonly WayChange[] {
  const alike = (one: OneChange, other: OneChange): boolean =>
    one.what === other.what && one.label === other.label;
  return changes
    .filter((change, at) => changes.findIndex((one) => alike(one, change)) === at)
    .map(({ what, label, after, ...first }): WayChange => {
      const numbers = changes
        .filter((one) => alike(one, { what, label, ...first }))
        .map(({ number }) => number);
      return { what, label, numbers, ...(after && numbers.length === 1 ? { after } : {}) };
    });
}

/** Ids that keep their order among one another: the longest such row. */
function keptInOrder(before: readonly string[], after: readonly string[]): ReadonlySet<string> {
  const places = after.filter((id) => before.includes(id)).map((id) => ({ id, at: before.indexOf(id) }));
  const rows: (readonly string[])[] = [];
  places.forEach(({ id, at }, index) => {
    const earlier = rows.filter((_, other) => other < index && places[other]!.at < at);
    const longest = earlier.reduce<readonly string[]>((a, b) => (b.length > a.length ? b : a), []);
    rows.push([...longest, id]);
  });
  return new Set(rows.reduce<readonly string[]>((a, b) => (b.length > a.length ? b : a), []));
}

/** What is done otherwise than as written, in the order of the new way; then what is left out. */
export function changesOf(
  procedure: Procedure,
  done: number,
  steps: readonly Step[],
  words: Pick<Words, 'stepLabel'>,
): readonly WayChange[] {
  const rest = procedure.steps.slice(done);
  const [before, after] = [rest.map(({ id }) => id), steps.map(({ id }) => id)];
  const kept = keptInOrder(before, after);
  const setting = { ...procedure, steps: [...procedure.steps.slice(0, done), ...steps] };
  const changed = steps.flatMap((step, index): readonly OneChange[] => {
    if (kept.has(step.id)) return [];
    const last = steps[index - 1] ?? procedure.steps[done - 1];
    return [
      {
        number: done + index + 1,
        label: words.stepLabel(setting, step),
        what: before.includes(step.id) ? 'moved' : 'new',
        ...(last ? { after: { number: done + index, label: words.stepLabel(setting, last) } } : {}),
      },
    ];
  });
  const gone = rest.flatMap((step, index): readonly OneChange[] =>
    after.includes(step.id)
      ? []
      : [{ number: done + index + 1, label: words.stepLabel(procedure, step), what: 'left out' }],
  );
  return grouped([...changed, ...gone]);
}
