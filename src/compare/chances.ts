// Barriers and chances of protected surfaces in both procedures. Slips that lean on the same evidence record have the same
// draws in both, so that what is not known of them does not blur the difference: the interval is of the difference itself.
import { type Analysis, CLASS_GROUPS } from '../check/analysis.ts';
import { catchSetting, distributionOf, eventChances } from '../check/chances.ts';
import type { Interval } from '../check/finding.ts';
import { DRAWS, SEED } from '../check/intervals.ts';
import type { SurfaceClass } from '../contacts/plan.ts';
import { itemKind, type ItemId, ITEM_IDS } from '../domain/items.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { leastEvents } from '../engine/barriers.ts';
import { chancesOf } from '../engine/chance.ts';
import { FALSE, type Node } from '../engine/diagram.ts';
import { differencesOf, drawColumns, spreadOf } from '../engine/draws.ts';
import { union } from '../engine/walk.ts';
import { type Match, surfaceIn } from './match.ts';

export interface Figure {
  /** Exact, for the mean chances of the slips. */
  readonly chance: number;
  readonly interval: Interval;
}

/** The second less the first. */
export interface Difference {
  readonly chance: number;
  /** 90 % interval of the difference, slips of one record sharing their draws. */
  readonly interval: Interval;
  /** Whether the interval leaves zero out: the difference stands whatever the chances are, within what is known. */
  readonly excludesZero: boolean;
}

export interface SurfaceChange {
  /** By its name in each procedure; absent where it is not there. */
  readonly a?: string;
  readonly b?: string;
  readonly class: SurfaceClass;
  readonly agent: Agent;
  /** Slips and circumstances at least; null: no route found; absent: not there. */
  readonly barriersA?: number | null;
  readonly barriersB?: number | null;
  readonly figureA?: Figure;
  readonly figureB?: Figure;
  /** Absent where one of the two has no such surface. */
  readonly difference?: Difference;
}

export interface ClassChange {
  /** Surfaces of these classes together: the chance that at least one is reached. */
  readonly classes: readonly SurfaceClass[];
  readonly agent: Agent;
  readonly figureA: Figure;
  readonly figureB: Figure;
  readonly difference: Difference;
}

/** Conditions of one procedure and what its draws make of them. */
interface Drawn {
  readonly barriers: readonly (number | null)[];
  readonly chances: Float64Array;
  readonly columns: readonly Float64Array[];
}

function drawn({ compiled, diagram }: Analysis, roots: readonly Node[]): Drawn {
  const { events } = compiled.plan;
  const { policy } = compiled.procedure;
  return {
    barriers: [...leastEvents(diagram, roots)].map((least) => (least < 0 ? null : least)),
    chances: chancesOf(diagram, roots, eventChances(events, policy)),
    columns: drawColumns({
      diagram,
      roots,
      events,
      distributionOf,
      setting: catchSetting(policy),
      draws: DRAWS,
      seed: SEED,
    }),
  };
}

function intervalOf(column: Float64Array): Interval {
  const { low, high } = spreadOf(column);
  return { low, high };
}

function differenceOf(a: Drawn, b: Drawn, at: number): Difference {
  const interval = intervalOf(differencesOf(a.columns[at]!, b.columns[at]!));
  return {
    chance: (b.chances[at] ?? 0) - (a.chances[at] ?? 0),
    interval,
    excludesZero: interval.low > 0 || interval.high < 0,
  };
}

const figureOf = ({ chances, columns }: Drawn, at: number): Figure => ({
  chance: chances[at] ?? 0,
  interval: intervalOf(columns[at]!),
});

/** A place of skin is there with its person, clothes only where they are worn underneath, a fixture where it stands. */
function isThere({ people, fixtures }: Procedure, surface: string): boolean {
  const [owner = '', second = ''] = surface.split('.');
  if (owner === 'room') return fixtures.some(({ id }) => id === second);
  const person = people.find(({ id }) => id === owner);
  const item = ITEM_IDS.find((id) => id === second);
  return person !== undefined && (item === undefined || worn(item, person.underneath));
}

