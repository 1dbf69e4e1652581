// The procedure files themselves: each reads, prints canonically and can be done; each says what was seen at its source.
// Then what published studies and step texts imply must come out of the encoded orders when nobody slips.
import { describe, expect, it } from 'vitest';
import { coverage, layering } from '../../src/check/coverage.ts';
import { compile } from '../../src/contacts/interpret.ts';
import type { Step } from '../../src/domain/procedure.ts';
import { printProcedure } from '../../src/language/index.ts';
import { canMeet, compiled, course, files, procedureOf, reached, reading, stepAt, textOf } from './shelf.ts';

const HEAD = '# yaml-language-server: $schema=../schema/procedure-1.json\n';
const doffings = files.filter((file) => procedureOf(file).kind === 'doffing');

describe.each(files)('%s', (file) => {
  it('reads without a diagnostic', () => {
    expect(reading(file).diagnostics).toEqual([]);
  });

  it('is written in the canonical form', () => {
    expect(textOf(file)).toBe(HEAD + printProcedure(procedureOf(file)));
  });

  it('says what it is for, and what was seen, remembered or interpreted', () => {
    const { about, source } = procedureOf(file);
    expect(about).toBeTruthy();
    expect(source?.seen).toBeTruthy();
    expect(source?.memory ?? source?.interpreted).toBeTruthy();
  });

  it.each(['enveloped', 'non-enveloped'] as const)('can be done as written (%s)', (agent) => {
    expect(compiled(file, agent).problems).toEqual([]);
  });

  it('leaves no place bare that it does not declare', () => {
    const errors = coverage(compiled(file)).filter(({ severity }) => severity === 'error');
    expect(errors.map(({ surface }) => surface)).toEqual([]);
  });
});

describe.each(doffings)('%s', (file) => {
  it('undoes what its donning put on, in the same layers', () => {
    const { donning = '' } = procedureOf(file);
    expect(files).toContain(donning);
    expect(layering(compiled(file), compiled(donning))).toEqual([]);
  });

  // Trained-observer module: whatever the order, outer gloves have met the patient.
  it('starts with contaminated outer gloves', () => {
    const { plan } = compiled(file);
    const glove = plan.surfaces.findIndex(({ id }) => /\.(outer-)?gloves\.left\.outside$/.test(id));
    expect(plan.start.some((operation) => operation.op === 'taint' && operation.a === glove)).toBe(true);
  });
});

/** Fault-free runs whose text opens a route; every other file must open none. */
const LEGS = ['wearer.scrubs.leg-left', 'wearer.scrubs.leg-right', 'wearer.scrubs.seat'];
const OPEN: Readonly<Record<string, readonly string[]>> = {
  // Page 12 has hygiene between flap and zip and none between the zip and the lining; the scrubs are bared on the clean chair.
  'national-n95-coverall-doffing.yaml': ['room.clean-chair.seat', ...LEGS],
  'national-papr-coverall-doffing.yaml': ['room.clean-chair.seat', ...LEGS],
  // The same; without boot covers the suit's legs lie on the ankles.
  'national-papr-coverall-early-boot-covers-doffing.yaml': [
    'room.clean-chair.seat',
    'wearer.ankle.left',
    'wearer.ankle.right',
    ...LEGS,
  ],
  // Built in, and mended in version 2.
  'larkmoor-suit-doffing.yaml': [
    'room.clean-side-floor.surface',
    'wearer.scrubs.back',
    'wearer.shoes.left.sole',
    'wearer.shoes.right.sole',
  ],
};

