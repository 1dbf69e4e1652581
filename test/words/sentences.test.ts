// Sentences on real procedures: every step, event, finding and route of each file reads as a whole sentence, and a small
// sample is held to the letter in golden/. A changed golden file is a changed wording: read it before updating (-u).
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/check/analysis.ts';
import { coverage } from '../../src/check/coverage.ts';
import { type Finding, FINDING_KINDS, type Measure } from '../../src/check/finding.ts';
import { byDesign, oneSlip, open, problemFindings } from '../../src/check/judge.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { readProcedure } from '../../src/language/index.ts';
import { namedBy } from '../../src/words/surfaces.ts';
import { wordsFor } from '../../src/words/index.ts';
import { everyAction, FINDINGS } from './sample.ts';
import { VERDICT, whole } from './whole.ts';

const words = wordsFor('en');
const FILES = readdirSync('procedures').filter((name) => name.endsWith('.yaml'));

function read(name: string): Procedure {
  const { procedure } = readProcedure(readFileSync(`procedures/${name}`, 'utf8'), name);
  if (!procedure) throw new Error(`${name} has errors`);
  return procedure;
}

function findingsOf(procedure: Procedure): readonly Finding[] {
  const analysis = analyse(procedure, 'enveloped');
  const context = { analysis, hash: 'sample0' };
  return [
    ...problemFindings(context.analysis.compiled),
    ...open(context),
    ...oneSlip(context),
    ...byDesign(context),
    ...coverage(analysis.compiled),
  ];
}

test('there are procedures to read', () => {
  expect(FILES.length).toBeGreaterThan(10);
});

describe.each(FILES)('%s', (name) => {
  const procedure = read(name);
  test('every step is an instruction', () => {
    for (const step of procedure.steps) {
      const sentence = words.step(procedure, step);
      expect(sentence).toMatch(/^[A-Z].+[^.]\.$/);
      expect(whole(sentence)).toBe(true);
      expect(whole(words.stepLabel(procedure, step))).toBe(true);
      expect(words.person(procedure, step.who)).toMatch(/^the /);
    }
  });

  test('every surface and every event has its words, every finding its route', () => {
    const { compiled } = analyse(procedure, 'enveloped');
    for (const { id } of compiled.plan.surfaces) {
      expect(namedBy(procedure, id).at).not.toBe('unknown');
      expect(words.surface(procedure, id)).toMatch(/^the /);
    }
    for (const { key } of compiled.plan.events) {
      const said = words.event(procedure, key);
      expect(said).toMatch(/ at (the start|step \d+ \(.+\))$/);
      expect(whole(said)).toBe(true);
    }
  });

  test('every finding says what, where and why, and never gives a verdict', () => {
    for (const finding of findingsOf(procedure)) {
      const { title, text } = words.finding(procedure, finding);
      const route = words.route(procedure, finding).map((sentence) => sentence.text);
      for (const said of [title, text, ...route]) {
        expect(whole(said), said).toBe(true);
        expect(said).not.toMatch(VERDICT);
      }
      expect(route.length).toBeGreaterThanOrEqual(finding.route.length);
    }
  });
});

describe('the sample, to the letter', () => {
  const procedure = everyAction();
  test('steps', async () => {
    const lines = procedure.steps.map(
      (step, at) => `${at + 1}. ${words.person(procedure, step.who)}: ${words.step(procedure, step)}`,
    );
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('golden/steps.txt');
  });

  test('findings and routes', async () => {
    const lines = FINDINGS.flatMap((finding) => [
      `${finding.code}: ${words.finding(procedure, finding).title}`,
      `  ${words.finding(procedure, finding).text}`,
      ...words.route(procedure, finding).map(({ text }, at) => `  ${at + 1}. ${text}`),
    ]);
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('golden/findings.txt');
  });

  test('the findings are of every kind', () => {
    expect(new Set(FINDINGS.map(({ kind }) => kind))).toEqual(new Set(FINDING_KINDS));
  });
});

