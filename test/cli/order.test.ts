// `order` as a user meets it: text, JSON that fits its schema, the exit status, and a file that is never overwritten unasked.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ORDER_FORMAT, orderJsonSchema, orderReport } from '../../src/cli/orderSchema.ts';
import { CAUTIONS } from '../../src/words/index.ts';
import { gloves, OPEN, run, withFiles } from './run.ts';

const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

test('the schema is the shape that the program fills (node scripts/check-schema.mjs)', () => {
  expect(JSON.parse(readFileSync('schema/order-1.json', 'utf8'))).toEqual(orderJsonSchema());
});

describe('order', () => {
  test('leaves out the step that opens a route, says what is proved, and carries the cautions', async () => {
    await withFiles({ 'gloves.yaml': OPEN }, async (path) => {
      const { status, out, err } = await run(['order', path('gloves.yaml')]);
      expect([status, err]).toEqual([0, '']);
      expect(out).toContain('The order found');
      expect(out).toContain('Proved: no admissible order is better');
      expect(out).not.toMatch(/Touch the face|undefined|NaN|\[object/);
      for (const caution of CAUTIONS) expect(flat(out)).toContain(caution);
    });
  });

  test('--json fits the shape; the procedure in it reads back and checks without an error', async () => {
    await withFiles({ 'gloves.yaml': OPEN }, async (path) => {
      const found = await run(['order', '--json', path('gloves.yaml')]);
      const report = orderReport.parse(JSON.parse(found.out));
      expect([report.format, report.status, report.proved, report.gap]).toEqual([
        ORDER_FORMAT,
        0,
        true,
        null,
      ]);
      expect(report.before?.open).not.toEqual(report.after?.open);
      await withFiles({ 'found.yaml': report.procedure?.text ?? '' }, async (written) => {
        expect((await run(['check', written('found.yaml')])).status).toBe(0);
      });
    });
  });

  test('--out writes the procedure once; a file that is there stands unless --force', async () => {
    await withFiles({ 'gloves.yaml': OPEN, 'there.yaml': 'mine' }, async (path) => {
      const args = ['order', path('gloves.yaml'), '--out', path('there.yaml')];
      const refused = await run(args);
      expect([refused.status, readFileSync(path('there.yaml'), 'utf8')]).toEqual([2, 'mine']);
      expect(refused.err).toContain('--force');
      expect((await run([...args, '--force'])).status).toBe(0);
      expect(readFileSync(path('there.yaml'), 'utf8')).toContain('doffline: 1');
    });
  });

  test('2: what cannot be read or searched is said', async () => {
    const missing = await run(['order', 'nowhere.yaml']);
    expect([missing.status, missing.out]).toEqual([2, '']);
    expect(missing.err).toContain('nowhere.yaml:1:1: error file-missing');
    const donning = await run(['order', 'procedures/larkmoor-suit-donning.yaml', '--json']);
    const report = orderReport.parse(JSON.parse(donning.out));
    expect([donning.status, report.procedure]).toEqual([2, null]);
    expect(report.refusal).toContain('donning');
  });

  test('--instead names what changes and who has to learn it', async () => {
    await withFiles({ 'gloves.yaml': gloves() }, async (path) => {
      const unknown = await run(['order', path('gloves.yaml'), '--instead', 'goggles=face-shield']);
      expect([unknown.status, unknown.err]).toEqual([2, 'error: This procedure does not use it.\n']);
    });
    const file = 'procedures/everyday-example-1-doffing.yaml';
    const { status, out } = await run(['order', file, '--instead', 'goggles=face-shield', '--json']);
    const report = orderReport.parse(JSON.parse(out));
    expect([report.substitution?.from, report.substitution?.to]).toEqual(['goggles', 'face-shield']);
    expect(report.procedure?.text).toContain('face-shield');
    expect(status).toBe(report.status);
  });
});
