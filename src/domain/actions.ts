// The actions: what a step can tell somebody to do, and which of a step's fields each one needs. The
// language checks a file against this table, so an action added here is read, printed and completed by editors.

export type StepField =
  | 'items'
  | 'side'
  | 'part'
  | 'of'
  | 'technique'
  | 'product'
  | 'fixture'
  | 'zone'
  | 'helper'
  | 'place';

export interface Action {
  readonly id: string;
  readonly needs: readonly StepField[];
  readonly may: readonly StepField[];
  /** Starting technique when a step names none; absent where the choice must be written down. */
  readonly usual?: string;
}

export const ACTIONS = [
  // Taking off and putting on.
  { id: 'remove', needs: ['items'], may: ['side', 'of', 'technique', 'helper', 'fixture'] },
  { id: 'put-on', needs: ['items'], may: ['side', 'of', 'technique', 'helper', 'fixture'] },
  { id: 'unfasten', needs: ['items'], may: ['of', 'technique', 'helper', 'part'] },
  { id: 'fasten', needs: ['items'], may: ['of', 'technique', 'helper', 'part'] },
  // Cleaning.
  { id: 'sanitise', needs: ['product'], may: ['technique', 'fixture'] },
  { id: 'wipe', needs: ['product'], may: ['items', 'side', 'part', 'of', 'technique', 'fixture'] },
  // Looking and speaking: no contact of their own.
  { id: 'inspect', needs: [], may: ['items', 'of', 'technique', 'helper'] },
  { id: 'say', needs: [], may: ['helper'] },
  // Moving about.
  { id: 'move', needs: ['zone'], may: ['technique', 'fixture'] },
  { id: 'step-on', needs: ['fixture'], may: ['technique'] },
  { id: 'sit', needs: ['fixture'], may: ['technique'] },
  { id: 'stand', needs: [], may: ['technique', 'fixture'] },
  // Anything a hand does to a fixture, an item or a place.
  { id: 'touch', needs: [], may: ['fixture', 'items', 'part', 'of', 'place', 'side', 'technique'] },
] as const satisfies readonly Action[];

export type ActionId = (typeof ACTIONS)[number]['id'];
export const ACTION_IDS: readonly ActionId[] = ACTIONS.map((action) => action.id);
