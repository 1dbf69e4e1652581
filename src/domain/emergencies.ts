// Emergencies: for each the published first actions in their order, each with the record that says where it comes from,
// and what is timed. A unit's own plan and phone list stand before them (guide/emergency.ts): published cards contradict
// one another (`emergency.bleeding-disputed`). No drug is ever named: what is given afterwards is a physician's decision.
import type { EvidenceId } from '../evidence/index.ts';

export const EMERGENCY_ACTIONS = [
  { id: 'stand-still', evidence: 'emergency.stand-still' },
  { id: 'leave', evidence: 'emergency.leave' },
  { id: 'whole-exit', evidence: 'emergency.whole-exit' },
  { id: 'report', evidence: 'emergency.report' },
  { id: 'clean-gloves', evidence: 'emergency.clean-gloves' },
  { id: 'outer-off', evidence: 'emergency.outer-off' },
  { id: 'inner-look', evidence: 'emergency.inner-look' },
  { id: 'inner-change', evidence: 'emergency.inner-change' },
  { id: 'cover-tear', evidence: 'emergency.cover-tear' },
  { id: 'look-skin', evidence: 'emergency.look-skin' },
  { id: 'flush-skin', evidence: 'emergency.flush-skin' },
  { id: 'free-face', evidence: 'emergency.free-face' },
  { id: 'flush-eyes', evidence: 'emergency.flush-eyes' },
  { id: 'flush-mouth', evidence: 'emergency.flush-mouth' },
  { id: 'secure-sharp', evidence: 'emergency.secure-sharp' },
  { id: 'wash-wound', evidence: 'emergency.wash-wound' },
  { id: 'no-antiseptic', evidence: 'emergency.wound-no-antiseptic' },
  { id: 'bleeding-disputed', evidence: 'emergency.bleeding-disputed' },
  { id: 'face-seal', evidence: 'emergency.face-seal' },
  { id: 'air-stops', evidence: 'emergency.air-stops' },
  { id: 'hood-stays', evidence: 'emergency.hood-stays' },
  { id: 'observer-out', evidence: 'emergency.observer-out' },
  { id: 'rescuer', evidence: 'emergency.rescuer' },
  { id: 'breathing', evidence: 'emergency.breathing' },
  { id: 'life-first', evidence: 'emergency.life-first' },
  { id: 'move-out', evidence: 'emergency.move-out' },
  { id: 'cool', evidence: 'emergency.cool' },
  { id: 'sit-forward', evidence: 'emergency.sit-forward' },
  { id: 'face-after-vomit', evidence: 'emergency.face-after-vomit' },
  { id: 'observer-successor', evidence: 'emergency.observer-successor' },
  { id: 'observer-exit', evidence: 'emergency.observer-exit' },
  { id: 'fire-plan', evidence: 'emergency.fire-plan' },
  { id: 'fire-leave', evidence: 'emergency.fire-leave' },
  { id: 'fire-apart', evidence: 'emergency.fire-apart' },
] as const satisfies readonly { readonly id: string; readonly evidence: EvidenceId }[];

export type EmergencyActionId = (typeof EMERGENCY_ACTIONS)[number]['id'];

export interface Emergency {
  readonly id: string;
  readonly actions: readonly EmergencyActionId[];
  /** What is timed once somebody starts it; the record gives minutes. */
  readonly rinse?: EvidenceId;
}

export const EMERGENCIES = [
  {
    id: 'glove-tear',
    actions: ['stand-still', 'clean-gloves', 'outer-off', 'inner-look', 'inner-change', 'report'],
  },
  {
    id: 'suit-tear',
    actions: ['stand-still', 'leave', 'cover-tear', 'whole-exit', 'look-skin', 'report'],
  },
  {
    id: 'splash-skin',
    actions: ['stand-still', 'leave', 'whole-exit', 'flush-skin', 'report'],
  },
  {
    id: 'splash-face',
    actions: ['stand-still', 'leave', 'free-face', 'flush-eyes', 'flush-mouth', 'whole-exit', 'report'],
    rinse: 'emergency.rinse-minutes',
  },
  {
    id: 'sharps',
    actions: [
      'stand-still',
      'secure-sharp',
      'leave',
      'whole-exit',
      'wash-wound',
      'no-antiseptic',
      'bleeding-disputed',
      'report',
    ],
    rinse: 'emergency.wash-minutes',
  },
  {
    id: 'respirator-failure',
    actions: ['face-seal', 'leave', 'whole-exit', 'report'],
  },
  {
    id: 'powered-air-failure',
    actions: ['air-stops', 'hood-stays', 'whole-exit', 'report'],
  },
  {
    id: 'faint',
    actions: ['observer-out', 'rescuer', 'breathing', 'life-first', 'move-out', 'cool', 'report'],
  },
  {
    id: 'vomit',
    actions: [
      'sit-forward',
      'observer-out',
      'rescuer',
      'face-after-vomit',
      'flush-mouth',
      'whole-exit',
      'report',
    ],
  },
  {
    id: 'observer-contaminated',
    actions: ['stand-still', 'observer-successor', 'observer-exit', 'report'],
  },
  {
    id: 'fire',
    actions: ['fire-plan', 'fire-leave', 'fire-apart', 'report'],
  },
] as const satisfies readonly Emergency[];

export type EmergencyId = (typeof EMERGENCIES)[number]['id'];
export const EMERGENCY_IDS: readonly EmergencyId[] = EMERGENCIES.map(({ id }) => id);

const BY_ID: ReadonlyMap<string, Emergency> = new Map(EMERGENCIES.map((one) => [one.id, one]));

/** The table's entry. Throws on an id that the type does not allow. */
export function emergencyOf(id: EmergencyId): Emergency {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`unknown emergency ${id}`);
  return found;
}

const EVIDENCE: ReadonlyMap<EmergencyActionId, EvidenceId> = new Map(
  EMERGENCY_ACTIONS.map(({ id, evidence }) => [id, evidence]),
);

/** The record that says where an action comes from. */
export function actionEvidence(id: EmergencyActionId): EvidenceId {
  const found = EVIDENCE.get(id);
  if (!found) throw new Error(`unknown action ${id}`);
  return found;
}
