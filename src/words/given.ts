// What parameters of a problem, a finding or an event name, read back into ids: the same in every language. Texts that
// name nothing known come back undefined, so that each language has its own word for 'the item'.
import { ITEM_IDS, type ItemId, itemKind } from '../domain/items.ts';
import { type Side, SIDES } from '../domain/places.ts';
import type { Step } from '../domain/procedure.ts';
import { type TechniqueId, usualTechnique } from '../domain/techniques/index.ts';
import type { EventRead } from './events.ts';
import type { Setting } from './words.ts';

export const oneOf = <Name extends string>(
  names: readonly Name[],
  text: string | undefined,
): Name | undefined => names.find((name) => name === text);

/** Also from 'outer-gloves (left)'. */
export function itemGiven(
  text: string | undefined,
  side?: string,
): { readonly item: ItemId; readonly side?: Side } | undefined {
  const [name, within] = (text ?? '').split(/ \(|\)/);
  const item = oneOf(ITEM_IDS, name);
  const which = oneOf(SIDES, side) ?? oneOf(SIDES, within);
  return item && { item, ...(which ? { side: which } : {}) };
}

/** 'none' or a number of barriers, as the check writes them. */
export const barriersGiven = (text: string | undefined): number | null =>
  text === undefined || text === 'none' ? null : Number(text);

/** What an event happens to: an item of somebody's, else the step's fixture. */
export interface EventOf {
  readonly item?: ItemId;
  readonly side?: Side;
  /** Whose item, where it is not the doer's own. */
  readonly owner?: string;
  readonly fixture?: string;
  readonly glove: boolean;
}

export function eventOf(step: Step, { on }: EventRead): EventOf {
  const [item] = step.items;
  const side = oneOf(SIDES, on) ?? step.side;
  return {
    ...(item === undefined ? {} : { item }),
    ...(side === undefined ? {} : { side }),
    ...(step.of === undefined || step.of === step.who ? {} : { owner: step.of }),
    ...(step.fixture === undefined ? {} : { fixture: step.fixture }),
    glove: item !== undefined && itemKind(item).group === 'glove',
  };
}

/** The technique a step is done by: its own, else the usual one. */
export const techniqueOf = (step: Step): TechniqueId | undefined =>
  step.technique ?? (usualTechnique(step.action, step.items)?.id as TechniqueId | undefined);

export const isWearer = (setting: Setting, id: string): boolean =>
  setting.people.find((candidate) => candidate.id === id)?.role === 'wearer';

/** Whom a look without items looks over: undefined for one's own equipment. */
export function lookedOver(setting: Setting, step: Step): string | undefined {
  const looked =
    step.of ??
    (isWearer(setting, step.who) ? undefined : setting.people.find(({ role }) => role === 'wearer')?.id);
  return looked === step.who ? undefined : looked;
}
