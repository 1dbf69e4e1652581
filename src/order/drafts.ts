// The admissible moves ('macros') at one moment of a doffing: take one item off, open it, change gloves, wipe the shoes, walk on,
// end. Each brings what it needs: the seat, the look at the gloves beneath. Hygiene follows in graph.ts.
import { blockedBy, type Body, fasteningUnder, indexOf } from '../contacts/body.ts';
import { type ItemId, itemKind } from '../domain/items.ts';
import { SIDES } from '../domain/places.ts';
import type { Step } from '../domain/procedure.ts';
import { techniquesFor, type Technique, type TechniqueId } from '../domain/techniques/index.ts';
import { forItem } from '../practice/declared.ts';
import type { Flags } from './flags.ts';
import { isEquipment, keptFor, productsFor, type Setting } from './setting.ts';

export const MACRO_KINDS = ['begin', 'off', 'open', 'change', 'wipe', 'walk', 'end', 'kept'] as const;
export type MacroKind = (typeof MACRO_KINDS)[number];

/** A move before it is carried out. `rub`: hygiene of the subject; `look`: at the gloves beneath. */
export interface Draft {
  /** Same for the same move in whatever order: ids and events hang on it. */
  readonly name: string;
  readonly kind: MacroKind;
  readonly steps: readonly (Step | 'rub' | 'look')[];
  readonly items: readonly ItemId[];
  readonly after?: Partial<Flags>;
}

export interface Place {
  readonly setting: Setting;
  readonly body: Body;
  readonly flags: Flags;
  readonly bodies: Readonly<Record<string, Body>>;
}

type Fields = Omit<Step, 'id' | 'who' | 'items'> & { readonly items?: readonly ItemId[] };

/** The step under the id that the given procedure has for it. */
function make({ setting, body }: Place, base: string, fields: Fields, who = body.id): Step {
  const step = { who, items: [], ...fields };
  return setting.step({ ...setting.named(nameFor(setting, base, who), step), ...step });
}

/** The same under an id of its own: what a doffing may do twice must not share its slips. */
const makeOwn = ({ setting, body }: Place, base: string, fields: Fields): Step =>
  setting.step({ id: setting.unused(nameFor(setting, base, body.id)), who: body.id, items: [], ...fields });

const nameFor = ({ subjects }: Setting, base: string, who: string): string =>
  who === subjects[0]?.id ? base : `${base}-${who}`;

const left = ({ setting, flags }: Place): readonly Step[] => setting.pinned.slice(flags.pinned);

const rest = (place: Place, who: string, action: Step['action'], items: readonly ItemId[]): boolean =>
  keptFor(left(place), who, action, items);

const sit = (place: Place, chair: string): Step =>
  makeOwn(place, `sit-${chair}`, { action: 'sit', fixture: chair });
const stand = (place: Place): Step => makeOwn(place, 'stand', { action: 'stand' });

/** Ways to be seated for a step: stay, or from the chair or the floor onto each chair of the zone. */
function seatings(place: Place, clean: boolean): readonly (readonly Step[])[] {
  const { setting, body } = place;
  return setting.procedure.fixtures
    .filter((one) => one.kind === 'chair' && one.zone === body.zone && (one.clean || !clean))
    .map(({ id }) => {
      if (body.seated === id) return [];
      return body.seated === undefined ? [sit(place, id)] : [stand(place), sit(place, id)];
    });
}

function postures(place: Place, technique: Technique, clean = false): readonly (readonly Step[])[] {
  if (technique.needs?.includes('seated')) return seatings(place, clean);
  if (place.body.seated === undefined) return [[]];
  return technique.needs?.includes('standing') ? [[stand(place)]] : [[], [stand(place)]];
}

/** Nobody, where the technique can do without, and everybody within reach where it says what a helper does. */
function helpersFor({ setting, body, bodies }: Place, technique: Technique): readonly (string | undefined)[] {
  const refs = technique.moves.flatMap((move) => ('a' in move ? [move.a, move.b] : []));
  const used = refs.some((ref) => 'whose' in ref && ref.whose === 'helper' && ref.at === 'hand');
  const near = setting.helpers.filter((id) => id !== body.id && bodies[id]?.zone === body.zone);
  return [...(technique.needs?.includes('helper') ? [] : [undefined]), ...(used ? near : [])];
}

interface Act {
  readonly kind: 'off' | 'open';
  readonly action: 'remove' | 'unfasten';
  readonly items: readonly ItemId[];
}

