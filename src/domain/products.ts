// Products and agents. Whether a product works is a property of agent, product and surface, never of the
// step (Casanova 2016 and 2018: the same protocol with alcohol rub left a non-enveloped phage on inner
// gloves and no enveloped one). Each claim below names the evidence it rests on.
import type { EvidenceId } from '../evidence/index.ts';

export const AGENTS = ['enveloped', 'non-enveloped'] as const;
export type Agent = (typeof AGENTS)[number];

/** What a product is put on: a bare hand, a glove, other equipment or shoes, a hard surface, cloth. */
export const MATERIALS = ['skin', 'mucosa', 'glove', 'equipment', 'hard', 'cloth'] as const;
export type Material = (typeof MATERIALS)[number];

export interface Product {
  readonly id: string;
  /** Materials it may be used on at all. */
  readonly suits: readonly Material[];
  /** Agents it kills or removes there; with any other agent cleaning is not credited. */
  readonly kills: readonly Agent[];
  readonly evidence: readonly EvidenceId[];
  /** Leaves hands wet until dried: a glove does not go over a wet hand. */
  readonly wets: boolean;
  readonly unit: 'mL' | 'wipe';
}

export const PRODUCTS = [
  {
    id: 'alcohol-hand-rub',
    suits: ['skin', 'glove'],
    kills: ['enveloped'],
    evidence: [],
    wets: true,
    unit: 'mL',
  },
  {
    id: 'disinfectant-wipe',
    suits: ['glove', 'equipment', 'hard'],
    kills: ['enveloped', 'non-enveloped'],
    evidence: [],
    wets: false,
    unit: 'wipe',
  },
  {
    id: 'chlorine-0.5',
    suits: ['glove', 'equipment', 'hard'],
    kills: ['enveloped', 'non-enveloped'],
    evidence: [],
    wets: true,
    unit: 'mL',
  },
  {
    id: 'chlorine-0.05',
    suits: ['skin', 'glove'],
    kills: ['enveloped', 'non-enveloped'],
    evidence: [],
    wets: true,
    unit: 'mL',
  },
  {
    id: 'soap-and-water',
    suits: ['skin', 'glove'],
    kills: ['enveloped', 'non-enveloped'],
    evidence: [],
    wets: true,
    unit: 'mL',
  },
] as const satisfies readonly Product[];

export type ProductId = (typeof PRODUCTS)[number]['id'];
export const PRODUCT_IDS: readonly ProductId[] = PRODUCTS.map((product) => product.id);

export function product(id: ProductId): Product {
  const found = PRODUCTS.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`unknown product ${id}`);
  return found;
}
