// Another way on, as the shell's search answers: the steps in place of the rest, and what they are worth. Slips and
// circumstances that it takes at least to reach something protected, as read and this way; null where nothing does.
import type { Step } from '../domain/procedure.ts';

export interface Continuation {
  readonly id: string;
  readonly steps: readonly Step[];
  readonly barriers: { readonly before: number | null; readonly after: number | null };
}