describe('edits and mends', () => {
  const procedure = everyAction();
  const step = {
    id: 'rub-new',
    who: 'wearer',
    action: 'sanitise',
    items: [],
    product: 'alcohol-hand-rub',
  } as const;
  const before: Measure = {
    impossible: 0,
    open: [0, 1, 0, 0],
    chance: [0.001, 1, 0.1, 0],
    departures: 2,
    seconds: 600,
  };
  const after: Measure = { ...before, open: [0, 0, 0, 0], chance: [0.001, 0.008, 0.1, 0], seconds: 630 };

  test.each([
    [
      { do: 'insert', at: 7, steps: [step] },
      'Insert after step 7 (remove the outer gloves): clean both gloved hands with alcohol hand rub.',
    ],
    [
      { do: 'insert', at: 0, steps: [step] },
      'Insert at the beginning: clean both gloved hands with alcohol hand rub.',
    ],
    [
      { do: 'insert', at: 1, steps: [{ ...step, who: 'assistant' }] },
      'Insert after step 1 (call to the wearer and wait for the answer): clean both gloved hands with alcohol hand rub (the assistant).',
    ],
    [{ do: 'remove', at: 1 }, 'Leave out step 2 (look over all equipment).'],
    [{ do: 'move', from: 9, to: 0 }, 'Move step 10 (remove the face shield) to the beginning.'],
    [
      { do: 'move', from: 1, to: 3 },
      'Move step 2 (look over all equipment) to after step 4 (step onto the wet mat).',
    ],
    [
      { do: 'replace', at: 5, step },
      'Change step 6 to: Clean both gloved hands with alcohol hand rub: all over, until dry.',
    ],
  ] as const)('%o', (edit, sentence) => {
    expect(words.edit(procedure, edit)).toBe(sentence);
  });

  test('a mend says what it changes, with what the numbers rest on', () => {
    const edit = { do: 'insert', at: 7, steps: [step] } as const;
    const mend = {
      edit,
      barriers: { before: 0, after: 2 },
      before,
      after,
      gone: ['open.skin wearer.neck'],
      added: ['one-slip.skin wearer.face', 'practice.zip-one-hand zip'],
    };
    expect(words.mend(procedure, mend).changes).toEqual([
      'Barriers: 0 (open) -> 2',
      'Open routes to skin: 1 -> 0',
      'Chance of reaching skin: 100 % -> 0.8 % (judgement)',
      'Time: 10 min 00 s -> 10 min 30 s (judgement)',
      'Findings that go: 1',
      "New findings: one slip away: the wearer's face; one hand on the zip: step 12 (unzip the hooded coverall)",
    ]);
  });

  test('an open route that becomes one slip away is not called new', () => {
    const added = [
      'one-slip.skin wearer.neck',
      ...['eyes', 'nose', 'mouth', 'face', 'ears'].map((at) => `one-slip.skin wearer.${at}`),
    ];
    const mend = {
      edit: { do: 'remove', at: 0 },
      before,
      after: before,
      gone: ['open.skin wearer.neck'],
      added,
    } as const;
    expect(words.mend(procedure, mend).changes).toEqual([
      'Findings that go: 1',
      "No longer open, but still one slip away: the wearer's neck",
      "New findings: one slip away: the wearer's eyes; one slip away: the wearer's nose; one slip away: the wearer's mouth; one slip away: the wearer's face; and 1 more",
    ]);
  });

  test('a measure has a line for each figure', () => {
    expect(words.measure(before)).toContain('Chance of reaching mucosa: 0.1 % (judgement)');
    expect(words.measure(before)).toHaveLength(11);
  });
});

describe('the contradictions between donning and doffing', () => {
  const procedure = everyAction();
  const finding = (params: Finding['params']): Finding => ({
    code: 'impossible.layering',
    kind: 'impossible',
    severity: 'error',
    steps: [0],
    surfaces: [],
    params,
    events: [],
    route: [],
    mends: [],
    evidence: [],
  });
  test.each([
    [
      { item: 'outer-gloves (left)', what: 'never-put-on' },
      'The doffing takes off the left outer glove, which the donning never put on',
    ],
    [
      { item: 'apron', what: 'never-taken-off' },
      'The donning puts on the apron, which the doffing does not know of',
    ],
    [
      { item: 'gown', by: 'apron', what: 'other-way-round' },
      'The donning puts the apron over the gown, the doffing assumes the other way round',
    ],
    [{}, 'The doffing contradicts how the donning layered the equipment'],
  ])('%o', (params, title) => {
    expect(words.finding(procedure, finding(params)).title).toBe(title);
  });
});
