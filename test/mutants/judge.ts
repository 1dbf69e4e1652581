// Is a seeded fault found by the check, and if not, does the reference prove it harmless? The check is asked part by part
// (what verify() puts together, without the drawn intervals and the told routes, which find nothing by themselves);
// mutants.test.ts holds a sample of these answers to verify() itself.
import { analyse, type Analysis } from '../../src/check/analysis.ts';
import { eventChances } from '../../src/check/chances.ts';
import { coverage, layering } from '../../src/check/coverage.ts';
import type { Finding } from '../../src/check/finding.ts';
import { problemFindings } from '../../src/check/judge.ts';
import { practice } from '../../src/check/practice.ts';
import { LISTED } from '../../src/check/surfaces.ts';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { type Agent, AGENTS } from '../../src/domain/products.ts';
import { leastEvents } from '../../src/engine/barriers.ts';
import { chancesOf } from '../../src/engine/chance.ts';
import { listOf } from '../../src/engine/cutSets.ts';
import { evaluate } from '../../src/engine/walk.ts';
import { lanesOf, reachedIn, setsUpTo } from '../support/lanes.ts';
import type { Mutant, Subject } from './subjects.ts';

/** What the check says of one surface against one agent. */
export interface Told {
  readonly barriers: number;
  readonly chance: number;
  /** The smallest combinations, as listed on screen. */
  readonly combinations: readonly (readonly string[])[];
  /** Whether exactly these slips reach it; slips that the procedure does not have change nothing. */
  reachedBy(keys: readonly string[]): boolean;
}

export interface Checkup {
  /** Findings that are the same against every agent. */
  readonly conduct: readonly Finding[];
  readonly byAgent: ReadonlyMap<Agent, ReadonlyMap<string, Told>>;
  readonly analyses: readonly Analysis[];
}

function told(analysis: Analysis): ReadonlyMap<string, Told> {
  const { compiled, diagram, families, judged, protectedSurfaces } = analysis;
  const { events, surfaces } = compiled.plan;
  const least = leastEvents(diagram, judged);
  const chances = chancesOf(diagram, judged, eventChances(events, compiled.procedure.policy));
  const numbers = new Map(events.map(({ key }, at) => [key, at]));
  return new Map(
    protectedSurfaces.map((index, at) => {
      const root = judged[at]!;
      const listed = listOf(families, families.minimal(root), LISTED);
      return [
        surfaces[index]!.id,
        {
          barriers: least[at]! < 0 ? Infinity : least[at]!,
          chance: chances[at]!,
          combinations: listed.map((set) => set.map((event) => events[event]!.key)),
          reachedBy: (keys) => {
            const true_ = new Set(keys.map((key) => numbers.get(key)));
            return evaluate(diagram, root, (event) => true_.has(event));
          },
        },
      ];
    }),
  );
}

/** A doffing against its donning, or the doffing that undoes a donning against it. */
function layeringOf(compiled: Compiled, counterpart: Procedure | undefined): readonly Finding[] {
  if (!counterpart) return [];
  const other = compile(counterpart, compiled.agent);
  return compiled.procedure.kind === 'doffing' ? layering(compiled, other) : layering(other, compiled);
}

export function checkup(procedure: Procedure, counterpart: Procedure | undefined): Checkup {
  const analyses = AGENTS.map((agent) => analyse(procedure, agent));
  const { compiled } = analyses[0]!;
  return {
    conduct: [
      ...problemFindings(compiled),
      ...layeringOf(compiled, counterpart),
      ...practice(compiled),
      ...coverage(compiled),
    ],
    byAgent: new Map(analyses.map((analysis) => [analysis.agent, told(analysis)])),
    analyses,
  };
}

/** A finding's code and place: what and whom it is about. Not the step's number, which a mutation shifts. */
function placeOf({ code, surface, params, agent }: Finding): string {
  const about = Object.entries(params).map(([name, value]) => `${name}=${value}`);
  return [code, surface, agent, ...about.toSorted()].join(' ');
}

function counted(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) counts.set(placeOf(finding), (counts.get(placeOf(finding)) ?? 0) + 1);
  return counts;
}

/** Findings of the mutant that the original does not have, or has less often. */
function fresh(original: readonly Finding[], mutant: readonly Finding[]): readonly Finding[] {
  const known = counted(original);
  const now = counted(mutant);
  return mutant.filter((finding) => now.get(placeOf(finding))! > (known.get(placeOf(finding)) ?? 0));
}

/** Beyond what the order of adding up can do to the last digits. */
const rose = (before: number, after: number): boolean => after > before * (1 + 1e-9) + 1e-15;

export const WAYS = ['cannot', 'practice', 'bare', 'barriers', 'combination', 'chance'] as const;
export type Way = (typeof WAYS)[number];

const KIND_WAYS: Readonly<Record<string, Way>> = {
  impossible: 'cannot',
  practice: 'practice',
  coverage: 'bare',
};

function contamination(before: Told | undefined, after: Told): readonly Way[] {
  const fewer = after.barriers < (before?.barriers ?? Infinity);
  const opened = after.combinations.some((keys) => !before?.reachedBy(keys));
  return [
    ...(fewer ? (['barriers'] as const) : []),
    ...(opened ? (['combination'] as const) : []),
    ...(rose(before?.chance ?? 0, after.chance) ? (['chance'] as const) : []),
  ];
}

/**
 * Every way in which the check of the mutant says more, or worse, than that of the original. A note that something is
 * contaminated by design does not count: it asks nobody to do anything.
 */
function waysFound(original: Checkup, mutant: Checkup): ReadonlySet<Way> {
  const conduct = fresh(original.conduct, mutant.conduct).map(({ kind }) => KIND_WAYS[kind]!);
  const worse = AGENTS.flatMap((agent) =>
    [...mutant.byAgent.get(agent)!].flatMap(([surface, after]) =>
      contamination(original.byAgent.get(agent)!.get(surface), after),
    ),
  );
  return new Set([...conduct, ...worse]);
}

/**
 * By the reference alone: whether some set of at most `order` of the mutant's slips reaches a protected surface that the
 * same slips do not reach in the original, against any agent. Slips are matched by step and kind of slip. A slip that the
 * original does not have changes nothing there; one that only the original has would only add to what it reaches.
 */
function worseByReference(subject: Subject, mutant: Checkup, order: number): boolean {
  return AGENTS.some((agent, at) => {
    const { plan } = mutant.analyses[at]!.compiled;
    const lanes = lanesOf(
      setsUpTo(
        plan.events.map(({ key }) => key),
        order,
      ),
    );
    const before = reachedIn(compile(subject.procedure, agent).plan, lanes);
    return [...reachedIn(plan, lanes)].some(([surface, sets]) => {
      const known = before.get(surface);
      return sets.some((word, index) => (word & ~(known?.[index] ?? 0)) !== 0);
    });
  });
}

export interface Judged {
  readonly mutant: Mutant;
  readonly ways: ReadonlySet<Way>;
  /** Some pair of slips (some three, where the fault is not found) reaches more than before, by the reference. */
  readonly worse: boolean;
}

export function judge(mutants: readonly Mutant[]): readonly Judged[] {
  const [first] = mutants;
  if (!first) return [];
  const { subject } = first;
  const original = checkup(subject.procedure, subject.counterpart);
  return mutants.map((mutant): Judged => {
    const after = checkup(mutant.procedure, subject.counterpart);
    const ways = waysFound(original, after);
    // What is not found has to stand a harder test: triples too.
    return { mutant, ways, worse: worseByReference(subject, after, ways.size > 0 ? 2 : 3) };
  });
}