/** Whether a technique departs only from what may be departed from; the rest is asked once it is carried out. */
const admissible = ({ setting }: Place, { breaks = [] }: Technique, item: ItemId | undefined): boolean =>
  setting.allowed === undefined || breaks.every((rule) => setting.allowed?.has(forItem(rule, item)) === true);

function acts(place: Place, { kind, action, items }: Act): readonly Draft[] {
  const name = `${kind}-${items.join('-')}`;
  const glove = items.some((item) => itemKind(item).group === 'glove');
  return techniquesFor(action, items)
    .filter((technique) => technique.id !== 'peel-one' && admissible(place, technique, items[0]))
    .flatMap((technique) =>
      postures(place, technique).flatMap((before) =>
        helpersFor(place, technique).map((helper): Draft => {
          const step = make(place, name, {
            action,
            items,
            technique: technique.id as TechniqueId,
            ...(helper === undefined ? {} : { helper }),
          });
          return { name, kind, items, steps: [...before, step, ...(glove ? (['look'] as const) : [])] };
        }),
      ),
    );
}

const wornBy = (body: Body): readonly ItemId[] => [
  ...new Set(body.layers.map(({ item }) => item).filter(isEquipment)),
];

/** Whether nothing that stays on holds these items. */
const free = (body: Body, items: readonly ItemId[]): boolean =>
  body.layers.every(
    (layer, index) => !items.includes(layer.item) || blockedBy(body, index, items) === undefined,
  );

/** Alone, and with what one technique takes off together with it. */
function removals(place: Place): readonly Draft[] {
  const { body } = place;
  const worn = wornBy(body);
  const gloves = worn.filter((item) => itemKind(item).group === 'glove');
  const sets = worn.flatMap((item) => [
    [item],
    ...gloves.filter((glove) => glove !== item).map((glove) => [item, glove]),
  ]);
  return sets
    .filter((items) => free(body, items) && !rest(place, body.id, 'remove', items))
    .flatMap((items) => acts(place, { kind: 'off', action: 'remove', items }));
}

const needsOpening = (item: ItemId): boolean =>
  itemKind(item).closure === 'strings' ||
  techniquesFor('remove', [item]).some(({ needs }) => needs?.includes('open'));

/** Whether its fastening can be got at. */
const within = (body: Body, item: ItemId): boolean =>
  body.layers.every((layer, index) => layer.item !== item || fasteningUnder(body, index) === undefined);

function openings(place: Place): readonly Draft[] {
  const { body } = place;
  return wornBy(body)
    .filter((item) => body.layers.some((layer) => layer.item === item && layer.fastened))
    .filter((item) => needsOpening(item) && within(body, item) && !rest(place, body.id, 'unfasten', [item]))
    .flatMap((item) => acts(place, { kind: 'open', action: 'unfasten', items: [item] }));
}

/** Off with the outermost gloves, hygiene, fresh ones on. */
function gloveChanges(place: Place): readonly Draft[] {
  const { setting, body, flags } = place;
  const outer = SIDES.map(
    (side) =>
      body.layers.findLast((layer) => layer.side === side && itemKind(layer.item).group === 'glove')?.item,
  );
  const [glove] = outer;
  if (flags.changes >= setting.changes || glove === undefined || outer[1] !== glove) return [];
  const name = `change-gloves-${flags.changes + 1}`;
  return [
    {
      name,
      kind: 'change',
      items: [glove],
      steps: [
        makeOwn(place, `${name}-off`, { action: 'remove', items: [glove], technique: 'peel-cuff' }),
        'look',
        'rub',
        makeOwn(place, `${name}-on`, { action: 'put-on', items: [glove] }),
      ],
      after: { changes: flags.changes + 1 },
    },
  ];
}

function shoeWipes(place: Place): readonly Draft[] {
  const { setting, body, flags } = place;
  const shod = SIDES.every((side) => indexOf(body, 'shoes', side) >= 0);
  const covered = body.layers.some(({ item }) => ['foot-cover', 'boots'].includes(itemKind(item).group));
  const [chosen] = productsFor(setting, ['equipment']);
  if (flags.wiped || !shod || covered || !chosen || rest(place, body.id, 'wipe', ['shoes'])) return [];
  return techniquesFor('wipe', ['shoes'])
    .filter((technique) => technique.needs?.includes('seated') && admissible(place, technique, 'shoes'))
    .flatMap((technique) =>
      postures(place, technique, true).map((before): Draft => {
        const fields = { action: 'wipe', items: ['shoes'], product: chosen } as const;
        const step = make(place, 'wipe-shoes', { ...fields, technique: technique.id as TechniqueId });
        return {
          name: 'wipe-shoes',
          kind: 'wipe',
          items: ['shoes'],
          steps: [...before, step],
          after: { wiped: true },
        };
      }),
    );
}

