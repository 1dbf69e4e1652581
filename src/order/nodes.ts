// The shape of the graph of worn scenes: a node is a scene with its flags, an arc one move carried out in it.
import type { Performed } from '../contacts/interpret.ts';
import type { Operation } from '../contacts/plan.ts';
import type { Scene } from '../contacts/scene.ts';
import type { Draft } from './drafts.ts';
import type { Flags } from './flags.ts';

export interface Arc {
  readonly draft: Draft;
  readonly from: Node;
  readonly to: Node;
  readonly performed: readonly Performed[];
  /** Steps at its beginning that are hygiene owed to the move before. */
  readonly owed: number;
  readonly operations: readonly Operation[];
  readonly seconds: number;
  /** Departures from practice that it adds and that are not accepted. */
  readonly departures: number;
}

export interface Node {
  readonly index: number;
  readonly scene: Scene;
  readonly flags: Flags;
  /** Grows along every arc. */
  readonly rank: number;
  readonly arcs: Arc[];
  /** One way to get here; undefined for the first. */
  readonly via: Arc | undefined;
  readonly done: boolean;
}
