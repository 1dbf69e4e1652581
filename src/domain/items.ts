// The items: each kind's parts, what they cover, and how they lie. One entry adds an item; every rule
// of layering, starting contamination and contact follows from these fields, so nothing below the
// tables names a gown. Geometry is our reading of the equipment (judgement), not of one maker.
import type { PlaceName } from './places.ts';

/**
 * How a part stood towards the patient. `faces`: taken as contaminated at the start. `behind`: may have
 * been (a circumstance with a chance). `covered`: a lining or a part that something encloses.
 */
export type Exposure = 'faces' | 'behind' | 'covered';

export interface Part {
  readonly id: PartId;
  readonly exposure: Exposure;
  /** Places it covers. For an item of a pair, paired places mean the same side. */
  readonly covers: readonly PlaceName[];
  /** Only on one side of an item that is not a pair (a gown's left sleeve). */
  readonly side?: 'left' | 'right';
  /** Places it runs over without covering them (a strap on the scalp, a belt at the waist). */
  readonly runs?: readonly PlaceName[];
  /** For a lining: the places it touches while worn; every place the item covers when absent. */
  readonly lines?: readonly PlaceName[];
  /** It closes the item: what lies over it must be off before it can be worked. */
  readonly closes?: boolean;
  /** Hangs free: what lies beneath can be taken off while this part is still on. */
  readonly loose?: boolean;
}

export const PART_IDS = [
  'outside',
  'inside',
  'inside-sleeves',
  'inside-lower',
  'front',
  'back',
  'seat',
  'sleeve-left',
  'sleeve-right',
  'cuff-left',
  'cuff-right',
  'leg-left',
  'leg-right',
  'skirt',
  'collar',
  'hood',
  'zip',
  'neck-tie',
  'waist-tie',
  'neck-strap',
  'strap',
  'lower-edge',
  'rear',
  'strings',
  'upper',
  'foot',
  'sole',
  'hem',
  'unit',
  'buckle',
  'hose',
] as const;
export type PartId = (typeof PART_IDS)[number];

export const ITEM_GROUPS = [
  'clothes',
  'shoes',
  'glove',
  'gown',
  'coverall',
  'apron',
  'head-cover',
  'eye-cover',
  'face-cover',
  'powered-hood',
  'blower',
  'foot-cover',
  'boots',
] as const;
export type ItemGroup = (typeof ITEM_GROUPS)[number];

/** How it closes: a closed item must be unfastened, by a step of its own or in its removal. */
export type Closure = 'none' | 'ties' | 'hook-and-loop' | 'zip' | 'strap' | 'hose' | 'buckle' | 'strings';

export interface ItemKind {
  readonly id: string;
  readonly group: ItemGroup;
  /** Comes as left and right. */
  readonly pair: boolean;
  /** Keeps the patient's side from what lies beneath; a draped item (apron, shield) does not. */
  readonly encloses: boolean;
  readonly closure: Closure;
  /** Worn before anything else and kept on at the end: protected, and judged as it leaves. */
  readonly underneath?: boolean;
  /** Put on, it goes under whatever covers this place already (an inner glove under a cuff). */
  readonly tucksAt?: PlaceName;
  /** It is worn over an item of this group, never alone. */
  readonly over?: ItemGroup;
  /** What its closure connects it to, and without which it cannot be closed. */
  readonly joins?: string;
  /** An item of this group that is fastened to it has to be opened before it comes off. */
  readonly joinedBy?: ItemGroup;
  readonly parts: readonly Part[];
}

/** Keeps the id's own type through a helper: `ItemId` must be the list of ids, not any text. */
type Kind<Id extends string> = ItemKind & { readonly id: Id };

const part = (
  id: PartId,
  exposure: Exposure,
  covers: readonly PlaceName[],
  more: Partial<Part> = {},
): Part => ({ id, exposure, covers, ...more });

const inside = part('inside', 'covered', []);

/** A long garment's lining in three, so that a soiled trouser leg is not taken for a soiled shirt. */
const linings: readonly Part[] = [
  part('inside', 'covered', [], { lines: ['chest', 'waist', 'back', 'neck', 'scalp', 'ears'] }),
  part('inside-sleeves', 'covered', [], { lines: ['arm', 'wrist'] }),
  part('inside-lower', 'covered', [], { lines: ['seat', 'thigh', 'shin', 'ankle'] }),
];

