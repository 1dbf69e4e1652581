// A plan as a model for SPIN: surfaces and basic events as bits; every event is chosen once, just before its first use;
// operations that choose nothing are one step. The least number of events that reaches each protected surface is noted
// as the search goes, so one exhaustive run answers for all of them. To be fair to the checker, what can no longer
// matter is left out or set back to 0: operations that reach no watched surface, surfaces and events after their last use.
import type { Guard, Operation, Plan } from '../src/contacts/plan.ts';

export interface PromelaOptions {
  /** At most this many events; all of them when absent. */
  readonly most?: number;
  /** Surfaces to answer for; all protected ones when absent. */
  readonly targets?: readonly number[];
}

/** An operation that matters, with what is live after it. */
interface Needed {
  readonly operation: Operation;
  readonly step: string;
  readonly live: ReadonlySet<number>;
}

const guardsOf = (operation: Operation): readonly Guard[] =>
  operation.op === 'sanitise' ? operation.failure : 'when' in operation ? [operation.when] : [];

const touched = (operation: Operation): readonly number[] =>
  operation.op === 'contact' ? [operation.a, operation.b] : [operation.a];

const clears = (operation: Operation): boolean =>
  operation.op === 'fresh' ||
  operation.op === 'retire' ||
  (operation.op === 'sanitise' && operation.failure.length === 0);

/** The operations from which contamination can still reach a target, in order (cone of influence). */
function neededIn(plan: Plan, targets: ReadonlySet<number>): readonly Needed[] {
  const all = [
    ...plan.start.map((operation) => ({ operation, step: 'start' })),
    ...plan.steps.flatMap(({ id, operations }) => operations.map((operation) => ({ operation, step: id }))),
  ];
  const atEnd = [...targets].filter((surface) => plan.surfaces[surface]?.judged === 'end');
  const live = new Set(atEnd);
  const needed: Needed[] = [];
  for (const { operation, step } of all.reverse()) {
    const surfaces = touched(operation);
    const noted = surfaces.some(
      (surface) => targets.has(surface) && plan.surfaces[surface]?.judged === 'ever',
    );
    if (!noted && !surfaces.some((surface) => live.has(surface))) continue;
    needed.push({ operation, step, live: new Set(live) });
    for (const surface of surfaces) live.add(surface);
    if (clears(operation)) live.delete(operation.a);
  }
  return needed.reverse();
}

const all = (guard: Guard): string => guard.map((event) => `e${event}`).join(' & ') || '1';

/** The statements of one operation on bits; `u` is scratch and not part of the state. */
function statements(operation: Operation): readonly string[] {
  const a = `s${operation.a}`;
  if (operation.op === 'contact') {
    const b = `s${operation.b}`;
    return operation.when.length === 0
      ? [`u = ${a} | ${b}`, `${a} = u`, `${b} = u`]
      : [`u = (${a} | ${b}) & ${all(operation.when)}`, `${a} = ${a} | u`, `${b} = ${b} | u`];
  }
  if (operation.op === 'taint') return [`${a} = ${a} | (${all(operation.when)})`];
  if (clears(operation)) return [`${a} = 0`];
  const failures = operation.op === 'sanitise' ? operation.failure : [];
  if (failures.some((guard) => guard.length === 0)) return [];
  return [`${a} = ${a} & (${failures.map((guard) => `(${all(guard)})`).join(' | ')})`];
}

/** Index of the last needed operation that asks for each event. */
function lastUses(needed: readonly Needed[]): ReadonlyMap<number, number> {
  return new Map(
    needed.flatMap(({ operation }, at) =>
      guardsOf(operation)
        .flat()
        .map((event) => [event, at] as const),
    ),
  );
}

const note = (surface: number): string => `c_code { NOTE(s${surface}, ${surface}) }`;

/** What follows an operation: targets noted, what is done with set back to 0. */
function after(
  plan: Plan,
  targets: ReadonlySet<number>,
  { operation, live }: Needed,
  done: readonly number[],
): readonly string[] {
  const surfaces = touched(operation);
  const noted = surfaces.filter(
    (surface) => !clears(operation) && targets.has(surface) && plan.surfaces[surface]?.judged === 'ever',
  );
  return [
    ...noted.map(note),
    ...surfaces.filter((surface) => !live.has(surface)).map((surface) => `s${surface} = 0`),
    ...done.map((event) => `e${event} = 0`),
  ];
}

const choose = (plan: Plan, event: number): string =>
  `  if :: skip :: count < MOST -> d_step { e${event} = 1; count++ } fi; /* ${plan.events[event]?.key ?? ''} */`;

function body(plan: Plan, needed: readonly Needed[], targets: ReadonlySet<number>): readonly string[] {
  const last = lastUses(needed);
  const met = new Set<number>();
  const lines: string[] = [];
  let run: string[] = [];
  const flush = (): void => {
    if (run.length > 0) lines.push(`  d_step { ${run.join('; ')} };`);
    run = [];
  };
  needed.forEach((one, at) => {
    const events = [...new Set(guardsOf(one.operation).flat())];
    const fresh = events.filter((event) => !met.has(event));
    if (fresh.length > 0) flush();
    for (const event of fresh) lines.push(choose(plan, event));
    for (const event of fresh) met.add(event);
    const done = events.filter((event) => last.get(event) === at);
    run.push(...statements(one.operation), ...after(plan, targets, one, done));
  });
  flush();
  return lines;
}

/** Protected surfaces of a plan, by number. */
export const protectedIn = (plan: Plan): readonly number[] =>
  plan.surfaces.flatMap((surface, index) => (surface.protected ? [index] : []));

/**
 * The model's text. While it runs it prints `LEAST surface events` whenever fewer events reach a surface than before; a
 * surface that is never printed is not reached.
 */
export function promelaOf(plan: Plan, options: PromelaOptions = {}): string {
  const targets = new Set(options.targets ?? protectedIn(plan));
  const needed = neededIn(plan, targets);
  const surfaces = [...new Set(needed.flatMap(({ operation }) => touched(operation)))].sort((a, b) => a - b);
  const events = [...lastUses(needed).keys()].sort((a, b) => a - b);
  const atEnd = surfaces.filter((at) => targets.has(at) && plan.surfaces[at]?.judged === 'end');
  const bits = (letter: string, numbers: readonly number[]): readonly string[] =>
    numbers.length === 0 ? [] : [`bit ${numbers.map((at) => `${letter}${at}`).join(', ')};`];
  return [
    `#define MOST ${options.most ?? events.length}`,
    'c_decl {',
    `  static int least[${plan.surfaces.length}];`,
    '  #define NOTE(bit, at) if (now.bit && (least[at] == 0 || now.count < least[at] - 1)) { least[at] = now.count + 1; printf("LEAST %d %d\\n", at, now.count); }',
    '}',
    ...bits('s', surfaces),
    ...bits('e', events),
    'byte count;',
    'hidden byte u;',
    'active proctype procedure() {',
    ...body(plan, needed, targets),
    ...(atEnd.length > 0 ? [`  d_step { ${atEnd.map(note).join('; ')} };`] : []),
    '  skip',
    '}',
    '',
  ].join('\n');
}
