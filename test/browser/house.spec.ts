// What every version of the page must hold, whatever it shows: it opens under the server's strict policy without a
// complaint, asks no other host, passes the accessibility rules and answers at an address inside it.
import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { complaintsOf } from './page.ts';

test('opens with one main heading and without a complaint', async ({ page }) => {
  const complaints = complaintsOf(page);
  page.on('requestfailed', (request) => complaints.push(`failed: ${request.url()}`));
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
  await expect(page).toHaveTitle(/Doffline/);
  await page.waitForLoadState('networkidle');
  expect(complaints).toEqual([]);
});

test('asks no other host', async ({ page, baseURL }) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.goto('/');
  await page.waitForLoadState('networkidle');
  expect(asked.length).toBeGreaterThan(1);
  expect(asked.filter((url) => !url.startsWith(`${baseURL}/`) && !/^(data|blob):/.test(url))).toEqual([]);
});

test('an accessibility check of it looks at something, and finds nothing', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const { violations, passes } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  expect(passes.length).toBeGreaterThan(5);
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([]);
});

test('needs no sideways scrolling', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const [content, screen] = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    document.documentElement.clientWidth,
  ]);
  expect(content).toBeLessThanOrEqual(screen ?? 0);
});

test('an address inside the page opens the page', async ({ page }) => {
  const answer = await page.goto('/no/such/place');
  expect(answer?.status()).toBe(200);
  await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
});
