// The guide's page is what its tables say.
import { expect, test } from 'vitest';
import { page } from './page.ts';

test('docs/guide.md says what the tables say', async () => {
  await expect(page()).toMatchFileSnapshot('../../docs/guide.md');
});
