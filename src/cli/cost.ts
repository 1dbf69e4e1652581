// `doffline cost`: what a run of a procedure takes in equipment, wipes, products, mats and people's time, and what ends in
// waste; with a price list, what it costs.
import { costOfProcedure } from '../costing/cost.ts';
import { groundsOf, weakestOf } from '../costing/grounds.ts';
import type { ItemFlow } from '../costing/items.ts';
import {
  type PriceFault,
  type PriceFaultCode,
  PRICE_KEYS,
  type Prices,
  priced,
  readPrices,
} from '../costing/prices.ts';
import { type Quantity, times } from '../costing/supply.ts';
import type { PersonTime, Spell } from '../costing/time.ts';
import type { UseLine } from '../costing/uses.ts';
import { evidence, type EvidenceId } from '../evidence/index.ts';
import { nearest } from '../language/nearest.ts';
import { fieldInWords } from '../words/fields.ts';
import { duration, wordsFor } from '../words/index.ts';
import { cautionsText, type Status } from './check.ts';
import { type Costed, costReportOf, unreadCost } from './costReport.ts';
import { readInput } from './input.ts';
import { type Io, painter, type Paint, printable, wrapped } from './io.ts';
import { isUnreadable, loadSubject, printComplaint } from './subject.ts';

const words = wordsFor('en');

export interface CostOptions {
  readonly json: boolean;
  /** Runs a day, from 1. */
  readonly runs: number;
  /** Path of a price list. */
  readonly prices?: string;
}

const PRICE_FAULTS: Readonly<Record<PriceFaultCode, (name: string) => string>> = {
  'not-yaml': () =>
    'This is not YAML. Write "currency: ..." and "prices:" with a name and a number in each line.',
  'not-a-list': () => 'There is no list of prices. Write "prices:" with a name and a number in each line.',
  'unknown-supply': (name) => {
    const near = nearest(name, PRICE_KEYS);
    return `Nothing that is used up is called "${printable(name)}".${near === undefined ? '' : ` Did you mean "${near}"?`}`;
  },
  'not-a-price': (name) =>
    `The price of "${printable(name)}" is no number from 0. Write it with a point: 0.25.`,
};

const faultText = (path: string, { code, line, name }: PriceFault): string =>
  `${printable(path)}:${line}:1: error price-list: ${PRICE_FAULTS[code](name)}\n`;

type Loaded = { readonly prices?: Prices } | { readonly complaint: string };

async function loadPrices(io: Io, path: string | undefined): Promise<Loaded> {
  if (path === undefined) return {};
  const input = await readInput(io, path);
  if ('fault' in input)
    return {
      complaint: `${printable(path)}:1:1: error ${input.fault.code}: ${input.fault.wrong} ${input.fault.mend}\n`,
    };
  const list = readPrices(input.text);
  return 'faults' in list
    ? { complaint: list.faults.map((fault) => faultText(path, fault)).join('') }
    : { prices: list.prices };
}

interface Page {
  readonly paint: Paint;
  readonly costed: Costed;
}

const spellText = ({ seconds, interval }: Spell, runs: number): string =>
  `${duration(seconds * runs)} (90 %: ${duration(interval.low * runs)} to ${duration(interval.high * runs)})`;

function timeText({ paint, costed: { procedure, cost, runs } }: Page): readonly string[] {
  const status = words.status(weakestOf(cost.evidence.times));
  const line = ({ person, handsOn, tiedUp, steps }: PersonTime): string => {
    const range = steps ? `steps ${steps[0] + 1} to ${steps[1] + 1}` : 'no step';
    return `  ${words.person(procedure, person).padEnd(24)} ${duration(handsOn.seconds * runs).padEnd(12)} ${spellText(tiedUp, runs).padEnd(46)} ${range}`;
  };
  return [
    paint('bold', `Time: ${spellText(cost.run, runs)}, ${status}`),
    `  ${'who'.padEnd(24)} ${'hands on'.padEnd(12)} ${'tied up'.padEnd(46)} needed in`,
    ...cost.people.map(line),
    '',
  ];
}

const COLUMNS = ['needed', 'opened', 'discarded', 'reprocessed', 'leftOn'] as const;
const HEADS = ['needed', 'put on fresh', 'into waste', 'to reprocess', 'left on'] as const;
const WIDTH = 21;

function itemsText({ paint, costed: { cost, runs } }: Page): readonly string[] {
  const cell = (quantity: Quantity): string =>
    quantity.count === 0 ? '-' : words.compare.quantity(times(quantity, runs));
  const row = (name: string, cells: readonly string[]): string =>
    `  ${name.padEnd(26)} ${cells.map((text) => text.padEnd(WIDTH)).join(' ')}`.trimEnd();
  const line = (flow: ItemFlow): string =>
    row(
      words.item(flow.item),
      COLUMNS.map((column) => cell(flow[column])),
    );
  return [
    paint('bold', `Equipment (single use or not: ${words.status(evidence(cost.evidence.items).status)})`),
    row('', HEADS),
    ...cost.items.map(line),
    '',
  ];
}

