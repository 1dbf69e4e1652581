// What the search works with: whom to undress and by which zones, who may help, what stays as it is, and the steps, each
// made once so that the interpreter knows it again. Ids come from the given procedure where the same is done there.
import { type Body, outermost } from '../contacts/body.ts';
import { compile, type Compiled, type Interpreter } from '../contacts/interpret.ts';
import type { ActionId } from '../domain/actions.ts';
import { type ItemId, itemKind } from '../domain/items.ts';
import { SIDES } from '../domain/places.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import { departures } from '../practice/index.ts';
import { type Rub, rubberFor } from './rubs.ts';
import { type Agent, type Material, product, type ProductId, works } from '../domain/products.ts';

/** Somebody to be undressed: the zones passed, from where they start to where they end. */
export interface Subject {
  readonly id: string;
  readonly route: readonly string[];
  /** Zones in which they take things off. */
  readonly undresses: ReadonlySet<string>;
}

export interface Setting {
  readonly procedure: Procedure;
  readonly agent: Agent;
  readonly machine: Interpreter;
  readonly subjects: readonly Subject[];
  readonly helpers: readonly string[];
  readonly pinned: readonly Step[];
  /** Departures from practice that are admissible: those of the given procedure; undefined: all. */
  readonly allowed: ReadonlySet<string> | undefined;
  /** Fresh pairs of gloves allowed in all, per subject. */
  readonly changes: number;
  /** The step with these fields; the same object for the same fields. */
  step(fields: Step): Step;
  readonly rub: Rub;
  /** The id itself, or one that no given step has. */
  unused(base: string): string;
  /** Id (and remark) for a step that does this, `base` where the given procedure has none with a name. */
  named(base: string, step: Omit<Step, 'id' | 'note'>): Pick<Step, 'id' | 'note'>;
}

export interface SettingOptions {
  readonly agent: Agent;
  readonly pinned?: readonly string[];
  readonly gloveChanges?: number;
  /** Any departure from practice is admissible, wherever it is made. */
  readonly free?: boolean;
}

const owner = (step: Step): string => step.of ?? step.who;

function subjectIds({ people, steps }: Procedure): readonly string[] {
  const undressed = steps.filter(({ action }) => action === 'remove').map(owner);
  const wanted = people.filter(({ id, role }) => role === 'wearer' || undressed.includes(id));
  const first = (id: string): number => (undressed.includes(id) ? undressed.indexOf(id) : -1);
  return wanted.map(({ id }) => id).toSorted((a, b) => first(a) - first(b));
}

const zoneOf = ({ fixtures }: Procedure, { zone, fixture }: Step): string | undefined =>
  fixtures.find(({ id }) => id === fixture)?.zone ?? zone;

/** The zones of the given steps; without any walk, through the doffing area to the clean side. */
function routeOf(procedure: Procedure, id: string): readonly string[] {
  const start = procedure.people.find((person) => person.id === id)?.starts ?? '';
  const walked = procedure.steps
    .filter(({ who, action }) => who === id && ['move', 'stand', 'step-on'].includes(action))
    .flatMap((step) => zoneOf(procedure, step) ?? []);
  const usual = (['doffing', 'clean'] as const).flatMap(
    (side) => procedure.zones.find((zone) => zone.side === side)?.id ?? [],
  );
  const on = walked.length > 0 || procedure.steps.some(({ who }) => who === id) ? walked : usual;
  return [...new Set([start, ...on])];
}

/** Where the given steps take things off; the doffing area where they say nothing. */
function undressesIn(given: Compiled, id: string): ReadonlySet<string> {
  const { procedure, performed } = given;
  const own = performed.filter(({ step }) => step.action === 'remove' && owner(step) === id);
  const zones = own.flatMap(({ before }) => before.bodies[id]?.zone ?? []);
  const usual = procedure.zones.filter(({ side }) => side === 'doffing').map((zone) => zone.id);
  return new Set(zones.length > 0 ? zones : usual);
}

