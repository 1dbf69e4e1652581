// Products and agents. Whether a product works is a property of agent, product and material, never of the step
// (Casanova 2016 and 2018: the same protocol with alcohol rub left a non-enveloped phage on inner gloves and no
// enveloped one). It is read from the efficacy records of evidence/; where there is no record it is not credited.
import { type EvidenceId, evidence, evidenceIds } from '../evidence/index.ts';

export const AGENTS = ['enveloped', 'non-enveloped'] as const;
export type Agent = (typeof AGENTS)[number];

/** What a product is put on: a bare hand, a glove, other equipment or shoes, a hard surface, cloth. */
export const MATERIALS = ['skin', 'mucosa', 'glove', 'equipment', 'hard', 'cloth'] as const;
export type Material = (typeof MATERIALS)[number];

export interface Product {
  readonly id: string;
  /** Its name in the ids of efficacy records. */
  readonly efficacy: string;
  /** Materials it is meant for at all. */
  readonly suits: readonly Material[];
  /** Unit in which it is used up. */
  readonly unit: 'mL' | 'wipe';
}

export const PRODUCTS = [
  { id: 'alcohol-hand-rub', efficacy: 'alcohol-hand-rub', suits: ['skin', 'glove'], unit: 'mL' },
  {
    id: 'disinfectant-wipe',
    efficacy: 'disinfectant-wipe',
    suits: ['glove', 'equipment', 'hard'],
    unit: 'wipe',
  },
  { id: 'chlorine-0.5', efficacy: 'chlorine-strong', suits: ['glove', 'equipment', 'hard'], unit: 'mL' },
  { id: 'chlorine-0.05', efficacy: 'chlorine-weak', suits: ['skin', 'glove'], unit: 'mL' },
  { id: 'soap-and-water', efficacy: 'soap-and-water', suits: ['skin', 'glove'], unit: 'mL' },
] as const satisfies readonly Product[];

export type ProductId = (typeof PRODUCTS)[number]['id'];
export const PRODUCT_IDS: readonly ProductId[] = PRODUCTS.map((product) => product.id);

export function product(id: ProductId): Product {
  const found = PRODUCTS.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`unknown product ${id}`);
  return found;
}

const KNOWN: ReadonlySet<string> = new Set(evidenceIds);

/** The record that says whether a product works on an agent on a material; undefined where nothing is known. */
export function efficacyOf(id: ProductId, agent: Agent, material: Material): EvidenceId | undefined {
  const record = `efficacy.${product(id).efficacy}.${agent}.${material}`;
  return KNOWN.has(record) ? (record as EvidenceId) : undefined;
}

function worksFor(id: ProductId, agent: Agent, material: Material): boolean {
  const record = efficacyOf(id, agent, material);
  if (record === undefined) return false;
  const { value } = evidence(record);
  return typeof value === 'object' && 'works' in value && value.works === true;
}

/** Per agent and product: the materials on which it works. It is asked at every cleaning. */
const WORKS = new Map(
  AGENTS.map((agent) => [
    agent,
    new Map(
      PRODUCT_IDS.map((id) => [id, new Set(MATERIALS.filter((material) => worksFor(id, agent, material)))]),
    ),
  ]),
);

/** Whether cleaning counts; without a record it does not. */
export const works = (id: ProductId, agent: Agent, material: Material): boolean =>
  WORKS.get(agent)?.get(id)?.has(material) ?? false;
