// Our answer beside that of a general-purpose model checker, in one run: the least number of slips and circumstances that
// reach each protected surface. Procedures of growing length are taken until the checker no longer finishes within the
// time given (SPIN_SECONDS, 150 unless set), then whole ones with at most 1, 2, 3 ... slips for the checker. Both start from the same plan; neither's compilation counts. Surfaces
// and events that cannot matter are cut from the checker's model; ours works out all.
import type { Plan } from '../src/contacts/plan.ts';
import { compile } from '../src/contacts/interpret.ts';
import { leastEvents } from '../src/engine/barriers.ts';
import { judgedOf, propagate } from '../src/engine/propagate.ts';
import { type Answer, ask, type Limits, whyNoSpin } from './checker.ts';
import { hundred } from './hundred.ts';
import { median, report, type Row, timeOf } from './harness.ts';
import { protectedIn } from './promela.ts';
import { published } from './subjects.ts';

const LIMITS: Limits = { seconds: Number(process.env.SPIN_SECONDS ?? 150), megabytes: 8000 };
const LONGEST = 'national-n95-coverall-doffing';

interface Subject {
  readonly name: string;
  readonly plan: Plan;
  readonly targets: readonly number[];
  /** The checker looks at no more slips than this; ours at any number. */
  readonly most?: number;
}

function ours({ plan, targets }: Subject): ReadonlyMap<number, number> {
  const conditions = propagate(plan);
  const least = leastEvents(
    conditions.diagram,
    targets.map((surface) => judgedOf(conditions, surface)),
  );
  return new Map(targets.map((surface, at) => [surface, least[at]!]));
}

function ourTime(subject: Subject): number {
  for (let round = 0; round < 60; round += 1) ours(subject);
  return median(Array.from({ length: 60 }, () => timeOf(() => ours(subject))));
}

/** Surfaces on which the two answers differ; -1 is: nothing reaches it, with as many events as the checker looked at. */
const differing = (subject: Subject, { least }: Answer): readonly number[] =>
  [...ours(subject)]
    .filter(
      ([surface, count]) => (least.get(surface) ?? -1) !== (count > (subject.most ?? count) ? -1 : count),
    )
    .map(([surface]) => surface);

const planOf = (name: string): Plan => compile(published(`${name}.yaml`), 'enveloped').plan;
const whole = (name: string): Subject => {
  const plan = planOf(name);
  return { name: `${name}, all ${plan.steps.length} steps`, plan, targets: protectedIn(plan) };
};

function* prefixes(): Generator<Subject> {
  const plan = planOf(LONGEST);
  for (let steps = 12; steps <= plan.steps.length; steps += 1) {
    const part = { ...plan, steps: plan.steps.slice(0, steps) };
    yield { name: `${LONGEST}, first ${steps} steps`, plan: part, targets: protectedIn(plan) };
  }
}

function compared(subject: Subject, answer: Answer): readonly Row[] {
  const wrong = differing(subject, answer);
  if (wrong.length > 0)
    throw new Error(
      `${subject.name}: answers differ on ${wrong.map((at) => subject.plan.surfaces[at]?.id).join(', ')}`,
    );
  const time = ourTime(subject);
  const note = `same answer on ${subject.targets.length} surfaces; ${answer.states} states, compiled in ${answer.compileSeconds.toFixed(1)} s`;
  const row = (what: string, value: number, unit: string, more: Partial<Row> = {}): Row => ({
    name: `${subject.name}: ${what}`,
    samples: [value],
    unit,
    ...more,
  });
  return [
    row('SPIN', answer.seconds * 1000, 'ms', { note }),
    row('ours', time, 'ms'),
    // The checker tells its time in hundredths of a second: below a tenth there is no ratio to speak of.
    ...(answer.seconds < 0.1
      ? []
      : [row('SPIN / ours', (answer.seconds * 1000) / time, 'times', { goal: 'at least 1,000' })]),
  ];
}

/** Whole procedures, more and more slips. */
function* budgets(name: string, plan: Plan): Generator<Subject> {
  for (let most = 1; most <= plan.events.length; most += 1) {
    const what = `${name}, all ${plan.steps.length} steps, at most ${most} events`;
    yield { name: what, plan, targets: protectedIn(plan), most };
  }
}

/** The rows of the last subject that the checker finishes, and a note on the first that it does not. */
function largest(subjects: Iterable<Subject>): readonly [readonly Row[], readonly string[]] {
  let rows: readonly Row[] = [];
  for (const subject of subjects) {
    const answer = ask(subject.plan, LIMITS, subject.most === undefined ? {} : { most: subject.most });
    console.error(`${subject.name}: ${answer.states} states, ${answer.seconds} s`);
    if (!answer.finished) {
      const limits = `${LIMITS.seconds} s and ${LIMITS.megabytes} MB`;
      const time = ourTime(subject).toFixed(2);
      return [rows, [`${subject.name}: SPIN did not finish within ${limits}; ours takes ${time} ms`]];
    }
    rows = compared(subject, answer);
  }
  return [rows, []];
}

function compareAll(): void {
  const found = [
    ...['everyday-example-1-doffing', 'national-stable-patient-doffing', 'international-gown-doffing'].map(
      (name) => largest([whole(name)]),
    ),
    largest(prefixes()),
    largest(budgets(LONGEST, planOf(LONGEST))),
    largest(budgets('invented exit', compile(hundred(), 'enveloped').plan)),
  ];
  report(
    found.flatMap(([rows]) => rows),
    found.flatMap(([, notes]) => notes),
  );
}

const why = whyNoSpin();
if (why === undefined) compareAll();
else report([], [], why);
