// How long the order search takes, and whether it ends in a proof: twelve items with two helpers on one core, the invented
// unit's suit, and the longest published route. A row is a whole search, cold; the note says proved or the gap.
import type { Procedure, Step } from '../src/domain/procedure.ts';
import type { ItemId } from '../src/domain/items.ts';
import { searchOrder } from '../src/order/index.ts';
import { proofSentence } from '../src/words/en/order.ts';
import { hundred } from './hundred.ts';
import { ordered, report, type Row } from './harness.ts';
import { published } from './subjects.ts';

type Draft = Omit<Step, 'id' | 'who' | 'items'> & {
  readonly who?: string;
  readonly items?: readonly ItemId[];
};

const SECONDS = 5;

const RUB: Draft = { action: 'sanitise', product: 'alcohol-hand-rub' };
const off = (item: ItemId, more: Partial<Draft> = {}): readonly Draft[] => [
  { action: 'remove', items: [item], ...more },
  ...(more.helper === undefined ? [] : [{ ...RUB, who: more.helper }]),
  RUB,
];
const HELPED = { helper: 'assistant' } as const;

/** The order that is given: the published ones, taken together. */
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

/** Twelve items on one wearer, two assistants, the room of the hundred steps. */
function twelve(): Procedure {
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

const SUBJECTS: readonly (readonly [string, () => Procedure])[] = [
  ['twelve items, two helpers', twelve],
  ['invented suit, seven items', () => published('larkmoor-suit-doffing-v2.yaml')],
  ['respirator and coverall route', () => published('national-n95-coverall-doffing.yaml')],
];

const notes: string[] = [];
const rows: Row[] = ordered(SUBJECTS).map(([name, subject]) => {
  const procedure = subject();
  const from = performance.now();
  const found = searchOrder(procedure, { agent: 'enveloped', milliseconds: SECONDS * 1000 });
  const took = performance.now() - from;
  const said = proofSentence(found);
  notes.push(`${name}: ${said}`);
  const proof = found.proved ? 'proved' : `gap: ${found.gap?.figure ?? ''}`;
  return { name, samples: [took], unit: 'ms', goal: `proved under ${SECONDS} s, or the gap`, note: proof };
});
report(rows, notes);
