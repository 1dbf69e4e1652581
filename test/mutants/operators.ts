// Faults to seed into a good procedure, as data: each operator says what it does and lists every place where it can be
// done. A mutant is the procedure with its steps changed there; names of steps stay, so that slips can be matched.
import { fits, techniqueOf, type TechniqueId } from '../../src/domain/techniques/index.ts';
import { itemKind } from '../../src/domain/items.ts';
import type { Fixture } from '../../src/domain/room.ts';
import type { Procedure, Step } from '../../src/domain/procedure.ts';

export interface Site {
  /** Ids of the steps it is about, and what stands there instead where there is a choice. */
  readonly at: string;
  readonly steps: readonly Step[];
}

export interface Operator {
  readonly id: string;
  readonly does: string;
  sites(procedure: Procedure): readonly Site[];
}

const owner = (step: Step): string => step.of ?? step.who;
const isGlove = (step: Step): boolean => step.items.some((item) => itemKind(item).group === 'glove');

const without = (steps: readonly Step[], drop: (step: Step, at: number) => boolean): readonly Step[] =>
  steps.filter((step, at) => !drop(step, at));

/** Leaves out every step that matches, one at a time. */
const leaveOut = (id: string, does: string, matches: (step: Step) => boolean): Operator => ({
  id,
  does,
  sites: ({ steps }) =>
    steps.flatMap((step, at) =>
      matches(step) ? [{ at: step.id, steps: without(steps, (_, index) => index === at) }] : [],
    ),
});

/** Writes other fields into every step, one at a time; `to` lists the ways, each with its name. */
const rewrite = (
  id: string,
  does: string,
  to: (step: Step, procedure: Procedure) => readonly (readonly [string, Step])[],
): Operator => ({
  id,
  does,
  sites: (procedure) =>
    procedure.steps.flatMap((step, at) =>
      to(step, procedure).map(([name, other]) => ({
        at: name === '' ? step.id : `${step.id}: ${name}`,
        steps: procedure.steps.with(at, other),
      })),
    ),
});

/** The same action by a worse technique, wherever it fits and is not the one written. */
const byTechnique = (id: string, does: string, techniques: readonly TechniqueId[]): Operator =>
  rewrite(id, does, (step) =>
    techniques
      .filter((technique) => step.technique !== technique)
      .filter((technique) => fits(techniqueOf(technique), step.action, step.items))
      .map((technique) => [technique, { ...step, technique }] as const),
  );

/** Two neighbours of one kind, done to the same person, change places; what stands between them stays. */
const swap = (id: string, does: string, action: Step['action']): Operator => ({
  id,
  does,
  sites: ({ steps }) =>
    steps.flatMap((step, at) => {
      if (step.action !== action) return [];
      const next = steps.findIndex(
        (later, index) => index > at && later.action === action && owner(later) === owner(step),
      );
      const other = steps[next];
      return other ? [{ at: `${step.id}, ${other.id}`, steps: steps.with(at, other).with(next, step) }] : [];
    }),
});

interface Change {
  readonly off: number;
  readonly on: number;
}

/** Gloves off and fresh ones on, by the same person. */
const gloveChanges = ({ steps }: Procedure): readonly Change[] =>
  steps.flatMap((step, on) => {
    if (step.action !== 'put-on' || !isGlove(step)) return [];
    const off = steps.findLastIndex(
      (earlier, at) =>
        at < on && earlier.action === 'remove' && isGlove(earlier) && owner(earlier) === owner(step),
    );
    return off < 0 ? [] : [{ off, on }];
  });

const dropChange = (id: string, does: string, between: boolean): Operator => ({
  id,
  does,
  sites: (procedure) =>
    gloveChanges(procedure).map(({ off, on }) => ({
      at: `${procedure.steps[off]?.id}, ${procedure.steps[on]?.id}`,
      steps: without(procedure.steps, (_, at) => (between ? at >= off && at <= on : at === off || at === on)),
    })),
});

/** The last hand hygiene before a glove goes on leaves the hands wet. */
const WET: Operator = {
  id: 'wet-before-gloves',
  does: 'hands are still wet when a glove goes on',
  sites: ({ steps }) =>
    steps.flatMap((step, at) => {
      if (step.action !== 'put-on' || !isGlove(step)) return [];
      const rub = steps.findLastIndex(
        (earlier, index) => index < at && earlier.action === 'sanitise' && earlier.who === step.who,
      );
      const before = steps[rub];
      return before
        ? [{ at: before.id, steps: steps.with(rub, { ...before, technique: 'rub-not-dried' }) }]
        : [];
    }),
};

