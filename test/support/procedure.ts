// Procedures for tests: a small invented room, a step builder, and edits by step id. Everything has a default, so that a
// test writes down only what it is about.
import type { ActionId } from '../../src/domain/actions.ts';
import type { Person, Procedure, Step } from '../../src/domain/procedure.ts';
import type { Fixture, Zone } from '../../src/domain/room.ts';

export type StepFields = Partial<Omit<Step, 'id' | 'action'>>;

/** A step by the wearer unless `fields` say otherwise. */
export const step = (id: string, action: ActionId, fields: StepFields = {}): Step => ({
  id,
  who: 'wearer',
  action,
  items: [],
  ...fields,
});

export const person = (fields: Partial<Person> & Pick<Person, 'id' | 'role'>): Person => ({
  wears: [],
  underneath: ['scrubs', 'shoes'],
  starts: 'anteroom',
  hand: 'right',
  leavesBare: [],
  ...fields,
});

export const ZONES: readonly Zone[] = [
  { id: 'room', side: 'patient' },
  { id: 'anteroom', side: 'doffing' },
  { id: 'corridor', side: 'clean' },
];

export const FIXTURES: readonly Fixture[] = [
  { id: 'room-floor', kind: 'floor', zone: 'room', clean: false },
  { id: 'anteroom-floor', kind: 'floor', zone: 'anteroom', clean: false },
  { id: 'corridor-floor', kind: 'floor', zone: 'corridor', clean: true },
  { id: 'chair', kind: 'chair', zone: 'anteroom', clean: false },
  { id: 'clean-chair', kind: 'chair', zone: 'anteroom', clean: true },
  { id: 'bin', kind: 'bin', zone: 'anteroom', clean: false, worked: 'pedal' },
  { id: 'dispenser', kind: 'dispenser', zone: 'anteroom', clean: false, worked: 'sensor' },
];

/** A doffing in the small room; only people and steps must be given. */
export const procedure = (fields: Partial<Procedure> & Pick<Procedure, 'people' | 'steps'>): Procedure => ({
  title: 'A test',
  kind: 'doffing',
  version: '1',
  invented: true,
  agents: ['enveloped', 'non-enveloped'],
  zones: ZONES,
  fixtures: FIXTURES,
  products: ['alcohol-hand-rub', 'disinfectant-wipe', 'chlorine-0.5', 'chlorine-0.05', 'soap-and-water'],
  start: [],
  policy: { creditSpraying: false },
  accepted: [],
  ...fields,
});

const at = (steps: readonly Step[], id: string): number => {
  const index = steps.findIndex((candidate) => candidate.id === id);
  if (index < 0) throw new Error(`no step ${id}`);
  return index;
};

/** The procedure without these steps. */
export function without(from: Procedure, ...ids: readonly string[]): Procedure {
  for (const id of ids) at(from.steps, id);
  return { ...from, steps: from.steps.filter((candidate) => !ids.includes(candidate.id)) };
}

/** One step with other fields. */
export function changed(from: Procedure, id: string, fields: Partial<Step>): Procedure {
  const index = at(from.steps, id);
  return { ...from, steps: from.steps.with(index, { ...from.steps[index]!, ...fields }) };
}

/** These steps go in before the step `id`. */
export const inserted = (from: Procedure, id: string, ...steps: readonly Step[]): Procedure => ({
  ...from,
  steps: from.steps.toSpliced(at(from.steps, id), 0, ...steps),
});

/** The step `id`, and those named after it, stand before the step `before`. */
export function moved(from: Procedure, before: string, ...ids: readonly string[]): Procedure {
  const taken = ids.map((id) => from.steps[at(from.steps, id)]!);
  return inserted(without(from, ...ids), before, ...taken);
}

/** One person with other fields. */
export const withPerson = (from: Procedure, id: string, fields: Partial<Person>): Procedure => ({
  ...from,
  people: from.people.map((candidate) => (candidate.id === id ? { ...candidate, ...fields } : candidate)),
});

/** Nobody called `id`. */
export const withoutPerson = (from: Procedure, id: string): Procedure => ({
  ...from,
  people: from.people.filter((candidate) => candidate.id !== id),
});
