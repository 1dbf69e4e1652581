// The encoded published procedures that the claims are about, with the ids of the steps they turn on, and the small edits
// that make one order into the other. Surfaces are named as the check names them.
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { step } from '../support/procedure.ts';
import { stepOf } from './ask.ts';

export const everyday1 = procedureOf('everyday-example-1-doffing.yaml');
export const everyday2 = procedureOf('everyday-example-2-doffing.yaml');
/** Powered respirator and gown: boot covers and outer gloves first, hood before gown. */
export const paprGown = procedureOf('national-papr-gown-doffing.yaml');
export const paprGownLate = procedureOf('national-papr-gown-late-boot-covers-doffing.yaml');
export const paprSuit = procedureOf('national-papr-coverall-doffing.yaml');
export const paprSuitEarly = procedureOf('national-papr-coverall-early-boot-covers-doffing.yaml');
/** Respirator, hood, shield and gown, with a change of inner gloves before the respirator. */
export const n95Gown = procedureOf('national-n95-gown-doffing.yaml');
export const whoSuit = procedureOf('international-coverall-doffing.yaml');
/** Gloves, apron, eye protection, mask; bare hair and neck. */
export const poster = procedureOf('other-national-poster-doffing.yaml');
export const larkmoor1 = procedureOf('larkmoor-suit-doffing.yaml');
export const larkmoor2 = procedureOf('larkmoor-suit-doffing-v2.yaml');

export const rub = (id: string, fields: Partial<Step> = {}): Step =>
  step(id, 'sanitise', { product: 'alcohol-hand-rub', ...fields });

export const removal = (procedure: Procedure, item: string): string => stepOf(procedure, 'remove', item).id;

/** The first cleaning of the hands of `who` after this step. */
export function cleaningAfter(procedure: Procedure, after: string, who = 'wearer'): string {
  const from = procedure.steps.findIndex(({ id }) => id === after) + 1;
  const found = procedure.steps.slice(from).find((one) => one.action === 'sanitise' && one.who === who);
  if (!found) throw new Error(`no cleaning after ${after}`);
  return found.id;
}

export const withFixture = (
  procedure: Procedure,
  kind: string,
  fields: Partial<Procedure['fixtures'][number]>,
): Procedure => ({
  ...procedure,
  fixtures: procedure.fixtures.map((fixture) =>
    fixture.kind === kind ? { ...fixture, ...fields } : fixture,
  ),
});

/** The assistant's tasks done by the observer. */
export function combined(procedure: Procedure): Procedure {
  const observer = (who: string | undefined) => (who === 'assistant' ? 'observer' : who);
  return {
    ...procedure,
    people: procedure.people.filter(({ id }) => id !== 'assistant'),
    steps: procedure.steps.map((one) => ({
      ...one,
      who: observer(one.who) ?? one.who,
      ...(one.helper === undefined ? {} : { helper: observer(one.helper) ?? one.helper }),
    })),
  };
}

/** Strong chlorine wherever the wearer cleans gloves; bare hands, cleaned last, keep the alcohol rub. */
export function chlorineOnGloves(procedure: Procedure): Procedure {
  const last = procedure.steps.findLast((one) => one.action === 'sanitise' && one.who === 'wearer')?.id;
  return {
    ...procedure,
    products: ['chlorine-0.5', ...procedure.products],
    steps: procedure.steps.map((one) =>
      one.action === 'sanitise' && one.who === 'wearer' && one.id !== last
        ? { ...one, product: 'chlorine-0.5' }
        : one,
    ),
  };
}

const pair = (name: (side: 'left' | 'right') => string): readonly string[] => [name('left'), name('right')];
export const HANDS = pair((side) => `wearer.hand.${side}`);
export const WRISTS = pair((side) => `wearer.wrist.${side}`);
export const ANKLES = pair((side) => `wearer.ankle.${side}`);
export const INNER_GLOVES = pair((side) => `wearer.inner-gloves.${side}.outside`);
export const TROUSERS = pair((side) => `wearer.scrubs.leg-${side}`);
export const SHIRT = ['front', 'hem', 'back'].map((part) => `wearer.scrubs.${part}`);
export const SCRUBS = [...SHIRT, 'wearer.scrubs.seat', ...TROUSERS];
export const MUCOSA = ['eyes', 'nose', 'mouth'].map((place) => `wearer.${place}`);
export const CLEAN_FLOOR = 'room.clean-side-floor.surface';
export const ASSISTANT_GLOVE = 'assistant.outer-gloves.right.outside';
