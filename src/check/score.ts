// The score of a procedure or of a trial: its measure, the least number of slips per protected surface, and the keys of
// its findings, so that two can be compared. Cheap enough to be taken for every mend and every variant.
import type { BasicEvent, Surface } from '../contacts/plan.ts';
import type { Performed } from '../contacts/interpret.ts';
import type { Procedure } from '../domain/procedure.ts';
import { ChanceTable } from '../engine/chanceTable.ts';
import type { Diagram } from '../engine/diagram.ts';
import { aloneIn, evaluate, union } from '../engine/walk.ts';
import { isAccepted } from './acceptance.ts';
import { CLASS_GROUPS } from './analysis.ts';
import { eventChances } from './chances.ts';
import type { Measure } from './finding.ts';
import { LeastTable } from './leastTable.ts';
import { secondsOf } from './measure.ts';

/** A departure as the score needs it: which rule, at which step. */
export interface ScoredDeparture {
  readonly rule: string;
  readonly step: number;
}

/** Of every node of a diagram that only grows: so a trial pays for the nodes it makes, not for those of all before it. */
export interface Tables {
  readonly least: LeastTable;
  readonly chance: ChanceTable;
}

export const tablesOf = (diagram: Diagram): Tables => ({
  least: new LeastTable(diagram),
  chance: new ChanceTable(diagram, []),
});

export interface Scored {
  readonly procedure: Procedure;
  readonly surfaces: readonly Surface[];
  readonly events: readonly BasicEvent[];
  readonly performed: readonly Performed[];
  readonly departures: readonly ScoredDeparture[];
  readonly diagram: Diagram;
  /** What is known of the diagram's nodes already; made anew where absent. */
  readonly tables?: Tables;
  /** Per surface: the condition it is judged by. */
  readonly judged: ArrayLike<number>;
}

export interface Score {
  readonly measure: Measure;
  /** Per protected surface id: slips and circumstances at least, null where nothing reaches it. */
  readonly barriers: ReadonlyMap<string, number | null>;
  /** One key per finding: code and where. */
  readonly keys: ReadonlySet<string>;
  /** Whether these events alone reach a surface. */
  reaches(surface: string, events: readonly string[]): boolean;
  /** Every event that alone reaches a protected surface, as `event surface`; worked out when first asked for. */
  alone(): ReadonlySet<string>;
}

type Four = readonly [number, number, number, number];
const four = (values: readonly number[]): Four => [
  values[0] ?? 0,
  values[1] ?? 0,
  values[2] ?? 0,
  values[3] ?? 0,
];

function barriersBySurface(scored: Scored, { least }: Tables): Map<string, number | null> {
  const found = new Map<string, number | null>();
  scored.surfaces.forEach((surface, index) => {
    if (!surface.protected) return;
    const events = least.of(scored.judged[index] ?? 0);
    found.set(surface.id, events === Infinity ? null : events);
  });
  return found;
}

function groupChances(scored: Scored, { chance }: Tables): readonly number[] {
  chance.know(eventChances(scored.events, scored.procedure.policy));
  return CLASS_GROUPS.map((group) => {
    const roots = scored.surfaces.flatMap((surface, index) =>
      surface.protected && group.includes(surface.class) ? [scored.judged[index] ?? 0] : [],
    );
    return chance.of(union(scored.diagram, roots));
  });
}

function keysOf(scored: Scored, barriers: ReadonlyMap<string, number | null>): Set<string> {
  const keys = new Set<string>();
  for (const surface of scored.surfaces) {
    const least = barriers.get(surface.id);
    if (least === 0) keys.add(`open.${surface.class} ${surface.id}`);
    if (least === 1) keys.add(`one-slip.${surface.class} ${surface.id}`);
  }
  for (const { rule, step } of scored.departures)
    keys.add(`${rule} ${scored.performed[step]?.step.id ?? ''}`);
  for (const result of scored.performed) {
    for (const { code } of result.problems) keys.add(`impossible.${code} ${result.step.id}`);
  }
  return keys;
}

function reacher(scored: Scored): Score['reaches'] {
  return (surface, events) => {
    const index = scored.surfaces.findIndex((candidate) => candidate.id === surface);
    const isTrue = (event: number): boolean => events.includes(scored.events[event]?.key ?? '');
    return evaluate(scored.diagram, scored.judged[index] ?? 0, isTrue);
  };
}

function loner(scored: Scored): Score['alone'] {
  let known: ReadonlySet<string> | undefined;
  return () => {
    known ??= new Set(
      scored.surfaces.flatMap((surface, index) =>
        surface.protected
          ? aloneIn(scored.diagram, scored.judged[index] ?? 0).map(
              (event) => `${scored.events[event]?.key ?? ''} ${surface.id}`,
            )
          : [],
      ),
    );
    return known;
  };
}

/** Scores one procedure, worked out. Valid as long as its diagram forgets nothing. */
export function scoreOf(scored: Scored): Score {
  const tables = scored.tables ?? tablesOf(scored.diagram);
  const barriers = barriersBySurface(scored, tables);
  const open = CLASS_GROUPS.map(
    (group) =>
      scored.surfaces.filter((surface) => group.includes(surface.class) && barriers.get(surface.id) === 0)
        .length,
  );
  const { accepted } = scored.procedure;
  const measure: Measure = {
    impossible: scored.performed.reduce((sum, result) => sum + result.problems.length, 0),
    open: four(open),
    chance: four(groupChances(scored, tables)),
    departures: scored.departures.filter(
      ({ rule, step }) => !isAccepted(accepted, rule, scored.performed[step]?.step.id),
    ).length,
    seconds: secondsOf(scored.performed.map((result) => result.technique)),
  };
  return {
    measure,
    barriers,
    keys: keysOf(scored, barriers),
    reaches: reacher(scored),
    alone: loner(scored),
  };
}
