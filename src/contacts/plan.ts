// The plan: what each step touches, and nothing else. The engine sees only this: surfaces and basic
// events by number, and four operations (plus `taint`, the start). No item, product or technique is named
// here, so a new gown changes tables, never the engine.

export type SurfaceClass = 'mucosa' | 'skin' | 'clothes' | 'shoes' | 'clean-side' | 'equipment' | 'fixture';

export interface Surface {
  /** Stable, e.g. `wearer.hand.left`, `wearer.outer-gloves.left.outside`, `room.clean-chair.seat`. */
  readonly id: string;
  readonly class: SurfaceClass;
  /** Skin, mucosa, underclothes, shoes, the clean side: an open route here is a fault. */
  readonly protected: boolean;
  /**
   * Judged at any moment (`ever`), or as it leaves at the end (`end`: shoes, which a good procedure wipes).
   */
  readonly judged: 'ever' | 'end';
  /** The person it belongs to; absent for fixtures. */
  readonly person?: string;
}

/**
 * A slip (somebody's) or a circumstance (something's). Its index in `Plan.events` is its variable; the order
 * is the order of the procedure.
 */
export interface BasicEvent {
  /** Stable: step id and slip, e.g. `s12:wrong-grip` or `start:soiled-strap:wearer.goggles.strap`. */
  readonly key: string;
  readonly kind: 'slip' | 'circumstance';
  /** Id in the slips table. */
  readonly what: string;
  /** Index of the step, -1 for the start. */
  readonly step: number;
  /** Who slips; absent for circumstances. */
  readonly who?: string;
  /** Surfaces and items the sentence needs. */
  readonly on?: string;
  /** Evidence id of its chance. */
  readonly prior: string;
  /** Whether the observer can see it happen. */
  readonly visible: boolean;
}

/** All of these events together; the empty guard always holds. */
export type Guard = readonly number[];

export const ALWAYS: Guard = [];

/** contact: `u = a or b`, both become `self or (when and u)`. */
export interface Contact {
  readonly op: 'contact';
  readonly a: number;
  readonly b: number;
  readonly when: Guard;
}

/** sanitise: `a` becomes `a and (failure[0] or failure[1] ...)`. `[ALWAYS]` = not credited, `[]` = never fails. */
export interface Sanitise {
  readonly op: 'sanitise';
  readonly a: number;
  readonly failure: readonly Guard[];
}

/** fresh: `a` becomes `false` (from the box). retire: the surface leaves; its condition ends there. */
export interface Fresh {
  readonly op: 'fresh' | 'retire';
  readonly a: number;
}

/** taint: `a` becomes `a or when`: where contamination starts. */
export interface Taint {
  readonly op: 'taint';
  readonly a: number;
  readonly when: Guard;
}

export type Operation = Contact | Sanitise | Fresh | Taint;

export interface PlanStep {
  /** Stable id of the step in its procedure. */
  readonly id: string;
  readonly operations: readonly Operation[];
}

export interface Plan {
  readonly surfaces: readonly Surface[];
  readonly events: readonly BasicEvent[];
  readonly start: readonly Operation[];
  readonly steps: readonly PlanStep[];
}
