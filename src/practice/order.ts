// What must not come off, go on or open while something else is still (or already) worn: one table, read by one
// function. Sources: everyday sequence, training modules, enhanced protocol 2021, Okamoto 2019.
import { type Layer, wears } from '../contacts/body.ts';
import { bodyIn } from '../contacts/scene.ts';
import type { ItemGroup, ItemId } from '../domain/items.ts';
import { DOFFING, DONNING, type Found, type Rule } from './departure.ts';
import { glovePairs, groupOf, type Moment, type Reading, RESPIRATORS } from './reading.ts';

interface Select {
  readonly groups?: readonly ItemGroup[];
  readonly items?: readonly ItemId[];
}

/** Departs when `action` is done to one of `what` while one of `worn` is on the same person. */
interface Order extends Omit<Rule, 'find'> {
  readonly action: 'remove' | 'put-on' | 'unfasten';
  readonly what: Select;
  readonly worn: Select;
  /** Counts only while it lies over the item: what lies beneath has to wait anyway. */
  readonly over?: Select;
  /** Only while still fastened. */
  readonly fastened?: boolean;
  /** Only for people who start with this many pairs of gloves. */
  readonly pairs?: number;
}

const GARMENTS: Select = { groups: ['gown', 'coverall'] };

const matches = (select: Select | undefined, item: ItemId): boolean =>
  (select?.groups?.includes(groupOf(item)) ?? false) || (select?.items?.includes(item) ?? false);

const ORDERS: readonly Order[] = [
  {
    id: 'practice.respirator-last-of-face',
    kinds: DOFFING,
    looksAt:
      'A mask or respirator that comes off while a shield, goggles or a powered hood is still worn, or a hood or cap that lies over it.',
    action: 'remove',
    what: { groups: ['face-cover'] },
    worn: { groups: ['eye-cover', 'powered-hood'] },
    over: { groups: ['head-cover'] },
  },
  {
    id: 'practice.gloves-not-alone-before-gown',
    kinds: DOFFING,
    looksAt:
      'With one pair of gloves: gloves that come off while the gown is still worn. The first everyday sequence does so itself; gown and gloves in one movement do not.',
    action: 'remove',
    what: { groups: ['glove'] },
    worn: { groups: ['gown'] },
    pairs: 1,
  },
  {
    id: 'practice.shoe-cover-strings-before-zip',
    kinds: DOFFING,
    looksAt: 'A zip opened while the strings of shoe covers are still tied.',
    action: 'unfasten',
    what: { groups: ['coverall'] },
    worn: { items: ['shoe-covers'] },
    fastened: true,
  },
  {
    id: 'practice.donning.inner-cuff-under-sleeve',
    kinds: DONNING,
    looksAt: 'Inner gloves that go on after the gown or coverall.',
    action: 'put-on',
    what: { items: ['inner-gloves'] },
    worn: GARMENTS,
  },
  {
    id: 'practice.donning.outer-glove-over-cuff',
    kinds: DONNING,
    looksAt: 'A gown or coverall that goes on after the outer gloves, or after the only pair.',
    action: 'put-on',
    what: GARMENTS,
    worn: { items: ['outer-gloves', 'gloves'] },
  },
  {
    id: 'practice.donning.respirator-before-hood',
    kinds: DONNING,
    looksAt:
      'A respirator that goes on after the hood, a coverall that has one, shield or goggles. A cap may be on already.',
    action: 'put-on',
    what: { items: RESPIRATORS },
    worn: { items: ['surgical-hood', 'hooded-coverall'], groups: ['eye-cover', 'powered-hood'] },
  },
  {
    id: 'practice.donning.blower-outside',
    kinds: DONNING,
    looksAt: 'A gown or coverall that goes on over the blower.',
    action: 'put-on',
    what: GARMENTS,
    worn: { groups: ['blower'] },
  },
];

/** Items in the way of the step, as the order has it. */
function inTheWay(order: Order, moment: Moment, item: ItemId): readonly Layer[] {
  const { layers } = bodyIn(moment.before, moment.owner);
  const own = layers.findLastIndex((layer) => layer.item === item);
  return layers.filter(
    (layer, at) =>
      !moment.step.items.includes(layer.item) &&
      (matches(order.worn, layer.item) || (at > own && matches(order.over, layer.item))) &&
      (!order.fastened || layer.fastened),
  );
}

function departuresFrom(order: Order, reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const person = moment.owner;
    if (moment.step.action !== order.action) return [];
    if (order.pairs !== undefined && glovePairs(reading, person) !== order.pairs) return [];
    const item = moment.step.items.find((candidate) => matches(order.what, candidate));
    if (!item) return [];
    const [way] = inTheWay(order, moment, item);
    return way ? [{ step: moment.index, params: { person, item, other: way.item } }] : [];
  });
}

/** Foot covers that come off when the garment is gone and clothes are all that is left below. */
function bootsAfterGarment(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const { action, items } = moment.step;
    const person = moment.owner;
    const item = items.find((candidate) => groupOf(candidate) === 'foot-cover');
    const before = bodyIn(moment.before, person);
    if (action !== 'remove' || !item || !wears(before, 'scrubs')) return [];
    if (before.layers.some((layer) => matches(GARMENTS, layer.item))) return [];
    const garment = reading.moments.find(
      (earlier) =>
        earlier.index < moment.index &&
        earlier.owner === person &&
        earlier.step.action === 'remove' &&
        earlier.step.items.some((candidate) => matches(GARMENTS, candidate)),
    );
    return garment ? [{ step: moment.index, others: [garment.index], params: { person, item } }] : [];
  });
}

export const ORDER: readonly Rule[] = [
  ...ORDERS.map(
    (order): Rule => ({
      id: order.id,
      kinds: order.kinds,
      looksAt: order.looksAt,
      find: (reading) => departuresFrom(order, reading),
    }),
  ),
  {
    id: 'practice.boot-covers-before-garment',
    kinds: DOFFING,
    looksAt:
      'Boot or shoe covers that come off when the garment is gone and scrubs are exposed. Published editions differ: an earlier coverall module takes them after the garment, so a unit that follows it accepts this departure.',
    find: bootsAfterGarment,
  },
];
