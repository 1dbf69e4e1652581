// Order and omission: every step left out, every step moved to every other place, each worked out from the first step it
// changes. A variant in which a later step becomes impossible would stop by itself; the ones that go through unnoticed
// and leave fewer slips between contamination and somebody are the ones to know.
import type { Step } from '../domain/procedure.ts';
import { FALSE } from '../engine/diagram.ts';
import { Tangled } from '../engine/nodeTable.ts';
import type { Analysis } from './analysis.ts';
import { classRank } from './analysis.ts';
import type { Edit } from './edit.ts';
import type { Finding } from './finding.ts';
import { LeastTable } from './leastTable.ts';
import { isTangled, type Limit, LIMITS, TRIAL_COST, variantLimit, within } from './limits.ts';
import { SideRun } from './sideRun.ts';
import { trackOf } from './track.ts';

/** A variant that is worse than the procedure, and in which nothing becomes impossible: nothing would show it. */
export interface WorseVariant {
  readonly edit: Edit;
  /** Step that was left out or moved. */
  readonly step: number;
  /** Protected surfaces with fewer barriers, worst class first. */
  readonly worse: readonly {
    readonly surface: string;
    readonly before: number | null;
    readonly after: number;
  }[];
}

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
  readonly run: SideRun;
  /** The base with one step left out, as far as it was followed: every later place for that step goes on from here. */
  readonly without: SideRun;
  /** Which step; -1 while there is none. */
  left: number;
}

function tryingOf(analysis: Analysis): Trying {
  const track = trackOf(analysis);
  const most = analysis.compiled.problems.length;
  return {
    analysis,
    least: new LeastTable(analysis.diagram),
    judged: new Map(analysis.protectedSurfaces.map((surface, at) => [surface, analysis.judged[at] ?? FALSE])),
    run: new SideRun(analysis, track, most),
    without: new SideRun(analysis, track, most),
    left: -1,
  };
}

const stepAt = ({ analysis }: Trying, at: number): Step => analysis.compiled.procedure.steps[at]!;

/** Takes the run past what the edit changes; the base's own steps follow. */
function change(trying: Trying, edit: Edit): void {
  const { run } = trying;
  if (edit.do === 'move') {
    if (edit.to < edit.from) moveEarlier(trying, edit);
    else moveLater(trying, edit);
    return;
  }
  run.start(edit.at);
  if (edit.do === 'insert') for (const step of edit.steps) run.other(step);
  if (edit.do === 'replace') run.other(edit.step);
  if (edit.do !== 'insert') run.skip();
}

function moveEarlier(trying: Trying, { from, to }: { readonly from: number; readonly to: number }): void {
  const { run } = trying;
  run.start(to);
  run.other(stepAt(trying, from));
  run.follow(from);
  run.skip();
}

function moveLater(trying: Trying, { from, to }: { readonly from: number; readonly to: number }): void {
  const { run, without } = trying;
  if (trying.left !== from || without.at > to + 1) {
    without.start(from);
    without.skip();
    trying.left = from;
  }
  without.follow(to + 1);
  run.copy(without);
  if (!run.stopped) run.other(stepAt(trying, from));
}

/** Protected surfaces with fewer barriers than in the base, worst class first. */
function worseIn({ analysis, least, judged, run }: Trying): WorseVariant['worse'] {
  const { surfaces } = analysis.compiled.interpreter.registry;
  return [...run.outcome()]
    .map(([index, after]) => ({
      surface: surfaces[index]!,
      before: least.of(judged.get(index) ?? FALSE),
      after: least.of(after),
    }))
    .filter(({ before, after }) => after < before)
    .sort((a, b) => classRank(a.surface.class) - classRank(b.surface.class))
    .map(({ surface, before, after }) => ({
      surface: surface.id,
      before: before === Infinity ? null : before,
      after,
    }));
}

function tryVariant(trying: Trying, edit: Edit): WorseVariant | undefined {
  const { run } = trying;
  change(trying, edit);
  if (run.follow(trying.analysis.compiled.procedure.steps.length) || run.stopped) return undefined;
  const worse = worseIn(trying);
  if (worse.length === 0) return undefined;
  const step = edit.do === 'move' ? edit.from : edit.at;
  return { edit, step, worse };
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
  const mark = diagram.count;
  const forget = (): void => {
    diagram.rollback(mark);
    trying.least.forget(mark);
    trying.left = -1;
  };
  let tried = 0;
  const tryAll = (): void => {
    for (const edit of edits) {
      glance(analysis);
      const worse = tryVariant(trying, edit);
      if (worse) take(worse);
      if (diagram.count > mark + FORGET_AT) forget();
      tried += 1;
    }
  };
  try {
    within(diagram, LIMITS.variantWork, tryAll);
  } catch (error) {
    if (!isTangled(error)) throw error;
  }
  forget();
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

/** How bad: the worst class reached, then how few barriers are left. */
function badness({ worse }: WorseVariant): readonly [number, number] {
  const [first] = worse;
  return [first?.after ?? Infinity, -worse.length];
}

const byBadness = (a: WorseVariant, b: WorseVariant): number =>
  badness(a)[0] - badness(b)[0] || badness(a)[1] - badness(b)[1];

function findingOf(analysis: Analysis, variants: readonly WorseVariant[]): Finding | undefined {
  const [worst] = [...variants].sort(byBadness);
  const [first] = worst?.worse ?? [];
  if (!worst || !first) return undefined;
  return {
    code: worst.edit.do === 'remove' ? 'variant.omission' : 'variant.order',
    kind: 'variant',
    severity: 'note',
    agent: analysis.agent,
    steps: worst.edit.do === 'move' ? [worst.step, worst.edit.to] : [worst.step],
    surface: first.surface,
    surfaces: worst.worse.map(({ surface }) => surface),
    params: {
      before: first.before === null ? 'none' : String(first.before),
      after: String(first.after),
      unseen: 'yes',
      variants: String(variants.length),
      ...(worst.edit.do === 'move' ? { to: String(worst.edit.to) } : {}),
    },
    events: [],
    route: [],
    mends: [],
    evidence: [worst.edit.do === 'remove' ? 'slip.omitted-step' : 'slip.wrong-order'],
  };
}

/** One finding per step whose omission matters, one per step whose worst possible move does. */
function variantFindings(analysis: Analysis, worse: readonly WorseVariant[]): readonly Finding[] {
  const steps = [...new Set(worse.map((variant) => variant.step))].sort((a, b) => a - b);
  return steps.flatMap((step) =>
    (['remove', 'move'] as const).flatMap((kind) => {
      const finding = findingOf(
        analysis,
        worse.filter((variant) => variant.step === step && variant.edit.do === kind),
      );
      return finding ? [finding] : [];
    }),
  );
}
