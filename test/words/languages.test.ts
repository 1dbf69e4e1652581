// French, Spanish and Portuguese on real procedures: every sentence that the check can say of each file is whole, in its
// own language and in its grammar, and gives no verdict. A small sample of each language is held to the letter in
// golden/: a changed golden file is a changed wording, to be read before it is updated (-u).
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/check/analysis.ts';
import { coverage } from '../../src/check/coverage.ts';
import type { Finding, Measure } from '../../src/check/finding.ts';
import { byDesign, oneSlip, open, problemFindings } from '../../src/check/judge.ts';
import { PROBLEM_CODES } from '../../src/contacts/problem.ts';
import { ACTION_IDS } from '../../src/domain/actions.ts';
import { ITEM_IDS, itemKind } from '../../src/domain/items.ts';
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import { PRODUCT_IDS } from '../../src/domain/products.ts';
import { SLIPS } from '../../src/domain/slips.ts';
import { TECHNIQUE_IDS } from '../../src/domain/techniques/index.ts';
import { LEDGER_TURNS } from '../../src/engine/ledger.ts';
import { evidence, evidenceIds } from '../../src/evidence/index.ts';
import { readProcedure } from '../../src/language/index.ts';
import { departures } from '../../src/practice/index.ts';
import { wordsFor } from '../../src/words/index.ts';
import { faultIn, FOREIGN } from './languages.ts';
import { everyAction, FINDINGS } from './sample.ts';

const FILES = readdirSync('procedures').filter((name) => name.endsWith('.yaml'));

function read(name: string): Procedure {
  const { procedure } = readProcedure(readFileSync(`procedures/${name}`, 'utf8'), name);
  if (!procedure) throw new Error(`${name} has errors`);
  return procedure;
}

const BARE = {
  severity: 'note',
  surfaces: [],
  params: {},
  events: [],
  route: [],
  mends: [],
  evidence: [],
} as const;

/** Everything the check can find, but for the variants, which take long and are in the sample. */
function spoken(procedure: Procedure) {
  const analysis = analyse(procedure, 'enveloped');
  const context = { analysis, hash: 'sample0' };
  const practice = departures(analysis.compiled).map(
    ({ rule, step, others = [], params }): Finding => ({
      ...BARE,
      code: rule,
      kind: 'practice',
      steps: [step, ...others],
      params,
      evidence: [rule],
    }),
  );
  const findings: readonly Finding[] = [
    ...problemFindings(analysis.compiled),
    ...open(context),
    ...oneSlip(context),
    ...byDesign(context),
    ...coverage(analysis.compiled),
    ...practice,
  ];
  return { procedure, plan: analysis.compiled.plan, findings };
}

const PROCEDURES = FILES.map((name) => ({ name, ...spoken(read(name)) }));

const faultsIn = (language: (typeof FOREIGN)[number], texts: readonly string[]): readonly string[] => [
  ...new Set(texts.flatMap((text) => faultIn(language, text) ?? [])),
];

const IN_ENGLISH = { fr: '(en anglais)', es: '(en inglés)', pt: '(em inglês)' } as const;

test('the lists find what they are there for', () => {
  expect(faultIn('fr', 'retirer le outil')).toBeDefined();
  expect(faultIn('fr', 'la face de un gant')).toBeDefined();
  expect(faultIn('fr', 'la face de le gant')).toBeDefined();
  expect(faultIn('fr', "l'hygiène des mains")).toBeUndefined();
  expect(faultIn('fr', 'la main droit')).toBeDefined();
  expect(faultIn('fr', 'le gant est propre')).toBeDefined();
  expect(faultIn('fr', 'remove les gants')).toBeDefined();
  expect(faultIn('es', 'pase a el pasillo')).toBeDefined();
  expect(faultIn('es', 'la manga de el mono')).toBeDefined();
  expect(faultIn('es', 'la mano izquierdo')).toBeDefined();
  expect(faultIn('es', 'la superficie es segura')).toBeDefined();
  expect(faultIn('pt', 'a face de o capote')).toBeDefined();
  expect(faultIn('pt', 'pise em a cadeira')).toBeDefined();
  expect(faultIn('pt', 'a luva está limpa')).toBeDefined();
  expect(faultIn('pt', 'toque em “the door”')).toBeUndefined();
  expect(faultIn('es', '')).toBe('empty');
});

