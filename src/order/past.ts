// What is kept of the past beside the scene (flags.ts) after a move. Kept only as long as a rule can still ask for it: two
// pasts between which nothing to come tells a difference are one.
import type { Body } from '../contacts/body.ts';
import type { Performed } from '../contacts/interpret.ts';
import { bodyIn, type Scene } from '../contacts/scene.ts';
import { type ItemGroup, type ItemId, itemKind } from '../domain/items.ts';
import { RESPIRATORS } from '../practice/index.ts';
import type { Draft } from './drafts.ts';
import type { Flags } from './flags.ts';
import { handsMet } from './hands.ts';
import type { Setting } from './setting.ts';

const GARMENTS: readonly ItemGroup[] = ['gown', 'coverall'];
const GARMENTS_AND_APRON: readonly ItemGroup[] = [...GARMENTS, 'apron'];

const isOf = (item: ItemId, groups: readonly ItemGroup[]): boolean => groups.includes(itemKind(item).group);

const wearsOf = ({ layers }: Body, groups: readonly ItemGroup[]): boolean =>
  layers.some(({ item }) => isOf(item, groups));

const isWipe = ({ action, items }: { readonly action: string; readonly items: readonly ItemId[] }): boolean =>
  action === 'wipe' && items.includes('shoes');

/**
 * Clean chairs on which somebody sat in foot covers, while shoes may still be wiped there: only then it becomes a departure.
 * Whoever sits down on one in a garment departs at once, and on another chair no shoes can be wiped.
 */
function chairsAfter(
  { procedure, pinned }: Setting,
  flags: Flags,
  wiped: boolean,
  performed: readonly Performed[],
): string {
  if (wiped && !pinned.slice(flags.pinned).some(isWipe)) return '';
  const sat = performed.flatMap(({ step, after }) => {
    if (step.action !== 'sit') return [];
    const body = bodyIn(after, step.who);
    const chair = procedure.fixtures.find(({ id }) => id === body.seated);
    const counts =
      chair?.clean === true && wearsOf(body, ['foot-cover']) && !wearsOf(body, GARMENTS_AND_APRON);
    return counts ? [chair.id] : [];
  });
  return sat.length === 0
    ? flags.chairs
    : [...flags.chairs.split(' ').filter(Boolean), ...sat].sort().join(' ');
}

const CHAIRS_APART = 'practice.clean-and-dirty-chair-apart';
const SHOES_WIPED = 'practice.shoes-wiped-with-soles';

/**
 * Whether there is no chair left on which somebody's shoes could be wiped, though they must be: no order goes on from there to an
 * end. Found early, for much of what could be tried before that end lies behind it.
 */
export function nowhereToWipe(setting: Setting, flags: Flags, who: string): boolean {
  const { allowed, procedure, pinned } = setting;
  if (!allowed || allowed.has(CHAIRS_APART) || allowed.has(SHOES_WIPED)) return false;
  const wears = procedure.people.find(({ id }) => id === who)?.wears ?? [];
  const asked = count(wears, ['glove']) > 1 && count(wears, ['foot-cover']) > 0;
  if (!asked || flags.wiped || flags.chairs === '' || pinned.some(isWipe)) return false;
  const fouled = flags.chairs.split(' ');
  return procedure.fixtures.every(({ id, kind, clean }) => kind !== 'chair' || !clean || fouled.includes(id));
}

/** Whether a zip is still to be opened. */
const zipAhead = (scene: Scene): boolean =>
  Object.values(scene.bodies).some(({ layers }) =>
    layers.some(({ item, fastened }) => fastened && itemKind(item).closure === 'zip'),
  );

/** Whose hands are clean since, and did nothing after it. */
function cleanAfter(setting: Setting, clean: string, scene: Scene, performed: readonly Performed[]): string {
  if (!zipAhead(scene)) return '';
  const people = new Set(clean.split(' ').filter(Boolean));
  for (const { id } of setting.procedure.people) {
    const last = performed.findLastIndex(({ step }) => step.action === 'sanitise' && step.who === id);
    const since = performed.slice(last + 1);
    const dressed = since.some(({ step }) => step.action === 'put-on' && step.who === id);
    if (dressed || handsMet(setting, since, id)) people.delete(id);
    else if (last >= 0) people.add(id);
  }
  return [...people].sort().join(' ');
}

const count = (items: readonly ItemId[], groups: readonly ItemGroup[]): number =>
  new Set(items.filter((item) => isOf(item, groups))).size;

/** Whether the gloves outermost now were put on since the first garment went; asked until the respirator is off. */
function freshAfter(
  setting: Setting,
  who: string,
  fresh: boolean,
  scene: Scene,
  performed: readonly Performed[],
): boolean {
  const wears = setting.procedure.people.find(({ id }) => id === who)?.wears ?? [];
  const still = (one: Scene): readonly ItemId[] => bodyIn(one, who).layers.map(({ item }) => item);
  if (count(wears, ['glove']) < 2 || !still(scene).some((item) => RESPIRATORS.includes(item))) return false;
  let now = fresh;
  for (const { step, before } of performed) {
    if ((step.of ?? step.who) !== who || !step.items.some((item) => isOf(item, ['glove']))) continue;
    if (step.action === 'remove') now = false;
    if (step.action === 'put-on') now = count(still(before), GARMENTS) < count(wears, GARMENTS);
  }
  return now;
}

/** Whether hygiene is to follow: asked for by the move, or because the hands met something since the last. */
function dueAfter(
  setting: Setting,
  due: boolean,
  draft: Draft,
  who: string,
  performed: readonly Performed[],
): boolean {
  const last = performed.findLastIndex(({ step }) => step.action === 'sanitise' && step.who === who);
  return (
    (due && last < 0) || draft.steps.at(-1) === 'rub' || handsMet(setting, performed.slice(last + 1), who)
  );
}

/** What the move itself says of them, before it is carried out. */
export const flagsAhead = (flags: Flags, draft: Draft): Flags => ({
  ...flags,
  ...draft.after,
  begun: draft.kind === 'begin' || (flags.begun && draft.kind !== 'end'),
});

/** The flags after a move of `who` that led to this scene; `performed` is all of it. */
export function flagsAfter(
  setting: Setting,
  flags: Flags,
  draft: Draft,
  who: string,
  scene: Scene,
  performed: readonly Performed[],
): Flags {
  const ended = draft.kind === 'end';
  const next = flagsAhead(flags, draft);
  return {
    ...next,
    chairs: ended ? '' : chairsAfter(setting, flags, next.wiped, performed),
    due: !ended && dueAfter(setting, flags.due, draft, who, performed),
    fresh: !ended && freshAfter(setting, who, flags.fresh, scene, performed),
    clean: cleanAfter(setting, flags.clean, scene, performed),
  };
}
