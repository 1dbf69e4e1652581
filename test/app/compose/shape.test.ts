// What lies in the browser's store under a draft's name is opened only where it is one: anything else is no draft, and the page
// that lists drafts goes on.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fromNothing, fromText } from '../../../src/app/compose/model/draft.ts';
import { begun } from '../../../src/app/compose/model/history.ts';
import { packed, unpacked } from '../../../src/app/compose/model/pack.ts';
import type { Procedure } from '../../../src/domain/procedure.ts';

const kept = (procedure: Procedure): string => packed(begun(procedure, 'new'));
const PROCEDURE: Procedure = {
  ...fromNothing('doffing'),
  steps: [{ id: 's1', who: 'wearer', action: 'remove', items: ['gloves'] }],
};

describe('a draft', () => {
  test.each(readdirSync('procedures').filter((name) => name.endsWith('.yaml')))('of %s is one', (name) => {
    const { procedure } = fromText(readFileSync(`procedures/${name}`, 'utf8'), name);
    expect(procedure).toBeDefined();
    if (procedure) expect(unpacked(kept(procedure))?.present.procedure).toEqual(procedure);
  });

  test.each<readonly [string, (written: string) => string]>([
    ['the title is no text', (one) => one.replace('"A new doffing"', '{"a":1}')],
    ['an item is a word of the language it is written in', (one) => one.replace('"gloves"', '"constructor"')],
    ['an action is none', (one) => one.replace('"remove"', '"__proto__"')],
    ['a role is none', (one) => one.replace('"role":"wearer"', '"role":"boss"')],
    ['a step is missing', (one) => one.replace(/\{"id":"s1"[^}]*\}/, 'null')],
    ['items are one word', (one) => one.replace('["gloves"]', '"gloves"')],
    ['the rules are missing', (one) => one.replace(/,"policy":\{[^}]*\}/, '')],
    ['an index leads nowhere', (one) => one.replace('"lists":[[', '"lists":[[9999,')],
    ['what was done is no text', (one) => one.replace('[["new"', '[[{}')],
    ['it is about something else', () => '{"format":1}'],
    ['it is nothing', () => 'null'],
  ])('is none where %s', (_, spoil) => {
    const written = kept(PROCEDURE);
    expect(unpacked(written)).toBeDefined();
    const spoilt = spoil(written);
    expect(spoilt).not.toBe(written);
    expect(unpacked(spoilt)).toBeUndefined();
  });
});
