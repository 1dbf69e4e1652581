// `compare` and `cost` as a user meets them: text, JSON that fits its schema, and the exit status that scripts rely on.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { COMPARE_FORMAT, compareJsonSchema, compareReport } from '../../src/cli/compareSchema.ts';
import { COST_FORMAT, costJsonSchema, costReport } from '../../src/cli/costSchema.ts';
import { CAUTIONS } from '../../src/words/index.ts';
import { gloves, OPEN, run, withFiles } from './run.ts';

const FIRST = 'procedures/larkmoor-suit-doffing.yaml';
const SECOND = 'procedures/larkmoor-suit-doffing-v2.yaml';
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');
const schema = (name: string): unknown => JSON.parse(readFileSync(`schema/${name}.json`, 'utf8'));

test('the schemas are the shapes that the program fills (node scripts/check-schema.mjs)', () => {
  expect(schema('compare-1')).toEqual(compareJsonSchema());
  expect(schema('cost-1')).toEqual(costJsonSchema());
});

describe('compare', () => {
  test('0: the second has no error that the first has not; every part is said', async () => {
    const { status, out, err } = await run(['compare', FIRST, SECOND]);
    expect([status, err]).toEqual([0, '']);
    for (const part of [
      'Steps: 4 new, 1 left out, 1 changed, 31 unchanged',
      '+ New: step 15. The assistant: Clean both gloved hands',
      'Findings of the first that the second has not',
      'No longer open, but one slip away',
      'Chance of reaching, enveloped agent (judgement)',
      '0 (open) -> 1',
      'longer: +',
      'alcohol hand rub',
    ])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
    for (const caution of CAUTIONS) expect(flat(out)).toContain(caution);
  });

  test('1: the second has an error that the first has not', async () => {
    const { status, out } = await run(['compare', SECOND, FIRST]);
    expect(status).toBe(1);
    expect(out).toContain('Errors that the second has and the first has not');
  });

  test('2: something cannot be read, in text and as an object', async () => {
    const { status, out, err } = await run(['compare', 'nowhere.yaml', SECOND]);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('nowhere.yaml:1:1: error file-missing');
    const asObject = await run(['compare', FIRST, 'nowhere.yaml', '--json']);
    const report = compareReport.parse(JSON.parse(asObject.out));
    expect([asObject.status, report.status, report.a, report.diagnostics[0]?.code]).toEqual([
      2,
      2,
      null,
      'file-missing',
    ]);
  });

  test('--json fits, says the same, and counts steps from 1', async () => {
    const { status, out } = await run(['compare', '--json', FIRST, SECOND]);
    const report = compareReport.parse(JSON.parse(out));
    expect([status, report.status, report.format]).toEqual([0, 0, COMPARE_FORMAT]);
    expect(report.steps.flatMap(({ b }) => b ?? [])).toEqual(
      Array.from({ length: report.b?.steps ?? 0 }, (_, at) => at + 1),
    );
    expect(report.steps.filter(({ what }) => what === 'new')).toHaveLength(4);
    expect(report.findings.gone.some(({ code }) => code === 'open.clothes')).toBe(true);
    expect(report.findings.newErrors).toEqual([]);
    for (const { difference, chanceA, chanceB } of report.surfaces) {
      expect(difference?.chance).toBeCloseTo((chanceB?.chance ?? 0) - (chanceA?.chance ?? 0), 12);
      expect(difference?.sentence).toMatch(/no difference|\((90 % interval .*; judgement)\)/);
    }
    expect(report.time?.difference.seconds).toBe(
      (report.time?.b.seconds ?? 0) - (report.time?.a.seconds ?? 0),
    );
    expect(report.cautions.length).toBeGreaterThan(2);
  });

  test('rooms and people that differ are named as what cannot be compared', async () => {
    const { out, status } = await run(['compare', '-', FIRST], OPEN);
    expect(status).toBe(1);
    expect(out).toContain('What cannot be compared');
    expect(flat(out)).toContain(
      'Only the second has the assistant: what reaches that person cannot be compared',
    );
  });

  test('--agent chooses', async () => {
    const { out } = await run(['compare', '--agent', 'non-enveloped', '--json', '-', FIRST], gloves());
    expect(compareReport.parse(JSON.parse(out)).agents).toEqual(['non-enveloped']);
  });
});

describe('cost', () => {
  test('a run, with what every number rests on', async () => {
    const { status, out, err } = await run(['cost', FIRST]);
    expect([status, err]).toEqual([0, '']);
    for (const part of [
      'One run',
      'outer gloves',
      '3 pairs',
      'mL (judgement)',
      'Waste:',
      '[handrub.volume] (published)',
    ])
      expect(out).toContain(part);
    expect(flat(out)).toContain('No published volume or mass of a single item or of one run was found');
    expect(out).not.toMatch(/undefined|NaN|\[object|Price/);
    for (const caution of CAUTIONS) expect(flat(out)).toContain(caution);
  });

  test('--runs multiplies what is shown', async () => {
    const { out } = await run(['cost', FIRST, '--runs', '4']);
    expect(out).toContain('4 runs a day, together');
    expect(out).toMatch(/outer gloves +12 pairs/);
  });

  test.each(['0', '1.5', 'many', '-1', '1001'])('--runs %s is refused', async (runs) => {
    const { status, err } = await run(['cost', FIRST, `--runs=${runs}`]);
    expect(status).toBe(2);
    expect(err).toContain('Write a whole number from 1 to 1000.');
  });

  test('--json fits; a file that cannot be read gives the same object', async () => {
    const { status, out } = await run(['cost', FIRST, '--json', '--runs', '2']);
    const report = costReport.parse(JSON.parse(out));
    expect([status, report.format, report.runs, report.prices]).toEqual([0, COST_FORMAT, 2, null]);
    const known = new Set(report.evidence.map(({ id }) => id));
    for (const { evidence } of report.uses) for (const id of evidence) expect(known).toContain(id);
    const bad = await run(['cost', 'nowhere.yaml', '--json']);
    expect([bad.status, costReport.parse(JSON.parse(bad.out)).procedure]).toEqual([2, null]);
  });

  test('a price list of the user’s own; its faults by line', async () => {
    const files = {
      'own.yaml': 'currency: EUR\nprices:\n  outer-gloves: 0.5\n',
      'bad.yaml': 'prices:\n  outer-glove: 1\n',
    };
    await withFiles(files, async (path) => {
      const { status, out } = await run(['cost', FIRST, '--prices', path('own.yaml')]);
      expect(status).toBe(0);
      expect(out).toContain('Price, by the list given: 3.00 EUR');
      expect(flat(out)).toContain('Without a price, and not in the sum: inner gloves');
      const bad = await run(['cost', FIRST, '--prices', path('bad.yaml')]);
      expect([bad.status, bad.out]).toEqual([2, '']);
      expect(bad.err).toContain(
        'bad.yaml:2:1: error price-list: Nothing that is used up is called "outer-glove".',
      );
      expect(bad.err).toContain('Did you mean "outer-gloves"?');
      expect((await run(['cost', FIRST, '--prices', 'nowhere.yaml'])).err).toContain('error file-missing');
    });
  });
});
