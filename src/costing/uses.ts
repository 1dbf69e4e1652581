// Wipes, portions of products and mats, from what each step's technique uses up. Only alcohol hand rub has a published
// volume per use; of the others uses are counted and no volume is made up.
import type { Compiled } from '../contacts/interpret.ts';
import type { Performed } from '../contacts/performed.ts';
import type { Use } from '../domain/moves.ts';
import { product, type ProductId, PRODUCT_IDS } from '../domain/products.ts';
import { type EvidenceId, evidenceNumber } from '../evidence/index.ts';
import { type Quantity, type Supply, supplyKey } from './supply.ts';

export interface UseLine {
  readonly supply: Supply;
  readonly quantity: Quantity;
  /** In mL for one run; null where no published figure exists, absent where it is no liquid. */
  readonly millilitres?: number | null;
  /** What the count, and the volume, rest on. */
  readonly evidence: readonly EvidenceId[];
}

/** Volume of one portion. A record for another product adds a line here. */
const VOLUMES: Readonly<Partial<Record<ProductId, EvidenceId>>> = { 'alcohol-hand-rub': 'handrub.volume' };

const UNITS: Readonly<Record<Exclude<Supply['kind'], 'item'>, Quantity['unit']>> = {
  wipe: 'wipe',
  product: 'use',
  mat: 'mat',
};

/** Which supply a use of a step draws on; none where the step names no product, and items are counted as worn. */
function drawnOn({ what }: Use, { step }: Performed): Supply | undefined {
  if (what === 'fresh-item' || what === 'mat') return undefined;
  if (what === 'hand-rub') return { kind: 'product', product: 'alcohol-hand-rub' };
  if (step.product === undefined) return undefined;
  const wipes = what === 'wipe' || product(step.product).unit === 'wipe';
  return { kind: wipes ? 'wipe' : 'product', product: step.product };
}

/** Mats that somebody stood on at any moment. */
function matsUsed({ procedure, performed, interpreter }: Compiled): readonly Supply[] {
  const scenes = [interpreter.start.scene, ...performed.map(({ after }) => after)];
  const stood = new Set(
    scenes.flatMap(({ bodies }) => Object.values(bodies).map(({ standing }) => standing)),
  );
  return procedure.fixtures
    .filter(({ id, kind }) => kind === 'mat' && stood.has(id))
    .map((mat): Supply => {
      const soaked = PRODUCT_IDS.find((id) => id === mat.product);
      return { kind: 'mat', ...(soaked === undefined ? {} : { product: soaked }) };
    });
}

function grounds(supply: Supply): readonly EvidenceId[] {
  if (supply.kind === 'mat')
    return supply.product === undefined ? ['supply.mat'] : ['supply.mat', 'supply.volume.no-figure'];
  if (supply.kind === 'item' || supply.product === 'disinfectant-wipe') return ['supply.per-use'];
  const volume = supply.kind === 'product' ? VOLUMES[supply.product] : undefined;
  return ['supply.per-use', volume ?? 'supply.volume.no-figure'];
}

function lineOf(supply: Exclude<Supply, { kind: 'item' }>, count: number): UseLine {
  const quantity: Quantity = { unit: UNITS[supply.kind], count };
  const base = { supply, quantity, evidence: grounds(supply) };
  if (supply.product === undefined || supply.product === 'disinfectant-wipe') return base;
  const volume = supply.kind === 'product' ? VOLUMES[supply.product] : undefined;
  return { ...base, millilitres: volume === undefined ? null : evidenceNumber(volume) * count };
}

/** One line per supply that is used up beside equipment: wipes, then products, then mats. */
export function usedUp(compiled: Compiled): readonly UseLine[] {
  const found = new Map<string, { readonly supply: Supply; count: number }>();
  const count = (supply: Supply, more: number): void => {
    const known = found.get(supplyKey(supply)) ?? { supply, count: 0 };
    found.set(supplyKey(supply), { supply, count: known.count + more });
  };
  for (const performed of compiled.performed)
    for (const use of performed.technique.uses ?? []) {
      const supply = drawnOn(use, performed);
      if (supply) count(supply, use.count);
    }
  for (const mat of matsUsed(compiled)) count(mat, 1);
  const order = ['wipe', 'product', 'mat'];
  return [...found.values()]
    .flatMap((one) => (one.supply.kind === 'item' ? [] : [lineOf(one.supply, one.count)]))
    .sort((a, b) => order.indexOf(a.supply.kind) - order.indexOf(b.supply.kind));
}
