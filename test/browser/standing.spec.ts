// A part of the page that cannot be drawn: what stands there instead says so, the rest of the page stands, and another place is
// another try. What no draft can be of stays out of the list of drafts.
import { expect, test } from '@playwright/test';

test('a page that fails says so, and the others go on', async ({ page }) => {
  await page.addInitScript(() => {
    Storage.prototype.getItem = new Proxy(Reflect.get(Storage.prototype, 'getItem') as () => string | null, {
      apply: (read, storage, asked: [string]) => {
        if (asked[0].startsWith('doffline-draft-')) throw new Error('a broken store');
        return Reflect.apply(read, storage, asked) as unknown;
      },
    });
    localStorage.setItem('doffline-draft-broken', '{}');
  });
  await page.goto('/write/broken');
  await expect(page.getByRole('alert').getByRole('heading', { name: 'This page has stopped' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Load it again' })).toBeVisible();
  await page.getByRole('link', { name: 'Evidence', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Evidence', level: 1 })).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('what no draft can be of leaves the list of drafts standing', async ({ page }) => {
  await page.addInitScript(() => {
    localStorage.setItem(
      'doffline-draft-odd',
      '{"format":1,"things":[{"title":{}}],"lists":[[]],"snapshots":[["x",0,0,0,0,0,0,0,0,0]],"now":0}',
    );
  });
  await page.goto('/write');
  await expect(page.getByRole('button', { name: 'New doffing' })).toBeVisible();
  await page.goto('/write/odd');
  await expect(page.getByRole('heading', { name: 'No such draft' })).toBeVisible();
});
