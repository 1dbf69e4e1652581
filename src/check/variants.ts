// Order and omission: every step left out, every step moved to every other place, each worked out from the first step it
// changes. A variant in which a later step becomes impossible would stop by itself; the ones that go through unnoticed
// and leave fewer slips between contamination and somebody are the ones to know.
import { leastEvents } from '../engine/barriers.ts';
import type { Analysis } from './analysis.ts';
import { classRank } from './analysis.ts';
import type { Edit } from './edit.ts';
import type { Finding } from './finding.ts';
import { tryEdit } from './trial.ts';

/** A variant that is worse than the procedure. */
export interface WorseVariant {
  readonly edit: Edit;
  /** Step that was left out or moved. */
  readonly step: number;
  /** Nothing later in the procedure becomes impossible, so nothing would show it. */
  readonly unseen: boolean;
  /** Protected surfaces with fewer barriers, worst class first. */
  readonly worse: readonly {
    readonly surface: string;
    readonly before: number | null;
    readonly after: number;
  }[];
}

/** Every omission and every move, in order; `steps` of them squared at most. */
export function* variantEdits(steps: number): Generator<Edit> {
  for (let at = 0; at < steps; at += 1) yield { do: 'remove', at };
  for (let from = 0; from < steps; from += 1) {
    for (let to = 0; to < steps; to += 1) {
      // A swap of neighbours is the same seen from either of the two.
      if (to !== from && to !== from - 1) yield { do: 'move', from, to };
    }
  }
}

interface Base {
  readonly least: ReadonlyMap<number, number>;
  readonly judged: ReadonlyMap<number, number>;
  readonly problems: number;
}

function baseOf(analysis: Analysis): Base {
  const least = leastEvents(analysis.diagram, analysis.judged);
  return {
    least: new Map(analysis.protectedSurfaces.map((surface, at) => [surface, least[at] ?? -1])),
    judged: new Map(analysis.protectedSurfaces.map((surface, at) => [surface, analysis.judged[at] ?? 0])),
    problems: analysis.compiled.problems.length,
  };
}

const orNull = (least: number): number | null => (least < 0 ? null : least);
const asNumber = (least: number): number => (least < 0 ? Infinity : least);

function tryVariant(analysis: Analysis, base: Base, edit: Edit): WorseVariant | undefined {
  const trial = tryEdit(analysis, edit);
  const { surfaces } = trial.plan;
  const changed: number[] = [];
  for (let index = 0; index < surfaces.length; index += 1) {
    if (surfaces[index]?.protected && trial.judged[index] !== (base.judged.get(index) ?? 0))
      changed.push(index);
  }
  if (changed.length === 0) return undefined;
  const least = leastEvents(
    analysis.diagram,
    changed.map((index) => trial.judged[index] ?? 0),
  );
  const worse = changed
    .map((index, at) => ({ index, before: base.least.get(index) ?? -1, after: least[at] ?? -1 }))
    .filter(({ before, after }) => asNumber(after) < asNumber(before))
    .sort(
      (a, b) =>
        classRank(surfaces[a.index]?.class ?? 'fixture') - classRank(surfaces[b.index]?.class ?? 'fixture'),
    )
    .map(({ index, before, after }) => ({
      surface: surfaces[index]?.id ?? '',
      before: orNull(before),
      after,
    }));
  if (worse.length === 0) return undefined;
  const problems = trial.performed.reduce((sum, result) => sum + result.problems.length, 0);
  return {
    edit,
    step: edit.do === 'move' ? edit.from : 'at' in edit ? edit.at : 0,
    unseen: problems <= base.problems,
    worse,
  };
}

const FORGET_AT = 1 << 17;

/** Tries these variants and keeps the worse ones. The diagram is cut back now and then, so memory stays bounded. */
export function tryVariants(analysis: Analysis, edits: Iterable<Edit>): readonly WorseVariant[] {
  const base = baseOf(analysis);
  const mark = analysis.diagram.count;
  const found: WorseVariant[] = [];
  for (const edit of edits) {
    const worse = tryVariant(analysis, base, edit);
    if (worse) found.push(worse);
    if (analysis.diagram.count > mark + FORGET_AT) analysis.diagram.rollback(mark);
  }
  analysis.diagram.rollback(mark);
  return found;
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
      unseen: worst.unseen ? 'yes' : 'no',
      variants: String(variants.length),
      ...(worst.edit.do === 'move' ? { to: String(worst.edit.to) } : {}),
    },
    events: [],
    route: [],
    mends: [],
    evidence: ['slip.omitted-step'],
  };
}

/** One finding per step whose omission matters, one per step whose worst possible move does. */
export function variantFindings(analysis: Analysis, worse: readonly WorseVariant[]): readonly Finding[] {
  const possible = worse.filter((variant) => variant.unseen);
  const steps = [...new Set(possible.map((variant) => variant.step))].sort((a, b) => a - b);
  return steps.flatMap((step) =>
    (['remove', 'move'] as const).flatMap((kind) => {
      const finding = findingOf(
        analysis,
        possible.filter((variant) => variant.step === step && variant.edit.do === kind),
      );
      return finding ? [finding] : [];
    }),
  );
}
