// Whether hands are gloved when a step begins, as far as the order of the steps says: 'clean both gloved hands' is what
// an observer must read aloud. Only for words; what truly lies where is worked out in contacts/.
import { type ItemId, itemKind } from '../domain/items.ts';
import { type Side, SIDES } from '../domain/places.ts';
import type { Step } from '../domain/procedure.ts';
import type { Setting } from './words.ts';

export type Hands = 'gloved' | 'bare' | 'mixed';

const isGlove = (item: ItemId): boolean => itemKind(item).group === 'glove';

function change(worn: Set<string>, step: Step): void {
  for (const item of step.items.filter(isGlove)) {
    const sides: readonly Side[] = step.side ? [step.side] : SIDES;
    for (const side of sides) {
      if (step.action === 'put-on') worn.add(`${side} ${item}`);
      if (step.action === 'remove') worn.delete(`${side} ${item}`);
    }
  }
}

/** Hands of whoever does the step, just before it; undefined where the step is not of the procedure. */
export function handsBefore(setting: Setting, step: Step): Hands | undefined {
  const index = setting.steps.findIndex((candidate) => candidate.id === step.id);
  const person = setting.people.find((candidate) => candidate.id === step.who);
  if (index < 0 || !person) return undefined;
  const worn = new Set(
    person.wears.filter(isGlove).flatMap((item) => SIDES.map((side) => `${side} ${item}`)),
  );
  for (const earlier of setting.steps.slice(0, index))
    if ((earlier.of ?? earlier.who) === step.who) change(worn, earlier);
  const gloved = SIDES.filter((side) => [...worn].some((glove) => glove.startsWith(side))).length;
  return gloved === 0 ? 'bare' : gloved === 2 ? 'gloved' : 'mixed';
}
