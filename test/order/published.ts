// What is held of the order found for every published and invented doffing: never worse than the one given, passing the check, the
// proof or the gap told; and one row for each, kept beside the tests (`npx vitest run test/order -u` writes it anew).
import { describe, expect, test } from 'vitest';
import { compareMeasures } from '../../src/check/measure.ts';
import { compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { printProcedure, readProcedure } from '../../src/language/index.ts';
import { type OrderResult, searchOrder } from '../../src/order/index.ts';
import { measureOf } from '../../src/order/written.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { ORDER } from '../../src/words/en/order.ts';
import { files, procedureOf } from '../procedures/shelf.ts';

export const DOFFINGS = files.filter((file) => procedureOf(file).kind === 'doffing');

export const errorsOf = (procedure: Procedure): readonly string[] =>
  verifyProcedure(procedure, { mends: false, variants: false, agents: ['enveloped'] })
    .findings.filter(({ kind, severity }) => severity === 'error' && ['impossible', 'open'].includes(kind))
    .map(({ code }) => code);

function heldOf(file: string, given: Procedure, found: OrderResult): void {
  test('the order found is at least as good as the published one, and passes the check', () => {
    expect(compareMeasures(found.measure, found.before)).toBeLessThanOrEqual(0);
    expect(errorsOf(found.procedure)).toEqual([]);
    expect(compareMeasures(found.measure, measureOf(found.procedure, 'enveloped'))).toBe(0);
  });

  test('it departs from no practice that the published one keeps, unless it says so', () => {
    const rules = (one: Procedure) =>
      new Set(
        verifyProcedure(one, { mends: false, variants: false, agents: ['enveloped'] })
          .findings.filter(({ kind }) => kind === 'practice')
          .map(({ code }) => code),
      );
    const known = rules(given);
    expect(found.free).toBe(false);
    expect([...rules(found.procedure)].filter((rule) => !known.has(rule))).toEqual([]);
  });

  test('it is proved, or the gap is told and lies between bound and result', () => {
    expect(found.proved).toBe(found.gap === undefined);
    expect(compareMeasures(found.lowerBound, found.measure)).toBeLessThanOrEqual(0);
    expect(ORDER.proof(found)).toContain(found.proved ? 'Proved' : 'gap');
  });

  test('it is a procedure file like any other, everything off, step ids unique', () => {
    const { procedure } = readProcedure(printProcedure(found.procedure), file);
    expect(procedure?.steps).toEqual(found.procedure.steps);
    const last = compile(found.procedure, 'enveloped').performed.at(-1)?.after.bodies ?? {};
    for (const { id, role } of given.people)
      if (role === 'wearer')
        expect(
          last[id]?.layers.map(({ item }) => item).filter((item) => !['scrubs', 'shoes'].includes(item)),
        ).toEqual([]);
  });

  test('every reason can be said and names steps of the order', () => {
    const ids = found.procedure.steps.map(({ id }) => id);
    for (const choice of found.choices) {
      expect(ids).toContain(choice.step);
      expect(ORDER.choice(found.procedure, choice)).toMatch(/\.$/);
      if (choice.outcome === 'worse') expect(choice.difference).toBeDefined();
      if (choice.outcome === 'impossible') expect(choice.problem).toBeDefined();
    }
    expect(found.choices.length > 3).toBe(!found.kept);
  });
}

const four = (values: readonly number[]): string => values.map((value) => value.toPrecision(3)).join(' / ');

/** One row: what was given, what was found, and what is proved of it. */
function rowOf(file: string, { before, measure, kept, proved, gap }: OrderResult): string {
  const found = kept ? 'given order kept' : 'better order found';
  const told = gap
    ? `gap: ${gap.figure} ${gap.to.toPrecision(3)}, none below ${gap.from.toPrecision(3)}`
    : '';
  return `| ${[
    file.replace('-doffing', '').replace('.yaml', ''),
    `${before.open.join(' / ')}; ${four(before.chance)}`,
    `${measure.open.join(' / ')}; ${four(measure.chance)}`,
    `${before.departures} → ${measure.departures}`,
    `${before.seconds} → ${measure.seconds}`,
    found,
    proved ? 'proved' : told,
  ].join(' | ')} |`;
}

const HEAD = `Open routes; chances, each to mucosa / skin / clothes and shoes / clean side (judgement), as given and as found, with at most
TRIED beginnings of orders tried, so that it is the same on every machine. With more time more is proved.

| doffing | as given | as found | departures | seconds | | |
| --- | --- | --- | --- | --- | --- | --- |
`;

const TRIED = 120;

/** Holds all of these files to it, and their rows to the snapshot beside this file. */
export function holdPublished(all: readonly string[], snapshot: string): void {
  const rows: string[] = [];
  describe.each(all)('%s', (file) => {
    const given = procedureOf(file);
    const found = searchOrder(given, { agent: 'enveloped', tried: TRIED });
    rows.push(rowOf(file, found));
    heldOf(file, given, found);
  });
  test('what is found and proved is as it was', async () => {
    const page = `${HEAD.replace('TRIED', String(TRIED))}${rows.join('\n')}\n`;
    await expect(page).toMatchFileSnapshot(snapshot);
  });
}
