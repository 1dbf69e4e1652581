// All techniques, and the lookups the language and the interpreter need.
import type { ActionId } from '../actions.ts';
import { type ItemId, itemKind } from '../items.ts';
import { FOOT_TECHNIQUES } from './feet.ts';
import { GARMENT_TECHNIQUES } from './garments.ts';
import { GLOVE_TECHNIQUES } from './gloves.ts';
import { HEAD_TECHNIQUES } from './head.ts';
import { MOVING_TECHNIQUES } from './moving.ts';
import type { Technique } from './technique.ts';

export const TECHNIQUES = [
  ...GLOVE_TECHNIQUES,
  ...GARMENT_TECHNIQUES,
  ...HEAD_TECHNIQUES,
  ...FOOT_TECHNIQUES,
  ...MOVING_TECHNIQUES,
] as const;

export type TechniqueId = (typeof TECHNIQUES)[number]['id'];
export type { Technique } from './technique.ts';

const ALL: readonly Technique[] = TECHNIQUES;
const BY_ID: ReadonlyMap<string, Technique> = new Map(ALL.map((technique) => [technique.id, technique]));

export const TECHNIQUE_IDS: readonly TechniqueId[] = TECHNIQUES.map((technique) => technique.id);

/** The table's entry. Throws on an unknown id: names are resolved before they get here. */
export function techniqueOf(id: TechniqueId): Technique {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`unknown technique ${id}`);
  return found;
}

/** Whether the technique itself says what the helper's hands do. */
export const usesHelper = (technique: Technique): boolean =>
  technique.moves.some((move) => move.do === 'touch' && move.a.at === 'hand' && move.a.whose === 'helper');

/** Whether a technique is a way to do this action on these items. */
export function fits(technique: Technique, action: ActionId, items: readonly ItemId[]): boolean {
  if (technique.action !== action) return false;
  const groups = items.map((id) => itemKind(id).group);
  const [first, ...rest] = groups;
  if (first === undefined) return technique.groups.length === 0;
  if (!technique.anyItem && !technique.groups.includes(first)) return false;
  return rest.length === 0 ? !technique.together : rest.every((group) => technique.together?.includes(group));
}

/** Ways to do an action on items, the usual one first. */
export function techniquesFor(action: ActionId, items: readonly ItemId[]): readonly Technique[] {
  const ways = ALL.filter((technique) => fits(technique, action, items));
  return [...ways].sort((a, b) => Number(b.usual ?? false) - Number(a.usual ?? false));
}

function findUsual(action: ActionId, items: readonly ItemId[]): Technique | undefined {
  const ways = techniquesFor(action, items);
  return ways.find((technique) => technique.usual) ?? (ways.length === 1 ? ways[0] : undefined);
}

const USUAL = new Map<string, Technique | undefined>();

/** The technique assumed when a step names none; undefined where the choice must be written down. */
export function usualTechnique(action: ActionId, items: readonly ItemId[]): Technique | undefined {
  const key = `${action} ${items.join(' ')}`;
  if (!USUAL.has(key)) USUAL.set(key, findUsual(action, items));
  return USUAL.get(key);
}
