// What the check says of each protected surface: barriers, every combination counted and the smallest listed, the exact
// chance with its interval, and which slips carry it.
import { leastEvents } from '../engine/barriers.ts';
import { chancesOf, contributionsOf } from '../engine/chance.ts';
import { countsOf, type CutSet, listOf } from '../engine/cutSets.ts';
import { drawnIntervals } from './intervals.ts';
import { finalOf } from '../engine/propagate.ts';
import type { Analysis } from './analysis.ts';
import { eventChances } from './chances.ts';
import type { Combination, EventImportance, Interval, SurfaceVerdict } from './finding.ts';
import { idFor } from './judge.ts';

/** Combinations listed per surface; the counts are exact whatever their number. */
export const LISTED = 50;
const MOST_IMPORTANT = 10;

function combination(analysis: Analysis, hash: string, p: Float64Array, set: CutSet): Combination {
  const { events } = analysis.compiled.plan;
  return {
    events: set.map((event) => events[event]?.key ?? ''),
    chance: set.reduce((product, event) => product * (p[event] ?? 0), 1),
    replay: idFor({ analysis, hash }, set),
  };
}

function importance(analysis: Analysis, root: number, p: Float64Array): readonly EventImportance[] {
  return contributionsOf(analysis.diagram, root, p)
    .sort((a, b) => b.fussellVesely - a.fussellVesely)
    .slice(0, MOST_IMPORTANT)
    .map(({ event, birnbaum, fussellVesely }) => ({
      event: analysis.compiled.plan.events[event]?.key ?? '',
      birnbaum,
      fussellVesely,
    }));
}

const orNull = (least: number | undefined): number | null =>
  least === undefined || least < 0 ? null : least;

/** One verdict per protected surface, worst class first. */
export function surfaceVerdicts(analysis: Analysis, hash: string): readonly SurfaceVerdict[] {
  const { compiled, diagram, families, judged, protectedSurfaces, conditions } = analysis;
  const p = eventChances(compiled.plan.events, compiled.procedure.policy);
  const least = leastEvents(diagram, judged);
  const leastAtEnd = leastEvents(
    diagram,
    protectedSurfaces.map((surface) => finalOf(conditions, surface)),
  );
  const chances = chancesOf(diagram, judged, p);
  const intervals: readonly Interval[] = drawnIntervals(analysis);
  return protectedSurfaces.map((index, at): SurfaceVerdict => {
    const root = judged[at] ?? 0;
    const family = families.minimal(root);
    const { total, byOrder } = countsOf(families, family);
    const surface = compiled.plan.surfaces[index];
    return {
      surface: surface?.id ?? '',
      class: surface?.class ?? 'skin',
      agent: analysis.agent,
      barriers: orNull(least[at]),
      barriersAtEnd: orNull(leastAtEnd[at]),
      combinationCount: String(total),
      combinationsByOrder: Object.fromEntries(
        byOrder.flatMap((count, order) => (count > 0n ? [[String(order), String(count)] as const] : [])),
      ),
      combinations: listOf(families, family, LISTED).map((set) => combination(analysis, hash, p, set)),
      chance: chances[at] ?? 0,
      interval: intervals[at] ?? { low: 0, high: 0 },
      importance: importance(analysis, root, p),
    };
  });
}
