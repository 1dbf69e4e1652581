// Substitution: the supplier sends another item, or another product. First the same steps with the new thing, then a few steps
// moved or cleaned around it, then a new order: the least of these that keeps the measure; else the best, with what is lost.
import type { Measure } from '../check/finding.ts';
import { compareMeasures } from '../check/measure.ts';
import type { Edit } from '../check/edit.ts';
import { applyEdit, freshId } from '../check/edit.ts';
import { type ItemId, ITEM_IDS } from '../domain/items.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import { type Agent, product, PRODUCT_IDS, type ProductId } from '../domain/products.ts';
import { fits, techniqueOf, techniquesFor, type TechniqueId } from '../domain/techniques/index.ts';
import { Tangled } from '../engine/nodeTable.ts';
import { type Change, changesBetween, type Retraining, retrainingFor } from './changes.ts';
import { type Difference, differences } from './figures.ts';
import { type OrderOptions, searchOrder } from './index.ts';
import { measureOf } from './written.ts';

/** How much had to be rewritten. */
export const REWRITINGS = ['same-steps', 'few-steps', 'new-order'] as const;
export type Rewriting = (typeof REWRITINGS)[number];

export interface Substitution {
  readonly agent: Agent;
  readonly procedure: Procedure;
  readonly rewriting: Rewriting;
  readonly before: Measure;
  readonly measure: Measure;
  /** Nothing but time is worse than before. */
  readonly kept: boolean;
  /** What is worse, weightiest first; time too. */
  readonly lost: readonly Difference[];
  readonly changes: readonly Change[];
  readonly retraining: readonly Retraining[];
}

const isItem = (id: string): id is ItemId => (ITEM_IDS as readonly string[]).includes(id);
const isProduct = (id: string): id is ProductId => (PRODUCT_IDS as readonly string[]).includes(id);

/** Why one thing cannot stand for the other; undefined where it can be tried. */
export function whyNoSubstitute(
  { people, products }: Procedure,
  from: string,
  to: string,
): 'unknown' | 'not-alike' | 'not-used' | 'used-already' | undefined {
  if (isItem(from) && isItem(to)) {
    if (!people.some(({ wears }) => wears.includes(from))) return 'not-used';
    return people.some(({ wears }) => wears.includes(from) && wears.includes(to))
      ? 'used-already'
      : undefined;
  }
  if (isProduct(from) && isProduct(to)) return products.includes(from) ? undefined : 'not-used';
  return (isItem(from) || isProduct(from)) && (isItem(to) || isProduct(to)) ? 'not-alike' : 'unknown';
}

const swapped = <T>(list: readonly T[], from: T, to: T): readonly T[] =>
  list.map((one) => (one === from ? to : one));

/** Every way to do the step to the new item; none where it has no such step. */
function waysWith(step: Step, from: ItemId, to: ItemId): readonly Step[] {
  if (!step.items.includes(from)) return [step];
  const { technique, part: _, ...rest } = { ...step, items: swapped(step.items, from, to) };
  if (technique !== undefined && fits(techniqueOf(technique), rest.action, rest.items))
    return [{ ...rest, technique }];
  const ways = techniquesFor(rest.action, rest.items).filter(({ id }) => id !== 'peel-one');
  return ways.map(({ id }) => ({ ...rest, technique: id as TechniqueId }));
}

/** The removal, and before it the opening that the new item may need. */
function withOpening(steps: readonly Step[], step: Step, given: Procedure): readonly Step[] {
  const [item] = step.items;
  const needs = step.technique !== undefined && techniqueOf(step.technique).needs?.includes('open') === true;
  const done = steps.some(
    ({ action, items }) => action === 'unfasten' && item !== undefined && items.includes(item),
  );
  const [way] = item === undefined ? [] : techniquesFor('unfasten', [item]);
  if (step.action !== 'remove' || !needs || done || !way || item === undefined) return [step];
  const id = freshId(given.steps, `open-${item}`);
  return [
    { id, who: step.of ?? step.who, action: 'unfasten', items: [item], technique: way.id as TechniqueId },
    step,
  ];
}

const MOST_WAYS = 48;

/** The given steps with the new item, in every combination of ways up to a number. */
function withItem(procedure: Procedure, from: ItemId, to: ItemId): readonly Procedure[] {
  const people = procedure.people.map((person) => ({ ...person, wears: swapped(person.wears, from, to) }));
  let lists: readonly (readonly Step[])[] = [[]];
  for (const step of procedure.steps) {
    const ways = waysWith(step, from, to);
    if (ways.length === 0) continue;
    lists = lists
      .flatMap((list) => ways.map((way) => [...list, ...withOpening(list, way, procedure)]))
      .slice(0, MOST_WAYS);
  }
  return lists.map((steps) => ({ ...procedure, people, steps }));
}

function withProduct(procedure: Procedure, from: ProductId, to: ProductId): Procedure {
  const steps = procedure.steps.map((step) => (step.product === from ? { ...step, product: to } : step));
  const products = [...new Set(swapped(procedure.products, from, to))];
  const fixtures = procedure.fixtures.map((fixture) =>
    fixture.product === from ? { ...fixture, product: to } : fixture,
  );
  return { ...procedure, products, fixtures, steps };
}

