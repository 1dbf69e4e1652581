// Names of tabled values as they are read.
import { expect, test } from 'vitest';
import { valueText } from '../../src/app/model/evidence.ts';
import { allEvidence } from '../../src/evidence/index.ts';
import { fieldInWords } from '../../src/words/fields.ts';

test.each([
  ['cubicFeet', 'cubic feet'],
  ['powder35To0.5GramsPerLitre', 'powder 35 to 0.5 grams per litre'],
  ['quantile95Days', 'quantile 95 days'],
  ['beyond21', 'beyond 21'],
  ['ms2', 'ms2'],
  ['e12', 'e12'],
  ['K1', 'K1'],
  ['low', 'low'],
])('%s is read as %s', (name, read) => {
  expect(fieldInWords(name)).toBe(read);
});

test('no record shows a name as its file is written', () => {
  const shown = allEvidence.filter(({ value }) => typeof value === 'object' && !Array.isArray(value));
  expect(shown.length).toBeGreaterThan(0);
  for (const record of shown) {
    const names = valueText({ ...record, unit: 'statement' });
    expect(names.match(/\b[a-z]+(?:\d|[a-z])*[A-Z]\w*/), record.id).toBeNull();
  }
});
