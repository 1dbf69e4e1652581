// The door to the guide: a script made from a procedure, an exit begun from it, one event after the other, what a screen
// shows of it, and the same exit rebuilt from its entries.
export { assistedSteps, begin, type Begun, type Mode, type Occasion } from './begin.ts';
export { changesIn, type Continuation, type Found, type Place } from './continuation.ts';
export type { GuideEntry } from './entries.ts';
export type { Effect, Event, Press } from './events.ts';
export { capitalHeight, fitOf, type OwnFit, ownFitOf, type OwnScreen } from './fit.ts';
export type { Known } from './known.ts';
export { scriptOf } from './makeScript.ts';
export { next } from './next.ts';
export { replay } from './replay.ts';
export { timerKind } from './evolve.ts';
export { type Screen, screenOf } from './screen.ts';
export type { Script } from './script.ts';
export type { Setup, UnitPlan, UnitSettings } from './setup.ts';
export type { Core, People, State } from './state.ts';
export { reachedAfter } from './suspected.ts';
