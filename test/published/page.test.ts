// The page of the claims says what the claims and the model say. It is written anew with `npx vitest run test/published -u`.
import { expect, test } from 'vitest';
import { CLAIMS } from './claims.ts';
import { publishedPage } from './page.ts';

test('docs/published.md is what the claims and the model make', async () => {
  await expect(publishedPage()).toMatchFileSnapshot('../../docs/published.md');
});

test('it shows every claim, and why where it does not agree in full', () => {
  const page = publishedPage();
  for (const { id, claim, verdict, why } of CLAIMS) {
    expect(page).toContain(`### ${id}: ${verdict}`);
    expect(page).toContain(claim);
    expect(page).toContain(why ?? claim);
  }
});