const sleeves: readonly Part[] = (['left', 'right'] as const).flatMap((side) => [
  part(`sleeve-${side}`, 'faces', ['arm'], { side }),
  part(`cuff-${side}`, 'faces', ['wrist'], { side }),
]);

const gown = <Id extends 'gown' | 'gown-hook-and-loop'>(id: Id, closure: Closure): Kind<Id> => ({
  id,
  group: 'gown',
  pair: false,
  encloses: true,
  closure,
  parts: [
    part('front', 'faces', ['chest', 'waist']),
    part('skirt', 'faces', ['thigh', 'shin'], { loose: true }),
    ...sleeves,
    part('back', 'behind', ['back', 'seat']),
    part('neck-tie', 'behind', [], { runs: ['back'], closes: true }),
    part('waist-tie', 'behind', [], { runs: ['back'], closes: true }),
    ...linings,
  ],
});

const coverall = <Id extends 'coverall' | 'hooded-coverall'>(id: Id, hood: readonly Part[]): Kind<Id> => ({
  id,
  group: 'coverall',
  pair: false,
  encloses: true,
  closure: 'zip',
  parts: [
    part('front', 'faces', ['chest', 'waist']),
    part('collar', 'faces', ['neck']),
    ...hood,
    part('zip', 'faces', [], { runs: ['chest', 'waist'], closes: true }),
    part('back', 'behind', ['back']),
    part('seat', 'behind', ['seat']),
    ...sleeves,
    ...(['left', 'right'] as const).map((side) =>
      part(`leg-${side}`, 'faces', ['thigh', 'shin', 'ankle'], { side }),
    ),
    ...linings,
  ],
});

const glove = <Id extends 'gloves' | 'outer-gloves' | 'inner-gloves'>(
  id: Id,
  more: Pick<ItemKind, 'tucksAt' | 'over'> = {},
): Kind<Id> => ({
  id,
  group: 'glove',
  pair: true,
  encloses: true,
  closure: 'none',
  ...more,
  parts: [part('outside', 'faces', ['hand', 'wrist']), inside],
});

const faceCover = <Id extends 'surgical-mask' | 'n95-respirator' | 'ffp2-respirator' | 'ffp3-respirator'>(
  id: Id,
): Kind<Id> => ({
  id,
  group: 'face-cover',
  pair: false,
  encloses: true,
  closure: id === 'surgical-mask' ? 'ties' : 'strap',
  parts: [
    part('front', 'faces', ['nose', 'mouth']),
    part('strap', 'behind', [], { runs: ['scalp'], closes: true }),
    inside,
  ],
});

/** A hood has its air from the blower on the belt; some helmets carry their own. */
const poweredHood = <Id extends 'powered-hood' | 'powered-helmet'>(id: Id): Kind<Id> => ({
  id,
  group: 'powered-hood',
  pair: false,
  encloses: true,
  ...(id === 'powered-hood' ? { closure: 'hose', joins: 'blower' } : { closure: 'hose' }),
  parts: [
    part('outside', 'faces', ['scalp', 'ears', 'face', 'eyes', 'nose', 'mouth']),
    part('lower-edge', 'faces', ['neck'], { loose: true }),
    inside,
  ],
});