interface Rated {
  readonly procedure: Procedure;
  readonly measure: Measure;
}

function rated(procedure: Procedure, agent: Agent): readonly Rated[] {
  try {
    return [{ procedure, measure: measureOf(procedure, agent) }];
  } catch (error) {
    if (error instanceof Tangled) return [];
    throw error;
  }
}

const best = <One extends Rated>(all: readonly One[]): One | undefined =>
  all.reduce<One | undefined>(
    (least, one) => (least && compareMeasures(least.measure, one.measure) <= 0 ? least : one),
    undefined,
  );

const REACH = 5;

/** Steps about the thing a little earlier or later, and hygiene around them. */
function editsNear({ steps, products }: Procedure, to: string): readonly Edit[] {
  return steps.flatMap((step, at): readonly Edit[] => {
    const about = step.product === to || (step.items as readonly string[]).includes(to);
    if (!about) return [];
    const places = Array.from({ length: 2 * REACH + 1 }, (_, index) => at - REACH + index);
    const moves = places
      .filter((place) => place >= 0 && place < steps.length && place !== at)
      .map((place): Edit => ({ do: 'move', from: at, to: place }));
    const rub = products.find(
      (id) => product(id).suits.includes('glove') || product(id).suits.includes('skin'),
    );
    const id = freshId(steps, 'hygiene');
    const rubs = [at, at + 1].map(
      (place): Edit => ({
        do: 'insert',
        at: place,
        steps: rub ? [{ id, who: step.who, action: 'sanitise', items: [], product: rub }] : [],
      }),
    );
    return [...moves, ...rubs];
  });
}

const FEW = 3;

/** Up to three edits, the best each time, until the measure is kept. */
function mended(start: Rated, to: string, agent: Agent, enough: (measure: Measure) => boolean): Rated {
  let now = start;
  for (let round = 0; round < FEW && !enough(now.measure); round += 1) {
    const edits = editsNear(now.procedure, to).map((edit) => applyEdit(now.procedure, edit));
    const next = best(edits.flatMap((procedure) => rated(procedure, agent)));
    if (!next || compareMeasures(next.measure, now.measure) >= 0) break;
    now = next;
  }
  return now;
}

/** What is worse, time aside. */
const losses = (before: Measure, measure: Measure): readonly Difference[] =>
  differences(before, measure).filter(({ figure, from, to }) => to > from && figure !== 'seconds');

/** The least rewriting of which `enough` is said. */
const first = (tried: readonly Tried[], enough: (one: Tried) => boolean): Tried | undefined =>
  tried.find(enough);

interface Tried extends Rated {
  readonly rewriting: Rewriting;
}

function direct(procedure: Procedure, [from, to]: readonly [string, string]): readonly Procedure[] {
  if (isItem(from) && isItem(to)) return withItem(procedure, from, to);
  return isProduct(from) && isProduct(to) ? [withProduct(procedure, from, to)] : [];
}

/** The same steps, a few changed, a new order: as far as it takes to lose nothing. */
function triedUntilKept(
  procedure: Procedure,
  pair: readonly [string, string],
  options: OrderOptions & { readonly agent: Agent },
  before: Measure,
): readonly Tried[] {
  const { agent } = options;
  const same = best(direct(procedure, pair).flatMap((one) => rated(one, agent)));
  const tried: Tried[] = same ? [{ ...same, rewriting: 'same-steps' }] : [];
  const enough = (measure: Measure): boolean => losses(before, measure).length === 0;
  if (!same || enough(same.measure)) return tried;
  const few = mended(same, pair[1], agent, enough);
  if (few !== same) tried.push({ ...few, rewriting: 'few-steps' });
  if (enough(few.measure)) return tried;
  const found = searchOrder(few.procedure, options);
  if (!found.kept) tried.push({ ...found, rewriting: 'new-order' });
  return tried;
}

/**
 * The least rewriting of a procedure in which `to` stands for `from` (items or products, by id) and the measure is kept, or
 * what is lost. Ask `whyNoSubstitute` first; options are those of the search for a new order.
 */
export function substitute(
  procedure: Procedure,
  from: string,
  to: string,
  options: OrderOptions = {},
): Substitution {
  const agent = options.agent ?? procedure.agents[0] ?? 'enveloped';
  const before = measureOf(procedure, agent);
  const tried = triedUntilKept(procedure, [from, to], { ...options, agent }, before);
  const chosen =
    first(tried, ({ measure }) => losses(before, measure).length === 0) ??
    first(tried, ({ measure }) => compareMeasures({ ...measure, seconds: before.seconds }, before) <= 0) ??
    best(tried);
  if (!chosen) throw new RangeError(`${to} cannot stand for ${from}`);
  const changes = changesBetween(procedure, chosen.procedure);
  const { rewriting, measure } = chosen;
  return {
    agent,
    procedure: chosen.procedure,
    rewriting,
    before,
    measure,
    kept: losses(before, measure).length === 0,
    lost: differences(before, measure).filter((one) => one.to > one.from),
    changes,
    retraining: retrainingFor(chosen.procedure, changes),
  };
}
