// The laws of the check as a whole: the same text always gives the same answer; each agent is answered for; the grades of
// findings, from which a reader and an exit status follow; and what a unit can accept in writing, and what it cannot.
import { describe, expect, test } from 'vitest';
import { acceptanceFor } from '../../src/check/acceptance.ts';
import type { Finding } from '../../src/check/finding.ts';
import type { Acceptance, Procedure } from '../../src/domain/procedure.ts';
import { AGENTS } from '../../src/domain/products.ts';
import { printProcedure } from '../../src/language/index.ts';
import { type Verdict, verify, verifyProcedure } from '../../src/verify.ts';
import { procedureOf, textOf } from '../procedures/shelf.ts';
import { goodDoffing, goodText } from '../support/good.ts';
import { changed, inserted, step, without } from '../support/procedure.ts';
import { SUBJECTS, verdictOf } from './subjects.ts';

const QUICK = { mends: false, variants: false } as const;
const GOOD = goodDoffing();

/** All that is shown; the analyses hold the working. */
const shown = ({ hash, agents, findings, surfaces, measures }: Verdict) => ({
  hash,
  agents,
  findings,
  surfaces,
  measures,
});

describe('the same text', () => {
  test.each(['everyday-example-2-doffing.yaml', 'national-stable-patient-doffing.yaml'])(
    'gives the same answer, mends and variants included, whatever was checked between (%s)',
    (file) => {
      const first = verify(textOf(file)).verdict!;
      verifyProcedure(GOOD, QUICK);
      expect(shown(verify(textOf(file)).verdict!)).toEqual(shown(first));
    },
  );

  test('read back from its canonical form gives the same answer under the same hash', () => {
    const read = verify(printProcedure(GOOD), QUICK).verdict!;
    expect(shown(read)).toEqual(shown(verify(goodText, QUICK).verdict!));
  });

  test('with another step has another hash', () => {
    const other = verifyProcedure(without(GOOD, 'rub-hood'), QUICK);
    expect(other.hash).not.toBe(verifyProcedure(GOOD, QUICK).hash);
  });

  test('with errors gives diagnostics and no verdict', () => {
    const { read, verdict } = verify(goodText.replace('do: unfasten', 'do: unfastne'));
    expect(verdict).toBeUndefined();
    expect(read.diagnostics.length).toBeGreaterThan(0);
  });
});

describe('agents', () => {
  test('are the file’s own, and others where asked', () => {
    expect(verifyProcedure(GOOD, QUICK).agents).toEqual(GOOD.agents);
    for (const agent of AGENTS) {
      const { agents, surfaces, measures } = verifyProcedure(GOOD, { ...QUICK, agents: [agent] });
      expect(agents).toEqual([agent]);
      expect([...new Set(surfaces.map((surface) => surface.agent))]).toEqual([agent]);
      expect(measures.map((one) => one.agent)).toEqual([agent]);
    }
  });

  test('asked together say what they say alone; what is the same for all is said once', () => {
    const { findings } = verdictOf(GOOD);
    const alone = AGENTS.flatMap((agent) => verifyProcedure(GOOD, { ...QUICK, agents: [agent] }).findings);
    const of = (list: readonly Finding[]) => list.filter(({ agent }) => agent !== undefined);
    expect(of(findings)).toEqual(of(alone));
    const broken = verdictOf(without(GOOD, 'rub-hood')).findings;
    expect(broken.filter(({ kind }) => kind === 'practice')).toHaveLength(1);
  });

  test('differ where the product works against one only (alcohol rub; Casanova 2016 and 2018)', () => {
    const papr = verdictOf(procedureOf('national-papr-gown-doffing.yaml'));
    const open = (agent: string) =>
      papr.findings.filter((finding) => finding.kind === 'open' && finding.agent === agent);
    expect(open('enveloped')).toEqual([]);
    expect(open('non-enveloped').length).toBeGreaterThan(0);
  });
});

