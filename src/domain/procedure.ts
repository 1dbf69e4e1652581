// The procedure: names resolved, positions gone. It says who does what to which item with which technique;
// whether it is possible, and what it touches, is worked out in contacts/. Versions are never edited.
import type { ActionId } from './actions.ts';
import type { ItemId, PartId } from './items.ts';
import type { Place, Side } from './places.ts';
import type { Agent, ProductId } from './products.ts';
import type { Fixture, Zone } from './room.ts';
import type { TechniqueId } from './techniques/index.ts';

export const ROLES = ['wearer', 'observer', 'assistant'] as const;
export type Role = (typeof ROLES)[number];

export const KINDS = ['doffing', 'donning'] as const;
export type ProcedureKind = (typeof KINDS)[number];

export interface Person {
  /** Name in the file; also the first word of its surfaces (`wearer.hand.left`). Never a real name. */
  readonly id: string;
  readonly role: Role;
  /** Worn at the start in the order of putting on: each lies over those before it. */
  readonly wears: readonly ItemId[];
  /** Worn beneath and kept on: scrubs and shoes unless the file says otherwise. */
  readonly underneath: readonly ItemId[];
  /** Zone in which the person stands at the start. */
  readonly starts: string;
  readonly hand: Side;
  /** Places this ensemble leaves bare on purpose (an everyday set leaves scalp and neck). */
  readonly leavesBare: readonly Place[];
}

/** A surface of the start, by its id, whose condition the file states. */
export interface StartingState {
  readonly surface: string;
  readonly state: 'contaminated' | 'uncontaminated' | 'maybe';
  readonly reason?: string;
}

export interface Step {
  /** Stable within its procedure; survives moves, so that variants and records can name it. */
  readonly id: string;
  readonly who: string;
  readonly action: ActionId;
  /** The items it is done to; more than one only for techniques that take several off together. */
  readonly items: readonly ItemId[];
  /** One of a pair only. */
  readonly side?: Side;
  readonly part?: PartId;
  /** Whose items, when not the doer's own. */
  readonly of?: string;
  readonly technique?: TechniqueId;
  readonly product?: ProductId;
  /** Fixture it is done to, on or at. */
  readonly fixture?: string;
  /** Zone moved to. */
  readonly zone?: string;
  readonly helper?: string;
  /** Place touched, for `touch`. */
  readonly place?: Place;
  /** Kept as it is, and in this order among its like, by a search for a better order. */
  readonly pinned?: true;
  readonly note?: string;
}

/** A departure from published practice that the unit accepts, in writing. */
export interface Acceptance {
  /** Finding code or practice id, e.g. `practice.hygiene-after-each-glove-removal`. */
  readonly finding: string;
  /** Step id; every place it applies when absent. */
  readonly step?: string;
  readonly surface?: string;
  readonly reason: string;
  readonly by: string;
  /** ISO dates. */
  readonly date: string;
  readonly review: string;
}

export interface ProcedureSource {
  readonly title: string;
  readonly publisher: string;
  readonly year?: string;
  readonly where?: string;
  /** What was read at the source, what is from memory, what we interpreted. */
  readonly seen: string;
  readonly memory?: string;
  readonly interpreted?: string;
}

export interface Policy {
  /** Spraying counts as cleaning only when the unit says so (WHO 2023 advises against). */
  readonly creditSpraying: boolean;
  /** Observer's chance to miss a visible slip: evidence id, with its dependence; no credit when absent. */
  readonly observer?: { readonly misses: string; readonly dependence: Dependence };
}

export const DEPENDENCES = ['zero', 'low', 'moderate', 'high', 'complete'] as const;
export type Dependence = (typeof DEPENDENCES)[number];

export interface Procedure {
  readonly title: string;
  readonly kind: ProcedureKind;
  readonly version: string;
  /** Invented, and says so on every screen and print. */
  readonly invented: boolean;
  readonly about?: string;
  readonly source?: ProcedureSource;
  readonly agents: readonly Agent[];
  readonly people: readonly Person[];
  readonly zones: readonly Zone[];
  readonly fixtures: readonly Fixture[];
  readonly products: readonly ProductId[];
  readonly start: readonly StartingState[];
  readonly policy: Policy;
  readonly steps: readonly Step[];
  readonly accepted: readonly Acceptance[];
  /** File name of the donning that this doffing undoes. */
  readonly donning?: string;
}