const worn = (item: ItemId, underneath: readonly ItemId[]): boolean =>
  itemKind(item).underneath !== true || underneath.includes(item);

/** One protected surface in both, `undefined` where it is not there. */
interface Row {
  readonly a: string | undefined;
  readonly b: string | undefined;
  readonly class: SurfaceClass;
}

const protectedOf = ({ compiled, protectedSurfaces }: Analysis) =>
  protectedSurfaces.flatMap((index) => compiled.plan.surfaces[index] ?? []);

/** Worst class first, as the analyses list them; then those that only the second has. */
function rowsOf(a: Analysis, b: Analysis, match: Match): readonly Row[] {
  const [inA, inB] = [a.compiled.procedure, b.compiled.procedure];
  const back = new Map(protectedOf(b).map(({ id }) => [surfaceIn(match, id), id]));
  const people = new Map([...match.person].map(([other, own]) => [own, other]));
  const fixtures = new Map([...match.fixture].map(([other, own]) => [own, other]));
  const toB = (id: string): string | undefined => {
    const known = back.get(id);
    if (known !== undefined) return known;
    const other = surfaceIn({ person: people, fixture: fixtures, zone: new Map() }, id);
    return other !== undefined && isThere(inB, other) ? other : undefined;
  };
  const first = protectedOf(a).map(
    (surface): Row => ({ a: surface.id, b: toB(surface.id), class: surface.class }),
  );
  const listed = new Set(first.map((row) => row.b));
  const rest = protectedOf(b)
    .filter(({ id }) => !listed.has(id))
    .map((surface): Row => {
      const own = surfaceIn(match, surface.id);
      return {
        a: own !== undefined && isThere(inA, own) ? own : undefined,
        b: surface.id,
        class: surface.class,
      };
    });
  return [...first, ...rest];
}

/** The condition by which a surface is judged; never reached where the procedure does not touch it. */
function judgedIn({ compiled, protectedSurfaces, judged }: Analysis, id: string | undefined): Node {
  const at = protectedSurfaces.findIndex((index) => compiled.plan.surfaces[index]?.id === id);
  return judged[at] ?? FALSE;
}

function changeOf(row: Row, agent: Agent, a: Drawn, b: Drawn, at: number): SurfaceChange {
  return {
    class: row.class,
    agent,
    ...(row.a === undefined ? {} : { a: row.a, barriersA: a.barriers[at] ?? null, figureA: figureOf(a, at) }),
    ...(row.b === undefined ? {} : { b: row.b, barriersB: b.barriers[at] ?? null, figureB: figureOf(b, at) }),
    ...(row.a === undefined || row.b === undefined ? {} : { difference: differenceOf(a, b, at) }),
  };
}

export interface ChanceChanges {
  readonly surfaces: readonly SurfaceChange[];
  readonly classes: readonly ClassChange[];
}

/** Two analyses against one agent. Class figures count only surfaces that both procedures have. */
export function compareChances(a: Analysis, b: Analysis, match: Match): ChanceChanges {
  const rows = rowsOf(a, b, match);
  const both = rows.map((row) => row.a !== undefined && row.b !== undefined);
  const roots = (analysis: Analysis, side: 'a' | 'b'): readonly Node[] => {
    const own = rows.map((row) => judgedIn(analysis, row[side]));
    const grouped = CLASS_GROUPS.map((classes) =>
      union(
        analysis.diagram,
        own.filter((_, at) => both[at] && classes.includes(rows[at]!.class)),
      ),
    );
    return [...own, ...grouped];
  };
  const [drawnA, drawnB] = [drawn(a, roots(a, 'a')), drawn(b, roots(b, 'b'))];
  return {
    surfaces: rows.map((row, at) => changeOf(row, a.agent, drawnA, drawnB, at)),
    classes: CLASS_GROUPS.map((classes, group): ClassChange => {
      const at = rows.length + group;
      return {
        classes,
        agent: a.agent,
        figureA: figureOf(drawnA, at),
        figureB: figureOf(drawnB, at),
        difference: differenceOf(drawnA, drawnB, at),
      };
    }),
  };
}