export const ITEMS = [
  {
    id: 'scrubs',
    group: 'clothes',
    pair: false,
    encloses: false,
    closure: 'none',
    underneath: true,
    parts: [
      part('front', 'covered', ['chest']),
      part('hem', 'covered', ['waist']),
      part('back', 'covered', ['back']),
      part('seat', 'covered', ['seat']),
      part('leg-left', 'covered', ['thigh', 'shin'], { side: 'left' }),
      part('leg-right', 'covered', ['thigh', 'shin'], { side: 'right' }),
    ],
  },
  {
    id: 'shoes',
    group: 'shoes',
    pair: true,
    encloses: false,
    closure: 'none',
    underneath: true,
    parts: [part('upper', 'faces', ['foot']), part('sole', 'faces', ['sole'])],
  },
  glove('gloves'),
  glove('outer-gloves', { over: 'glove' }),
  glove('inner-gloves', { tucksAt: 'wrist' }),
  gown('gown', 'ties'),
  gown('gown-hook-and-loop', 'hook-and-loop'),
  coverall('coverall', []),
  coverall('hooded-coverall', [part('hood', 'faces', ['scalp', 'ears'])]),
  {
    id: 'apron',
    group: 'apron',
    pair: false,
    encloses: false,
    closure: 'ties',
    parts: [
      part('front', 'faces', ['chest', 'waist']),
      part('skirt', 'faces', ['thigh', 'shin'], { loose: true }),
      part('neck-strap', 'behind', [], { runs: ['neck'], loose: true, closes: true }),
      part('waist-tie', 'behind', [], { runs: ['back'], closes: true }),
      ...linings,
    ],
  },
  {
    id: 'surgical-hood',
    group: 'head-cover',
    pair: false,
    encloses: true,
    closure: 'none',
    parts: [
      part('outside', 'faces', ['scalp', 'ears']),
      part('lower-edge', 'faces', ['neck'], { loose: true }),
      part('rear', 'behind', [], { runs: ['scalp'] }),
      inside,
    ],
  },
  {
    id: 'cap',
    group: 'head-cover',
    pair: false,
    encloses: true,
    closure: 'none',
    parts: [
      part('outside', 'faces', ['scalp', 'ears']),
      part('rear', 'behind', [], { runs: ['scalp'] }),
      inside,
    ],
  },
  {
    id: 'face-shield',
    group: 'eye-cover',
    pair: false,
    encloses: false,
    closure: 'strap',
    parts: [
      part('front', 'faces', ['face', 'eyes', 'nose', 'mouth']),
      part('strap', 'behind', [], { runs: ['scalp'], closes: true }),
      // It stands off the face and off the mask.
      part('inside', 'covered', [], { lines: [] }),
    ],
  },
  {
    id: 'goggles',
    group: 'eye-cover',
    pair: false,
    encloses: true,
    closure: 'strap',
    parts: [
      part('front', 'faces', ['eyes']),
      part('strap', 'behind', [], { runs: ['scalp'], closes: true }),
      inside,
    ],
  },
  faceCover('surgical-mask'),
  faceCover('n95-respirator'),
  faceCover('ffp2-respirator'),
  faceCover('ffp3-respirator'),
  poweredHood('powered-hood'),
  poweredHood('powered-helmet'),
  {
    id: 'blower',
    group: 'blower',
    pair: false,
    encloses: false,
    closure: 'buckle',
    joinedBy: 'powered-hood',
    parts: [
      part('unit', 'faces', [], { runs: ['waist'] }),
      part('buckle', 'faces', [], { runs: ['waist'], closes: true }),
      part('hose', 'faces', [], { runs: ['back'] }),
    ],
  },
  {
    id: 'boot-covers',
    group: 'foot-cover',
    pair: true,
    encloses: true,
    closure: 'none',
    parts: [part('outside', 'faces', ['shin', 'ankle', 'foot']), part('sole', 'faces', ['sole']), inside],
  },
  {
    id: 'shoe-covers',
    group: 'foot-cover',
    pair: true,
    encloses: true,
    closure: 'strings',
    parts: [
      part('outside', 'faces', ['foot']),
      part('sole', 'faces', ['sole']),
      part('strings', 'faces', [], { runs: ['shin'], closes: true }),
      inside,
    ],
  },
  {
    id: 'rubber-boots',
    group: 'boots',
    pair: true,
    encloses: true,
    closure: 'none',
    parts: [part('outside', 'faces', ['shin', 'ankle', 'foot']), part('sole', 'faces', ['sole']), inside],
  },
] as const satisfies readonly ItemKind[];

export type ItemId = (typeof ITEMS)[number]['id'];
export const ITEM_IDS: readonly ItemId[] = ITEMS.map((item) => item.id);

const BY_ID: ReadonlyMap<string, ItemKind> = new Map(ITEMS.map((item) => [item.id, item]));

/** The kind with this id. Throws on an unknown id: names are resolved before they get here. */
export function itemKind(id: ItemId): ItemKind {
  const kind = BY_ID.get(id);
  if (!kind) throw new Error(`unknown item ${id}`);
  return kind;
}
