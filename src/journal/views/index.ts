// Every view that leaves snapshots, for whoever checks or rebuilds them all.
import type { Plain } from '../canonical.ts';
import type { View } from '../fold.ts';
import { roomView } from './room.ts';
import { versionsView } from './versions.ts';

/** A view among others: what its state is made of only the view itself knows. */
const anyView = <State extends Plain>(view: View<State>): View<Plain> => view as unknown as View<Plain>;

export const VIEWS: readonly View<Plain>[] = [anyView(roomView), anyView(versionsView)];