describe('grades', () => {
  test.each(SUBJECTS)(
    '%s: what is impossible or open is an error; one slip and by design are to be known',
    (_, procedure) => {
      for (const { kind, severity, accepted } of verdictOf(procedure).findings) {
        if (kind === 'impossible' || kind === 'open') expect(severity).toBe('error');
        if (kind === 'one-slip' || kind === 'accepted' || kind === 'variant') expect(severity).toBe('note');
        if (kind === 'practice') expect(severity).toBe(accepted ? 'note' : 'error');
      }
    },
  );

  test('one impossible step is one error, at that step', () => {
    const twice = inserted(GOOD, 'rub-hood', step('again', 'remove', { items: ['surgical-hood'] }));
    const errors = verifyProcedure(twice, QUICK).findings.filter(({ kind }) => kind === 'impossible');
    expect(errors.map(({ code, steps, severity }) => [code, twice.steps[steps[0]!]?.id, severity])).toEqual([
      ['impossible.not-worn', 'again', 'error'],
    ]);
  });

  test('no error is left in the good doffing against the agent it is for', () => {
    const { findings } = verifyProcedure(GOOD, { ...QUICK, agents: ['enveloped'] });
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(findings.length).toBeGreaterThan(10);
  });
});

const accepting = (procedure: Procedure, finding: string, more: Partial<Acceptance> = {}): Procedure => ({
  ...procedure,
  accepted: [
    {
      finding,
      reason: 'Because (invented).',
      by: 'Committee (invented)',
      date: '2026-01-01',
      review: '2027-01-01',
      ...more,
    },
  ],
});

const graded = (procedure: Procedure, code: string) =>
  verifyProcedure(procedure, { ...QUICK, agents: AGENTS })
    .findings.filter((finding) => finding.code === code)
    .map(({ severity, accepted }) => [severity, accepted?.by]);

describe('acceptance in writing', () => {
  const rule = 'practice.hygiene-between-items';
  const broken = without(GOOD, 'rub-hood');
  const byCommittee = ['note', 'Committee (invented)'];

  test('makes a departure a note that names who accepted it, and no longer counts it', () => {
    expect(graded(broken, rule)).toEqual([['error', undefined]]);
    expect(graded(accepting(broken, rule), rule)).toEqual([byCommittee]);
    const departures = (procedure: Procedure) =>
      verifyProcedure(procedure, QUICK).measures[0]?.measure.departures;
    expect([departures(broken), departures(accepting(broken, rule))]).toEqual([1, 0]);
  });

  test('is for the step it names, or for all', () => {
    const twice = without(broken, 'rub-shield');
    expect(graded(accepting(twice, rule, { step: 'hood-off' }), rule)).toEqual([
      ['error', undefined],
      byCommittee,
    ]);
    expect(graded(accepting(twice, rule), rule)).toEqual([byCommittee, byCommittee]);
    expect(graded(accepting(broken, rule, { step: 'gown-off' }), rule)).toEqual([['error', undefined]]);
  });

  test('leaves everything else as it is', () => {
    const rest = (procedure: Procedure) =>
      verifyProcedure(procedure, QUICK)
        .findings.filter(({ code }) => code !== rule)
        .map(({ code, steps, surface, events, severity }) => ({ code, steps, surface, events, severity }));
    expect(rest(accepting(broken, rule))).toEqual(rest(broken));
  });

  test('is not possible for what cannot be done, stands open or is one slip away', () => {
    const impossible = changed(GOOD, 'shoes-wiped', { product: 'alcohol-hand-rub' });
    const open = procedureOf('larkmoor-suit-doffing.yaml');
    for (const [procedure, kind, severity] of [
      [impossible, 'impossible', 'error'],
      [open, 'open', 'error'],
      [open, 'one-slip', 'note'],
      [open, 'accepted', 'note'],
    ] as const) {
      const { code } = verdictOf(procedure).findings.find((finding) => finding.kind === kind)!;
      expect(graded(accepting(procedure, code), code)[0]).toEqual([severity, undefined]);
    }
  });

  test('covers codes of practice and coverage only', () => {
    const { accepted } = accepting(GOOD, 'open.skin');
    expect(acceptanceFor(accepted, 'open.skin')).toBeUndefined();
    for (const code of ['practice.final-hand-hygiene', 'coverage.bare', 'coverage.left-on'])
      expect(acceptanceFor(accepting(GOOD, code).accepted, code)).toBeDefined();
  });
});
