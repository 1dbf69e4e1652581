// The better order: what the search may do, that it works, and what it found with its proof, figures, steps and reasons.
import { useMemo } from 'react';
import type { Procedure } from '../../domain/procedure.ts';
import { whyNot } from '../../order/index.ts';
import { words } from '../words.ts';
import { AnswerHeading, Asides, Take } from './Answer.tsx';
import { Figures } from './Figures.tsx';
import { reasonsOf, rowsOf } from './model/rows.ts';
import type { Limits, Ordered } from './result.ts';
import { Controls, tookText } from './Running.tsx';
import { AgentAndTime, Freedom, Pins, type Wanted } from './Settings.tsx';
import type { Source } from './source.ts';
import { countsText, StepRows } from './StepRows.tsx';
import type { Runner } from './useRun.ts';

export interface OrderQuestion {
  readonly procedure: Procedure;
  readonly limits: Limits;
}

interface FoundProps {
  readonly source: Source;
  readonly given: Procedure;
  readonly answer: Ordered;
  readonly took: number;
}

function Proof({ answer: { result, incomplete }, took }: Pick<FoundProps, 'answer' | 'took'>) {
  return (
    <div className={result.proved ? 'proof proved' : 'proof'}>
      <p>
        <b aria-hidden="true">{result.proved ? '✓ ' : '◐ '}</b>
        {words.order.proof(result)}
      </p>
      {result.free && (
        <p>Departures from published practice that the given steps do not make were allowed.</p>
      )}
      {incomplete && (
        <p>
          The given steps leave equipment on, so their figures are of less than a whole exit: do not compare
          the two columns.
        </p>
      )}
      <p className="quiet">Took {tookText(took)}.</p>
    </div>
  );
}

function Found({ source, given, answer, took }: FoundProps) {
  const { result, asides } = answer;
  const rows = useMemo(() => rowsOf(given, result.procedure), [given, result]);
  const reasons = useMemo(() => reasonsOf(result.choices), [result]);
  return (
    <section aria-labelledby="found-title">
      <AnswerHeading id="found-title">
        {!result.kept
          ? 'The order found'
          : result.proved
            ? 'The given order stands'
            : 'No better order was found'}
      </AnswerHeading>
      <Proof answer={answer} took={took} />
      <Figures
        caption={`Against the ${words.agent(result.agent)}. Weighed from top to bottom: the first figure that differs decides.`}
        before={result.before}
        after={result.measure}
        heads={['As given', 'As found']}
      />
      <Asides asides={asides} />
      {!result.kept && (
        <>
          <Take
            source={source}
            given={given}
            found={result.procedure}
            done="Better order"
            press="Take this order into a draft"
          />
          <h3>Its steps: {countsText(rows)}</h3>
          <StepRows before={given} after={result.procedure} rows={rows} reasons={reasons} />
        </>
      )}
    </section>
  );
}

interface SearchProps {
  readonly source: Source;
  readonly procedure: Procedure;
  readonly wanted: Wanted;
  readonly change: (wanted: Wanted) => void;
  readonly runner: Runner<OrderQuestion, Ordered>;
}

export function Search({ source, procedure, wanted, change, runner }: SearchProps) {
  const { run, start, cancel } = runner;
  const why = whyNot(procedure);
  if (why) return <p role="alert">{words.order.refusal(why)}</p>;
  const { agent, free, time } = wanted;
  const milliseconds = Number(time) * 1000;
  return (
    <>
      <p>
        The search tries other orders of taking off what is worn, with hand hygiene where it helps, and keeps
        the best by the check’s own measure. It knows only what its tables hold: whether an order can be
        taught and fits your rooms is for you to judge. No order is safe because it was found.
      </p>
      <section aria-label="What the search may do" className="card">
        <AgentAndTime wanted={wanted} change={change} />
        <Freedom wanted={wanted} change={change} />
        <Pins procedure={procedure} pin={source.pin} />
        <Controls
          run={run}
          start={() => start({ procedure, limits: { agent, free, milliseconds } })}
          cancel={cancel}
          press={['Search for a better order', 'Search again']}
        />
      </section>
      {run.is === 'done' && (
        <Found
          key={run.took}
          source={source}
          given={run.question.procedure}
          answer={run.answer}
          took={run.took}
        />
      )}
    </>
  );
}
