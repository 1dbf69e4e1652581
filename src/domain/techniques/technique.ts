// What a technique is: one way to do an action on a group of items, with what it touches, what it needs, what
// it uses up, how long it takes, and which published practice it departs from. Contacts are our reading of
// published step texts (judgement); each table names the protocol its entries come from.
import type { EvidenceId, PracticeRuleId } from '../../evidence/index.ts';
import type { ActionId } from '../actions.ts';
import type { ItemGroup } from '../items.ts';
import { fixture, hands, type Move, type Need, part, place, slip, touch, type Use, floor } from '../moves.ts';

export interface Technique {
  readonly id: string;
  readonly action: ActionId;
  /** Groups of the step's first item; empty where the technique takes no item, or any. */
  readonly groups: readonly ItemGroup[];
  /** Also for an item of whatever group: looking and touching. */
  readonly anyItem?: boolean;
  /** Groups of the other items, for techniques that take several off together. */
  readonly together?: readonly ItemGroup[];
  /** Assumed when a step names no technique. */
  readonly usual?: boolean;
  readonly moves: readonly Move[];
  readonly needs?: readonly Need[];
  readonly uses?: readonly Use[];
  readonly time: EvidenceId;
  /** Practice rules that choosing this technique departs from. */
  readonly breaks?: readonly PracticeRuleId[];
  /** Where the technique is written down. */
  readonly from?: EvidenceId;
}

/** Into the bin: a lid worked by hand is a contact, a full bin touches hand and item. */
export const DISCARD: readonly Move[] = [
  touch(hands(), fixture('bin', 'lid'), { worked: 'hand' }),
  slip('touch-fixture', hands(), fixture('bin', 'lid')),
  slip('full-bin', part(['outside', 'front', 'unit', 'upper'], 'both'), fixture('bin', 'lid')),
  slip('full-bin', hands(), fixture('bin', 'lid')),
];

/** A helper close by: steps over the line, or bumps into the wearer (Gurses 2019). */
export const HELPED: readonly Move[] = [
  slip('cross-line', place(['sole'], 'both', 'helper'), floor('clean'), { helped: true }),
  slip('bump', place(['chest'], 'both', 'owner'), place(['chest'], 'both', 'helper'), { helped: true }),
];

/** Wiping one's brow or pushing hair back once headgear is off, whoever took it off (trained-observer module, page 21). */
export const REACH: readonly Move[] = [
  slip('reach-to-face', hands('owner'), place(['face', 'eyes', 'nose', 'mouth'])),
];
