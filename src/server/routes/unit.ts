// Creating the unit, and saying whether it is there.
import type { Handlers } from '../context.ts';
import { counted } from '../limits.ts';
import { Refusal } from '../refusal.ts';
import { isSetupCode, makeDemo, makeUnit, unitInJournal } from '../setup.ts';
import { beginSession } from '../store/accounts.ts';
import { turns } from '../store/sql.ts';
import { findUnit } from '../store/unit.ts';

/** Two who press at once: the second finds the unit there. */
const turn = turns();

export const unitRoutes: Pick<Handlers, 'read-unit' | 'create-unit'> = {
  'read-unit': async ({ context }) => {
    const unit = (await findUnit(context.records)) ?? null;
    const there = unit ? undefined : await unitInJournal(context);
    return { unit, waitsForLead: context.setup.code !== undefined, journalOf: there?.id ?? null };
  },

  'create-unit': async ({ context, body, peer, now, setSession }) => {
    const forgive = await counted([
      [context.limits.address, peer],
      [context.limits.code, 'setup'],
    ]);
    const { unit, account, people } = await turn(async () => {
      if (context.setup.code === undefined) throw new Refusal('already-created');
      if (!isSetupCode(context, body.code)) throw new Refusal('setup-code-wrong');
      return body.demo ? makeDemo(context) : makeUnit(context, body);
    });
    await forgive();
    setSession(await context.records.write((sql) => beginSession(sql, account.id, now)));
    return { unit, account, people: [...people] };
  },
};
