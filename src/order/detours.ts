// Other ways on from a rest, the nearest first: hygiene before the next thing that hands meet, fresh gloves before something comes
// off, two removals the other way round. Nothing here claims to help; each is tried.
import type { Body } from '../contacts/body.ts';
import { bodyIn, type Scene } from '../contacts/scene.ts';
import { freshId } from '../check/edit.ts';
import { type ItemId, itemKind } from '../domain/items.ts';
import { SIDES } from '../domain/places.ts';
import type { Step } from '../domain/procedure.ts';
import type { Material, ProductId } from '../domain/products.ts';
import { gloveOn } from '../practice/index.ts';
import type { Rest, Standing } from './rest.ts';
import { productsFor } from './setting.ts';

const HANDS: ReadonlySet<Step['action']> = new Set(['remove', 'unfasten', 'put-on', 'wipe', 'touch', 'move']);
const UNDRESSES: ReadonlySet<Step['action']> = new Set(['remove', 'unfasten']);
/** Places ahead at which each kind is tried. */
const NEAR = { hygiene: 8, gloves: 4, swaps: 4 } as const;

interface At {
  readonly standing: Standing;
  readonly rest: Rest;
  /** Index in the rest before which something comes. */
  readonly at: number;
  readonly who: string;
}

const sceneAt = ({ standing, rest, at }: At): Scene => rest.performed[at - 1]?.after ?? standing.scene;

const allSteps = ({ standing, rest }: At): readonly Step[] => [
  ...standing.compiled.procedure.steps.slice(0, standing.done),
  ...rest.steps,
];

function productOn({ standing }: At, body: Body): ProductId | undefined {
  const materials = SIDES.map((side): Material => (gloveOn(body, side) === undefined ? 'skin' : 'glove'));
  const { procedure, agent } = standing.compiled;
  return productsFor({ procedure, agent }, [...new Set(materials)])[0];
}

const inserted = ({ rest, at }: At, steps: readonly Step[]): readonly Step[] =>
  rest.steps.toSpliced(at, 0, ...steps);

function hygiene(place: At): readonly Step[] | undefined {
  const product = productOn(place, bodyIn(sceneAt(place), place.who));
  const id = freshId(allSteps(place), `rub-${place.who}`);
  return product && inserted(place, [{ id, who: place.who, action: 'sanitise', items: [], product }]);
}

/** The glove outermost on both hands. */
function gloveOf(body: Body): ItemId | undefined {
  const [one, other] = SIDES.map((side) => gloveOn(body, side));
  return one === other ? one : undefined;
}

const withoutGlove = (body: Body, glove: ItemId): Body => ({
  ...body,
  layers: body.layers.filter(({ item }) => item !== glove),
});

function freshGloves(place: At): readonly Step[] | undefined {
  const { who } = place;
  const body = bodyIn(sceneAt(place), who);
  const glove = gloveOf(body);
  const product = glove && productOn(place, withoutGlove(body, glove));
  if (!product) return undefined;
  const named = (base: string): string => freshId(allSteps(place), `${base}-${who}`);
  return inserted(place, [
    { id: named('gloves-off'), who, action: 'remove', items: [glove], technique: 'peel-cuff' },
    { id: named('rub-before-gloves'), who, action: 'sanitise', items: [], product },
    { id: named('gloves-on'), who, action: 'put-on', items: [glove] },
  ]);
}

const owner = (step: Step): string => step.of ?? step.who;

/** From a removal or opening to the next of the same person. */
function blockFrom(steps: readonly Step[], at: number): number {
  const who = owner(steps[at]!);
  const next = steps.findIndex(
    (step, index) => index > at && UNDRESSES.has(step.action) && owner(step) === who,
  );
  return next < 0 ? steps.length : next;
}

/** The removal at `at`, with what belongs to it, after the next one. */
function swapped({ rest, at }: At): readonly Step[] | undefined {
  const { steps } = rest;
  const middle = blockFrom(steps, at);
  const next = steps[middle];
  if (!next || next.pinned || steps[at]?.pinned || owner(next) !== owner(steps[at]!)) return undefined;
  const last = steps.findLastIndex((step) => UNDRESSES.has(step.action) && owner(step) === owner(next));
  const end = last === middle ? middle + 1 : blockFrom(steps, middle);
  return [
    ...steps.slice(0, at),
    ...steps.slice(middle, end),
    ...steps.slice(at, middle),
    ...steps.slice(end),
  ];
}

const isWorn = (item: ItemId): boolean => itemKind(item).group === 'glove';

/** Indices of the steps of this kind that are nearest. */
const nearest = (
  steps: readonly Step[],
  most: number,
  is: (step: Step, at: number) => boolean,
): readonly number[] => steps.flatMap((step, at) => (is(step, at) ? [at] : [])).slice(0, most);

/** Whether this person's hands were cleaned by the step before. */
const justCleaned = (steps: readonly Step[], at: number, who: string): boolean =>
  steps[at - 1]?.action === 'sanitise' && steps[at - 1]?.who === who;

function hygienes(standing: Standing, rest: Rest): readonly (readonly Step[] | undefined)[] {
  const { steps } = rest;
  const [first] = steps;
  const now = first
    ? [...new Set([owner(first), ...steps.slice(0, NEAR.hygiene).map(({ who }) => who)])]
    : [];
  const later = nearest(
    steps,
    NEAR.hygiene,
    ({ action, who }, at) => HANDS.has(action) && at > 0 && !justCleaned(steps, at, who),
  );
  return [
    ...now.map((who) => hygiene({ standing, rest, at: 0, who })),
    ...later.map((at) => hygiene({ standing, rest, at, who: steps[at]!.who })),
  ];
}

function gloveChanges(standing: Standing, rest: Rest): readonly (readonly Step[] | undefined)[] {
  const { steps } = rest;
  const glovesOff = ({ action, items }: Step): boolean => action === 'remove' && items.some(isWorn);
  const places = nearest(steps, NEAR.gloves, (step) => UNDRESSES.has(step.action) && !glovesOff(step));
  const [first] = steps;
  const now = first && !places.includes(0) ? [freshGloves({ standing, rest, at: 0, who: owner(first) })] : [];
  return [...now, ...places.map((at) => freshGloves({ standing, rest, at, who: owner(steps[at]!) }))];
}

function swaps(standing: Standing, rest: Rest): readonly (readonly Step[] | undefined)[] {
  const places = nearest(rest.steps, NEAR.swaps, ({ action }) => action === 'remove');
  return places.map((at) => swapped({ standing, rest, at, who: owner(rest.steps[at]!) }));
}

/** Every other way that is worth a try, as whole lists of steps. */
export const detoursFrom = (standing: Standing, rest: Rest): readonly (readonly Step[])[] =>
  [...hygienes(standing, rest), ...gloveChanges(standing, rest), ...swaps(standing, rest)].flatMap((steps) =>
    steps ? [steps] : [],
  );
