// The quick check of a draft: conditions, findings with their routes, and the board; no chances, mends or variants. Its time is
// what bench/edit.ts measures.
import type { Finding } from '../../../check/finding.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { readProcedure } from '../../../language/index.ts';
import { verifyProcedure } from '../../../verify.ts';
import type { Judged } from '../../check/result.ts';
import { boardOf } from '../../model/board.ts';

let known: { readonly text: string; readonly procedure: Procedure | undefined } | undefined;

/** A donning is read once, not at every edit. */
function donningOf(text: string | undefined): Procedure | undefined {
  if (text === undefined) return undefined;
  if (known?.text !== text) known = { text, procedure: readProcedure(text).procedure };
  return known.procedure;
}

function withoutReplay(finding: Finding): Finding {
  const { replay: _, ...rest } = finding;
  return rest;
}

export function quickCheck(draft: Procedure, donning?: string): Judged {
  const { procedure, hash, findings, surfaces, measures, analyses, limits } = verifyProcedure(
    draft,
    { mends: false, variants: false, surfaces: false },
    donningOf(donning),
  );
  const boards = analyses.map(({ compiled, conditions }) => boardOf(compiled, conditions));
  // Nothing of a draft that is being edited can be replayed.
  const unnamed = findings.map(withoutReplay);
  return { procedure, hash, boards, findings: unnamed, surfaces, measures, limits };
}
