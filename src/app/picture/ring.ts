// How a surface that has a part in the step is outlined: cleaned before touched before changed.
import type { SeenSurface } from '../model/picture.ts';

/** Class of the outline; undefined where the step leaves the surface alone. */
export function ringOf({ cleaned, touched, changed }: SeenSurface): string | undefined {
  if (cleaned) return 'ring cleaned';
  if (touched) return 'ring touched';
  return changed ? 'ring changed' : undefined;
}
