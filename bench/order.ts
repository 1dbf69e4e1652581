// How long the order search takes, and whether it ends in a proof: twelve items with two helpers on one core, the invented
// unit's suit, and the longest published route. A row is a whole search, cold; the note says proved or the gap.
import type { Procedure } from '../src/domain/procedure.ts';
import { searchOrder } from '../src/order/index.ts';
import { proofSentence } from '../src/words/en/order.ts';
import { ordered, report, type Row } from './harness.ts';
import { published } from './subjects.ts';
import { twelve } from './twelve.ts';

const SECONDS = 5;

const SUBJECTS: readonly (readonly [string, () => Procedure])[] = [
  ['twelve items, two helpers', twelve],
  ['invented suit, seven items', () => published('larkmoor-suit-doffing-v2.yaml')],
  ['respirator and coverall route', () => published('national-n95-coverall-doffing.yaml')],
];

const notes: string[] = [];
const rows: Row[] = ordered(SUBJECTS).map(([name, subject]) => {
  const procedure = subject();
  const from = performance.now();
  const found = searchOrder(procedure, { agent: 'enveloped', milliseconds: SECONDS * 1000 });
  const took = performance.now() - from;
  const said = proofSentence(found);
  notes.push(`${name}: ${said}`);
  const proof = found.proved ? 'proved' : `gap: ${found.gap?.figure ?? ''}`;
  return { name, samples: [took], unit: 'ms', goal: `proved under ${SECONDS} s, or the gap`, note: proof };
});
report(rows, notes);
