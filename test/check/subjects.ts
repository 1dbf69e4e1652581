// Procedures on which the laws of the check are tried: a published one that opens nothing, one that opens a route, the
// faulty version of the invented unit, the everyday example, and a donning. Checked once each, against both agents.
import type { Procedure } from '../../src/domain/procedure.ts';
import { AGENTS } from '../../src/domain/products.ts';
import { type Verdict, verifyProcedure } from '../../src/verify.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { goodDoffing } from '../support/good.ts';

export const SUBJECTS: readonly (readonly [string, Procedure])[] = [
  ['the good doffing', goodDoffing()],
  ...[
    'national-papr-coverall-doffing.yaml',
    'larkmoor-suit-doffing.yaml',
    'everyday-example-1-doffing.yaml',
    'international-gown-donning.yaml',
  ].map((file) => [file, procedureOf(file)] as const),
];

const KNOWN = new Map<Procedure, Verdict>();

/** The verdict without mends and variants; worked out once. */
export function verdictOf(procedure: Procedure): Verdict {
  const known =
    KNOWN.get(procedure) ?? verifyProcedure(procedure, { agents: AGENTS, mends: false, variants: false });
  KNOWN.set(procedure, known);
  return known;
}
