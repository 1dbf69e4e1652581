// What two steps have in common, when people, zones and fixtures may be named otherwise: a step is read with the other
// procedure's names (see match.ts), and with the technique that is meant where none is written.
import type { Step } from '../domain/procedure.ts';
import { usualTechnique } from '../domain/techniques/index.ts';
import type { Match } from './match.ts';

/** Fields that are compared, in the order in which they are told. */
export const COMPARED_FIELDS = [
  'who',
  'action',
  'items',
  'side',
  'part',
  'of',
  'place',
  'technique',
  'product',
  'fixture',
  'zone',
  'helper',
  'note',
] as const;
export type ComparedField = (typeof COMPARED_FIELDS)[number];

/** A step's fields as text, absent ones as ''. */
export type StepContent = Readonly<Record<ComparedField, string>>;

const technique = (step: Step): string => step.technique ?? usualTechnique(step.action, step.items)?.id ?? '';

export const contentOf = (step: Step): StepContent => ({
  who: step.who,
  action: step.action,
  items: step.items.join(' '),
  side: step.side ?? '',
  part: step.part ?? '',
  of: step.of ?? '',
  place: step.place ?? '',
  technique: technique(step),
  product: step.product ?? '',
  fixture: step.fixture ?? '',
  zone: step.zone ?? '',
  helper: step.helper ?? '',
  note: step.note ?? '',
});

/** The second procedure's step, with the first one's names. */
export function renamed(step: Step, match: Match): StepContent {
  const content = contentOf(step);
  const person = (id: string): string => (id === '' ? '' : (match.person.get(id) ?? `other ${id}`));
  const fixture =
    step.fixture === undefined ? '' : (match.fixture.get(step.fixture) ?? `other ${step.fixture}`);
  const zone = step.zone === undefined ? '' : (match.zone.get(step.zone) ?? `other ${step.zone}`);
  return {
    ...content,
    who: person(content.who),
    of: person(content.of),
    helper: person(content.helper),
    fixture,
    zone,
  };
}

/** Another action always has another technique: that goes without saying. */
export const differing = (a: StepContent, b: StepContent): readonly ComparedField[] =>
  COMPARED_FIELDS.filter(
    (field) => a[field] !== b[field] && (field !== 'technique' || a.action === b.action),
  );

/** The whole instruction; a note is for the reader and does not tell steps apart. */
export const exactKey = (content: StepContent): string =>
  COMPARED_FIELDS.filter((field) => field !== 'note')
    .map((field) => content[field])
    .join('|');

/** The same thing done, if by other hands, in another way or with other means. */
export const nearKey = ({ action, items, side, place }: StepContent): string =>
  [action, items, side, place].join('|');
