// Every version of every procedure: draft, under review, approved, retired; who and when; which departures were accepted.
// An approved version is never changed: a later draft under its name is refused here and reported, and what was approved
// stays as it was. An entry that does not fit the stage a version is in changes nothing either, and is reported.
import type { View } from '../fold.ts';
import type { Bodies } from '../kinds/index.ts';
import type { Known } from '../reading.ts';

export const STAGES = ['draft', 'review', 'approved', 'retired'] as const;
export type Stage = (typeof STAGES)[number];

export const CONFLICTS = ['never-changed', 'not-drafted', 'other-content', 'wrong-stage'] as const;
export type ConflictCode = (typeof CONFLICTS)[number];

/** When by the device's clock, who wrote the entry, and the unit's number of it. */
export type Mark = { readonly at: string; readonly by: string | null; readonly unitNumber: number };

export type Departure = Mark & {
  readonly finding: string;
  readonly step: string | null;
  readonly surface: string | null;
  readonly reason: string;
  readonly person: string;
  /** Day by which it must be looked at again. */
  readonly reviewOn: string;
};

export type ProcedureVersion = {
  readonly version: string;
  /** SHA-256 of the file's text. */
  readonly content: string;
  readonly stage: Stage;
  readonly drafted: Mark;
  readonly sent: (Mark & { readonly to: readonly string[] }) | null;
  /** Why the reviewer wanted it changed; null once it is sent again, or where it never was. */
  readonly sentBack: (Mark & { readonly reason: string }) | null;
  readonly approved:
    | (Mark & { readonly people: readonly string[]; readonly on: string; readonly reviewOn: string })
    | null;
  readonly retired: (Mark & { readonly reason: string }) | null;
  readonly departures: readonly Departure[];
};

/** An entry that changed nothing, and why. `stage` is the one the version is in; null where it was never drafted. */
export type Conflict = Mark & {
  readonly code: ConflictCode;
  readonly kind: string;
  readonly procedure: string;
  readonly version: string;
  readonly stage: Stage | null;
  readonly content: string;
};

export type VersionsState = {
  /** By procedure, then by version. */
  readonly procedures: Readonly<Record<string, Readonly<Record<string, ProcedureVersion>>>>;
  readonly conflicts: readonly Conflict[];
};

const OF_VERSIONS = [
  'procedure.drafted',
  'procedure.sent-for-review',
  'procedure.sent-back',
  'procedure.approved',
  'procedure.retired',
  'departure.accepted',
] as const;
type Name = (typeof OF_VERSIONS)[number];
type Of<One extends Name> = Extract<Known, { readonly kind: One }>;
type Outcome = ProcedureVersion | ConflictCode;

const markOf = ({ at, by, unitNumber }: Mark): Mark => ({ at, by, unitNumber });

function drafted(entry: Of<'procedure.drafted'>, before: ProcedureVersion | undefined): Outcome {
  if (before?.stage === 'approved' || before?.stage === 'retired') return 'never-changed';
  const { version, content } = entry.body;
  const fresh = { version, content, stage: 'draft', sent: null, approved: null, retired: null } as const;
  // Rewritten after it was sent back: why it was stays in sight until it is sent again.
  const { sentBack = null, departures = [] } = before ?? {};
  return { ...fresh, sentBack, drafted: markOf(entry), departures };
}

function departed(entry: Of<'departure.accepted'>, before: ProcedureVersion): Outcome {
  if (before.stage === 'retired') return 'wrong-stage';
  const { finding, step, surface, reason, person, reviewOn } = entry.body;
  const departure = { ...markOf(entry), finding, step, surface, reason, person, reviewOn };
  return { ...before, departures: [...before.departures, departure] };
}

function moved(entry: Of<Exclude<Name, 'procedure.drafted'>>, before: ProcedureVersion): Outcome {
  const mark = markOf(entry);
  if (entry.kind === 'departure.accepted') return departed(entry, before);
  if (entry.kind === 'procedure.retired') {
    if (before.stage === 'retired') return 'wrong-stage';
    return { ...before, stage: 'retired', retired: { ...mark, reason: entry.body.reason } };
  }
  if (entry.kind === 'procedure.sent-for-review') {
    if (before.stage !== 'draft') return 'wrong-stage';
    return { ...before, stage: 'review', sent: { ...mark, to: entry.body.to }, sentBack: null };
  }
  if (before.stage !== 'review') return 'wrong-stage';
  if (entry.kind === 'procedure.sent-back')
    return { ...before, stage: 'draft', sentBack: { ...mark, reason: entry.body.reason } };
  const { people, on, reviewOn } = entry.body;
  return { ...before, stage: 'approved', approved: { ...mark, people, on, reviewOn } };
}

function outcome(entry: Of<Name>, before: ProcedureVersion | undefined): Outcome {
  if (entry.kind === 'procedure.drafted') return drafted(entry, before);
  if (!before) return 'not-drafted';
  return before.content === entry.body.content ? moved(entry, before) : 'other-content';
}

function next(state: VersionsState, entry: Of<Name>): VersionsState {
  const { procedure, version, content }: Bodies['procedure.retired'] | Bodies['procedure.drafted'] =
    entry.body as Bodies['procedure.drafted'];
  const versions = Object.hasOwn(state.procedures, procedure) ? state.procedures[procedure]! : {};
  const before = Object.hasOwn(versions, version) ? versions[version] : undefined;
  const after = outcome(entry, before);
  if (typeof after !== 'string')
    return {
      ...state,
      procedures: { ...state.procedures, [procedure]: { ...versions, [version]: after } },
    };
  const { kind } = entry;
  const stage = before?.stage ?? null;
  const conflict = { ...markOf(entry), code: after, kind, procedure, version, stage, content };
  return { ...state, conflicts: [...state.conflicts, conflict] };
}

const isOfVersions = (entry: { readonly kind: string }): entry is Of<Name> =>
  (OF_VERSIONS as readonly string[]).includes(entry.kind);

export const versionsView: View<VersionsState> = {
  name: 'versions',
  version: 2,
  start: { procedures: {}, conflicts: [] },
  kinds: OF_VERSIONS,
  next: (state, entry) => (isOfVersions(entry) ? next(state, entry) : state),
};

/** The version to work by: of those approved and not retired the one approved last; undefined where there is none. */
export function versionInForce(state: VersionsState, procedure: string): ProcedureVersion | undefined {
  const versions = Object.hasOwn(state.procedures, procedure) ? state.procedures[procedure]! : {};
  return Object.values(versions)
    .filter(({ stage }) => stage === 'approved')
    .toSorted((a, b) => (b.approved?.unitNumber ?? 0) - (a.approved?.unitNumber ?? 0))[0];
}
