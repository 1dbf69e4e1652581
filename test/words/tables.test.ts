// Every table of the English words names every entry of its domain table, and no sentence has a hole in it. The compiler
// checks the same through `Record` types; this also holds when an id's type has quietly become any text.
import { describe, expect, test } from 'vitest';
import { FINDING_KINDS } from '../../src/check/finding.ts';
import { PROBLEM_CODES } from '../../src/contacts/problem.ts';
import { ACTION_IDS } from '../../src/domain/actions.ts';
import { ITEM_IDS, ITEMS, PART_IDS } from '../../src/domain/items.ts';
import { PLACE_NAMES } from '../../src/domain/places.ts';
import { AGENTS, PRODUCT_IDS } from '../../src/domain/products.ts';
import { FIXTURE_KIND_IDS, ZONE_SIDES } from '../../src/domain/room.ts';
import { SLIPS } from '../../src/domain/slips.ts';
import { TECHNIQUE_IDS } from '../../src/domain/techniques/index.ts';
import { LEDGER_TURNS } from '../../src/engine/ledger.ts';
import { evidenceIds, evidenceStatuses } from '../../src/evidence/index.ts';
import { KIND_TITLES, WHY } from '../../src/words/en/kinds.ts';
import {
  AGENT_NOUNS,
  CLOSURE_VERBS,
  FIXTURE_NOUNS,
  ITEM_NOUNS,
  PART_NOUNS,
  PLACE_NOUNS,
  PRODUCT_NOUNS,
  ZONE_NOUNS,
} from '../../src/words/en/nouns.ts';
import { STATUS_WORDS } from '../../src/words/en/numbers.ts';
import { PROBLEM_WORDS } from '../../src/words/en/problems.ts';
import { TURN_WORDS } from '../../src/words/en/routes.ts';
import { SLIP_CLAUSES, SLIP_NAMES } from '../../src/words/en/slips.ts';
import { ACTION_NAMES } from '../../src/words/en/steps.ts';
import { TECHNIQUE_PHRASES } from '../../src/words/en/techniques.ts';
import { CAUTIONS, wordsFor } from '../../src/words/index.ts';
import { whole } from './whole.ts';

const SLIP_IDS = SLIPS.map((slip) => slip.id);

describe('tables', () => {
  test.each<[string, object, readonly string[]]>([
    ['items', ITEM_NOUNS, ITEM_IDS],
    ['parts', PART_NOUNS, PART_IDS],
    ['places', PLACE_NOUNS, PLACE_NAMES],
    ['fixtures', FIXTURE_NOUNS, FIXTURE_KIND_IDS],
    ['zones', ZONE_NOUNS, ZONE_SIDES],
    ['products', PRODUCT_NOUNS, PRODUCT_IDS],
    ['agents', AGENT_NOUNS, AGENTS],
    ['closures', CLOSURE_VERBS, [...new Set(ITEMS.map((item) => item.closure))]],
    ['actions', ACTION_NAMES, ACTION_IDS],
    ['techniques', TECHNIQUE_PHRASES, TECHNIQUE_IDS],
    ['slip names', SLIP_NAMES, SLIP_IDS],
    ['slip clauses', SLIP_CLAUSES, SLIP_IDS],
    ['problems', PROBLEM_WORDS, PROBLEM_CODES],
    ['kinds', KIND_TITLES, FINDING_KINDS],
    ['turns', TURN_WORDS, LEDGER_TURNS],
    ['statuses', STATUS_WORDS, evidenceStatuses],
  ])('%s: each has its words, and no words are left over', (_, table, ids) => {
    expect(Object.keys(table).sort()).toEqual([...ids].sort());
  });

  test('no two items share a name', () => {
    const names = ITEM_IDS.map((id) => ITEM_NOUNS[id].all);
    expect(new Set(names).size).toBe(names.length);
  });

  test('why an end of a route matters is said for each class', () => {
    for (const sentence of Object.values(WHY)) expect(sentence).toMatch(/^[A-Z].+\.$/);
  });
});

describe('problems', () => {
  const setting = { kind: 'doffing', people: [], zones: [], fixtures: [], start: [], steps: [] } as const;
  test.each(PROBLEM_CODES)('%s is a whole sentence, with and without parameters', (code) => {
    const given = {
      item: 'outer-gloves',
      side: 'left',
      by: 'gown',
      person: 'x',
      fixture: 'mirror',
      product: 'soap-and-water',
      surface: 'y',
      action: 'wipe',
    };
    for (const params of [{}, given]) {
      const { wrong, mend } = wordsFor('en').problem(setting, { code, step: 0, params });
      expect(whole(wrong)).toBe(true);
      expect(mend).toMatch(/^[A-Z].+\.$/);
      expect(whole(mend)).toBe(true);
    }
  });
});

describe('evidence', () => {
  test('every record says what it is, where it is from and how far to trust it', () => {
    const words = wordsFor('en');
    for (const id of evidenceIds) {
      const { says, source, status } = words.evidence(id);
      expect(whole(says) && whole(source)).toBe(true);
      expect(Object.values(STATUS_WORDS)).toContain(status);
    }
  });
});

describe('cautions', () => {
  test('say what the program is not', () => {
    const text = CAUTIONS.join(' ');
    for (const part of [
      'does not replace',
      'national guidance',
      'occupational health',
      'fit testing',
      'does not mean that a procedure is safe',
      'exposure plan',
    ])
      expect(text).toContain(part);
  });
});

describe('languages', () => {
  test('a tag with a region finds its language; one that is not spoken yet gets English', () => {
    expect(wordsFor('en-GB').language).toBe('en');
    expect(wordsFor('pt-BR').language).toBe('pt');
    expect(wordsFor('fr').language).toBe('fr');
    expect(wordsFor('de').language).toBe('en');
  });
});
