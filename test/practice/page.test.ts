// The page of the rules says what the tables say. It is written anew with `npx vitest run test/practice -u`.
import { expect, test } from 'vitest';
import { evidenceIds } from '../../src/evidence/index.ts';
import { practicePage } from './page.ts';

test('docs/practice.md is what the tables make', async () => {
  await expect(practicePage()).toMatchFileSnapshot('../../docs/practice.md');
});

test('it lists every rule of evidence/practice.json', () => {
  const page = practicePage();
  const rules = evidenceIds.filter((id) => id.startsWith('practice.'));
  expect(rules.length).toBeGreaterThan(60);
  for (const id of rules) expect(page).toContain(`| \`${id.replace('practice.', '')}\` |`);
});
