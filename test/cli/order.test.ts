// `order` as a user meets it: text, JSON that fits its schema, the exit status, and a file that is never overwritten unasked.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CLI_LABELS } from '../../src/cli/labels/index.ts';
import { ORDER_FORMAT, orderJsonSchema, orderReport } from '../../src/cli/orderSchema.ts';
import { CAUTIONS, wordsFor } from '../../src/words/index.ts';
import { faultIn, FOREIGN } from '../words/languages.ts';
import { gloves, OPEN, run, withFiles } from './run.ts';

const flat = (text: string): string => text.replaceAll(/[ \n]+/g, ' ');

test('the schema is the shape that the program fills (node scripts/check-schema.mjs)', () => {
  expect(JSON.parse(readFileSync('schema/order-1.json', 'utf8'))).toEqual(orderJsonSchema());
});

describe('order', () => {
  test('leaves out the step that opens a route, says what is proved, and carries the cautions', async () => {
    await withFiles({ 'gloves.yaml': OPEN }, async (path) => {
      const { status, out, err } = await run(['order', path('gloves.yaml')]);
      expect([status, err]).toEqual([0, '']);
      expect(out).toContain('The order found');
      expect(out).toContain('Proved: no order that the search may choose is better');
      expect(out).toMatch(/^ {2}step 1 +Left out: Touch the face\.$/m);
      expect(out).not.toMatch(/^ *\d+\. .*Touch the face|undefined|NaN|\[object/m);
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

  test.each(FOREIGN)(
    '--language %s: text and object speak it, and say how far to trust it',
    async (language) => {
      const words = wordsFor(language);
      await withFiles({ 'gloves.yaml': OPEN }, async (path) => {
        const args = ['order', '--language', language, path('gloves.yaml')];
        const { status, out } = await run(args);
        expect(status).toBe(0);
        expect(out).toContain(CLI_LABELS[language].orderFound);
        expect(out).not.toMatch(/undefined|NaN|\[object|Proved|because|The order/);
        for (const sentence of [...words.cautions, ...words.reviewNote])
          expect(flat(out)).toContain(sentence);
        const report = orderReport.parse(JSON.parse((await run([...args, '--json'])).out));
        expect([report.language, report.review, report.cautions]).toEqual([
          language,
          words.reviewNote,
          words.cautions,
        ]);
        const said = report.choices.map(({ sentence }) => sentence);
        expect(said.length).toBeGreaterThan(0);
        expect(said.flatMap((sentence) => faultIn(language, sentence) ?? [])).toEqual([]);
      });
      const donning = 'procedures/larkmoor-suit-donning.yaml';
      const refused = await run(['order', '--language', language, donning]);
      expect([refused.status, refused.err]).toEqual([2, `error: ${words.order.refusal('donning')}\n`]);
    },
  );

  test("--wording: the unit's own sentences, told where one does not apply", async () => {
    const present =
      'Remove the gloves: peel the first off by its outside, then roll the second off with a finger under its cuff.';
    const own = 'Take both gloves off as the poster by the door shows.';
    const wording = `en: {steps: {gloves-off: {instead-of: "${present}", say: "${own}"}, elsewhere: {instead-of: a, say: b}}}`;
    await withFiles({ 'gloves.yaml': OPEN, 'own.yaml': wording }, async (path) => {
      const args = ['order', '--wording', path('own.yaml'), path('gloves.yaml'), '--json'];
      const { out, err } = await run(args);
      const report = orderReport.parse(JSON.parse(out));
      const step = report.procedure?.steps.find(({ ownWording }) => ownWording);
      expect(step?.sentence).toBe(own);
      expect(err).toContain('note wording-unused: the sentence for step "elsewhere" is not used');
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
