// A step made whole: after a change of one field the others keep what still fits, lose what does not, and what the
// action cannot do without is filled in. So a step in a draft can be checked at any moment.
import type { StepField } from '../../../domain/actions.ts';
import type { Procedure, Step } from '../../../domain/procedure.ts';
import { techniqueOf, techniquesFor, usualTechnique } from '../../../domain/techniques/index.ts';
import {
  fixtureChoices,
  hasSides,
  itemChoices,
  ONE_OF,
  othersThan,
  partChoices,
  needsOf,
  productChoices,
  takes,
  techniqueChoices,
  techniqueFits,
} from './fields.ts';
import type { NewStep } from './steps.ts';

type Optional = Omit<NewStep, 'who' | 'action' | 'items'>;
type Loose = Pick<NewStep, 'who' | 'action'> & { items: NewStep['items'] } & {
  -readonly [Key in keyof Optional]?: Optional[Key] | undefined;
};

/** Without the fields that hold nothing. */
const tidy = (step: Loose): NewStep =>
  Object.fromEntries(Object.entries(step).filter(([, value]) => value !== undefined)) as unknown as NewStep;

const FIELDS = [
  'side',
  'part',
  'of',
  'technique',
  'product',
  'fixture',
  'zone',
  'helper',
  'place',
] as const satisfies readonly (StepField & keyof Step)[];

/** Only the fields that the action knows. */
function cut(step: NewStep): NewStep {
  const kept: Loose = { ...step, items: takes(step.action, 'items') ? step.items : [] };
  for (const field of FIELDS) if (!takes(step.action, field)) delete kept[field];
  if (kept.of === kept.who) kept.of = undefined;
  if (kept.helper === kept.who) kept.helper = undefined;
  return tidy(kept);
}

/** Several items only where one technique takes them together; none that the action cannot be done to. */
function withItems(procedure: Procedure, step: NewStep): NewStep {
  if (step.items.length === 0 || techniquesFor(step.action, step.items).length > 0) return step;
  const first = step.items.find((item) => techniquesFor(step.action, [item]).length > 0);
  const usual = first ?? itemChoices(procedure, step)[0];
  return { ...step, items: usual === undefined ? [] : [usual] };
}

/** Whether one of those is named of which the action needs one. */
function named(step: NewStep): boolean {
  const oneOf = ONE_OF[step.action];
  return (
    oneOf?.some((field) => (field === 'items' ? step.items.length > 0 : step[field] !== undefined)) ?? true
  );
}

function withNeeds(procedure: Procedure, step: NewStep): NewStep {
  const needs = needsOf(step.action);
  const filled: Loose = { ...step };
  if (needs.includes('items') && step.items.length === 0)
    filled.items = itemChoices(procedure, step).slice(0, 1);
  if (needs.includes('product')) filled.product ??= productChoices(procedure, step.action)[0];
  if (needs.includes('fixture') || !named(step)) filled.fixture ??= fixtureChoices(procedure, step.action)[0];
  if (needs.includes('zone')) filled.zone ??= procedure.zones.at(-1)?.id;
  return tidy(filled);
}

/** The technique named, where it fits; the first one where none is usual, since that must be written down. */
function technique(step: NewStep): NewStep['technique'] {
  if (!takes(step.action, 'technique')) return undefined;
  if (techniqueFits(step)) return step.technique;
  return usualTechnique(step.action, step.items) === undefined ? techniqueChoices(step)[0] : undefined;
}

function withDetails(procedure: Procedure, step: NewStep): NewStep {
  const filled: Loose = { ...step, technique: technique(step) };
  if (!hasSides(step)) filled.side = undefined;
  if (step.part !== undefined && !partChoices(step).includes(step.part)) filled.part = undefined;
  const needs = filled.technique === undefined ? [] : (techniqueOf(filled.technique).needs ?? []);
  if (needs.includes('helper') && takes(step.action, 'helper'))
    filled.helper ??= othersThan(procedure, step.who)[0];
  return tidy(filled);
}

/** The step with everything that fits, and what its action needs. */
export function refitted(procedure: Procedure, step: NewStep): NewStep {
  return withDetails(procedure, withNeeds(procedure, withItems(procedure, cut(step))));
}

export type Field = keyof NewStep;

/** The step with one field changed, or emptied where the value is undefined. */
export function withField<Key extends Field>(
  procedure: Procedure,
  step: NewStep,
  field: Key,
  value: NewStep[Key] | undefined,
): NewStep {
  return refitted(procedure, tidy({ ...step, [field]: value }));
}