describe.each(FOREIGN)('%s', (language) => {
  const words = wordsFor(language);

  test('says that it was made by machine, in itself and in English', () => {
    expect(words.language).toBe(language);
    expect(words.review).toBe('machine-made');
    const [own = '', english] = words.reviewNote;
    expect(faultIn(language, own)).toBeUndefined();
    expect(english).toBe('Machine-made wording, to be reviewed by a native-speaking clinician.');
  });

  test('carries every caution that English does', () => {
    expect(words.cautions.length).toBe(wordsFor('en').cautions.length);
    for (const caution of words.cautions)
      expect(faultIn(language, caution.replace(/sûre|sans danger|seguro/, ''))).toBeUndefined();
  });

  test.each(PROCEDURES)('$name: people, surfaces, steps and events', ({ procedure, plan }) => {
    const texts = [
      ...procedure.people.map(({ id }) => words.person(procedure, id)),
      ...plan.surfaces.map(({ id }) => words.surface(procedure, id)),
      ...procedure.steps.flatMap((step) => [words.step(procedure, step), words.stepLabel(procedure, step)]),
      ...plan.events.map(({ key }) => words.event(procedure, key)),
    ];
    expect(faultsIn(language, texts)).toEqual([]);
    for (const step of procedure.steps) expect(words.step(procedure, step)).toMatch(/^\p{Lu}.+[^.]\.$/u);
  });

  test.each(PROCEDURES)('$name: findings, routes, what they rest on', ({ procedure, findings }) => {
    const texts = findings.flatMap((finding) => {
      const { title, text } = words.finding(procedure, finding);
      const rests = finding.evidence.flatMap((id) => {
        const { says, status } = words.evidence(id);
        return [says, status];
      });
      return [title, text, ...rests, ...words.route(procedure, finding).map((one) => one.text)];
    });
    expect(texts.length).toBeGreaterThan(0);
    expect(faultsIn(language, texts)).toEqual([]);
  });

  test.each(PROCEDURES)('$name: leaving out, moving and inserting any step, turns, cleaning', (one) => {
    const { procedure, plan } = one;
    const texts = procedure.steps.flatMap((step, at) => [
      words.edit(procedure, { do: 'remove', at }),
      words.edit(procedure, { do: 'move', from: at, to: at === 0 ? 1 : 0 }),
      words.edit(procedure, { do: 'insert', at, steps: [{ ...step, id: 'another' }] }),
      words.edit(procedure, { do: 'replace', at, step }),
      ...LEDGER_TURNS.map((turn) => words.turn(procedure, turn, at)),
    ]);
    const cleaned = plan.surfaces.map(({ id }) => words.cleaned(procedure, id, 0));
    expect(faultsIn(language, [...texts, ...cleaned])).toEqual([]);
  });

  test('every name of every table', () => {
    const names = [
      ...ITEM_IDS.map(words.item),
      ...ACTION_IDS.map(words.action),
      ...TECHNIQUE_IDS.map(words.technique),
      ...PRODUCT_IDS.map(words.product),
      ...SLIPS.map(({ id }) => words.slip(id)),
    ];
    expect(faultsIn(language, names)).toEqual([]);
    expect(new Set(ITEM_IDS.map(words.item)).size).toBe(ITEM_IDS.length);
    expect(new Set(TECHNIQUE_IDS.map(words.technique)).size).toBe(TECHNIQUE_IDS.length);
  });

  const setting = { kind: 'doffing', people: [], zones: [], fixtures: [], start: [], steps: [] } as const;
  test.each(PROBLEM_CODES)('problem %s, with and without parameters, for one and for many', (code) => {
    const given = { by: 'gown', fixture: 'mirror', product: 'soap-and-water', action: 'wipe' };
    const all = [
      {},
      { ...given, item: 'outer-gloves', side: 'left' },
      { ...given, item: 'outer-gloves', fixture: 'scissors' },
      { ...given, item: 'hooded-coverall' },
      { ...given, item: 'goggles' },
    ];
    for (const params of all) {
      const { wrong, mend } = words.problem(setting, { code, step: 0, params });
      expect(faultsIn(language, [wrong, mend])).toEqual([]);
      expect(mend).toMatch(/^\p{Lu}.+\.$/u);
    }
  });

  test('every rule of practice is translated; what is left in English says so', () => {
    const mark = IN_ENGLISH[language];
    for (const id of evidenceIds) {
      const { says, source } = words.evidence(id);
      const marked = says.startsWith(`${mark} `);
      if (id.startsWith('practice.')) expect(marked).toBe(false);
      if (marked) expect(says).toBe(`${mark} ${evidence(id).says}`);
      else expect(faultIn(language, says)).toBeUndefined();
      expect(source).toContain(`${mark} ${evidence(id).where}`);
    }
  });

  test('limits, measures, mends and numbers', () => {
    const procedure = everyAction();
    const step: Step = {
      id: 'rub-new',
      who: 'assistant',
      action: 'sanitise',
      items: [],
      product: 'alcohol-hand-rub',
    };
    const before: Measure = {
      impossible: 0,
      open: [0, 1, 0, 0],
      chance: [0.001, 1, 0.1, 0],
      departures: 2,
      seconds: 600,
    };
    const after: Measure = { ...before, open: [0, 0, 0, 0], chance: [0.001, 0.008, 0.1, 0], seconds: 630 };
    const { sentence, changes } = words.mend(procedure, {
      edit: { do: 'insert', at: 7, steps: [step] },
      barriers: { before: 0, after: null },
      before,
      after,
      gone: ['open.skin wearer.neck'],
      added: ['one-slip.skin wearer.neck', 'one-slip.skin wearer.face', 'practice.zip-one-hand zip'],
      newSlips: ['a:snap wearer.eyes', 'b:brush wearer.mouth'],
    });
    const limits = (['exact', 'mends', 'variants'] as const).map((code) => words.limit({ code, params: {} }));
    expect(faultsIn(language, [sentence, ...changes, ...words.measure(before), ...limits])).toEqual([]);
    expect(changes.length).toBe(8);
    const space = language === 'pt' ? '' : '\u00a0';
    expect(words.percent(0.008)).toBe(`0,8${space}%`);
    expect(words.chance(0.5, 'memory')).toMatch(/^50.?% \(de m[eé]m(oire|oria|ória)\)$/);
  });

  test('the sample, to the letter', async () => {
    const procedure = everyAction();
    const steps = procedure.steps.map(
      (step, at) => `${at + 1}. ${words.person(procedure, step.who)}: ${words.step(procedure, step)}`,
    );
    const findings = FINDINGS.flatMap((finding) => [
      `${finding.code}: ${words.finding(procedure, finding).title}`,
      `  ${words.finding(procedure, finding).text}`,
      ...words.route(procedure, finding).map(({ text }, at) => `  ${at + 1}. ${text}`),
    ]);
    const text = [...steps, '', ...findings, '', ...words.cautions, ...words.reviewNote].join('\n');
    await expect(`${text}\n`).toMatchFileSnapshot(`golden/${language}.txt`);
  });

  test('one and many, feminine and masculine, to the letter', async () => {
    const procedure = read('larkmoor-suit-doffing.yaml');
    const surfaces = ITEM_IDS.flatMap((item) => [
      words.surface(procedure, `wearer.${item}`),
      words.surface(procedure, `assistant.${item}`),
      ...(itemKind(item).pair
        ? [
            words.surface(procedure, `assistant.${item}.left`),
            words.surface(procedure, `wearer.${item}.right.outside`),
          ]
        : []),
    ]);
    const events = ITEM_IDS.flatMap((item) =>
      ['pinhole', 'soiled-strap', 'stated-maybe', 'dirty-lever'].map((slip) =>
        words.event(procedure, `start:${slip}:assistant.${item}`),
      ),
    );
    const left = ITEM_IDS.map(
      (item) =>
        words.finding(procedure, {
          ...BARE,
          code: 'coverage.left-on',
          kind: 'coverage',
          steps: [],
          params: { item, person: 'assistant' },
        }).text,
    );
    const texts = [...surfaces, ...events, ...left];
    expect(faultsIn(language, texts)).toEqual([]);
    await expect(`${texts.join('\n')}\n`).toMatchFileSnapshot(`golden/${language}-forms.txt`);
  });
});
