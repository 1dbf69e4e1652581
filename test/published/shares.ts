// In how many minimal combinations a step takes part, kind of step by kind of step: what the model says where a study of
// failure modes ranks steps by a risk index.
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { countOf } from '../../src/engine/cutSets.ts';
import { EMPTY_SET, type Families, type Family, NO_SET } from '../../src/engine/families.ts';
import { reachable } from '../../src/engine/walk.ts';
import { ask } from './ask.ts';

const takes =
  (item: string) =>
  ({ items }: Step): boolean =>
    (items as readonly string[]).includes(item);

const KINDS = {
  'hand hygiene': ({ action }: Step) => action === 'sanitise',
  'powered hood': takes('powered-hood'),
  gown: takes('gown'),
  'boot covers': takes('boot-covers'),
  'outer gloves': takes('outer-gloves'),
  'inner gloves': (step: Step) => step.action === 'remove' && takes('inner-gloves')(step),
  apron: takes('apron'),
  blower: takes('blower'),
  shoes: takes('shoes'),
  inspection: ({ action }: Step) => action === 'inspect',
} as const satisfies Readonly<Record<string, (step: Step) => boolean>>;
type Kind = keyof typeof KINDS;
const NAMES = Object.keys(KINDS) as Kind[];

/** Number of sets that hold none of the events that match. */
function countWithout(families: Families, family: Family, matches: (event: number) => boolean): bigint {
  const counts = new Map<Family, bigint>([
    [NO_SET, 0n],
    [EMPTY_SET, 1n],
  ]);
  for (const id of reachable(families, [family])) {
    const [low, high] = [counts.get(families.low[id]!)!, counts.get(families.high[id]!)!];
    counts.set(id, matches(families.variable[id]!) ? low : low + high);
  }
  return counts.get(family)!;
}

/** Per kind of step: minimal combinations to the wearer's protected surfaces with an event of it, most first. */
export function shares(
  procedure: Procedure,
  agent: Agent,
): readonly { readonly kind: Kind; readonly sets: bigint }[] {
  const { families, judged, protectedSurfaces, compiled } = ask(procedure, agent).analysis;
  const { events, surfaces } = compiled.plan;
  const roots = judged.filter((_, at) => surfaces[protectedSurfaces[at] ?? -1]?.person === 'wearer');
  const holding = (kind: Kind): bigint => {
    const matches = (event: number): boolean => {
      const step = procedure.steps[events[event]?.step ?? -1];
      return step !== undefined && KINDS[kind](step);
    };
    return roots.reduce((sum, root) => {
      const family = families.minimal(root);
      return sum + countOf(families, family) - countWithout(families, family, matches);
    }, 0n);
  };
  return NAMES.map((kind) => ({ kind, sets: holding(kind) })).sort((a, b) => Number(b.sets - a.sets));
}

/** 1 is the kind in most combinations. */
export const rankOf = (procedure: Procedure, agent: Agent, kind: Kind): number =>
  shares(procedure, agent).findIndex((share) => share.kind === kind) + 1;