const observerOf = ({ setting, body }: Place): string | undefined =>
  setting.procedure.people.find(({ id, role }) => role === 'observer' && id !== body.id)?.id;

/** Who looks somebody over at the end: an observer, else whoever else is there, else they themselves. */
function lastLooker(place: Place): string {
  const { setting, body } = place;
  const other = setting.procedure.people.find(({ id }) => id !== body.id)?.id;
  return observerOf(place) ?? other ?? body.id;
}

/** To the next zone of the way; the clean side is entered by the end only. */
function walks(place: Place): readonly Draft[] {
  const { setting, body, flags } = place;
  const route = setting.subjects[flags.subject]?.route ?? [];
  const next = route[route.indexOf(body.zone) + 1];
  const side = setting.procedure.zones.find(({ id }) => id === next)?.side;
  const kept = left(place).some((step) => step.who === body.id && step.zone === next);
  if (next === undefined || side === 'clean' || kept) return [];
  const name = `go-${next}`;
  const walk = make(place, name, { action: 'move', zone: next });
  const look = makeOwn(place, `look-${next}`, { action: 'inspect' });
  return [
    {
      name,
      kind: 'walk',
      items: [],
      steps: [...(body.seated === undefined ? [] : [stand(place)]), walk, look, 'rub'],
    },
  ];
}

/** Nothing is left to take off: the last look, and over the line. */
function endings(place: Place): readonly Draft[] {
  const { setting, body, flags } = place;
  const route = setting.subjects[flags.subject]?.route ?? [];
  const last = route.at(-1);
  const here = route.indexOf(body.zone);
  if (wornBy(body).length > 0 || here < route.length - 2) return [];
  const looks = lastLooker(place);
  const look = [
    looks === body.id
      ? make(place, 'last-look', { action: 'inspect' })
      : make(place, 'last-look', { action: 'inspect', of: body.id }, looks),
  ];
  const across = body.zone === last ? [] : over(place, last ?? body.zone);
  const after = { subject: flags.subject + 1, wiped: false, changes: 0 };
  return [{ name: 'end', kind: 'end', items: [], steps: [...look, ...across], after }];
}

const over = (place: Place, zone: string): readonly Step[] =>
  left(place).some((step) => step.who === place.body.id && ['move', 'stand'].includes(step.action))
    ? []
    : place.body.seated === undefined
      ? [make(place, 'cross', { action: 'move', zone })]
      : [make(place, 'cross', { action: 'stand', fixture: `${zone}-floor` })];

/** The first moves of a subject: the call, a look over all, everybody's hygiene; there is no choice in it. */
export function beginning(place: Place): Draft {
  const observer = observerOf(place);
  const { setting, body, flags } = place;
  const call =
    observer === undefined || flags.subject > 0
      ? []
      : [make(place, 'all-clear', { action: 'say' }, observer)];
  const [product] = productsFor(setting, ['glove']);
  const helpers = setting.helpers.filter((id) => id !== body.id && product !== undefined);
  const rubs = helpers.map((id): Step => {
    const base = setting.unused(`rub-${id}-first-${flags.subject + 1}`);
    return setting.step({
      id: base,
      who: id,
      action: 'sanitise',
      items: [],
      ...(product ? { product } : {}),
    });
  });
  const steps = [...call, ...rubs, make(place, 'look-first', { action: 'inspect' }), 'rub' as const];
  return { name: `begin-${body.id}`, kind: 'begin', items: [], steps };
}

/** The next step that must stay as it is. */
function keptSteps({ setting, flags }: Place): readonly Draft[] {
  const step = setting.pinned[flags.pinned];
  if (!step) return [];
  return [
    { name: step.id, kind: 'kept', items: step.items, steps: [step], after: { pinned: flags.pinned + 1 } },
  ];
}

/** Every move that may be tried now. Whether it can be done shows when it is carried out. */
export function draftsAt(place: Place): readonly Draft[] {
  const { setting, flags, body } = place;
  const here = setting.subjects[flags.subject]?.undresses.has(body.zone) === true;
  return [
    ...keptSteps(place),
    ...(here ? [...removals(place), ...openings(place), ...gloveChanges(place), ...shoeWipes(place)] : []),
    ...walks(place),
    ...endings(place),
  ];
}
