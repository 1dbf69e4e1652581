// Findings read off the conditions: what is open, what one slip opens, what is contaminated by design, and what the
// procedure cannot do at all. Each with its route; mends are tried later, by mends.ts.
import type { Compiled } from '../contacts/interpret.ts';
import type { Surface, SurfaceClass } from '../contacts/plan.ts';
import { TRUE } from '../engine/diagram.ts';
import { ledgerOf } from '../engine/ledger.ts';
import { singlesOf } from '../engine/cutSets.ts';
import { type EvidenceId, evidenceIds } from '../evidence/index.ts';
import { type Analysis, classRank } from './analysis.ts';
import type { Finding, RouteLink } from './finding.ts';
import { replayId } from './replayId.ts';
import { routeTo, stepsOf } from './routes.ts';

export interface JudgeContext {
  readonly analysis: Analysis;
  /** Hash of the procedure's canonical text, for replay ids. */
  readonly hash: string;
}

const EMPTY = { params: {}, events: [], route: [], mends: [], evidence: [] } as const;

export function idFor({ analysis, hash }: JudgeContext, events: readonly number[]): string {
  return replayId({ hash, agent: analysis.agent === 'enveloped' ? 'e' : 'n', events });
}

/** What the procedure cannot do, one finding per step, code and item. */
export function problemFindings({ problems }: Compiled): readonly Finding[] {
  const seen = new Set<string>();
  return problems.flatMap(({ code, step, params }): readonly Finding[] => {
    const key = `${code} ${step} ${params.item ?? ''}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [
      {
        ...EMPTY,
        code: `impossible.${code}`,
        kind: 'impossible',
        severity: 'error',
        steps: [step],
        surfaces: [],
        params,
      },
    ];
  });
}

interface OpenRoute {
  readonly surface: Surface;
  readonly route: readonly RouteLink[];
}

function openRoutes(analysis: Analysis): readonly OpenRoute[] {
  return analysis.protectedSurfaces.flatMap((index, at): readonly OpenRoute[] => {
    const surface = analysis.compiled.plan.surfaces[index];
    const isOpen = surface !== undefined && analysis.judged[at] === TRUE;
    return isOpen ? [{ surface, route: routeTo(analysis, index, []) }] : [];
  });
}

/**
 * Protected surfaces contaminated though nobody slips. Surfaces of one class that the same step opens (both soles) are
 * one finding; its route is the first surface's.
 */
export function open(context: JudgeContext): readonly Finding[] {
  const groups = new Map<string, OpenRoute[]>();
  for (const found of openRoutes(context.analysis)) {
    groups.set(groupKey(found), [...(groups.get(groupKey(found)) ?? []), found]);
  }
  return [...groups.values()].flatMap((group) => openFinding(context, group));
}

const groupKey = ({ surface, route }: OpenRoute): string =>
  `${surface.class} ${surface.person ?? ''} ${route.at(-1)?.step ?? -1}`;

function openFinding(context: JudgeContext, group: readonly OpenRoute[]): readonly Finding[] {
  const [first] = group;
  if (!first) return [];
  const steps = stepsOf(first.route);
  return [
    {
      ...EMPTY,
      code: `open.${first.surface.class}`,
      kind: 'open',
      severity: 'error',
      agent: context.analysis.agent,
      steps: steps.length > 0 ? [...steps].reverse() : [0],
      surface: first.surface.id,
      surfaces: group.map(({ surface }) => surface.id),
      route: first.route,
      replay: idFor(context, []),
    },
  ];
}

/** One event, and the protected surfaces that it alone opens, worst first. */
interface Lone {
  readonly event: number;
  readonly surfaces: number[];
}

function loneEvents(analysis: Analysis): readonly Lone[] {
  const found = new Map<number, Lone>();
  analysis.protectedSurfaces.forEach((surface, at) => {
    const family = analysis.families.minimal(analysis.judged[at] ?? 0);
    for (const event of singlesOf(analysis.families, family)) {
      const lone = found.get(event) ?? { event, surfaces: [] };
      lone.surfaces.push(surface);
      found.set(event, lone);
    }
  });
  return [...found.values()];
}

const KNOWN: ReadonlySet<string> = new Set(evidenceIds);
const asEvidence = (id: string): readonly EvidenceId[] => (KNOWN.has(id) ? [id as EvidenceId] : []);

/** One slip or circumstance away, one finding per event; the surface named is the worst it reaches. */
export function oneSlip(context: JudgeContext): readonly Finding[] {
  const { analysis } = context;
  const { plan } = analysis.compiled;
  return loneEvents(analysis)
    .map((lone): Finding => {
      const [worst = 0] = lone.surfaces;
      const event = plan.events[lone.event];
      const route = routeTo(analysis, worst, [lone.event]);
      const surfaceClass: SurfaceClass = plan.surfaces[worst]?.class ?? 'skin';
      return {
        code: `one-slip.${surfaceClass}`,
        kind: 'one-slip',
        severity: 'note',
        agent: analysis.agent,
        steps: [...new Set([event?.step ?? -1, ...[...stepsOf(route)].reverse()])].filter(
          (step) => step >= 0,
        ),
        surface: plan.surfaces[worst]?.id ?? '',
        surfaces: lone.surfaces.map((index) => plan.surfaces[index]?.id ?? ''),
        params: { event: event?.what ?? '' },
        events: [event?.key ?? ''],
        route,
        replay: idFor(context, [lone.event]),
        mends: [],
        evidence: asEvidence(event?.prior ?? ''),
      };
    })
    .sort(byPlaceAndLength);
}

/** Where it ends first, then how many transfers it takes: each passes on only a part (Julian 2010). */
function byPlaceAndLength(a: Finding, b: Finding): number {
  const rank = (finding: Finding): number => classRank(finding.code.split('.')[1] as SurfaceClass);
  return rank(a) - rank(b) || a.route.length - b.route.length || (a.steps[0] ?? 0) - (b.steps[0] ?? 0);
}

/** Contaminated by design on surfaces that may be: the procedure accepts it and must deal with it. */
export function byDesign(context: JudgeContext): readonly Finding[] {
  const { analysis } = context;
  const { plan } = analysis.compiled;
  const first = new Map<number, number>();
  for (const { step, surface, turn } of ledgerOf(analysis.conditions)) {
    const owned = plan.surfaces[surface];
    if (step >= 0 && turn === 'certain' && owned && !owned.protected && !first.has(surface))
      first.set(surface, step);
  }
  return [...first].flatMap(([index, step]): readonly Finding[] => {
    const surface = plan.surfaces[index];
    if (!surface || !/glove|outside$|^room\./.test(surface.id)) return [];
    return [
      {
        code: `accepted.${surface.class}`,
        kind: 'accepted',
        severity: 'note',
        agent: analysis.agent,
        steps: [step],
        surface: surface.id,
        surfaces: [surface.id],
        params: {},
        events: [],
        route: routeTo(analysis, index, [], step),
        replay: idFor(context, []),
        mends: [],
        evidence: [],
      },
    ];
  });
}
