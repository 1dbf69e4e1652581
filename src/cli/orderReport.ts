// From an order found, or a substitution, to the object that `order --json` prints.
import type { Procedure } from '../domain/procedure.ts';
import { printProcedure } from '../language/index.ts';
import type { OrderResult } from '../order/index.ts';
import type { Substitution } from '../order/substitute.ts';
import type { Words } from '../words/index.ts';
import { ORDER_FORMAT, type OrderReport } from './orderSchema.ts';
import { measureReport } from './report.ts';
import type { Subject } from './subject.ts';
import { VERSION } from './version.ts';

const procedureReport = (words: Words, procedure: Procedure): NonNullable<OrderReport['procedure']> => ({
  title: procedure.title,
  steps: procedure.steps.map((step, index) => ({
    number: index + 1,
    id: step.id,
    who: step.who,
    action: step.action,
    sentence: words.step(procedure, step),
    ownWording: words.isOverridden(procedure, step),
  })),
  text: printProcedure(procedure),
});

/** What is said where there is nothing to say of an order. */
export function nothingFound(
  words: Words,
  { file, complaints }: Subject,
  refusal: string | null,
): OrderReport {
  return {
    format: ORDER_FORMAT,
    version: VERSION,
    file,
    language: words.language,
    review: [...words.reviewNote],
    status: 2,
    agent: null,
    procedure: null,
    before: null,
    after: null,
    kept: false,
    proved: false,
    gap: null,
    lowerBound: null,
    explored: null,
    free: false,
    choices: [],
    substitution: null,
    refusal,
    diagnostics: [...complaints],
    cautions: [...words.cautions],
  };
}

export function orderReportOf(
  words: Words,
  subject: Subject,
  result: OrderResult,
  status: 0 | 1 | 2,
): OrderReport {
  const { procedure } = result;
  return {
    ...nothingFound(words, subject, null),
    status,
    agent: result.agent,
    procedure: procedureReport(words, procedure),
    before: measureReport(result.before),
    after: measureReport(result.measure),
    kept: result.kept,
    proved: result.proved,
    gap: result.gap ?? null,
    lowerBound: measureReport(result.lowerBound),
    explored: { ...result.explored },
    free: result.free,
    choices: result.choices.map((choice) => ({
      kind: choice.kind,
      step: choice.step,
      instead: choice.instead,
      outcome: choice.outcome,
      difference: choice.difference ?? null,
      sentence: words.order.choice(procedure, choice),
    })),
  };
}

export function substitutionReportOf(
  words: Words,
  subject: Subject,
  before: Procedure,
  [from, to]: readonly [string, string],
  done: Substitution,
  status: 0 | 1 | 2,
): OrderReport {
  const { procedure, rewriting, kept, lost, changes, retraining } = done;
  return {
    ...nothingFound(words, subject, null),
    status,
    agent: done.agent,
    procedure: procedureReport(words, procedure),
    before: measureReport(done.before),
    after: measureReport(done.measure),
    substitution: {
      from,
      to,
      rewriting,
      kept,
      lost: [...lost],
      changes: changes.map((change) => ({
        what: change.what,
        step: change.step.id,
        sentence: words.order.change(before, procedure, change),
      })),
      retraining: retraining.map(({ person, role, changes: own }) => ({
        person,
        role,
        steps: own.map(({ step }) => step.id),
      })),
    },
  };
}
