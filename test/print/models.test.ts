// What every paper must hold, whatever the procedure: all steps, three empty boxes, cautions, version and hash, and no word
// that calls anything clean or safe.
import { describe, expect, test } from 'vitest';
import { outermost } from '../../src/contacts/body.ts';
import { SIDES } from '../../src/domain/places.ts';
import { run } from '../../src/engine/reference.ts';
import { type Block, DOCUMENT_KINDS, printModel } from '../../src/print/index.ts';
import { momentsOf } from '../../src/print/moments.ts';
import { linesOf } from '../../src/print/script.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';
import { printWordsFor } from '../../src/words/print/index.ts';
import { checked, NAMES, paper, procedureNamed, textsOf } from './shelf.ts';

const LARKMOOR = 'larkmoor-suit-doffing.yaml';

type Of<Kind extends Block['is']> = Extract<Block, { readonly is: Kind }>;

function blocks<Kind extends Block['is']>(found: readonly Block[], kind: Kind): readonly Of<Kind>[] {
  return found.filter((block): block is Of<Kind> => block.is === kind);
}

describe.each(NAMES)('%s', (name) => {
  const procedure = procedureNamed(name);
  const words = wordsFor('en');
  const sentences = procedure.steps.map((step) => words.step(procedure, step));

  test('the chart has a picture and the sentence of every step', () => {
    const cells = blocks(paper(name, 'chart').blocks, 'chart').flatMap((block) => block.cells);
    expect(cells.map((cell) => cell.sentence)).toEqual(sentences);
    expect(cells.map((cell) => cell.number)).toEqual(procedure.steps.map((_, index) => index + 1));
    for (const { picture } of cells) {
      expect(picture.svg).toMatch(/^<svg .*<\/svg>$/s);
      expect(picture.svg).not.toMatch(/undefined|NaN|Infinity/);
      expect(picture.alt.length).toBeGreaterThan(20);
    }
  });

  test('the script reads every step once, in order, in parts of five to nine', () => {
    const parts = blocks(paper(name, 'script').blocks, 'script');
    expect(parts.flatMap((part) => part.lines.map((line) => line.lines.join(' ')))).toEqual(sentences);
    for (const { lines } of procedure.steps.length < 5 ? [] : parts) {
      expect(lines.length).toBeGreaterThanOrEqual(5);
      expect(lines.length).toBeLessThanOrEqual(9);
    }
  });

  test('card, sign-off sheet and dossier name every step', () => {
    const card = blocks(paper(name, 'card').blocks, 'cards').flatMap((block) => block.lines);
    expect(card).toHaveLength(procedure.steps.length);
    const signOff = blocks(paper(name, 'sign-off').blocks, 'ticks').flatMap((block) => block.rows);
    expect(signOff).toHaveLength(procedure.steps.length);
    const dossier = textsOf(paper(name, 'dossier').blocks).join('\n');
    for (const sentence of sentences) expect(dossier).toContain(sentence);
  });

  test('a hold stands exactly where a run without slips newly soils a hand', () => {
    const { analyses } = checked(name);
    const soiled = momentsOf(checked(name)).map(() => new Set<string>());
    for (const { compiled } of analyses) {
      const { after } = run(compiled.plan, new Set());
      const is = (row: number, id: string | undefined): boolean =>
        after[row]?.[compiled.plan.surfaces.findIndex((surface) => surface.id === id)] === true;
      compiled.performed.forEach((done, step) => {
        for (const { id } of procedure.people)
          for (const side of SIDES) {
            const [before, now] = [done.before, done.after].map((scene) => {
              const body = scene.bodies[id];
              return (body && outermost(body, `hand.${side}`)) ?? `${id}.hand.${side}`;
            });
            if (is(step + 1, now) && !is(step, before)) soiled[step]?.add(id);
          }
      });
    }
    // Two agents differ in what a rub does for them: the papers take the worst of both, so only the sure ones are asked.
    const holds = momentsOf(checked(name)).map(({ holds: found }) => new Set(found.map(({ who }) => who)));
    if (analyses.length === 1) expect(holds).toEqual(soiled);
    else holds.forEach((found, step) => expect([...found].every((who) => soiled[step]?.has(who))).toBe(true));
  });

  test.each(DOCUMENT_KINDS)('%s carries cautions, version, hash, and invented where so', (kind) => {
    const model = paper(name, kind);
    const texts = textsOf(model.blocks);
    for (const caution of words.cautions) expect(texts).toContain(caution);
    expect(model.stamp.join(' ')).toContain(checked(name).hash);
    expect(model.stamp.join(' ')).toContain(procedure.version);
    expect(model.invented !== null).toBe(procedure.invented);
    expect(model.defers).toContain('national guidance');
  });
});

