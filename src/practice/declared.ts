// Departures that a technique declares itself (`breaks` in the technique tables): whoever writes that technique into a
// step departs. The same technique serves several items, and a rule may be published apart for one of them.
import type { ItemId } from '../domain/items.ts';
import { TECHNIQUES, type Technique } from '../domain/techniques/index.ts';
import type { PracticeRuleId } from '../evidence/index.ts';
import type { Departure } from './departure.ts';
import type { Reading } from './reading.ts';

interface Instead {
  readonly rule: PracticeRuleId;
  readonly item: ItemId;
  readonly instead: PracticeRuleId;
}

/** Rules whose published text for this item is a record of its own. */
const INSTEAD: readonly Instead[] = [
  { rule: 'practice.shield-by-rear-strap', item: 'goggles', instead: 'practice.goggles-by-rear-strap' },
  {
    rule: 'practice.respirator-lower-strap-first',
    item: 'surgical-mask',
    instead: 'practice.mask-by-straps',
  },
];

/** The rule that a technique departs from when it is done to this item. */
export const forItem = (rule: PracticeRuleId, item: ItemId | undefined): PracticeRuleId =>
  INSTEAD.find((entry) => entry.rule === rule && entry.item === item)?.instead ?? rule;

/** Techniques that depart from a rule, by id. */
export function techniquesThatBreak(rule: PracticeRuleId): readonly string[] {
  const origin = INSTEAD.find((entry) => entry.instead === rule)?.rule ?? rule;
  const all: readonly Technique[] = TECHNIQUES;
  return all.filter((technique) => technique.breaks?.includes(origin)).map((technique) => technique.id);
}

export const declared = (reading: Reading): readonly Departure[] =>
  reading.asked.flatMap(({ index, owner: person, step, technique }) => {
    const [item] = step.items;
    return (technique.breaks ?? []).map((rule) => ({
      rule: forItem(rule, item),
      step: index,
      params: { person, technique: technique.id, ...(item === undefined ? {} : { item }) },
    }));
  });
