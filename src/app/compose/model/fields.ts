// What a step can say: for each action the fields it needs and may have, and for each field the values that fit, the
// usual ones first. The tables of domain/ decide; nothing is offered that the file would refuse.
import { type ActionId, ACTIONS, type StepField } from '../../../domain/actions.ts';
import { ITEM_IDS, type ItemId, itemKind, type PartId } from '../../../domain/items.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { product, type ProductId } from '../../../domain/products.ts';
import type { FixtureKindId } from '../../../domain/room.ts';
import { fits, type TechniqueId, techniqueOf, techniquesFor } from '../../../domain/techniques/index.ts';
import type { NewStep } from './steps.ts';

/** Of a wipe or a touch one of these must be named, else there is nothing to do it to. */
export const ONE_OF: Readonly<Partial<Record<ActionId, readonly ('items' | 'fixture' | 'place')[]>>> = {
  wipe: ['items', 'fixture'],
  touch: ['items', 'fixture', 'place'],
};

const actionOf = (id: ActionId) => ACTIONS.find((action) => action.id === id);

export const needsOf = (action: ActionId): readonly StepField[] => actionOf(action)?.needs ?? [];

const fieldsOf = (action: ActionId): readonly StepField[] => [
  ...needsOf(action),
  ...(actionOf(action)?.may ?? []),
];

export const takes = (action: ActionId, field: StepField): boolean => fieldsOf(action).includes(field);

/** What somebody wears at the start or puts on in a step, outermost first. */
function itemsInPlay({ people, steps }: Procedure, who: string): readonly ItemId[] {
  const person = people.find(({ id }) => id === who);
  const later = steps.flatMap((step) =>
    step.action === 'put-on' && (step.of ?? step.who) === who ? step.items : [],
  );
  return [...new Set([...(person?.underneath ?? []), ...(person?.wears ?? []), ...later])].reverse();
}

/** Items the action can be done to; everything for putting on. */
export function itemChoices(procedure: Procedure, { action, who, of }: NewStep): readonly ItemId[] {
  const known = action === 'put-on' ? ITEM_IDS : itemsInPlay(procedure, of ?? who);
  return known.filter((item) => techniquesFor(action, [item]).length > 0);
}

/** Items that a technique takes off in one movement with the step's first one. */
export function togetherChoices(procedure: Procedure, step: NewStep): readonly ItemId[] {
  const [first] = step.items;
  if (first === undefined) return [];
  const others = itemsInPlay(procedure, step.of ?? step.who).filter((item) => item !== first);
  return others.filter((item) => techniquesFor(step.action, [first, item]).length > 0);
}

export const techniqueChoices = ({ action, items }: NewStep): readonly TechniqueId[] =>
  techniquesFor(action, items).map(({ id }) => id as TechniqueId);

const AT_HAND: Readonly<Partial<Record<ActionId, readonly FixtureKindId[]>>> = {
  sit: ['chair'],
  stand: ['mat', 'floor'],
  'step-on': ['mat', 'floor'],
  move: ['mat', 'floor'],
  sanitise: ['dispenser', 'tap'],
  remove: ['bin', 'container'],
  'put-on': ['glove-box', 'table'],
};

/** Only a chair is sat on; elsewhere what is usual comes first and the rest after it. */
export function fixtureChoices({ fixtures }: Procedure, action: ActionId): readonly string[] {
  const usual: readonly string[] | undefined = AT_HAND[action];
  const fitting = fixtures.filter(({ kind }) => usual?.includes(kind) ?? true);
  const others = action === 'sit' ? [] : fixtures.filter((fixture) => !fitting.includes(fixture));
  return [...fitting, ...others].map(({ id }) => id);
}

/** For hands what suits hands comes first, for things what suits things. */
export function productChoices({ products }: Procedure, action: ActionId): readonly ProductId[] {
  const suits = (id: ProductId): boolean =>
    product(id).suits.some((material) =>
      action === 'sanitise' ? material === 'skin' : material === 'hard' || material === 'equipment',
    );
  return products.toSorted((a, b) => Number(suits(b)) - Number(suits(a)));
}

export const partChoices = ({ items }: NewStep): readonly PartId[] => [
  ...new Set(items.flatMap((item) => itemKind(item).parts.map(({ id }): PartId => id))),
];

export const hasSides = ({ items }: NewStep): boolean => items.some((item) => itemKind(item).pair);

export const othersThan = ({ people }: Procedure, who: string): readonly string[] =>
  people.map(({ id }) => id).filter((id) => id !== who);

/** Whether the technique that the step names is still one for its items. */
export const techniqueFits = ({ technique, action, items }: NewStep): boolean =>
  technique !== undefined && fits(techniqueOf(technique), action, items);
