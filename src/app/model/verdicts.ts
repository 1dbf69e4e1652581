// The verdicts on protected surfaces in the order of worry, and the weakest thing that their numbers rest on.
import type { SurfaceVerdict } from '../../check/finding.ts';
import { type SlipId, slipOf, SLIPS } from '../../domain/slips.ts';
import { evidence, type EvidenceStatus, evidenceStatuses } from '../../evidence/index.ts';
import { words } from '../words.ts';

const SLIP_IDS: ReadonlySet<string> = new Set(SLIPS.map((slip) => slip.id));

/** The slip that an event's key (`step:slip`, `step:slip:apart`, `start:slip:on`) is about. */
export function slipIn(event: string): SlipId | undefined {
  const what = event.split(':')[1] ?? '';
  return SLIP_IDS.has(what) ? (what as SlipId) : undefined;
}

/** The weakest status among the chances of these events; judgement where one is not known. */
export function statusOf(events: readonly string[]): EvidenceStatus {
  const ranks = events.map((event) => {
    const slip = slipIn(event);
    const status = slip === undefined ? 'judgement' : evidence(slipOf(slip).prior).status;
    return evidenceStatuses.indexOf(status);
  });
  return (
    evidenceStatuses[ranks.length === 0 ? evidenceStatuses.length - 1 : Math.max(...ranks)] ?? 'judgement'
  );
}

/** '0.8 % (0.1 % to 3 %)'. */
export function chanceRange({ chance, interval }: Pick<SurfaceVerdict, 'chance' | 'interval'>): string {
  return `${words.percent(chance)} (${words.percent(interval.low)} to ${words.percent(interval.high)})`;
}

const barrierRank = ({ barriers }: SurfaceVerdict): number => barriers ?? Number.MAX_SAFE_INTEGER;

/** Fewest barriers first, then the likelier. The given order (worst class first) decides between equals. */
export const byWorst = (verdicts: readonly SurfaceVerdict[]): readonly SurfaceVerdict[] =>
  verdicts.toSorted((a, b) => barrierRank(a) - barrierRank(b) || b.chance - a.chance);
