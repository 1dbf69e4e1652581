// What a guide is made from: the procedure with its identity, who may read it in which language, and the unit's own
// settings and plan. Plain data that the shell holds; the same data make the same script again after a crash.
import type { Procedure } from '../domain/procedure.ts';
import type { ProductId } from '../domain/products.ts';
import type { EmergencyId } from '../domain/emergencies.ts';
import type { Language, Overrides } from '../words/index.ts';
import type { Display } from './fit.ts';

/** Which bytes the procedure was read from: what an approval is of. */
export interface Identity {
  readonly procedure: string;
  readonly version: string;
  /** SHA-256 of the file's text, hexadecimal. */
  readonly content: string;
}

/** A time of the unit's own, from a product's label or its instructions, with where it is written. */
export interface ProductTime {
  readonly contactSeconds?: number;
  readonly rubSeconds?: number;
  readonly drySeconds?: number;
  readonly source: string;
}

export interface WearLimit {
  readonly limitMinutes: number;
  /** How long before the end it warns; the evidence's judgement when absent. */
  readonly warnMinutes?: number;
  readonly source: string;
}

/** One card of the unit's own plan: its own sentences, in the order in which they are done. */
export interface UnitCard {
  readonly actions: readonly string[];
  readonly rinseMinutes?: number;
}

/** The unit's exposure plan. Its words are shown before anything published. */
export interface UnitPlan {
  readonly title: string;
  readonly approvedBy: string;
  readonly date: string;
  readonly phones: readonly { readonly who: string; readonly number: string }[];
  /** Who goes in to a wearer who cannot come out: a role or a team, never the observer. */
  readonly rescuer?: string;
  readonly cards: Readonly<Partial<Record<EmergencyId, UnitCard>>>;
}

/** A piece of equipment with its size and lot, as they stand on its pack; null where nobody read it. */
export interface Pack {
  readonly item: string;
  readonly size: string | null;
  readonly lot: string | null;
}

export interface UnitSettings {
  readonly display: Display;
  /** By the name of a person in the procedure; English where it names none. */
  readonly languages: Readonly<Record<string, Language>>;
  readonly wording?: Overrides;
  readonly times?: Readonly<Partial<Record<ProductId, ProductTime>>>;
  readonly wear?: WearLimit;
  readonly plan?: UnitPlan;
  /** What somebody read on the packs before this donning: written with the way in. */
  readonly packs?: readonly Pack[];
}

export interface Setup {
  readonly identity: Identity;
  readonly procedure: Procedure;
  readonly unit: UnitSettings;
}

export const languageFor = ({ unit }: Setup, person: string): Language => unit.languages[person] ?? 'en';

/** The languages in use, in the order of the people. */
export const languagesOf = (setup: Setup): readonly Language[] => [
  ...new Set(setup.procedure.people.map(({ id }) => languageFor(setup, id))),
];