describe('larkmoor', () => {
  test('taking off the boot covers soils the hands that step 23 cleans', () => {
    const lines = blocks(paper(LARKMOOR, 'script').blocks, 'script').flatMap((part) => part.lines);
    expect(lines[18]?.hold).toMatch(/^HOLD\. The hands of the wearer .* step 23\.$/);
    expect(lines[22]?.hold).toBeNull();
  });

  test('parts say where the wearer stands and sits', () => {
    const parts = blocks(paper(LARKMOOR, 'script').blocks, 'script');
    expect(parts.map((part) => part.heading)).toEqual([
      "Part 1 of 4: steps 1 to 8 – patient's side / doffing area – standing",
      'Part 2 of 4: steps 9 to 17 – doffing area – standing',
      'Part 3 of 4: steps 18 to 24 – doffing area – sitting (the boot chair) / sitting (the clean chair)',
      'Part 4 of 4: steps 25 to 33 – doffing area – standing',
    ]);
  });

  test('who is looked over is in the picture, beside who looks', () => {
    const cells = blocks(paper('larkmoor-suit-donning.yaml', 'chart').blocks, 'chart')[0]?.cells;
    expect(cells?.[1]?.sentence).toBe('Look the wearer over: for tears and soil.');
    expect(cells?.[1]?.picture.svg).toMatch(/>Wearer<.*>Observer</);
    expect(cells?.[2]?.picture.svg).not.toContain('Observer');
  });

  test('three boxes, and none is ticked', () => {
    for (const part of blocks(paper(LARKMOOR, 'script').blocks, 'script'))
      expect(part.boxes).toEqual(['No deviation seen', 'Not seen', 'Deviation']);
    for (const kind of DOCUMENT_KINDS) expect(JSON.stringify(paper(LARKMOOR, kind))).not.toMatch(/[☑☒✓✔✗]/);
  });

  test('the sign-off sheet leaves names blank', () => {
    const labels = blocks(paper(LARKMOOR, 'sign-off').blocks, 'blanks').flatMap((block) => block.labels);
    expect(labels).toEqual(expect.arrayContaining(['Wearer', 'Observer', 'Assessor', 'Valid until']));
  });

  test('the dossier tells every finding with its route, mends, acceptances, surfaces and sources', () => {
    const { findings, surfaces, procedure } = checked(LARKMOOR, true);
    const model = paper(LARKMOOR, 'dossier', 'en', true);
    const texts = textsOf(model.blocks);
    const words = wordsFor('en');
    expect(findings.length).toBeGreaterThan(20);
    expect(findings.flatMap((finding) => finding.mends).length).toBeGreaterThan(3);
    for (const finding of findings) {
      expect(texts).toContain(words.finding(procedure, finding).text);
      for (const link of words.route(procedure, finding)) expect(texts).toContain(link.text);
      for (const mend of finding.mends)
        expect(texts.some((one) => one.startsWith(words.mend(procedure, mend).sentence))).toBe(true);
    }
    for (const accepted of procedure.accepted) {
      expect(texts).toContain(accepted.reason);
      expect(texts).toContain(`${accepted.by}, ${accepted.date}`);
      expect(texts).toContain(accepted.review);
    }
    for (const one of surfaces.filter(({ barriers }) => barriers !== null))
      expect(texts).toContain(words.surface(procedure, one.surface));
  });

  test('the dossier says of an accepted departure whether the check finds it', () => {
    const { procedure } = checked('larkmoor-suit-doffing-v2.yaml');
    expect(procedure.accepted.map(({ finding }) => finding)).toEqual(['practice.boot-covers-before-garment']);
    const stale = procedure.accepted.map((one) => ({
      ...one,
      finding: 'practice.clean-and-dirty-chair-apart',
      step: 'sit-boots',
    }));
    const verdict = verifyProcedure(
      { ...procedure, accepted: [...procedure.accepted, ...stale] },
      { mends: false, variants: false },
    );
    const texts = textsOf(printModel(verdict, { kind: 'dossier', words: wordsFor('en') }).blocks);
    expect(texts).toContain('Boot covers before the garment');
    expect(texts.filter((one) => one.endsWith('(not found by this check)'))).toHaveLength(1);
    expect(
      texts.some((one) => one.includes('clean chair') && one.endsWith('(not found by this check)')),
    ).toBe(true);
  });

  test('a date is printed where it is given, and only there', () => {
    const words = wordsFor('en');
    const dated = printModel(checked(LARKMOOR), { kind: 'card', words, date: '2026-03-31' });
    expect(dated.stamp).toContain('2026-03-31');
    expect(paper(LARKMOOR, 'card').stamp).toContain('no date given');
  });
});

