// Records and journal belong together, for every program that opens both.
import type { Context } from './context.ts';
import { unitInJournal } from './setup.ts';
import { findUnit, type Unit } from './store/unit.ts';

/**
 * The unit of both; undefined where there is none yet. Throws where the records are without their journal, or beside another's: begun
 * anew it would lack everything that no tablet sends again, and nobody would notice.
 */
export async function checkPair(context: Pick<Context, 'records' | 'journal'>): Promise<Unit | undefined> {
  const unit = await findUnit(context.records);
  const there = await unitInJournal(context);
  if (!unit || unit.id === there?.id) return unit;
  const found = there ? `belongs to another unit, ${there.id}` : 'is empty';
  throw new Error(
    `The server's records are of unit ${unit.id}, but the journal ${found}. Put the right journal back, or restore a backup of both ` +
      '(doffline journal restore FILE --force). Only if it is lost for good: move the records away, and create the unit again.',
  );
}
