// A basic event's key, read back into what happened where: the same in every language. Keys are made in contacts/:
// `step:slip`, `step:slip:apart`, `start:circumstance:on`.
import { type SlipId, slipOf, SLIPS } from '../domain/slips.ts';
import type { Step } from '../domain/procedure.ts';
import { evidence, type EvidenceStatus, evidenceStatuses } from '../evidence/index.ts';
import type { Setting } from './words.ts';

export interface EventRead {
  readonly what: SlipId;
  /** Index of the step, -1 for the start. */
  readonly index: number;
  readonly step?: Step;
  /** For the start: the surface, layer or person it is about. For a step: what tells two of a kind apart. */
  readonly on: string;
}

const IDS: ReadonlySet<string> = new Set(SLIPS.map((slip) => slip.id));
const isSlip = (text: string): text is SlipId => IDS.has(text);

/** Undefined where the key is not of this procedure. */
export function readEvent(setting: Setting, key: string): EventRead | undefined {
  const [where = '', what = '', ...rest] = key.split(':');
  if (!isSlip(what)) return undefined;
  const on = rest.join(':');
  if (where === 'start') return { what, index: -1, on };
  const index = setting.steps.findIndex((step) => step.id === where);
  const step = setting.steps[index];
  return step ? { what, index, step, on } : undefined;
}

/** The weakest status among these, for a number that rests on all of them. */
function weakest(statuses: readonly EvidenceStatus[]): EvidenceStatus {
  const rank = Math.max(0, ...statuses.map((status) => evidenceStatuses.indexOf(status)));
  return evidenceStatuses[rank] ?? 'judgement';
}

const statusOf = (what: SlipId): EvidenceStatus => evidence(slipOf(what).prior).status;

/** What the chances of all slips rest on, taken together: what any chance of the check rests on. */
export const CHANCE_STATUS: EvidenceStatus = weakest(SLIPS.map((slip) => statusOf(slip.id)));
