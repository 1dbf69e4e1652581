// How long a run takes and whom it ties up. Steps follow one another; their times rest on judgement (no published time
// per step was found), so a total has an interval: all steps that lean on one record share its draw.
import type { Compiled } from '../contacts/interpret.ts';
import type { Performed } from '../contacts/performed.ts';
import type { Role, Step } from '../domain/procedure.ts';
import { sigmaOf } from '../engine/distributions.ts';
import { spreadOf } from '../engine/draws.ts';
import { randomOf } from '../engine/random.ts';
import { normalQuantile } from '../engine/special.ts';
import { evidence, type EvidenceId, evidenceNumber } from '../evidence/index.ts';

export interface Spell {
  readonly seconds: number;
  /** 90 % interval from the uncertainty of the steps' times. */
  readonly interval: { readonly low: number; readonly high: number };
}

export interface PersonTime {
  readonly person: string;
  readonly role: Role;
  /** In steps that the person does, helps with, answers or has done to them. */
  readonly handsOn: Spell;
  /** Kept from other work: see `PRESENCE`. */
  readonly tiedUp: Spell;
  /** First and last step that needs the person; absent where none does. */
  readonly steps?: readonly [first: number, last: number];
}

export const PRESENCE: EvidenceId = 'supply.presence';

/** The same draws wherever times are compared. */
const DRAWS = 10_000;
const SEED = 20_261_125;

/** Seconds of one record: its value, and draws around it. */
function drawn(id: EvidenceId): Float64Array {
  const { distribution } = evidence(id);
  const column = new Float64Array(DRAWS);
  if (distribution?.kind !== 'lognormal') return column.fill(evidenceNumber(id));
  const random = randomOf(SEED, id);
  const spread = sigmaOf(distribution.errorFactor);
  return column.map(() => distribution.median * Math.exp(spread * normalQuantile(random())));
}

const KNOWN = new Map<EvidenceId, Float64Array>();

function columnOf(id: EvidenceId): Float64Array {
  const known = KNOWN.get(id) ?? drawn(id);
  KNOWN.set(id, known);
  return known;
}

/** How often each record of time is used in these steps. */
function tally(performed: readonly Performed[]): ReadonlyMap<EvidenceId, number> {
  const found = new Map<EvidenceId, number>();
  for (const { technique } of performed) found.set(technique.time, (found.get(technique.time) ?? 0) + 1);
  return found;
}

/** Draws of the time that these steps take together, in seconds. */
export function timeColumn(performed: readonly Performed[]): Float64Array {
  const total = new Float64Array(DRAWS);
  for (const [id, count] of tally(performed))
    columnOf(id).forEach((seconds, at) => {
      total[at] = (total[at] ?? 0) + count * seconds;
    });
  return total;
}

export function spellOf(performed: readonly Performed[]): Spell {
  const seconds = performed.reduce((sum, { technique }) => sum + evidenceNumber(technique.time), 0);
  const { low, high } = spreadOf(timeColumn(performed));
  return { seconds, interval: { low, high } };
}

const takesPart = (step: Step, person: string): boolean =>
  step.who === person || step.helper === person || step.of === person;

/** Per person of the procedure, in its order. */
export function peopleTimes({ procedure, performed }: Compiled): readonly PersonTime[] {
  return procedure.people.map(({ id, role }) => {
    const own = performed.filter(({ step }) => takesPart(step, id));
    const first = performed.findIndex(({ step }) => takesPart(step, id));
    const last = performed.findLastIndex(({ step }) => takesPart(step, id));
    const whole = role !== 'assistant';
    return {
      person: id,
      role,
      handsOn: spellOf(own),
      tiedUp: spellOf(whole ? performed : first < 0 ? [] : performed.slice(first, last + 1)),
      ...(first < 0 ? {} : { steps: [first, last] as const }),
    };
  });
}

/** Records that the times of a run rest on, in the order of their first use. */
export const timeRecords = (performed: readonly Performed[]): readonly EvidenceId[] => [
  ...tally(performed).keys(),
];
