// What can be recorded at a step with two taps: its own likely slips, those that an observer sees first; what may be
// found of the things it handles; and, for everything else, a category.
import type { BasicEvent } from '../contacts/plan.ts';
import type { Procedure } from '../domain/procedure.ts';
import { evidence, type EvidenceId } from '../evidence/index.ts';
import { eventsAt, eventsFor } from './plans.ts';

/** A slip or circumstance to be offered; its words are `words.event` of the key. */
export interface Offered {
  readonly key: string;
  readonly what: string;
  readonly visible: boolean;
  /** Chance of it, for the order alone. */
  readonly chance: number;
}

const offered = ({ key, what, visible, prior }: BasicEvent): Offered => {
  const { value } = evidence(prior as EvidenceId);
  return { key, what, visible, chance: typeof value === 'number' ? value : 0 };
};

const likelier = (a: Offered, b: Offered): number =>
  Number(b.visible) - Number(a.visible) || b.chance - a.chance || a.key.localeCompare(b.key);

/** The slips of a step, visible ones first, then by chance. */
export const slipsAt = (procedure: Procedure, step: number): readonly Offered[] =>
  eventsAt(procedure, step)
    .filter(({ kind }) => kind === 'slip')
    .map(offered)
    .sort(likelier);

/** Circumstances that may come to light at a step: its own, and those of the start about an item it handles. */
export function findsAt(procedure: Procedure, step: number): readonly Offered[] {
  const items: readonly string[] = procedure.steps[step]?.items ?? [];
  return [...eventsFor(procedure).values()]
    .filter(({ kind }) => kind === 'circumstance')
    .filter((event) => event.step === step || (event.step < 0 && about(event, items)))
    .map(offered)
    .sort(likelier);
}

/** Whether a circumstance of the start is about one of these items: `wearer.goggles.strap`, `wearer.outer-gloves`. */
const about = ({ on }: BasicEvent, items: readonly string[]): boolean =>
  on?.split('.').some((word) => items.includes(word)) ?? false;

/** The events that 'too short a time' means at a step: too short a contact, else a rub that missed a spot. */
export function tooShortAt(procedure: Procedure, step: number): readonly string[] {
  const events = eventsAt(procedure, step);
  const contact = events.filter(({ what }) => what === 'wipe-too-short');
  const meant = contact.length > 0 ? contact : events.filter(({ what }) => what === 'inadequate-hygiene');
  return meant.map(({ key }) => key);
}
