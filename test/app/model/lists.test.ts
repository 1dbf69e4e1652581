// Findings, ledger, verdicts, evidence and file heads as the page lists them.
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/check/finding.ts';
import { allEvidence } from '../../../src/evidence/index.ts';
import { askedOf, searched, usesOf, valueText } from '../../../src/app/model/evidence.ts';
import {
  byStep,
  choiceFrom,
  countsOf,
  everything,
  passes,
  shownFor,
  worstWalk,
} from '../../../src/app/model/findings.ts';
import { apartText, namesOf } from '../../../src/app/model/choiceNames.ts';
import { headOf } from '../../../src/app/model/head.ts';
import { gridOf } from '../../../src/app/model/ledger.ts';
import { byWorst, chanceRange, slipIn, statusOf } from '../../../src/app/model/verdicts.ts';
import { wrapped } from '../../../src/app/model/wrap.ts';
import { verifyProcedure } from '../../../src/verify.ts';
import { boardFor, FILES, LARKMOOR, procedureIn, textOf } from '../checked.ts';

const finding = (more: Partial<Finding>): Finding => ({
  code: 'open.skin',
  kind: 'open',
  severity: 'error',
  steps: [2],
  surface: 'wearer.neck',
  surfaces: ['wearer.neck'],
  params: {},
  events: [],
  route: [],
  mends: [],
  evidence: [],
  ...more,
});

describe('findings', () => {
  const both = [finding({ agent: 'enveloped' }), finding({ agent: 'non-enveloped' })];

  test('the same fault against two agents is one card', () => {
    const shown = shownFor(both, 'all');
    expect(shown).toHaveLength(1);
    expect(shown[0]?.agents).toEqual(['enveloped', 'non-enveloped']);
  });

  test('one agent leaves the other out, and keeps what depends on none', () => {
    const rule = finding({ code: 'practice.x', kind: 'practice', severity: 'note' });
    const shown = shownFor([...both, rule], 'enveloped');
    expect(shown.map((one) => one.agents)).toEqual([['enveloped'], []]);
  });

  test('errors come first, then by kind, then by step', () => {
    const shown = shownFor(
      [
        finding({ kind: 'variant', code: 'variant.order', severity: 'note' }),
        finding({ steps: [5] }),
        finding({ steps: [1] }),
        finding({ kind: 'impossible', code: 'impossible.not-worn', steps: [9] }),
      ],
      'all',
    );
    expect(shown.map(({ finding: { kind, steps } }) => [kind, steps[0]])).toEqual([
      ['impossible', 9],
      ['open', 1],
      ['open', 5],
      ['variant', 2],
    ]);
  });

  test('a filter leaves out by kind and severity', () => {
    const [open] = shownFor(both, 'all');
    if (!open) throw new Error('no card');
    expect(passes(everything(), open)).toBe(true);
    expect(passes({ ...everything(), kinds: new Set(['practice']) }, open)).toBe(false);
    expect(passes({ ...everything(), severities: new Set(['note']) }, open)).toBe(false);
  });

  test('accepted ones are counted apart', () => {
    const accepted = { finding: 'x', reason: 'r', by: 'role', date: '2026-01-01', review: '2026-07-01' };
    const shown = shownFor([finding({}), finding({ steps: [7], accepted })], 'all');
    expect(countsOf(shown).find(({ kind }) => kind === 'open')).toEqual({
      kind: 'open',
      open: 1,
      accepted: 1,
    });
  });

  test('the agent of an address wins, else the procedure’s own, else all', () => {
    expect(choiceFrom('non-enveloped', ['enveloped'])).toBe('non-enveloped');
    expect(choiceFrom('all', ['enveloped'])).toBe('all');
    expect(choiceFrom(null, ['enveloped'])).toBe('enveloped');
    expect(choiceFrom('nonsense', ['enveloped', 'non-enveloped'])).toBe('all');
  });

  const verdict = verifyProcedure(procedureIn(LARKMOOR), { mends: false, variants: false });
  const real = shownFor(verdict.findings, 'all');

  test('every finding of the invented procedure has a key of its own and a step', () => {
    expect(real.length).toBeGreaterThan(5);
    expect(new Set(real.map(({ key }) => key)).size).toBe(real.length);
    expect([...byStep(real).values()].flat()).toHaveLength(real.length);
  });

  test('the one to walk first has a route', () => {
    expect(worstWalk(real)?.finding.route.length).toBeGreaterThan(0);
  });

  test('surfaces are listed by fewest barriers, those without a route last', () => {
    const barriers = byWorst(verdict.surfaces).map((one) => one.barriers ?? Infinity);
    expect(barriers).toEqual(barriers.toSorted((a, b) => a - b));
  });
});

describe('the ledger', () => {
  const procedure = procedureIn(LARKMOOR);
  const board = boardFor(procedure);
  const grid = gridOf(procedure, board, false);

  test('people first, the room last, protected surfaces on top', () => {
    expect(grid.groups.map((group) => group.person)).toEqual(['wearer', 'observer', 'assistant', undefined]);
    for (const { rows } of grid.groups) {
      const flags = rows.map((row) => Number(row.protected));
      expect(flags).toEqual(flags.toSorted((a, b) => b - a));
    }
  });

  test('a cell for the start and each step, rows counted through', () => {
    const rows = grid.groups.flatMap((group) => group.rows);
    expect(rows.every((row) => row.cells.length === procedure.steps.length + 1)).toBe(true);
    expect(rows.map((row) => row.index)).toEqual(rows.map((_, index) => index));
  });

  test('what is left out is counted, and comes when asked for', () => {
    const all = gridOf(procedure, board, true);
    const count = (some: typeof grid) => some.groups.reduce((sum, group) => sum + group.rows.length, 0);
    expect(grid.quiet).toBeGreaterThan(0);
    expect(count(all)).toBe(count(grid) + grid.quiet);
    expect(count(all)).toBe(board.surfaces.length);
  });
});

