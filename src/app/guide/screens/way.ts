// Another way on beside the rest as written: which of its steps are new or stand elsewhere, behind what, and what is left out.
import type { Procedure, Step } from '../../../domain/procedure.ts';
import type { Words } from '../../../words/index.ts';

export interface WayChange {
  readonly id: string;
  readonly label: string;
  readonly what: 'new' | 'moved' | 'left out';
  /** What comes before it on the new way; absent for what is left out and what comes at once. */
  readonly after?: string;
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
  const changed = steps.flatMap((step, index): readonly WayChange[] => {
    if (kept.has(step.id)) return [];
    const last = steps[index - 1] ?? procedure.steps[done - 1];
    return [
      {
        id: step.id,
        label: words.stepLabel(setting, step),
        what: before.includes(step.id) ? 'moved' : 'new',
        ...(last ? { after: words.stepLabel(setting, last) } : {}),
      },
    ];
  });
  const gone = rest
    .filter(({ id }) => !after.includes(id))
    .map((step): WayChange => ({ id: step.id, label: words.stepLabel(procedure, step), what: 'left out' }));
  return [...changed, ...gone];
}
