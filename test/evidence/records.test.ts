// Every record and source keeps its shape, its id and its honesty: status against how far the source was read.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { recordFiles, renderIds } from '../../scripts/evidence-ids.mjs';
import { allEvidence, allSources, evidence, evidenceIds, source } from '../../src/evidence/index.ts';
import { recordSchema, sourceSchema } from './schema.ts';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const records = recordFiles().flatMap((file) => JSON.parse(read(`evidence/${file}`)) as { id: string }[]);
const sources = JSON.parse(read('evidence/sources.json')) as { id: string }[];
const ofStatus = (status: string) => allEvidence.filter((record) => record.status === status);

describe('evidence files', () => {
  it.each(records.map((record) => [record.id, record]))('%s has the strict shape', (_id, record) => {
    expect(recordSchema.safeParse(record).error?.issues ?? []).toEqual([]);
  });

  it.each(sources.map((entry) => [entry.id, entry]))('source %s has the strict shape', (_id, entry) => {
    expect(sourceSchema.safeParse(entry).error?.issues ?? []).toEqual([]);
  });

  it('use an id once', () => {
    expect(new Set(records.map((record) => record.id)).size).toBe(records.length);
    expect(new Set(sources.map((entry) => entry.id)).size).toBe(sources.length);
  });

  it('are all loaded by the module, in the same words', () => {
    expect(allEvidence.map((record) => record.id).toSorted()).toEqual(records.map((r) => r.id).toSorted());
    expect(allSources.map((entry) => entry.id)).toEqual(sources.map((entry) => entry.id));
  });

  it('have an up-to-date list of ids', () => {
    expect(read('src/evidence/ids.ts'), 'run: node scripts/evidence-ids.mjs').toBe(renderIds());
  });
});

describe('sources', () => {
  it('exist for every record, and every source is used', () => {
    const used = new Set<string>(allEvidence.map((record) => source(record.source.id).id));
    expect(allSources.map((entry) => entry.id).filter((id) => !used.has(id))).toEqual([]);
  });

  it('of published records were read at least in part and can be found again', () => {
    for (const record of ofStatus('published')) {
      const entry = source(record.source.id);
      expect(['seen', 'partly seen'], record.id).toContain(entry.seen);
      expect(record.where.length, record.id).toBeGreaterThan(2);
      expect(entry.doi ?? entry.url ?? entry.body, record.id).toMatch(/\S{2}/);
    }
  });

  it('of judgement and common practice are our own, and of nothing else', () => {
    for (const record of allEvidence) {
      const own = source(record.source.id).seen === 'own';
      expect(own, record.id).toBe(record.status === 'judgement' || record.status === 'common practice');
    }
  });

  it('nothing read only from memory backs more than a memory', () => {
    for (const record of allEvidence) {
      if (source(record.source.id).seen === 'from memory') expect(record.status, record.id).toBe('memory');
    }
  });
});

describe('judgement', () => {
  it('says its ground', () => {
    for (const record of ofStatus('judgement'))
      expect(record.note?.length ?? 0, record.id).toBeGreaterThan(20);
  });

  it('leans on records that stand on their own', () => {
    for (const record of allEvidence) {
      if (record.basis !== undefined) expect(evidence(record.basis.id).basis, record.id).toBeUndefined();
    }
  });

  it('is the status of every chance of a slip or a circumstance, each with a spread', () => {
    const chances = evidenceIds.filter((id) => /^(slip|circumstance)\./.test(id)).map(evidence);
    expect(chances.length).toBeGreaterThan(20);
    for (const record of chances) {
      expect(record.status, record.id).toBe('judgement');
      expect(record.distribution?.kind, record.id).toBe('lognormal');
      expect(record.unit, record.id).toBe('chance per opportunity');
    }
  });
});

describe('practice rules', () => {
  it('are rules in words, complete sentences', () => {
    const rules = evidenceIds.filter((id) => id.startsWith('practice.')).map(evidence);
    expect(rules.length).toBeGreaterThan(40);
    for (const rule of rules) {
      expect(rule.unit, rule.id).toBe('rule');
      expect(String(rule.value), rule.id).toMatch(/^[A-Z].{20,}\.$/);
    }
  });
});
