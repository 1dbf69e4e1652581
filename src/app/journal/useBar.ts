// Whether this device's role keeps it from writing a kind: asked by every form that writes one, before anything is typed.
import { useSyncExternalStore } from 'react';
import type { KindName } from '../../journal/kinds/index.ts';
import { onRole, roleHere } from '../sync/paired.ts';
import { barOf } from './roleLimit.ts';

/** The sentence to be shown beside a press that cannot be made; undefined where it can. */
export const useBar = (kind: KindName): string | undefined =>
  barOf(useSyncExternalStore(onRole, roleHere), kind);
