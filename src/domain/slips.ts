// The slips: the ways a step goes wrong, and the circumstances that may hold before it starts. 'Slip' means any
// deviation (Krein 2018 counted more mistakes and violations than slips). Every chance comes from evidence;
// `visible` says whether an observer standing by could see it happen. Visibility is our judgement.
import type { EvidenceId } from '../evidence/index.ts';

export interface Slip {
  readonly id: string;
  readonly kind: 'slip' | 'circumstance';
  readonly prior: EvidenceId;
  readonly visible: boolean;
}

const somebody = <Id extends string, Prior extends EvidenceId>(id: Id, prior: Prior, visible = true) =>
  ({ id, kind: 'slip', prior, visible }) as const;
const something = <Id extends string, Prior extends EvidenceId>(id: Id, prior: Prior) =>
  ({ id, kind: 'circumstance', prior, visible: false }) as const;

export const SLIPS = [
  somebody('omitted-hygiene', 'slip.omitted-hygiene'),
  somebody('inadequate-hygiene', 'slip.inadequate-hygiene', false),
  somebody('omitted-wipe', 'slip.omitted-hygiene'),
  somebody('wipe-missed-area', 'slip.wipe-missed-area', false),
  somebody('wipe-too-short', 'slip.wipe-too-short'),
  somebody('wrong-grip', 'slip.wrong-grip'),
  somebody('touch-beneath', 'slip.wrong-grip', false),
  somebody('snap', 'slip.snap'),
  somebody('brush', 'slip.brush'),
  somebody('swing', 'slip.brush'),
  somebody('bump', 'slip.brush'),
  somebody('edge-curls', 'slip.edge-curls'),
  somebody('second-hand-on-front', 'slip.two-hands-on-zip'),
  somebody('strap-slips', 'slip.wrong-grip'),
  somebody('reach-to-face', 'slip.reach-to-face'),
  somebody('leg-on-leg', 'slip.leg-on-leg'),
  somebody('loses-balance', 'slip.balance'),
  somebody('ankle-touch', 'slip.wrong-grip'),
  somebody('touch-fixture', 'slip.touch-fixture'),
  somebody('cross-line', 'slip.cross-line'),
  somebody('missed-tear', 'slip.missed-inspection', false),
  something('pinhole', 'circumstance.glove-pinhole'),
  something('worn-through', 'circumstance.glove-perforated-in-use'),
  something('unclean-hands', 'circumstance.dirty-lever'),
  something('soiled-strap', 'circumstance.soiled-strap'),
  something('soiled-back', 'circumstance.soiled-back'),
  something('full-bin', 'circumstance.full-bin'),
  something('dirty-lever', 'circumstance.dirty-lever'),
  something('stated-maybe', 'circumstance.soiled-back'),
] as const satisfies readonly Slip[];

export type SlipId = (typeof SLIPS)[number]['id'];

const BY_ID: ReadonlyMap<string, Slip> = new Map(SLIPS.map((slip) => [slip.id, slip]));

/** The table's entry. Throws on an unknown id, which only a broken table can cause. */
export function slipOf(id: SlipId): Slip {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`unknown slip ${id}`);
  return found;
}
