// What a claim is: something that a published study or step text implies, in our own words, with the size that the note of
// these claims derived for it, our answer for each agent, and why the two differ where they do. No paper prints these
// sizes: they were derived from step texts before the model existed, so a difference is explained, never tuned away.
import type { Agent } from '../../../src/domain/products.ts';
import type { EvidenceId } from '../../../src/evidence/index.ts';
import type { Size } from '../ask.ts';

/** A size (slips and circumstances at least, 0 = nobody needs to slip, `none` = nothing reaches it), yes, no, or a count. */
export type Answer = Size | 'yes' | 'no';

export interface Point {
  /** Which procedure, which surface, by which event. */
  readonly asks: string;
  /** What the claim expects here; `–` where it names no size. */
  readonly expected: string;
  readonly ours: Readonly<Record<Agent, Answer>>;
  readonly find: (agent: Agent) => Answer;
}

type Verdict = 'agrees' | 'agrees in part' | 'differs' | 'cannot be reproduced';

export interface Claim {
  readonly id: `V${number}`;
  readonly claim: string;
  readonly sources: readonly EvidenceId[];
  readonly verdict: Verdict;
  /** Why our answer differs, or what of the claim the model cannot say; absent where it agrees in full. */
  readonly why?: string;
  readonly points: readonly Point[];
}

/** The same answer for both agents. */
export const both = (answer: Answer): Point['ours'] => ({ enveloped: answer, 'non-enveloped': answer });
export const each = (enveloped: Answer, nonEnveloped: Answer): Point['ours'] => ({
  enveloped,
  'non-enveloped': nonEnveloped,
});

export const point = (asks: string, expected: string, ours: Point['ours'], find: Point['find']): Point => ({
  asks,
  expected,
  ours,
  find,
});

export const yesNo = (holds: boolean): Answer => (holds ? 'yes' : 'no');
