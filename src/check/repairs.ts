// Candidate edits for what a procedure cannot do: what the step is missing, or that it does nothing as it stands. Like all
// candidates they claim nothing; mends.ts tries each.
import type { ItemId } from '../domain/items.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Edit } from './edit.ts';
import type { Finding } from './finding.ts';
import { type CandidateContext, stepWith, zoneAt } from './proposals.ts';

/** Problems of a step that does nothing as it stands, so that nothing is lost with it. */
const IDLE: ReadonlySet<Finding['code']> = new Set([
  'impossible.not-worn',
  'impossible.already-worn',
  'impossible.already-open',
  'impossible.nothing-to-clean',
]);

/** Other people who can lend a hand where the step is done; the one who is meant walks there. */
function help(context: CandidateContext, at: number, step: Step): readonly Edit[] {
  const zone = zoneAt(context, at, step.of ?? step.who);
  const near = context.procedure.people.filter(
    ({ id, role }) =>
      role !== 'wearer' && ![step.who, step.of, step.helper].includes(id) && zoneAt(context, at, id) === zone,
  );
  return [
    ...near.map(({ id }): Edit => ({ do: 'replace', at, step: { ...step, helper: id } })),
    ...(zone === undefined || step.helper === undefined
      ? []
      : [
          {
            do: 'insert',
            at,
            steps: [stepWith(context, 'come', { who: step.helper, action: 'move', items: [], zone })],
          } as const,
        ]),
  ];
}

/** Shoes are wiped on a clean chair, everything else is done on another. */
const seatsFor = ({ procedure }: CandidateContext, { action }: Step): Procedure['fixtures'] =>
  procedure.fixtures.filter(({ kind, clean }) => kind === 'chair' && clean === (action === 'wipe'));

/** Feet that were lifted go down where the step leads to. */
const landings = ({ who, zone }: Step): readonly Omit<Step, 'id'>[] =>
  zone === undefined ? [] : [{ who, action: 'stand', items: [], fixture: `${zone}-floor` }];

/** What an impossible step is missing: an opening before it, a seat, a helper, a product, or the step is idle. */
export function repairs(context: CandidateContext, finding: Finding, at: number): readonly Edit[] {
  const step = context.procedure.steps[at];
  if (!step) return [];
  // Not always the step's own: a blower waits for the hood that hangs on it.
  const item = (finding.params.item as ItemId | undefined) ?? step.items[0];
  const others = context.procedure.people.filter(
    (person) => person.id !== step.who && person.role !== 'wearer',
  );
  const insert = (rest: Omit<Step, 'id'>, base: string): Edit => ({
    do: 'insert',
    at,
    steps: [stepWith(context, base, rest)],
  });
  const wearer = step.of ?? step.who;
  switch (finding.code) {
    case 'impossible.still-fastened':
      return item ? [insert({ who: wearer, action: 'unfasten', items: [item] }, 'unfasten')] : [];
    case 'impossible.not-seated':
    case 'impossible.dirty-seat':
      return seatsFor(context, step).map((seat) =>
        insert({ who: step.who, action: 'sit', items: [], fixture: seat.id }, 'sit'),
      );
    case 'impossible.not-standing':
      return [
        insert({ who: step.who, action: 'stand', items: [] }, 'stand'),
        ...landings(step).map((rest) => insert(rest, 'stand')),
      ];
    case 'impossible.helper-missing':
      return others.map((person) => ({ do: 'replace', at, step: { ...step, helper: person.id } }));
    case 'impossible.helper-elsewhere':
      return help(context, at, step);
    case 'impossible.product-unsuited':
      return context.procedure.products
        .filter((id) => id !== step.product)
        .map((id) => ({ do: 'replace', at, step: { ...step, product: id } }));
    case 'impossible.no-glove-beneath':
      return [insert({ who: step.who, action: 'put-on', items: ['inner-gloves'] }, 'gloves-on')];
    default:
      return IDLE.has(finding.code) ? [{ do: 'remove', at }] : [];
  }
}
