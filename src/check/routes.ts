// The route of a finding: the engine's shortest chain of contacts, with names instead of numbers.
import { routeOf } from '../engine/routes.ts';
import type { Analysis } from './analysis.ts';
import type { RouteLink } from './finding.ts';

/**
 * The route by which a surface is reached when exactly these events happen; empty when it is not. With `until`, the
 * procedure ends after that step.
 */
export function routeTo(
  analysis: Analysis,
  target: number,
  events: readonly number[],
  until?: number,
): readonly RouteLink[] {
  const { plan } = analysis.compiled;
  const judged = plan.surfaces[target]?.judged === 'end' ? 'end' : 'ever';
  const route = routeOf(plan, new Set(events), { target, judged, ...(until === undefined ? {} : { until }) });
  return (route?.links ?? []).map((link) => ({
    step: link.step,
    ...(link.from === undefined ? {} : { from: plan.surfaces[link.from]?.id ?? '' }),
    to: plan.surfaces[link.to]?.id ?? '',
    events: link.guard.map((event) => plan.events[event]?.key ?? ''),
  }));
}

/** Steps a route passes, the start left out. */
export const stepsOf = (route: readonly RouteLink[]): readonly number[] => [
  ...new Set(route.map((link) => link.step).filter((step) => step >= 0)),
];