describe('when nobody slips', () => {
  it.each(doffings)('%s reaches only what its text implies', (file) => {
    expect(reached(compiled(file))).toEqual(OPEN[file] ?? []);
  });

  it('dirties the helper who grips the hood, until their hygiene (step page 10; Gurses 2019)', () => {
    const program = compiled('national-papr-gown-doffing.yaml');
    const hood = stepAt(program, 'remove', 'powered-hood');
    const gloves = course(program, 'assistant.outer-gloves.right.outside');
    expect(gloves.slice(hood, hood + 3)).toEqual([true, true, false]);
  });

  it('leaves a resistant agent on inner gloves under alcohol rub, and takes it to scrubs (Casanova 2018)', () => {
    const file = 'national-papr-gown-doffing.yaml';
    const at = stepAt(compiled(file), 'remove', 'inner-gloves') - 1;
    const glove = 'wearer.inner-gloves.right.outside';
    expect(course(compiled(file, 'non-enveloped'), glove)[at]).toBe(true);
    expect(course(compiled(file, 'enveloped'), glove)[at]).toBe(false);
    expect(reached(compiled(file, 'non-enveloped'))).toContain('wearer.scrubs.front');
  });

  it('soils the zip fingers by design (step page 12)', () => {
    const program = compiled('national-papr-coverall-doffing.yaml');
    const zip = stepAt(program, 'unfasten', 'coverall');
    expect(course(program, 'wearer.inner-gloves.right.outside')[zip]).toBe(true);
    expect(course(program, 'wearer.inner-gloves.left.outside')[zip]).toBe(false);
  });
});

describe('the zip route of the national coverall order', () => {
  const { procedure } = compiled('national-papr-coverall-doffing.yaml');
  const zip = procedure.steps.findIndex((step) => step.action === 'unfasten' && step.items[0] === 'coverall');
  const clean: Step = {
    id: 'rub-zip',
    who: 'wearer',
    action: 'sanitise',
    items: [],
    product: 'alcohol-hand-rub',
  };

  it('closes when gloves are cleaned after the zip', () => {
    const steps = procedure.steps.toSpliced(zip + 1, 0, clean);
    expect(reached(compile({ ...procedure, steps }, 'enveloped'))).toEqual([]);
  });

  it('closes when the assistant works the zip, which the page allows', () => {
    const steps = procedure.steps.map((step, at) => (at === zip ? { ...step, helper: 'assistant' } : step));
    expect(reached(compile({ ...procedure, steps }, 'enveloped'))).toEqual([]);
  });
});

describe('pairs of orders', () => {
  // Step pages 14 of both sets; Kwon 2017 names legs on scrubs among the failures of boot-cover removal.
  it.each([
    ['national-papr-gown-doffing.yaml', false],
    ['national-papr-gown-late-boot-covers-doffing.yaml', true],
    ['national-papr-coverall-early-boot-covers-doffing.yaml', false],
    ['national-papr-coverall-doffing.yaml', true],
  ])('%s: boot covers come off where they can meet scrubs: %s', (file, can) => {
    const program = compiled(file);
    const at = stepAt(program, 'remove', 'boot-covers');
    expect(canMeet(program, at, 'wearer.boot-covers.left.outside', 'wearer.scrubs.leg-right')).toBe(can);
  });

  // Okamoto 2019: hands were contaminated more often where gloves came off before the gown.
  it('brings bare hands to the ties of the gown only where gloves go first', () => {
    const soiled = 'start:soiled-strap:wearer.gown.neck-tie';
    expect(reached(compiled('everyday-example-1-doffing.yaml'), soiled)).toContain('wearer.hand.right');
    expect(reached(compiled('everyday-example-2-doffing.yaml'), soiled)).toEqual([]);
  });
});

describe('the invented unit', () => {
  const first = compiled('larkmoor-suit-doffing.yaml');
  const second = compiled('larkmoor-suit-doffing-v2.yaml');

  it('puts one touch between boot covers and the ankle in version 1, more in version 2', () => {
    expect(reached(first, 'shoes-wiped:ankle-touch')).toContain('wearer.ankle.left');
    expect(reached(second, 'shoes-wiped:ankle-touch')).toEqual([]);
  });

  it('carries the doffing floor to the clean side in version 1 only', () => {
    expect(reached(first)).toContain('room.clean-side-floor.surface');
    expect(reached(second)).toEqual([]);
  });

  it('says on every file that it is invented', () => {
    const invented = files.filter((file) => procedureOf(file).invented);
    expect(invented).toEqual(files.filter((file) => file.startsWith('larkmoor-')));
  });
});
