// Twelve items on one wearer and two assistants in the room of the hundred steps (invented): the ensemble by which the order
// search is measured. The given order is the published ones taken together.
import type { ItemId } from '../src/domain/items.ts';
import type { Procedure, Step } from '../src/domain/procedure.ts';
import { hundred } from './hundred.ts';

type Draft = Omit<Step, 'id' | 'who' | 'items'> & {
  readonly who?: string;
  readonly items?: readonly ItemId[];
};

const RUB: Draft = { action: 'sanitise', product: 'alcohol-hand-rub' };
const off = (item: ItemId, more: Partial<Draft> = {}): readonly Draft[] => [
  { action: 'remove', items: [item], ...more },
  ...(more.helper === undefined ? [] : [{ ...RUB, who: more.helper }]),
  RUB,
];
const HELPED = { helper: 'assistant' } as const;

const GIVEN: readonly Draft[] = [
  { who: 'observer', action: 'say' },
  { action: 'inspect' },
  RUB,
  { action: 'move', zone: 'doffing-area' },
  RUB,
  ...off('apron', HELPED),
  ...off('outer-gloves').toSpliced(1, 0, { action: 'inspect', items: ['inner-gloves'] }),
  ...off('face-shield'),
  ...off('surgical-hood'),
  ...off('gown', HELPED),
  { action: 'unfasten', items: ['coverall'] },
  RUB,
  ...off('coverall', { helper: 'assistant-2', technique: 'helper-rolls-outside' }),
  { action: 'sit', fixture: 'doffing-chair' },
  ...off('boot-covers'),
  ...off('shoe-covers'),
  { action: 'stand' },
  ...off('cap'),
  ...off('goggles'),
  ...off('n95-respirator'),
  { action: 'sit', fixture: 'clean-chair' },
  { action: 'wipe', items: ['shoes'], product: 'disinfectant-wipe' },
  RUB,
  ...off('inner-gloves'),
  { who: 'observer', action: 'inspect', of: 'wearer' },
  { action: 'stand', fixture: 'clean-side-floor' },
];

const WEARS: readonly ItemId[] = [
  'shoe-covers',
  'boot-covers',
  'inner-gloves',
  'n95-respirator',
  'goggles',
  'cap',
  'coverall',
  'surgical-hood',
  'face-shield',
  'gown',
  'apron',
  'outer-gloves',
];

/** Twelve items, two helpers. */
export function twelve(): Procedure {
  const base = hundred();
  const [wearer, ...others] = base.people;
  const assistant = others.find(({ role }) => role === 'assistant');
  const observer = others.find(({ role }) => role === 'observer');
  if (!wearer || !assistant || !observer) throw new Error('somebody is missing');
  return {
    ...base,
    title: 'Twelve items, two helpers (invented)',
    people: [{ ...wearer, wears: WEARS }, observer, assistant, { ...assistant, id: 'assistant-2' }],
    steps: GIVEN.map((draft, at) => ({ who: 'wearer', items: [], ...draft, id: `s${at + 1}` })),
    accepted: [],
  };
}
