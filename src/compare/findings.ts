// Findings gained and lost. A finding is the same in both procedures when its code, its step (as aligned), its surface and,
// where it is about one, its slip are. One that is still there at another step is told apart from a new one.
import type { Finding } from '../check/finding.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { StepRow } from './align.ts';
import { type Match, surfaceIn } from './match.ts';

export interface KeptFinding {
  readonly a: Finding;
  readonly b: Finding;
  /** At another step than the aligned one. */
  readonly elsewhere: boolean;
}

export interface FindingChanges {
  readonly gone: readonly Finding[];
  readonly gained: readonly Finding[];
  readonly kept: readonly KeptFinding[];
  /** Of those gained: places that stood open before, and are one slip away now. */
  readonly noLongerOpen: readonly Finding[];
  /** Those in the second that are errors and were none, or not there, in the first. */
  readonly newErrors: readonly Finding[];
}

/** How the second procedure's steps, surfaces and events are called in the first. */
interface Naming {
  readonly step: (index: number) => string;
  readonly surface: (id: string | undefined) => string;
  readonly event: (key: string) => string;
}

const firstNaming = (procedure: Procedure): Naming => ({
  step: (index) => procedure.steps[index]?.id ?? String(index),
  surface: (id) => id ?? '',
  event: (key) => key,
});

function secondNaming(a: Procedure, b: Procedure, rows: readonly StepRow[], match: Match): Naming {
  const counterpart = new Map(
    rows.flatMap((row) => (row.a === null || row.b === null ? [] : [[row.b, row.a]])),
  );
  const places = new Map(b.steps.map(({ id }, at) => [id, at]));
  const step = (index: number): string => {
    const other = counterpart.get(index);
    return other === undefined ? `other ${index}` : (a.steps[other]?.id ?? '');
  };
  const surface = (id: string | undefined): string =>
    id === undefined ? '' : (surfaceIn(match, id) ?? `other ${id}`);
  return {
    step,
    surface,
    event: (key) => {
      const [where = '', what = '', ...rest] = key.split(':');
      const at = places.get(where);
      const on = rest.join(':');
      if (where === 'start')
        return [where, what, on.includes('.') ? surface(on) : (match.person.get(on) ?? on)].join(':');
      return [at === undefined ? where : step(at), what, ...rest].join(':');
    },
  };
}

/** What does not depend on where. */
const itself = (finding: Finding, naming: Naming): string => {
  const { code, agent = '', params } = finding;
  const person = params.person === undefined ? '' : naming.surface(`${params.person}.`);
  return [
    code,
    agent,
    finding.kind === 'variant' ? '' : naming.surface(finding.surface),
    person,
    params.item ?? '',
    params.finding ?? '',
  ].join(' ');
};

function keyOf(finding: Finding, naming: Naming): string {
  const events = finding.events.map(naming.event).join(' ');
  // A slip is a place of its own; the route to its surface may pass other steps.
  const where = finding.kind === 'one-slip' ? '' : naming.step(finding.steps[0] ?? -1);
  return `${itself(finding, naming)} ${where} ${events}`;
}

/** Kinds of which the same one elsewhere is still the same trouble: somebody's hand stays reached. */
const MAY_MOVE: ReadonlySet<Finding['kind']> = new Set(['open', 'accepted', 'coverage']);

/** First come, first paired; several with one key pair in order. */
function pairUp(
  a: readonly Finding[],
  b: readonly Finding[],
  keyA: (finding: Finding) => string,
  keyB: (finding: Finding) => string,
): ReadonlyMap<Finding, Finding> {
  const waiting = new Map<string, Finding[]>();
  for (const finding of a) waiting.set(keyA(finding), [...(waiting.get(keyA(finding)) ?? []), finding]);
  return new Map(
    b.flatMap((finding) => {
      const found = waiting.get(keyB(finding))?.shift();
      return found === undefined ? [] : [[finding, found] as const];
    }),
  );
}

export interface FindingSide {
  readonly procedure: Procedure;
  readonly findings: readonly Finding[];
}

/** From the second's findings to the first's; `exact` where the step is the same too. */
interface Paired {
  readonly exact: ReadonlyMap<Finding, Finding>;
  readonly moved: ReadonlyMap<Finding, Finding>;
}

function paired(a: FindingSide, b: FindingSide, first: Naming, other: Naming): Paired {
  const exact = pairUp(
    a.findings,
    b.findings,
    (one) => keyOf(one, first),
    (one) => keyOf(one, other),
  );
  const used = new Set(exact.values());
  const movable = ({ kind }: Finding): boolean => MAY_MOVE.has(kind);
  const moved = pairUp(
    a.findings.filter((one) => !used.has(one) && movable(one)),
    b.findings.filter((one) => !exact.has(one) && movable(one)),
    (one) => itself(one, first),
    (one) => itself(one, other),
  );
  return { exact, moved };
}

/** Single slips of the second to what stood open in the first, against the same agent. */
function stoodOpen(
  gained: readonly Finding[],
  before: readonly Finding[],
  { surface }: Naming,
): readonly Finding[] {
  const wasOpen = new Set(
    before
      .filter(({ kind }) => kind === 'open')
      .flatMap(({ surfaces, agent }) => surfaces.map((id) => `${agent ?? ''} ${id}`)),
  );
  return gained.filter(
    (one) => one.kind === 'one-slip' && wasOpen.has(`${one.agent ?? ''} ${surface(one.surface)}`),
  );
}

const isError = ({ severity }: Finding): boolean => severity === 'error';

export function compareFindings(
  a: FindingSide,
  b: FindingSide,
  rows: readonly StepRow[],
  match: Match,
): FindingChanges {
  const other = secondNaming(a.procedure, b.procedure, rows, match);
  const { exact, moved } = paired(a, b, firstNaming(a.procedure), other);
  const used = new Set([...exact.values(), ...moved.values()]);
  const kept = b.findings.flatMap((one): readonly KeptFinding[] => {
    const before = exact.get(one) ?? moved.get(one);
    return before === undefined ? [] : [{ a: before, b: one, elsewhere: !exact.has(one) }];
  });
  const gained = b.findings.filter((one) => !exact.has(one) && !moved.has(one));
  const worse = kept.filter((one) => isError(one.b) && !isError(one.a)).map((one) => one.b);
  return {
    gone: a.findings.filter((one) => !used.has(one)),
    gained,
    kept,
    noLongerOpen: stoodOpen(gained, a.findings, other),
    newErrors: [...gained.filter(isError), ...worse],
  };
}
