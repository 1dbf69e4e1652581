// Where every piece of equipment of a run comes from and goes to, read off what people wear before and after each step: so
// it counts what the procedure does, one glove changed alone included, and nothing that cannot be taken off.
import type { Body, Layer } from '../contacts/body.ts';
import type { Compiled } from '../contacts/interpret.ts';
import { ITEM_IDS, type ItemId, itemKind } from '../domain/items.ts';
import { type EvidenceId, evidence } from '../evidence/index.ts';
import { NO_PIECES, type Pieces, plus, type Quantity, quantityOf } from './supply.ts';

export const REPROCESSED: EvidenceId = 'supply.reprocessed';

const listed = evidence(REPROCESSED).value;
const USED_AGAIN: ReadonlySet<unknown> = new Set(Array.isArray(listed) ? listed : []);

/** Used again after reprocessing; everything else is single use. Rests on `REPROCESSED`. */
export const isReprocessed = (item: ItemId): boolean => USED_AGAIN.has(item);

/** One item, everybody's together. `needed` = `discarded` + `reprocessed` + `leftOn`. */
export interface ItemFlow {
  readonly item: ItemId;
  /** Worn at the start, or put on in the run. */
  readonly needed: Quantity;
  /** Of these, put on fresh in the run. */
  readonly opened: Quantity;
  /** Single use, taken off in the run: waste. */
  readonly discarded: Quantity;
  /** Taken off to be used again. */
  readonly reprocessed: Quantity;
  /** Still worn at the end, by whoever takes it off elsewhere. */
  readonly leftOn: Quantity;
}

type Tally = Map<ItemId, Pieces>;

const pieceOf = ({ side }: Layer): Pieces =>
  side === undefined ? { ...NO_PIECES, whole: 1 } : { ...NO_PIECES, [side]: 1 };

/** Clothes and shoes underneath stay on and are the unit's own: they are not counted. */
const equipment = (layer: Layer): boolean => itemKind(layer.item).underneath !== true;

function add(tally: Tally, layers: readonly Layer[]): void {
  for (const layer of layers.filter(equipment))
    tally.set(layer.item, plus(tally.get(layer.item) ?? NO_PIECES, pieceOf(layer)));
}

const same = (a: Layer, b: Layer): boolean => a.item === b.item && a.side === b.side;

/** Layers of one that the other lacks: nobody wears two of a kind on one side. */
const beyond = (layers: readonly Layer[], others: readonly Layer[]): readonly Layer[] =>
  layers.filter((layer) => !others.some((other) => same(layer, other)));

const layersOf = (body: Body | undefined): readonly Layer[] => body?.layers ?? [];

interface Tallies {
  readonly worn: Tally;
  readonly opened: Tally;
  readonly removed: Tally;
  readonly left: Tally;
}

function tallyPerson(tallies: Tallies, { interpreter, performed }: Compiled, person: string): void {
  add(tallies.worn, layersOf(interpreter.start.scene.bodies[person]));
  for (const { before, after } of performed) {
    const [then, now] = [layersOf(before.bodies[person]), layersOf(after.bodies[person])];
    if (then === now) continue;
    add(tallies.opened, beyond(now, then));
    add(tallies.removed, beyond(then, now));
  }
  const end = performed.at(-1)?.after ?? interpreter.start.scene;
  add(tallies.left, layersOf(end.bodies[person]));
}

function flowOf({ worn, opened, removed, left }: Tallies, item: ItemId): ItemFlow {
  const of = (tally: Tally): Pieces => tally.get(item) ?? NO_PIECES;
  const gone = (yes: boolean): Quantity => quantityOf(item, yes ? of(removed) : NO_PIECES);
  return {
    item,
    needed: quantityOf(item, plus(of(worn), of(opened))),
    opened: quantityOf(item, of(opened)),
    discarded: gone(!isReprocessed(item)),
    reprocessed: gone(isReprocessed(item)),
    leftOn: quantityOf(item, of(left)),
  };
}

/** One flow per item that somebody wears, puts on or takes off, in the order of the items' table. */
export function itemFlows(compiled: Compiled): readonly ItemFlow[] {
  const tallies: Tallies = { worn: new Map(), opened: new Map(), removed: new Map(), left: new Map() };
  for (const { id } of compiled.procedure.people) tallyPerson(tallies, compiled, id);
  return ITEM_IDS.map((item) => flowOf(tallies, item)).filter(({ needed }) => needed.count > 0);
}
