// Reading: what a good file becomes, which defaults are filled in, and that several faults are told in one run.
import { describe, expect, test } from 'vitest';
import { readProcedure } from '../../src/language/index.ts';
import { SMALL } from './samples.ts';

const codes = (text: string) => readProcedure(text).diagnostics.map(({ code }) => code);

function read(text: string) {
  const { procedure, diagnostics } = readProcedure(text);
  expect(diagnostics).toEqual([]);
  if (!procedure) throw new Error('no procedure');
  return procedure;
}

describe('a good file', () => {
  test('fills in people: role, underclothes, hand and where they start', () => {
    expect(read(SMALL).people).toEqual([
      {
        id: 'wearer',
        role: 'wearer',
        wears: ['gown', 'gloves'],
        underneath: ['scrubs', 'shoes'],
        starts: 'patient-room',
        hand: 'right',
        leavesBare: ['scalp', 'wrist.left', 'wrist.right'],
      },
      {
        id: 'assistant',
        role: 'assistant',
        wears: [],
        underneath: ['scrubs', 'shoes'],
        starts: 'doffing-area',
        hand: 'left',
        leavesBare: [],
      },
    ]);
  });

  test('gives every zone a floor, protected on the clean side only', () => {
    expect(read(SMALL).fixtures).toEqual([
      { id: 'bin', kind: 'bin', zone: 'doffing-area', clean: false, worked: 'pedal' },
      { id: 'patient-room-floor', kind: 'floor', zone: 'patient-room', clean: false },
      { id: 'doffing-area-floor', kind: 'floor', zone: 'doffing-area', clean: false },
      { id: 'clean-side-floor', kind: 'floor', zone: 'clean-side', clean: true },
    ]);
  });

  test('counts steps, lets the wearer do them, and leaves the usual technique open', () => {
    expect(read(SMALL).steps).toEqual([
      { id: 's1', who: 'wearer', action: 'remove', items: ['gown', 'gloves'] },
      { id: 'rub', who: 'wearer', action: 'sanitise', items: [], product: 'alcohol-hand-rub' },
      { id: 's3', who: 'assistant', action: 'move', items: [], zone: 'clean-side' },
    ]);
  });

  test('keeps a version as it is written, quoted or not', () => {
    expect(read(SMALL.replace('version: "1"', 'version: 1.10')).version).toBe('1.10');
  });

  test('in a donning everybody starts on the clean side', () => {
    const people = read(SMALL.replace('kind: doffing', 'kind: donning')).people;
    expect(people.map(({ starts }) => starts)).toEqual(['clean-side', 'clean-side']);
  });
});

test('faults in several places are told in one run, in the order of the file', () => {
  const wrong = SMALL.replace('kind: doffing', 'kind: dofing')
    .replace('item: [gown, gloves]', 'item: [gwon, gloves]')
    .replace('to: clean-side', 'to: clean-sied');
  expect(codes(wrong)).toEqual(['unknown-kind', 'unknown-item', 'unknown-zone']);
});

test('positions lead from a step id and from a path to line and column', () => {
  const { positions } = readProcedure(SMALL);
  expect(positions.steps.get('rub')).toEqual({ line: 17, column: 5, endLine: 17, endColumn: 52 });
  expect(positions.paths.get('steps.2.to')).toEqual({ line: 18, column: 36, endLine: 18, endColumn: 46 });
});
