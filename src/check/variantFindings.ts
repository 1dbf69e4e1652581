// What is said of the variants that are worse: one finding for each step whose omission matters, one for each whose worst
// possible move does.
import type { Analysis } from './analysis.ts';
import type { Edit } from './edit.ts';
import type { Finding } from './finding.ts';

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
export function variantFindings(analysis: Analysis, worse: readonly WorseVariant[]): readonly Finding[] {
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
