// An invented procedure that uses every technique once, so that every sentence pattern of a language can be read: it is no
// procedure for anybody, and follows from the tables, so a technique that is added is read too.
import { ITEM_IDS, type ItemId, itemKind } from '../domain/items.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import { fits, TECHNIQUE_IDS, type Technique, techniqueOf } from '../domain/techniques/index.ts';

export const ROOM = {
  zones: [
    { id: 'patient-room', side: 'patient' },
    { id: 'doffing-area', side: 'doffing' },
    { id: 'clean-side', side: 'clean' },
  ],
  fixtures: [
    { id: 'clean-chair', kind: 'chair', zone: 'doffing-area', clean: true },
    { id: 'waste-bin', kind: 'bin', zone: 'doffing-area', clean: false, worked: 'hand' },
    { id: 'wet-mat', kind: 'mat', zone: 'doffing-area', clean: false, product: 'chlorine-0.5' },
    { id: 'exit', kind: 'door', zone: 'doffing-area', clean: false, worked: 'hand' },
  ],
} as const;

/** The first items that a technique is for. */
function itemsFor({ groups, together }: Technique): readonly ItemId[] {
  const first = ITEM_IDS.find((id) => groups.includes(itemKind(id).group));
  if (first === undefined) return [];
  const second = together && ITEM_IDS.find((id) => together.includes(itemKind(id).group) && id !== first);
  return second === undefined ? [first] : [first, second];
}

const PRODUCT = { sanitise: 'alcohol-hand-rub', wipe: 'disinfectant-wipe' } as const;

/** What an action cannot be said without. */
function partsOf(technique: Technique, items: readonly ItemId[]): Partial<Step> {
  const { action } = technique;
  if (action === 'sanitise' || action === 'wipe')
    return {
      product: PRODUCT[action],
      ...(items.length === 0 && action === 'wipe' ? { fixture: 'exit' } : {}),
    };
  if (action === 'move') return { zone: 'doffing-area' };
  if (action === 'step-on') return { fixture: 'wet-mat' };
  if (action === 'sit') return { fixture: 'clean-chair' };
  return action === 'touch' ? { fixture: 'exit' } : {};
}

function stepBy(technique: Technique): Step {
  const items = itemsFor(technique);
  const action = technique.action;
  const id = technique.id as NonNullable<Step['technique']>;
  return { id, who: 'wearer', action, items, technique: id, ...partsOf(technique, items) };
}

/** Other things that a step can say: a helper, one side, somebody else's, a part, a place, where it goes. */
const FURTHER: readonly Step[] = [
  { id: 'with-helper', who: 'wearer', action: 'remove', items: ['apron'], helper: 'assistant' },
  { id: 'into-bin', who: 'wearer', action: 'remove', items: ['apron'], fixture: 'waste-bin' },
  { id: 'one-side', who: 'wearer', action: 'remove', items: ['outer-gloves'], side: 'left' },
  { id: 'of-another', who: 'assistant', action: 'fasten', items: ['hooded-coverall'], of: 'wearer' },
  { id: 'one-part', who: 'wearer', action: 'unfasten', items: ['gown'], part: 'neck-tie' },
  { id: 'look-all', who: 'wearer', action: 'inspect', items: [] },
  { id: 'look-over-another', who: 'observer', action: 'inspect', items: [], of: 'wearer' },
  { id: 'look-at', who: 'observer', action: 'inspect', items: ['inner-gloves'], of: 'wearer' },
  { id: 'call-to', who: 'observer', action: 'say', items: [], helper: 'wearer' },
  { id: 'touch-place', who: 'assistant', action: 'touch', items: [], of: 'wearer', place: 'back' },
  { id: 'rise-to', who: 'wearer', action: 'stand', items: [], fixture: 'wet-mat' },
  { id: 'hands-gloved', who: 'assistant', action: 'sanitise', items: [], product: 'alcohol-hand-rub' },
  { id: 'hands-bare', who: 'observer', action: 'sanitise', items: [], product: 'soap-and-water' },
];

const ALL = TECHNIQUE_IDS.map(techniqueOf);

/** Every technique with its own step, and the further steps behind them. */
export const SAMPLE: Procedure = {
  title: 'Every sentence once (invented)',
  kind: 'doffing',
  version: '1',
  invented: true,
  agents: ['enveloped'],
  people: [
    { id: 'wearer', role: 'wearer', wears: ['inner-gloves', 'gown', 'outer-gloves'] },
    { id: 'observer', role: 'observer', wears: [] },
    { id: 'assistant', role: 'assistant', wears: ['gloves'] },
  ].map((person) => ({
    ...(person as Pick<Procedure['people'][number], 'id' | 'role' | 'wears'>),
    underneath: ['scrubs', 'shoes'],
    starts: 'patient-room',
    hand: 'right',
    leavesBare: [],
  })),
  ...ROOM,
  products: ['alcohol-hand-rub', 'disinfectant-wipe', 'chlorine-0.5', 'soap-and-water'],
  start: [],
  policy: { creditSpraying: false },
  steps: [...ALL.map(stepBy), ...FURTHER],
  accepted: [],
};

/** Whether every technique has a step that it fits; for the tests. */
export const unfitted = (): readonly string[] =>
  ALL.filter((technique) => {
    const step = SAMPLE.steps.find(({ id }) => id === technique.id);
    return !step || !fits(technique, step.action, step.items);
  }).map(({ id }) => id);
