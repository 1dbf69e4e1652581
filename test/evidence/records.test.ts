// Every record and source keeps its shape, its id and its honesty: status against how far the source was read.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { recordFiles, renderIds } from '../../scripts/evidence-ids.mjs';
import {
  allEvidence,
  allSources,
  type EvidenceRecord,
  evidence,
  evidenceField,
  evidenceIds,
  evidenceNumber,
  evidenceText,
  source,
} from '../../src/evidence/index.ts';
import { recordSchema, sourceSchema } from './schema.ts';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const listIn = (path: string) => JSON.parse(read(path)) as { id: string }[];
const records = recordFiles().flatMap((file) => listIn(`evidence/${file}`));
const sources = listIn('evidence/sources.json');

/** ids of the records that break a rule: an empty list is the proof, a full one names them */
const breaking = (rule: (record: EvidenceRecord) => boolean) =>
  allEvidence.filter((record) => !rule(record)).map((record) => record.id);

describe('evidence files', () => {
  it.each(records.map((record) => [record.id, record]))('%s has the strict shape', (_id, record) => {
    expect(recordSchema.safeParse(record).error?.issues ?? []).toEqual([]);
  });

  it.each(sources.map((entry) => [entry.id, entry]))('source %s has the strict shape', (_id, entry) => {
    expect(sourceSchema.safeParse(entry).error?.issues ?? []).toEqual([]);
  });

  it('use an id once', () => {
    const twice = (ids: string[]) => ids.filter((id, index) => ids.indexOf(id) !== index);
    expect(twice(records.map((record) => record.id))).toEqual([]);
    expect(twice(sources.map((entry) => entry.id))).toEqual([]);
  });

  it('are all loaded by the module', () => {
    expect(allEvidence.map((record) => record.id).toSorted()).toEqual(records.map((r) => r.id).toSorted());
    expect(allSources).toEqual(sources);
  });

  it('have an up-to-date list of ids: run node scripts/evidence-ids.mjs', () => {
    expect(read('src/evidence/ids.ts')).toBe(renderIds());
  });

  it('say the same thing in words only once', () => {
    const rules = allEvidence.map((record) => record.value).filter((value) => typeof value === 'string');
    expect(new Set(rules).size).toBe(rules.length);
  });
});

describe('sources', () => {
  it('exist for every record, and every source is used', () => {
    const used = new Set<string>(allEvidence.map((record) => source(record.source.id).id));
    expect(allSources.map((entry) => entry.id).filter((id) => !used.has(id))).toEqual([]);
  });

  it('of published records were read at least in part', () => {
    const readInPart = ['seen', 'partly seen'];
    expect(
      breaking((r) => r.status !== 'published' || readInPart.includes(source(r.source.id).seen)),
    ).toEqual([]);
  });

  it('of published records can be found again, and the place in them is named', () => {
    const findable = ({ source: { id }, where }: EvidenceRecord) =>
      where.length > 2 && (source(id).doi ?? source(id).url ?? source(id).body).length > 2;
    expect(breaking((r) => r.status !== 'published' || findable(r))).toEqual([]);
  });

  it('of judgement and common practice are our own, and of nothing else', () => {
    const ownStatus = (r: EvidenceRecord) => r.status === 'judgement' || r.status === 'common practice';
    expect(breaking((r) => ownStatus(r) === (source(r.source.id).seen === 'own'))).toEqual([]);
  });

  it('read only from memory back no more than a memory', () => {
    expect(breaking((r) => r.status === 'memory' || source(r.source.id).seen !== 'from memory')).toEqual([]);
  });
});

describe('judgement', () => {
  it('says its ground', () => {
    expect(breaking((r) => r.status !== 'judgement' || (r.note?.length ?? 0) > 20)).toEqual([]);
  });

  it('leans on records that stand on their own', () => {
    expect(breaking((r) => r.basis === undefined || evidence(r.basis.id).basis === undefined)).toEqual([]);
  });

  it('is the status of every chance of a slip or a circumstance, each with a spread', () => {
    const chances = evidenceIds.filter((id) => /^(slip|circumstance)\./.test(id)).map(evidence);
    expect(chances.length).toBeGreaterThan(20);
    expect(new Set(chances.map((r) => r.status))).toEqual(new Set(['judgement']));
    expect(new Set(chances.map((r) => r.distribution?.kind))).toEqual(new Set(['lognormal']));
    expect(new Set(chances.map((r) => r.unit))).toEqual(new Set(['chance per opportunity']));
  });
});

describe('access', () => {
  it('gives numbers, texts and fields, and refuses the wrong kind', () => {
    expect(evidenceNumber('slip.wrong-grip')).toBe(evidenceNumber('hep.commission.wrong-part'));
    expect(evidenceField('dependence.low', 'divisor')).toBe(20);
    expect(() => evidenceNumber('practice.one-wipe-per-shoe')).toThrow('not a number');
    expect(() => evidenceText('slip.brush')).toThrow('not a text');
    expect(() => evidenceField('dependence.low', 'height')).toThrow('height');
  });

  it('gives rules of practice as complete sentences', () => {
    const rules = evidenceIds.filter((id) => id.startsWith('practice.'));
    expect(rules.length).toBeGreaterThan(40);
    expect(rules.filter((id) => evidence(id).unit !== 'rule')).toEqual([]);
    expect(rules.filter((id) => !/^[A-Z].{20,}\.$/.test(evidenceText(id)))).toEqual([]);
  });
});
