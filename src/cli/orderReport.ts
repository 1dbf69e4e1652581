// From an order found, or a substitution, to the object that `order --json` prints.
import type { Procedure } from '../domain/procedure.ts';
import { printProcedure } from '../language/index.ts';
import type { OrderResult } from '../order/index.ts';
import type { Substitution } from '../order/substitute.ts';
import { CAUTIONS, wordsFor } from '../words/index.ts';
import { changeSentence, choiceSentence } from '../words/en/order.ts';
import { ORDER_FORMAT, type OrderReport } from './orderSchema.ts';
import { measureReport } from './report.ts';
import type { Subject } from './subject.ts';
import { VERSION } from './version.ts';

const words = wordsFor('en');

const procedureReport = (procedure: Procedure): NonNullable<OrderReport['procedure']> => ({
  title: procedure.title,
  steps: procedure.steps.map((step, index) => ({
    number: index + 1,
    id: step.id,
    who: step.who,
    action: step.action,
    sentence: words.step(procedure, step),
  })),
  text: printProcedure(procedure),
});

/** What is said where there is nothing to say of an order. */
export function nothingFound({ file, complaints }: Subject, refusal: string | null): OrderReport {
  return {
    format: ORDER_FORMAT,
    version: VERSION,
    file,
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
    cautions: [...CAUTIONS],
  };
}

export function orderReportOf(subject: Subject, result: OrderResult, status: 0 | 1 | 2): OrderReport {
  const { procedure } = result;
  return {
    ...nothingFound(subject, null),
    status,
    agent: result.agent,
    procedure: procedureReport(procedure),
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
      sentence: choiceSentence(procedure, choice),
    })),
  };
}

export function substitutionReportOf(
  subject: Subject,
  before: Procedure,
  [from, to]: readonly [string, string],
  done: Substitution,
  status: 0 | 1 | 2,
): OrderReport {
  const { procedure, rewriting, kept, lost, changes, retraining } = done;
  return {
    ...nothingFound(subject, null),
    status,
    agent: done.agent,
    procedure: procedureReport(procedure),
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
        sentence: changeSentence(before, procedure, change),
      })),
      retraining: retraining.map(({ person, role, changes: own }) => ({
        person,
        role,
        steps: own.map(({ step }) => step.id),
      })),
    },
  };
}