/** Assistants help; observers only where there is no assistant (practice.observer-hands-off). */
function helpersIn({ people }: Procedure): readonly string[] {
  const assistants = people.filter(({ role }) => role === 'assistant');
  return (assistants.length > 0 ? assistants : people.filter(({ role }) => role === 'observer')).map(
    ({ id }) => id,
  );
}

/** Fresh gloves as often as the given procedure puts some on, once at least. */
const changesIn = ({ steps }: Procedure): number =>
  Math.max(
    1,
    steps.filter(
      ({ action, items }) => action === 'put-on' && items.some((item) => itemKind(item).group === 'glove'),
    ).length,
  );

const AUTOMATIC = /^s\d+$/;

const sameAct = (a: Omit<Step, 'id'>, b: Omit<Step, 'id'>): boolean =>
  a.who === b.who &&
  a.action === b.action &&
  (a.of ?? a.who) === (b.of ?? b.who) &&
  a.side === b.side &&
  a.fixture === b.fixture &&
  a.zone === b.zone &&
  a.items.join(' ') === b.items.join(' ');

function namer(procedure: Procedure, pinned: readonly Step[], unused: Setting['unused']): Setting['named'] {
  const accepted = new Set(procedure.accepted.map(({ step }) => step));
  const free = procedure.steps.filter((step) => !pinned.includes(step));
  const lasting = ({ id }: Step): boolean => !AUTOMATIC.test(id) || accepted.has(id);
  return (base, step) => {
    const same = free.findLast((candidate) => sameAct(candidate, step));
    const note = same && same.technique === step.technique ? same.note : undefined;
    return { id: same && lasting(same) ? same.id : unused(base), ...(note === undefined ? {} : { note }) };
  };
}

/** Everything the search needs to know of a procedure against one agent. */
export function settingOf(procedure: Procedure, options: SettingOptions): Setting {
  const steps = new Map<string, Step>();
  const kept = new Set(options.pinned);
  const pinned = procedure.steps.filter((step) => kept.has(step.id) || step.pinned === true);
  const given = compile(procedure, options.agent);
  const ids = new Set(procedure.steps.map(({ id }) => id));
  const unused = (base: string): string => (ids.has(base) ? `${base}-again` : base);
  const subjects = subjectIds(procedure).map((id) => ({
    id,
    route: routeOf(procedure, id),
    undresses: options.free ? new Set(procedure.zones.map((zone) => zone.id)) : undressesIn(given, id),
  }));
  const step = (fields: Step): Step => {
    const key = JSON.stringify(fields);
    const known = steps.get(key) ?? fields;
    steps.set(key, known);
    return known;
  };
  const machine = compile({ ...procedure, steps: [] }, options.agent).interpreter;
  return {
    procedure,
    agent: options.agent,
    machine,
    rub: rubberFor(machine, step),
    subjects,
    helpers: helpersIn(procedure),
    pinned,
    allowed: options.free ? undefined : new Set(departures(given).map(({ rule }) => rule)),
    changes: options.gloveChanges ?? changesIn(procedure),
    step,
    unused,
    named: namer(procedure, pinned, unused),
  };
}

/** Products that suit all of these, those that work on the agent first, in the order of the file. */
export function productsFor(
  { procedure, agent }: Pick<Setting, 'procedure' | 'agent'>,
  materials: readonly Material[],
): readonly ProductId[] {
  const suited = procedure.products.filter((id) =>
    materials.every((material) => product(id).suits.includes(material)),
  );
  const counts = (id: ProductId): boolean => materials.every((material) => works(id, agent, material));
  return [...suited.filter(counts), ...suited.filter((id) => !counts(id))];
}

const handIds = (body: Body): readonly string[] =>
  SIDES.flatMap((side) => outermost(body, `hand.${side}`) ?? []);

/** Surface ids of the outermost layers of both hands. */
export const handsOf = handIds;

export const isEquipment = (item: ItemId): boolean => itemKind(item).underneath !== true;

/** Whether a pinned step that is still to come does this to one of these items. */
export const keptFor = (
  pinned: readonly Step[],
  who: string,
  action: ActionId,
  items: readonly ItemId[],
): boolean =>
  pinned.some(
    (step) =>
      step.action === action && owner(step) === who && step.items.some((item) => items.includes(item)),
  );
