// English nouns of the trade. Each table is a record over the ids of its domain table, so a new item, part, place,
// product or fixture that nobody named is a compile error here.
import type { Closure, ItemId, PartId } from '../../domain/items.ts';
import type { PlaceName } from '../../domain/places.ts';
import type { ProcedureKind, Role } from '../../domain/procedure.ts';
import type { Agent, ProductId } from '../../domain/products.ts';
import type { FixtureKindId, ZoneSide } from '../../domain/room.ts';
import type { SurfaceClass } from '../../contacts/plan.ts';

/** `one` of a pair; `all` as it is worn; `many` when `all` takes a plural verb. */
export interface Noun {
  readonly one: string;
  readonly all: string;
  readonly many: boolean;
}

const single = (one: string): Noun => ({ one, all: one, many: false });
const plural = (all: string): Noun => ({ one: all, all, many: true });
const pair = (one: string, all = `${one}s`): Noun => ({ one, all, many: true });

export const ITEM_NOUNS: Readonly<Record<ItemId, Noun>> = {
  scrubs: plural('scrubs'),
  shoes: pair('shoe'),
  gloves: pair('glove'),
  'outer-gloves': pair('outer glove'),
  'inner-gloves': pair('inner glove'),
  gown: single('gown'),
  'gown-hook-and-loop': single('hook-and-loop gown'),
  coverall: single('coverall'),
  'hooded-coverall': single('hooded coverall'),
  apron: single('apron'),
  'surgical-hood': single('surgical hood'),
  cap: single('cap'),
  'face-shield': single('face shield'),
  goggles: plural('goggles'),
  'surgical-mask': single('surgical mask'),
  'n95-respirator': single('N95 respirator'),
  'ffp2-respirator': single('FFP2 respirator'),
  'ffp3-respirator': single('FFP3 respirator'),
  'powered-hood': single('powered-respirator hood'),
  'powered-helmet': single('powered-respirator helmet'),
  blower: single('blower'),
  'boot-covers': pair('boot cover'),
  'shoe-covers': pair('shoe cover'),
  'rubber-boots': pair('rubber boot'),
};

export const PART_NOUNS: Readonly<Record<PartId, Noun>> = {
  outside: single('outside'),
  inside: single('inside'),
  'inside-sleeves': single('inside of the sleeves'),
  'inside-lower': single('lower inside'),
  front: single('front'),
  back: single('back'),
  seat: single('seat'),
  'sleeve-left': single('left sleeve'),
  'sleeve-right': single('right sleeve'),
  'cuff-left': single('left cuff'),
  'cuff-right': single('right cuff'),
  'leg-left': single('left leg'),
  'leg-right': single('right leg'),
  skirt: single('skirt'),
  collar: single('collar'),
  hood: single('hood'),
  zip: single('zip'),
  'neck-tie': single('neck tie'),
  'waist-tie': single('waist tie'),
  'neck-strap': single('neck strap'),
  strap: single('strap'),
  'lower-edge': single('lower edge'),
  rear: single('rear'),
  strings: plural('strings'),
  upper: single('upper'),
  foot: single('foot'),
  sole: single('sole'),
  hem: single('hem'),
  unit: single('unit'),
  buckle: single('buckle'),
  hose: single('hose'),
};

export const PLACE_NOUNS: Readonly<Record<PlaceName, Noun>> = {
  scalp: single('scalp'),
  ears: plural('ears'),
  face: single('face'),
  eyes: plural('eyes'),
  nose: single('nose'),
  mouth: single('mouth'),
  neck: single('neck'),
  chest: single('chest'),
  waist: single('waist'),
  back: single('back'),
  seat: single('seat'),
  arm: single('forearm'),
  wrist: single('wrist'),
  hand: single('hand'),
  thigh: single('thigh'),
  shin: single('shin'),
  ankle: single('ankle'),
  foot: single('foot'),
  sole: single('sole'),
};

export const FIXTURE_NOUNS: Readonly<Record<FixtureKindId, string>> = {
  floor: 'floor',
  mat: 'mat',
  chair: 'chair',
  bin: 'bin',
  dispenser: 'dispenser',
  tap: 'tap',
  door: 'door',
  table: 'table',
  mirror: 'mirror',
  scissors: 'scissors',
  logbook: 'logbook',
  container: 'container',
  'glove-box': 'glove box',
  rail: 'rail',
};

export const ZONE_NOUNS: Readonly<Record<ZoneSide, string>> = {
  patient: "patient's side",
  doffing: 'doffing area',
  clean: 'clean side',
};

export const PRODUCT_NOUNS: Readonly<Record<ProductId, string>> = {
  'alcohol-hand-rub': 'alcohol hand rub',
  'disinfectant-wipe': 'disinfectant wipes',
  'chlorine-0.5': 'strong chlorine (0.5 %)',
  'chlorine-0.05': 'weak chlorine (0.05 %)',
  'soap-and-water': 'soap and water',
};

export const AGENT_NOUNS: Readonly<Record<Agent, string>> = {
  enveloped: 'enveloped agent',
  'non-enveloped': 'non-enveloped agent',
};

export const ROLE_NOUNS: Readonly<Record<Role, string>> = {
  wearer: 'wearer',
  observer: 'observer',
  assistant: 'assistant',
};

export const KIND_NOUNS: Readonly<Record<ProcedureKind, string>> = { doffing: 'doffing', donning: 'donning' };

export const CLASS_NOUNS: Readonly<Record<SurfaceClass, string>> = {
  mucosa: 'mucosa',
  skin: 'bare skin',
  clothes: 'clothes worn underneath',
  shoes: 'shoes',
  'clean-side': 'clean side',
  equipment: 'equipment',
  fixture: 'fixtures of the room',
};

/** How each closure is undone and done up, with the item to follow. */
export const CLOSURE_VERBS: Readonly<Record<Closure, { readonly open: string; readonly close: string }>> = {
  none: { open: 'open', close: 'close' },
  ties: { open: 'untie', close: 'tie' },
  'hook-and-loop': { open: 'open the fastenings of', close: 'close the fastenings of' },
  zip: { open: 'unzip', close: 'zip up' },
  strap: { open: 'loosen the strap of', close: 'fasten the strap of' },
  hose: { open: 'detach the hose of', close: 'connect the hose of' },
  buckle: { open: 'unclasp the belt of', close: 'clasp the belt of' },
  strings: { open: 'untie the strings of', close: 'tie the strings of' },
};
