// `--json`: always one object that fits its schema, whatever the input; schema/check-1.json is that schema.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Limit } from '../../src/check/limits.ts';
import { reportOf } from '../../src/cli/report.ts';
import { CHECK_FORMAT, checkJsonSchema, checkReport, checksReport } from '../../src/cli/reportSchema.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { wordsFor } from '../../src/words/index.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { gloves, OPEN, run, withFiles } from './run.ts';

const EVERYDAY = 'procedures/everyday-example-1-doffing.yaml';

test('schema/check-1.json is the shape that the program fills (node scripts/check-schema.mjs)', () => {
  expect(JSON.parse(readFileSync('schema/check-1.json', 'utf8'))).toEqual(checkJsonSchema());
});

describe('one file', () => {
  test('prints the object itself, and it fits', async () => {
    const { status, out } = await run(['check', '--json', EVERYDAY]);
    const report = checkReport.parse(JSON.parse(out));
    expect(report.format).toBe(CHECK_FORMAT);
    expect([status, report.status]).toEqual([1, 1]);
    expect(report.procedure?.steps.map(({ number }) => number)).toEqual(
      report.procedure?.steps.map((_, index) => index + 1),
    );
    expect(report.procedure?.steps[0]?.line).toBeGreaterThan(1);
  });

  test('says the same as the text: numbers from 1, routes that start at 0, sources with status', async () => {
    const report = checkReport.parse(JSON.parse((await run(['check', '--json', '-'], OPEN)).out));
    const open = report.findings.find(({ kind }) => kind === 'open');
    expect(open?.route[0]).toMatchObject({ step: 0, from: null, events: [] });
    expect(open?.route.at(-1)?.sentence).toContain(`Step ${open?.route.at(-1)?.step ?? ''} (`);
    expect(open?.steps[0]).toBe(open?.route.at(-1)?.step);
    for (const { combinations, combinationCount, interval, chance } of report.surfaces) {
      expect(BigInt(combinationCount) >= BigInt(combinations.length)).toBe(true);
      expect(interval[0]).toBeLessThanOrEqual(interval[1]);
      expect(chance).toBeGreaterThanOrEqual(0);
    }
    const lone = report.findings.find(({ kind }) => kind === 'one-slip');
    expect(lone?.events[0]?.status).toBe('judgement');
  });

  test('a departure from practice names its rule and its source', async () => {
    const report = checkReport.parse(JSON.parse((await run(['check', '--json', EVERYDAY])).out));
    const practice = report.findings.find(({ kind }) => kind === 'practice');
    expect(practice?.evidence[0]?.id).toBe(practice?.code);
    expect(practice?.evidence[0]?.status).toBe('published');
  });

  test('a mend tells the single slips that it newly opens, and what was left undone is told by agent', () => {
    const { procedure, findings, ...rest } = verifyProcedure(procedureOf('everyday-example-1-doffing.yaml'), {
      variants: false,
    });
    const opening = findings.map((finding) => ({
      ...finding,
      mends: finding.mends.map((mend) => ({ ...mend, newSlips: ['s2:snap wearer.neck'] })),
    }));
    const limits: readonly Limit[] = [{ code: 'mends', params: {}, agent: 'enveloped' }];
    const verdict = { ...rest, procedure, findings: opening, limits };
    const report = checkReport.parse(reportOf(wordsFor('en'), { file: 'x', complaints: [] }, verdict, 1));
    const mended = report.findings.find(({ mends }) => mends.length > 0);
    expect(mended?.mends[0]?.newSlips).toEqual([{ event: 's2:snap', surface: 'wearer.neck' }]);
    expect(mended?.tried).toBeGreaterThan(0);
    expect(report.limits[0]).toMatchObject({ code: 'mends', agent: 'enveloped' });
  });

  test.each([
    ['nowhere.yaml', 'file-missing'],
    ['procedures', 'file-is-folder'],
    ['package.json', 'missing-key'],
  ])('%s cannot be read: the same object, with diagnostics', async (path, code) => {
    const { status, out, err } = await run(['check', '--json', path]);
    const report = checkReport.parse(JSON.parse(out));
    expect([status, report.status, err]).toEqual([2, 2, '']);
    expect(report.diagnostics[0]?.code).toBe(code);
    expect(report).toMatchObject({ findings: [], surfaces: [], procedure: null });
    expect(report.cautions.length).toBeGreaterThan(2);
  });
});

test('several files print one object with a result for each, in their order', async () => {
  await withFiles({ 'gloves.yaml': gloves() }, async (path) => {
    const { status, out } = await run(['check', '--json', 'nowhere.yaml', path('gloves.yaml')]);
    const { results } = checksReport.parse(JSON.parse(out));
    expect(results.map((result) => result.status)).toEqual([2, 0]);
    expect(status).toBe(2);
  });
});
