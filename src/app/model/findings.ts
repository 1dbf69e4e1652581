// The findings as the screens need them: the same fault against two agents is one card, each stands beside its step, and
// a key names it in an address.
import { FINDING_KINDS, type Finding, type FindingKind, type Severity } from '../../check/finding.ts';
import type { Limit } from '../../check/limits.ts';
import { type Agent, AGENTS } from '../../domain/products.ts';

export interface Shown {
  readonly key: string;
  readonly finding: Finding;
  /** Agents it was found against; empty where it does not depend on the agent. */
  readonly agents: readonly Agent[];
}

export interface Filter {
  readonly kinds: ReadonlySet<FindingKind>;
  readonly severities: ReadonlySet<Severity>;
}

export type AgentChoice = Agent | 'all';

/** The choice that an address names; else the agent the procedure is for, or all where it is for several. */
export function choiceFrom(wanted: string | null, named: readonly Agent[]): AgentChoice {
  if (wanted === 'all') return 'all';
  const [first, ...more] = named;
  return AGENTS.find((agent) => agent === wanted) ?? (first && more.length === 0 ? first : 'all');
}

/** FNV-1a, in base 36: short enough for an address. */
function hash(text: string): string {
  let value = 0x811c9dc5;
  for (const character of text) {
    value = Math.imul(value ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  }
  return value.toString(36);
}

const identity = ({ code, surface = '', steps, events, params }: Finding): string =>
  [code, surface, steps.join(','), events.join(','), JSON.stringify(params)].join('|');

const RANK = new Map(FINDING_KINDS.map((kind, index) => [kind, index]));
const rank = ({ kind }: Finding): number => RANK.get(kind) ?? FINDING_KINDS.length;

/** What was left undone against the chosen agent. */
export const limitsFor = (limits: readonly Limit[], choice: AgentChoice): readonly Limit[] =>
  limits.filter(({ agent }) => agent === undefined || choice === 'all' || agent === choice);

/** The findings against the chosen agent or all, one card for each fault, errors and worse kinds first. */
export function shownFor(findings: readonly Finding[], choice: AgentChoice): readonly Shown[] {
  const cards = new Map<string, Shown>();
  for (const finding of findings) {
    if (choice !== 'all' && finding.agent !== undefined && finding.agent !== choice) continue;
    const id = identity(finding);
    const known = cards.get(id);
    const agents = [...(known?.agents ?? []), ...(finding.agent === undefined ? [] : [finding.agent])];
    const key = `${finding.code.replaceAll('.', '-')}-${hash(id)}`;
    cards.set(id, known ? { ...known, agents } : { key, finding, agents });
  }
  return [...cards.values()].toSorted(
    (a, b) =>
      Number(a.finding.severity === 'note') - Number(b.finding.severity === 'note') ||
      rank(a.finding) - rank(b.finding) ||
      (a.finding.steps[0] ?? -1) - (b.finding.steps[0] ?? -1),
  );
}

export const everything = (): Filter => ({
  kinds: new Set(FINDING_KINDS),
  severities: new Set<Severity>(['error', 'note']),
});

export const passes = ({ kinds, severities }: Filter, { finding }: Shown): boolean =>
  kinds.has(finding.kind) && severities.has(finding.severity);

/** By index of the step where to look; -1 for those about no step. */
export function byStep(shown: readonly Shown[]): ReadonlyMap<number, readonly Shown[]> {
  const steps = new Map<number, Shown[]>();
  for (const one of shown) {
    const step = one.finding.steps[0] ?? -1;
    steps.set(step, [...(steps.get(step) ?? []), one]);
  }
  return steps;
}

/** How many of each kind, errors and all; accepted ones are counted apart. */
export interface Count {
  readonly kind: FindingKind;
  readonly open: number;
  readonly accepted: number;
}

export function countsOf(shown: readonly Shown[]): readonly Count[] {
  return FINDING_KINDS.map((kind) => {
    const found = shown.filter(({ finding }) => finding.kind === kind);
    const accepted = found.filter(({ finding }) => finding.accepted !== undefined).length;
    return { kind, open: found.length - accepted, accepted };
  });
}

/** The one to walk first: the worst that has a route. */
export const worstWalk = (shown: readonly Shown[]): Shown | undefined =>
  shown.find(({ finding }) => finding.route.length > 0 && finding.accepted === undefined);
