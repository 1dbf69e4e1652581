// The room: zones from the patient's side to the clean side, and the fixtures people touch or stand on.
// `side` says how a zone starts: the patient's floor contaminated, the doffing area's cleaned before use
// (it becomes contaminated by the first sole), the clean side protected to the end.

export const ZONE_SIDES = ['patient', 'doffing', 'clean'] as const;
export type ZoneSide = (typeof ZONE_SIDES)[number];

export interface Zone {
  readonly id: string;
  readonly side: ZoneSide;
}

export interface FixtureKind {
  readonly id: string;
  /** What of it can be touched, each with its own contamination. */
  readonly parts: readonly string[];
  /** Ways to work it; the first is assumed when a file says none. Only `hand` is a contact. */
  readonly worked?: readonly ('hand' | 'elbow' | 'pedal' | 'sensor' | 'open')[];
  readonly seat?: boolean;
  readonly underfoot?: boolean;
}

export const FIXTURE_KINDS = [
  { id: 'floor', parts: ['surface'], underfoot: true },
  { id: 'mat', parts: ['surface'], underfoot: true },
  { id: 'chair', parts: ['seat'], seat: true },
  { id: 'bin', parts: ['lid'], worked: ['pedal', 'hand', 'open'] },
  { id: 'dispenser', parts: ['lever'], worked: ['sensor', 'elbow', 'hand'] },
  { id: 'tap', parts: ['handle'], worked: ['elbow', 'hand', 'sensor'] },
  { id: 'door', parts: ['handle'], worked: ['hand', 'elbow', 'sensor'] },
  { id: 'table', parts: ['top'] },
  { id: 'mirror', parts: ['frame'] },
  { id: 'scissors', parts: ['grip'] },
  { id: 'logbook', parts: ['cover'] },
  { id: 'container', parts: ['rim'], worked: ['open', 'hand'] },
  { id: 'glove-box', parts: ['opening'] },
  { id: 'rail', parts: ['grip'] },
] as const satisfies readonly FixtureKind[];

export type FixtureKindId = (typeof FIXTURE_KINDS)[number]['id'];
export const FIXTURE_KIND_IDS: readonly FixtureKindId[] = FIXTURE_KINDS.map((kind) => kind.id);

export interface Fixture {
  readonly id: string;
  readonly kind: FixtureKindId;
  readonly zone: string;
  /** Kept clean: a protected surface. */
  readonly clean: boolean;
  readonly worked?: 'hand' | 'elbow' | 'pedal' | 'sensor' | 'open';
  /** A mat soaked with this product cleans the soles that step on it. */
  readonly product?: string;
}

/** How it is worked: as the file says, else the kind's first way. */
export const workedBy = (fixture: Pick<Fixture, 'kind' | 'worked'>): Fixture['worked'] =>
  fixture.worked ?? fixtureKind(fixture.kind).worked?.[0];

export function fixtureKind(id: FixtureKindId): FixtureKind {
  const kind = FIXTURE_KINDS.find((candidate) => candidate.id === id);
  if (!kind) throw new Error(`unknown fixture kind ${id}`);
  return kind;
}
