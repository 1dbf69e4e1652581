// Whether what was recorded may have reached what the equipment protects: skin, mucosa, the clothes beneath. Then the unit's
// exposure plan comes before the next step. Who was exposed is decided by the people in that plan, not here.
import type { SurfaceClass } from '../contacts/plan.ts';
import type { DeviationId } from '../domain/guiding.ts';
import type { EmergencyId } from '../domain/emergencies.ts';
import { evidenceNumber } from '../evidence/index.ts';
import { OTHER } from './entries.ts';
import type { Suspect } from './known.ts';
import type { Core } from './state.ts';
import { worsenedBy } from './suspected.ts';

export interface Reached {
  /** The plan is too tangled for an exact answer: it may be anything that was touched. */
  readonly unknown: boolean;
  /** Protected surfaces that what was recorded made worse, the surest first. */
  readonly surfaces: readonly string[];
  /** Deviations that reach the body, of which nobody recorded where. */
  readonly unplaced: readonly DeviationId[];
}

export interface Exposed extends Reached {
  /** Emergencies whose cards are for it; none where the list itself says which. */
  readonly cards: readonly EmergencyId[];
}

/** The cards that deal with an exposure, the one to be named first. A touch is treated as a splash would be (`guide.exposure`). */
const FACE: readonly EmergencyId[] = ['splash-face'];
const SKIN: readonly EmergencyId[] = ['splash-skin', 'sharps'];
const BODY: Readonly<Partial<Record<SurfaceClass, readonly EmergencyId[]>>> = {
  mucosa: FACE,
  skin: SKIN,
  clothes: SKIN,
};

/** What nobody would record without meaning the body, or what lies beneath a tear. */
const REACHES: readonly { readonly category: DeviationId; readonly fits: readonly EmergencyId[] }[] = [
  { category: 'touched-face', fits: FACE },
  { category: 'item-torn', fits: ['glove-tear', 'suit-tear', ...SKIN] },
];

const ofBody = (suspects: readonly Suspect[] | null): readonly Suspect[] =>
  (suspects ?? []).filter(
    (one) => one.protected && BODY[one.class] !== undefined && one.needs <= evidenceNumber('guide.exposure'),
  );

/** Deviations of this kind that were recorded without a place, from one of them on. */
const isUnplaced = ({ deviations }: Core, category: DeviationId, from = 0): boolean =>
  deviations.slice(from).some(({ slip, surfaces }) => slip === OTHER + category && surfaces.length === 0);

/** Everything of the body that may be contaminated, whether a card was opened for it or not. */
export function reachedBy(core: Core, suspects: readonly Suspect[] | null): Reached | null {
  const surfaces = ofBody(suspects).map(({ surface }) => surface);
  const unplaced = REACHES.flatMap(({ category }) => (isUnplaced(core, category) ? [category] : []));
  const unknown = suspects === null;
  return unknown || surfaces.length > 0 || unplaced.length > 0 ? { unknown, surfaces, unplaced } : null;
}

/** How many deviations had been recorded when a card of these was last opened. */
const dealtBy = ({ opened }: Core, fits: readonly EmergencyId[]): number =>
  Math.max(0, ...fits.map((card) => opened[card] ?? 0));

/** What is left of it once the cards that were opened are taken away: an exposure that a later record made worse is new. */
function leftOf(core: Core, suspects: readonly Suspect[]): readonly Suspect[] {
  const isDealtWith = ({ surface, class: of, needs }: Suspect): boolean => {
    const dealt = dealtBy(core, BODY[of] ?? []);
    if (dealt === 0 || dealt === core.deviations.length) return dealt > 0;
    return worsenedBy(core, dealt)?.some((one) => one.surface === surface && one.needs <= needs) ?? false;
  };
  return suspects.filter((one) => !isDealtWith(one));
}

/** Where everything may be meant, a card for each kind has to be opened. */
const isAllLeft = (core: Core): boolean =>
  [FACE, SKIN].some((fits) => dealtBy(core, fits) < core.deviations.length);

const CARDS: readonly EmergencyId[] = ['splash-face', 'splash-skin'];

/** Null where nothing of the kind is known, and once cards that fit all of it were opened; no other card ends it. */
export function exposedBy(core: Core, suspects: readonly Suspect[] | null): Exposed | null {
  const unknown = suspects === null && isAllLeft(core);
  const left = leftOf(core, ofBody(suspects));
  const places = REACHES.filter(({ category, fits }) => isUnplaced(core, category, dealtBy(core, fits)));
  if (!unknown && left.length === 0 && places.length === 0) return null;
  const named = [...left.map((one) => BODY[one.class]), ...places.map(({ fits }) => fits)];
  return {
    unknown,
    surfaces: left.map(({ surface }) => surface),
    unplaced: places.map(({ category }) => category),
    cards: CARDS.filter((card) => unknown || named.some((fits) => fits?.[0] === card)),
  };
}
