// Order and omission: every step left out, every step moved to every other place, each worked out from the first step it
// changes. A variant in which a later step becomes impossible would stop by itself; the ones that go through unnoticed
// and leave fewer slips between contamination and somebody are the ones to know.
import { FALSE } from '../engine/diagram.ts';
import { Tangled } from '../engine/nodeTable.ts';
import type { Analysis } from './analysis.ts';
import { classRank } from './analysis.ts';
import type { Edit } from './edit.ts';
import { EditRuns } from './editRuns.ts';
import type { Finding } from './finding.ts';
import { LeastTable } from './leastTable.ts';
import { isTangled, type Limit, LIMITS, TRIAL_COST, variantLimit, within } from './limits.ts';
import { type Lessened, Shortened } from './shortened.ts';
import { SideRun } from './sideRun.ts';
import { trackOf } from './track.ts';
import { variantFindings, type WorseVariant } from './variantFindings.ts';

/** Every omission and every move of this many steps, moves of one step together. */
export function* variantEdits(steps: number): Generator<Edit> {
  for (let at = 0; at < steps; at += 1) yield { do: 'remove', at };
  for (let from = 0; from < steps; from += 1) {
    for (let to = 0; to < steps; to += 1) {
      // A swap of neighbours is the same seen from either of the two.
      if (to !== from && to !== from - 1) yield { do: 'move', from, to };
    }
  }
}

/** The same, ever longer moves: where not all can be tried, the likelier ones are. */
function* nearestFirst(steps: number): Generator<Edit> {
  for (let at = 0; at < steps; at += 1) yield { do: 'remove', at };
  for (let distance = 1; distance < steps; distance += 1) {
    for (let from = 0; from < steps; from += 1) {
      for (const to of distance === 1 ? [from + 1] : [from - distance, from + distance]) {
        if (to >= 0 && to < steps) yield { do: 'move', from, to };
      }
    }
  }
}

interface Trying {
  readonly analysis: Analysis;
  readonly least: LeastTable;
  /** Per protected surface of the base: the condition it is judged by. */
  readonly judged: ReadonlyMap<number, number>;
  readonly shortened: Shortened;
  /** Runs on the diagram, made for the first variant that asks for them. */
  exact: EditRuns<SideRun> | undefined;
  /** Nodes of the diagram that stay. */
  mark: number;
}

function tryingOf(analysis: Analysis): Trying {
  const least = new LeastTable(analysis.diagram);
  const judged = new Map(
    analysis.protectedSurfaces.map((surface, at) => [surface, analysis.judged[at] ?? FALSE] as const),
  );
  const before = new Map([...judged].map(([surface, condition]) => [surface, least.of(condition)] as const));
  const shortened = new Shortened(analysis, before);
  return { analysis, least, judged, shortened, exact: undefined, mark: analysis.diagram.count };
}

/** Cuts the diagram back to the nodes that stay. */
function forget({ analysis, least, exact, mark }: Trying): void {
  analysis.diagram.rollback(mark);
  least.forget(mark);
  exact?.forget();
}

function exactIn(trying: Trying): EditRuns<SideRun> {
  if (trying.exact) return trying.exact;
  const { analysis } = trying;
  const { problems, procedure } = analysis.compiled;
  forget(trying);
  const track = trackOf(analysis);
  trying.exact = new EditRuns(procedure.steps, () => new SideRun(analysis, track, problems.length));
  trying.mark = analysis.diagram.count;
  return trying.exact;
}

/** Worked out whole: protected surfaces with fewer barriers than in the base; none where a later step becomes impossible. */
function lessenedIn(trying: Trying, edit: Edit): readonly Lessened[] {
  const { least, judged } = trying;
  const exact = exactIn(trying);
  if (!exact.differs(edit)) return [];
  return [...exact.run.outcome()]
    .map(([surface, after]) => ({
      surface,
      before: least.of(judged.get(surface) ?? FALSE),
      after: least.of(after),
    }))
    .filter(({ before, after }) => after < before);
}

/** Worst class first. */
function worseBy({ compiled }: Analysis, lessened: readonly Lessened[]): WorseVariant['worse'] {
  const { surfaces } = compiled.interpreter.registry;
  return lessened
    .map((one) => ({ ...one, surface: surfaces[one.surface]! }))
    .sort((a, b) => classRank(a.surface.class) - classRank(b.surface.class))
    .map(({ surface, before, after }) => ({
      surface: surface.id,
      before: before === Infinity ? null : before,
      after,
    }));
}

function tryVariant(trying: Trying, edit: Edit): WorseVariant | undefined {
  const lessened = trying.shortened.worse(edit) ?? lessenedIn(trying, edit);
  if (lessened.length === 0) return undefined;
  const step = edit.do === 'move' ? edit.from : edit.at;
  return { edit, step, worse: worseBy(trying.analysis, lessened) };
}

const FORGET_AT = 1 << 16;

/** What one variant costs beside the pairs it needs. */
function glance({ compiled, diagram }: Analysis): void {
  const { steps, surfaces } = compiled.plan;
  diagram.spend(steps.length + surfaces.length * TRIAL_COST.surface);
}

/** Hands each worse variant that would go unseen to `take` until the work allowed is done; how many were tried. */
function tryWhileAllowed(
  analysis: Analysis,
  edits: Iterable<Edit>,
  take: (worse: WorseVariant) => void,
): number {
  const trying = tryingOf(analysis);
  const { diagram } = analysis;
  let tried = 0;
  const tryAll = (): void => {
    for (const edit of edits) {
      glance(analysis);
      const worse = tryVariant(trying, edit);
      if (worse) take(worse);
      if (diagram.count > trying.mark + FORGET_AT) forget(trying);
      tried += 1;
    }
  };
  try {
    within(diagram, LIMITS.variantWork, tryAll);
  } catch (error) {
    if (!isTangled(error)) throw error;
  }
  forget(trying);
  return tried;
}

/**
 * Tries these variants and keeps the worse ones that would go unseen; quickest where moves of one step come together,
 * later places last. The diagram is cut back now and then, so memory stays bounded. Throws `Tangled` where there is too
 * much to do.
 */
export function tryVariants(analysis: Analysis, edits: Iterable<Edit>): readonly WorseVariant[] {
  const all = [...edits];
  const found: WorseVariant[] = [];
  if (tryWhileAllowed(analysis, all, (worse) => found.push(worse)) < all.length) throw new Tangled();
  return found;
}

/** Up to so many steps and nodes all variants are expected to be tried. */
const USUAL = { steps: 100, nodes: 20_000 } as const;

/** Findings about order and omission, and what was left untried. */
export function orderAndOmission(analysis: Analysis): {
  readonly findings: readonly Finding[];
  readonly limits: readonly Limit[];
} {
  const { length } = analysis.compiled.procedure.steps;
  const usual = length <= USUAL.steps && analysis.diagram.count <= USUAL.nodes;
  const edits = usual ? variantEdits(length) : nearestFirst(length);
  const found: WorseVariant[] = [];
  const tried = tryWhileAllowed(analysis, edits, (worse) => found.push(worse));
  return {
    findings: variantFindings(analysis, found),
    limits: variantLimit(tried, length * (length - 1) + 1),
  };
}
