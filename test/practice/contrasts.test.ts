// The published sequences themselves, as files in procedures/: a departure there is either a known disagreement between
// sources (contrasts.ts) or a false alarm of ours. Invented procedures are not asked.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/contacts/interpret.ts';
import { readProcedure } from '../../src/language/index.ts';
import { departures } from '../../src/practice/index.ts';
import { ROOT } from '../house/imports.ts';
import { CONTRASTS } from './contrasts.ts';

const FOLDER = join(ROOT, 'procedures');

const published = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map((file) => {
    const { procedure } = readProcedure(readFileSync(join(FOLDER, file), 'utf8'));
    if (!procedure) throw new Error(`${file} cannot be read`);
    return { name: file.replace(/\.yaml$/, ''), procedure };
  })
  .filter(({ procedure }) => !procedure.invented);

describe('published sequences', () => {
  test('are there to be asked', () => {
    expect(published.length).toBeGreaterThan(10);
  });

  for (const { name, procedure } of published) {
    test(`${name} departs only where sources disagree`, () => {
      const known = CONTRASTS.filter(({ procedures }) => procedures.includes(name)).map(({ rule }) => rule);
      const found = departures(compile(procedure, 'enveloped')).map(({ rule }) => rule);
      expect([...new Set(found)].toSorted()).toEqual(known.toSorted());
    });
  }
});