const FRONTED: ReadonlySet<string> = new Set(['gown', 'coverall', 'apron', 'eye-cover', 'face-cover']);

/** A hand on the front of an item just before it comes off. */
const TOUCH: Operator = {
  id: 'touch-front',
  does: 'a step more: the front is touched before the item comes off',
  sites: ({ steps }) =>
    steps.flatMap((step, at) => {
      const item = step.items.find((candidate) => FRONTED.has(itemKind(candidate).group));
      if (step.action !== 'remove' || item === undefined) return [];
      const touch: Step = {
        id: `${step.id}-front`,
        who: step.who,
        action: 'touch',
        items: [item],
        part: 'front',
        ...(step.of === undefined ? {} : { of: step.of }),
      };
      return [{ at: step.id, steps: steps.toSpliced(at, 0, touch) }];
    }),
};

const otherFixtures = (procedure: Procedure, step: Step, kinds: readonly string[]): readonly Fixture[] =>
  procedure.fixtures.filter(({ id, kind }) => kinds.includes(kind) && id !== step.fixture);

export const OPERATORS: readonly Operator[] = [
  leaveOut('drop-hygiene', 'a hand hygiene step is left out', ({ action }) => action === 'sanitise'),
  leaveOut('drop-wipe', 'a wipe of shoes or equipment is left out', ({ action }) => action === 'wipe'),
  dropChange('drop-glove-change', 'gloves are not changed, hygiene stays', false),
  dropChange('drop-glove-change-all', 'gloves are not changed, and the hygiene in between goes too', true),
  swap('swap-removals', 'two neighbouring removals change places', 'remove'),
  swap('swap-put-ons', 'two neighbouring items go on the other way round', 'put-on'),
  byTechnique('by-the-front', 'taken by the front or outside', [
    'front-grip',
    'front-grip-mask',
    'front-grip-cover',
    'front-pull',
    'outside-pull',
    'pull-by-outside',
    'pull-off-by-hand',
  ]),
  TOUCH,
  byTechnique('two-hands', 'zip with the second hand on the front', ['zip-two-hands']),
  byTechnique('over-head', 'apron pulled over the head', ['over-head']),
  byTechnique('upper-then-lower', 'upper strap before lower', ['upper-then-lower']),
  byTechnique('waist-first', 'waist tie before upper fastening', ['waist-first', 'waist-tie-first']),
  byTechnique('toe-first', 'boot or shoe cover over the toe first', ['toe-first']),
  byTechnique('on-one-leg', 'boot or shoe cover taken off standing', ['standing-on-one-leg']),
  byTechnique('same-wipe', 'one wipe for both shoes', ['same-wipe-for-both']),
  byTechnique('without-soles', 'shoes wiped without their soles', ['without-soles']),
  byTechnique('hood-alone', 'powered hood taken off alone', ['hood-alone']),
  byTechnique('sprayed', 'sprayed instead of rubbed or wiped', ['spray-hands', 'spray-over']),
  rewrite('wrong-chair', 'another chair', (step, procedure) =>
    step.action === 'sit'
      ? otherFixtures(procedure, step, ['chair']).map(({ id }) => [id, { ...step, fixture: id }] as const)
      : [],
  ),
  rewrite('wrong-ground', 'another floor or mat', (step, procedure) =>
    step.action === 'stand' || step.action === 'step-on'
      ? otherFixtures(procedure, step, ['floor', 'mat']).map(
          ({ id }) => [id, { ...step, fixture: id }] as const,
        )
      : [],
  ),
  rewrite('wrong-zone', 'another zone', (step, { zones }) =>
    step.action === 'move'
      ? zones.filter(({ id }) => id !== step.zone).map(({ id }) => [id, { ...step, zone: id }] as const)
      : [],
  ),
  rewrite('drop-helper', 'done alone instead of with help', (step) => {
    const { helper, ...alone } = step;
    return helper === undefined ? [] : [['', alone] as const];
  }),
  leaveOut('drop-inspection', 'an inspection is left out', ({ action }) => action === 'inspect'),
  leaveOut('drop-call', 'a call and response is left out', ({ action }) => action === 'say'),
  WET,
  leaveOut('drop-removal', 'an item is not taken off', ({ action }) => action === 'remove'),
  leaveOut('drop-opening', 'an item is not opened', ({ action }) => action === 'unfasten'),
  leaveOut('drop-put-on', 'an item is not put on', ({ action }) => action === 'put-on'),
  leaveOut('drop-closing', 'an item is not closed', ({ action }) => action === 'fasten'),
];
