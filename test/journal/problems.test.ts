// Every way to refuse and to fail has its sentence, and which of the two it is can be told.
import { describe, expect, test } from 'vitest';
import { FAILURES, isRefusal, JournalError, REFUSALS, sentenceOf } from '../../src/journal/problems.ts';

describe('problems', () => {
  test.each(REFUSALS)('%s names the entry', (code) => {
    const problem = { code, index: 0, device: 'desk', number: 7, found: 'this', expected: 'that' };
    expect(isRefusal(problem)).toBe(true);
    expect(sentenceOf(problem)).toMatch(/^Entry 7 of device desk .*this.*\.$/);
    expect(new JournalError(problem).message).toBe(sentenceOf(problem));
  });

  test.each(FAILURES)('%s says what the store said', (code) => {
    const problem = { code, detail: 'the disk' };
    expect(isRefusal(problem)).toBe(false);
    expect(sentenceOf(problem)).toMatch(/^[A-Z].*\(the disk\)\.$/);
  });
});