function useText({ supply, quantity, millilitres, evidence: ids }: UseLine, runs: number): string {
  const volume =
    millilitres === undefined
      ? ''
      : millilitres === null
        ? ', no figure for the volume'
        : `, ${millilitres * runs} mL`;
  return `  ${words.compare.supply(supply).padEnd(42)} ${words.compare.quantity(times(quantity, runs))}${volume} (${words.status(weakestOf(ids))})`;
}

function usesText({ paint, costed: { cost, runs } }: Page): readonly string[] {
  const lines = cost.uses.map((use) => useText(use, runs));
  return [paint('bold', 'Wipes, products and mats'), ...(lines.length > 0 ? lines : ['  none']), ''];
}

function wasteText({ paint, costed: { cost, runs } }: Page): readonly string[] {
  const pieces = cost.waste.pieces * runs;
  return [
    paint('bold', `Waste: ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`),
    wrapped('No figure for its volume and mass: none is published per item or run.', 2),
    '',
  ];
}

function pricesText({ paint, costed: { priced: list, runs } }: Page): readonly string[] {
  if (!list) return [];
  const { currency, lines, total, unpriced } = list;
  const money = (value: number): string => `${value.toFixed(2)}${currency && ` ${printable(currency)}`}`;
  const known = lines.flatMap(({ supply, by, amount, price, sum }) =>
    price === null || sum === null
      ? []
      : [
          `  ${words.compare.supply(supply).padEnd(42)} ${`${+(amount * runs).toFixed(3)} x ${price} a ${by}`.padEnd(28)} ${money(sum * runs)}`,
        ],
  );
  const missing = unpriced.map((supply) => words.compare.supply(supply)).join(', ');
  return [
    paint('bold', `Price, by the list given: ${money(total * runs)}`),
    ...known,
    ...(missing ? [wrapped(`Without a price, and not in the sum: ${missing}.`, 2)] : []),
    '',
  ];
}

/** A statement in full, a number with its unit, the numbers of a table by name. */
function valueText(id: EvidenceId): string {
  const { value, unit } = evidence(id);
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return `${value} ${unit}.`;
  if (Array.isArray(value)) return `${value.map(String).join(', ')}.`;
  return `${Object.entries(value)
    .map(([name, one]) => `${fieldInWords(name)} ${String(one)}`)
    .join(', ')}.`;
}

function groundsText({ paint, costed: { cost } }: Page): readonly string[] {
  const line = (id: EvidenceId): string => {
    const { says, status } = words.evidence(id);
    const value = valueText(id);
    return `  - ${wrapped(`${says}${value && ` ${value}`} [${id}] (${status})`, 4).trimStart()}`;
  };
  return [paint('bold', 'Rests on'), ...groundsOf(cost).map(line), ''];
}

function costText(page: Page, file: string): string {
  const { procedure, runs } = page.costed;
  const { title, kind, version, invented, steps } = procedure;
  const count = runs === 1 ? 'One run' : `${runs} runs a day, together`;
  return [
    page.paint('bold', title),
    `${file}: ${words.kind(kind)}, version ${version}${invented ? ', invented' : ''}, ${steps.length} steps`,
    `${count}. Equipment of everybody whom the procedure names, helpers too.`,
    '',
    ...timeText(page),
    ...itemsText(page),
    ...usesText(page),
    ...wasteText(page),
    ...pricesText(page),
    ...groundsText(page),
    cautionsText(),
  ].join('\n');
}

/** Prints what a run takes. 0, or 2 where the file or the price list cannot be read. */
export async function cost(io: Io, path: string, { json, runs, prices: list }: CostOptions): Promise<Status> {
  const subject = await loadSubject(io, path);
  const loaded = await loadPrices(io, list);
  const procedure = subject.read?.procedure;
  const unreadable = isUnreadable(subject);
  if (!json) for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  if ('complaint' in loaded) {
    io.err(loaded.complaint);
    return 2;
  }
  if (!procedure) {
    if (json) io.out(`${JSON.stringify(unreadCost(subject, runs), null, 2)}\n`);
    return 2;
  }
  const found = costOfProcedure(procedure);
  const costed: Costed = {
    procedure,
    cost: found,
    runs,
    ...(loaded.prices ? { priced: priced(found, loaded.prices) } : {}),
  };
  const report = { ...costReportOf(words, subject, costed), ...(unreadable ? { status: 2 as const } : {}) };
  io.out(
    json ? `${JSON.stringify(report, null, 2)}\n` : costText({ paint: painter(io), costed }, subject.file),
  );
  return unreadable ? 2 : 0;
}
