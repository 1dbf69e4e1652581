// What is known of an exit, put into its operations: an event that happened asks for nothing any more, and one that did not
// takes its contact with it. The conditions that follow then speak of what is still open alone.
import { ALWAYS, type Guard, type Operation } from '../contacts/plan.ts';

/** Keys of events that happened, and of those that were looked for and did not. */
export interface Events {
  readonly happened: ReadonlySet<string>;
  readonly excluded: ReadonlySet<string>;
}

interface Keyed {
  readonly events: readonly { readonly key: string }[];
}

/** The guard with what is known left out; undefined where it cannot hold any more. */
function left({ events }: Keyed, { happened, excluded }: Events, guard: Guard): Guard | undefined {
  if (guard.length === 0) return guard;
  const keyOf = (event: number): string => events[event]?.key ?? '';
  if (guard.some((event) => excluded.has(keyOf(event)))) return undefined;
  const open = guard.filter((event) => !happened.has(keyOf(event)));
  return open.length === guard.length ? guard : open.length === 0 ? ALWAYS : open;
}

/** The operations as they are, knowing this. */
export function given(
  registry: Keyed,
  known: Events,
  operations: readonly Operation[],
): readonly Operation[] {
  if (known.happened.size === 0 && known.excluded.size === 0) return operations;
  return operations.flatMap((one): readonly Operation[] => {
    if (one.op === 'sanitise') {
      const failure = one.failure.flatMap((guard) => {
        const open = left(registry, known, guard);
        return open === undefined ? [] : [open];
      });
      return [{ ...one, failure }];
    }
    if (!('when' in one)) return [one];
    const when = left(registry, known, one.when);
    return when === undefined ? [] : when === one.when ? [one] : [{ ...one, when }];
  });
}