test('no paper of any language calls a procedure or a person safe or clean', () => {
  const praise =
    /\b(is|are) (now )?(safe|clean)\b|\b(est|sont) (sûre?s?|propres?)\b|\b(es|está) (segur[oa]|limpi[oa])\b/i;
  let seen = 0;
  const denied = /n[o']t mean|ne signifie pas|n’est|no significa|não significa|does not|ne veut pas/i;
  for (const language of LANGUAGES)
    for (const kind of DOCUMENT_KINDS)
      for (const sentence of textsOf(paper(LARKMOOR, kind, language).blocks).flatMap((one) =>
        one.split(/(?<=\.)\s/),
      ))
        if (praise.test(sentence)) {
          expect(sentence).toMatch(denied);
          seen += 1;
        }
  expect(seen).toBeGreaterThan(0);
});

test.each(LANGUAGES)('%s speaks for itself on every paper', (language) => {
  const own = printWordsFor(language);
  for (const kind of DOCUMENT_KINDS) {
    const model = paper(LARKMOOR, kind, language);
    expect(model.language).toBe(language);
    expect(model.document).toBe(own.document[kind]);
    if (language !== 'en') expect(model.document).not.toBe(printWordsFor('en').document[kind]);
    for (const note of wordsFor(language).reviewNote) expect(textsOf(model.blocks)).toContain(note);
  }
});

test('a sentence is cut where an action ends, and loses nothing', () => {
  expect(linesOf('Remove the apron: hold the inside; roll it away.')).toEqual([
    'Remove the apron:',
    'hold the inside;',
    'roll it away.',
  ]);
  expect(linesOf('Retirez le tablier : roulez.').join(' ')).toBe('Retirez le tablier : roulez.');
});

test('French papers have the spaces of French print before its signs, once', () => {
  for (const kind of DOCUMENT_KINDS)
    for (const text of textsOf(paper(LARKMOOR, kind, 'fr').blocks)) {
      // Titles of sources and the file's own words stay as they are written.
      const french = text.replaceAll(/[^.]*\b(the|and|Judgement|Infection|Nothing)\b.*/g, '');
      expect(french).not.toMatch(/[^\u00a0][:;?!](\s|$)|« (?!\u00a0)|[^\u00a0]»|\u00a0\u00a0/);
    }
});
