// How long the order search takes, and whether it ends in a proof: twelve items with two helpers on one core, the invented
// unit's suit, and the longest published route. A row is a whole search, cold; the note says proved or the gap. Then how soon
// the live guide has another way on after a slip: every slip of every step of the suit, in processor time.
import type { Procedure } from '../src/domain/procedure.ts';
import { compile } from '../src/contacts/interpret.ts';
import { continueFrom, type KnownOfExit } from '../src/order/continue.ts';
import { searchOrder } from '../src/order/index.ts';
import { ORDER } from '../src/words/en/order.ts';
import { ordered, report, type Row } from './harness.ts';
import { published } from './subjects.ts';
import { twelve } from './twelve.ts';

const SECONDS = 5;

const SUBJECTS: readonly (readonly [string, () => Procedure])[] = [
  ['twelve items, two helpers', twelve],
  ['invented suit, seven items', () => published('larkmoor-suit-doffing-v2.yaml')],
  ['respirator and coverall route', () => published('national-n95-coverall-doffing.yaml')],
];

interface Slipped {
  readonly done: number;
  readonly known: KnownOfExit;
}

/** Each slip alone, what could have been seen until then and was not ruled out, as the guide records it. */
function slipsOf(procedure: Procedure): readonly Slipped[] {
  const { events } = compile(procedure, procedure.agents[0] ?? 'enveloped').plan;
  return events
    .filter(({ kind, step }) => kind === 'slip' && step + 1 < procedure.steps.length)
    .map(({ key, step }) => {
      const seen = events.filter((other) => other.visible && other.step <= step && other.key !== key);
      return { done: step + 1, known: { happened: [key], excluded: seen.map((other) => other.key) } };
    });
}

function continued(): Row {
  const procedure = published('larkmoor-suit-doffing-v2.yaml');
  let better = 0;
  const samples = slipsOf(procedure).map(({ done, known }) => {
    const before = process.cpuUsage();
    if (!continueFrom(procedure, done, known).kept) better += 1;
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return {
    name: 'another way on, suit',
    samples,
    unit: 'ms of processor',
    goal: 'median 25, p95 125: 100 and 500 on a processor 4 times slower',
    note: `${better} of ${samples.length} slips have a better way on`,
  };
}

const notes: string[] = [];
const rows: Row[] = ordered(SUBJECTS).map(([name, subject]) => {
  const procedure = subject();
  const from = performance.now();
  const found = searchOrder(procedure, { agent: 'enveloped', milliseconds: SECONDS * 1000 });
  const took = performance.now() - from;
  const said = ORDER.proof(found);
  notes.push(`${name}: ${said}`);
  const proof = found.proved ? 'proved' : `gap: ${found.gap?.figure ?? ''}`;
  return { name, samples: [took], unit: 'ms', goal: `proved under ${SECONDS} s, or the gap`, note: proof };
});
report([...rows, continued()], notes);
