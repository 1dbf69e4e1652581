// Unit and property tests. Browser tests are Playwright's and live in test/browser.
import { defineConfig } from 'vitest/config';

/**
 * Each has a process of its own: what loads modules anew, and what calculates long, which is slower in a process in which much else
 * ran before. All others share theirs: to load the modules took longer than most of their tests.
 */
const ALONE = [
  'app/compose/model',
  'check/limits',
  'check/routes',
  'check/variants',
  'contacts/interpreter',
  'contacts/laws',
  'contacts/remembered',
  'engine/*',
  'guide/explore',
  'language/hardening',
  'mutants/mutants',
  'order/search',
  'print/models',
  'print/pdf',
].map((name) => `test/${name}.test.ts`);

const every = {
  environment: 'node',
  passWithNoTests: false,
  testTimeout: 60_000,
  hookTimeout: 60_000,
} as const;

export default defineConfig({
  test: {
    // One core less than there are, the usual, would be one of two.
    maxWorkers: '100%',
    coverage: { provider: 'v8', include: ['src/**'], reportsDirectory: 'coverage' },
    projects: [
      { test: { ...every, name: 'alone', include: ALONE } },
      {
        test: {
          ...every,
          name: 'together',
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/browser/**', ...ALONE],
          isolate: false,
        },
      },
    ],
  },
});
