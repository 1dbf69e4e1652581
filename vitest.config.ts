// Unit and property tests. Browser tests are Playwright's and live in test/browser.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.{ts,tsx}'],
    exclude: ['test/browser/**', 'node_modules/**'],
    environment: 'node',
    passWithNoTests: false,
    testTimeout: 60_000,
    // One core less than there are, the usual, would be one of two.
    maxWorkers: '100%',
    coverage: { provider: 'v8', include: ['src/**'], reportsDirectory: 'coverage' },
  },
});