describe('what numbers rest on', () => {
  test('the slip is found in every form of key', () => {
    expect(slipIn('s12:wrong-grip')).toBe('wrong-grip');
    expect(slipIn('s12:pinhole:left')).toBe('pinhole');
    expect(slipIn('start:soiled-strap:wearer.goggles.strap')).toBe('soiled-strap');
    expect(slipIn('s12:no-such-slip')).toBeUndefined();
  });

  test('the weakest status counts, and none known is judgement', () => {
    expect(statusOf(['s1:wrong-grip'])).toBe('judgement');
    expect(statusOf([])).toBe('judgement');
  });

  test('a chance and its interval keep two digits, and never round to nothing or to certainty', () => {
    const said = (chance: number, low: number, high: number): string =>
      chanceRange({ chance, interval: { low, high } });
    expect(said(0.123_45, 0.000_123_4, 0.999_7)).toBe('12 % (0.012 % to > 99 %)');
    expect(said(1e-9, 0, 1)).toBe('< 0.0001 % (0 % to 100 %)');
  });
});

describe('evidence', () => {
  test('no search lists every record once', () => {
    const records = searched('').flatMap((group) => group.items);
    expect(records).toHaveLength(allEvidence.length);
  });

  test('every word of the search must be there', () => {
    const found = searched('wrong grip').flatMap((group) => group.items.map((record) => record.id));
    expect(found).toContain('slip.wrong-grip');
    expect(searched('wrong grip xylophone')).toEqual([]);
  });

  test('a chance says its unit and spread, and which slip uses it', () => {
    const record = allEvidence.find(({ id }) => id === 'slip.wrong-grip');
    expect(record && valueText(record)).toMatch(/chance per opportunity \(.*error factor/);
    expect(usesOf('slip.wrong-grip')).toContainEqual({ as: 'chance of', what: 'wrong-grip' });
  });

  test('every rule of practice says how a procedure is asked about it, or why it cannot be', () => {
    for (const record of allEvidence) {
      const asked = askedOf(record);
      expect(asked !== undefined).toBe(record.id.startsWith('practice.'));
      if (!asked) continue;
      const checked = asked.looksAt !== undefined || asked.brokenBy.length > 0;
      expect([record.id, checked]).toEqual([record.id, asked.notBecause === undefined]);
      expect(asked.kinds.length > 0).toBe(asked.looksAt !== undefined);
    }
  });
});

describe('the head of a file', () => {
  test.each(FILES)('%s has a title and says whether it is invented', (file) => {
    const head = headOf(textOf(file));
    expect(head.title).not.toContain('without a title');
    expect(head.invented).toBe(file.startsWith('larkmoor'));
    expect(head.invented || head.source !== undefined).toBe(true);
  });

  test('two versions of one procedure can be told apart', () => {
    const versions = ['larkmoor-suit-doffing.yaml', 'larkmoor-suit-doffing-v2.yaml'].map(
      (file) => headOf(textOf(file)).version,
    );
    expect(versions).toEqual(['1', '2']);
  });

  test('a file with errors still has a name', () => {
    expect(headOf('title: Broken\nsteps: [').title).toBe('Broken');
    expect(headOf('\0: {{{').title).toBe('Procedure without a title');
  });
});

describe('wrapping', () => {
  test('fills lines and marks what is left out', () => {
    expect(wrapped('back of the hooded coverall', 18, 2)).toEqual(['back of the hooded', 'coverall']);
    expect(wrapped('a b c d', 1, 2)).toEqual(['a', 'b…']);
  });
});

describe('names in lists of procedures', () => {
  const one = (id: string, more: Partial<Parameters<typeof namesOf>[0][number]> = {}) => ({
    id,
    title: 'Suit',
    version: '1',
    fileName: `${id}.yaml`,
    opened: false,
    ...more,
  });
  const listed = (...entries: readonly ReturnType<typeof one>[]) => [...namesOf(entries).values()];

  test('a title of its own is enough, a shared one has its version beside it', () => {
    expect(listed(one('a'), one('b', { title: 'Gown' }))).toEqual(['Suit', 'Gown']);
    expect(listed(one('a'), one('b', { version: '2' }))).toEqual(['Suit, version 1', 'Suit, version 2']);
  });

  test('of a version in the journal its stage and its day are said, shared title or not', () => {
    const approval = { is: 'approved', on: '2026-03-02' } as const;
    const inForce = one('a', { stage: 'approved, in force', approval });
    const review = one('b', { stage: 'under review', approval: { is: 'review' } });
    expect(listed(inForce)).toEqual(['Suit, version 1, approved on 2026-03-02, in force']);
    expect(listed(inForce, review)[1]).toBe('Suit, version 1, under review');
  });

  test('no two are called the same, the opened file says that it is one', () => {
    const all = [one('a'), one('b'), one('opened', { opened: true, fileName: 'mine.yaml' })];
    expect(listed(...all)).toEqual([
      'Suit, version 1 (a.yaml)',
      'Suit, version 1 (b.yaml)',
      'Suit, version 1, opened from this machine',
    ]);
    const library = FILES.map((fileName) => ({ ...one(fileName), ...headOf(textOf(fileName)) }));
    expect(new Set(listed(...library)).size).toBe(FILES.length);
    const { version: _, ...nameless } = one('a');
    expect(apartText(nameless)).toBe('version without a name');
  });
});
