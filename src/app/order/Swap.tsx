// One thing in place of another: choose both, and see the least rewriting, what is lost, what changes step by step and who has
// to learn it.
import { useMemo, useState } from 'react';
import type { Procedure } from '../../domain/procedure.ts';
import { retrainingFor } from '../../order/changes.ts';
import { whyNoSubstitute } from '../../order/substitute.ts';
import { Tick } from '../parts/Choices.tsx';
import { Labelled } from '../parts/Labelled.tsx';
import { words } from '../words.ts';
import { AnswerHeading, Asides, Take } from './Answer.tsx';
import { Figures } from './Figures.tsx';
import { changesOf, type Row, rowsOf } from './model/rows.ts';
import { isItem, isProduct, leftBare, type Likeness, standInsFor, thingsOf } from './model/swaps.ts';
import type { Limits, Swapped } from './result.ts';
import { Controls } from './Running.tsx';
import { AgentAndTime, type Wanted } from './Settings.tsx';
import type { Source } from './source.ts';
import { countsText, StepRows } from './StepRows.tsx';
import type { Runner } from './useRun.ts';
import { capital } from '../../words/capital.ts';

export interface SwapQuestion {
  readonly procedure: Procedure;
  readonly from: string;
  readonly to: string;
  readonly limits: Limits;
}

interface Group {
  readonly name: string;
  readonly choices: readonly { readonly value: string; readonly name: string }[];
}

interface ListProps {
  readonly label: string;
  readonly value: string;
  readonly groups: readonly Group[];
  readonly set: (value: string) => void;
}

function List({ label, value, groups, set }: ListProps) {
  return (
    <Labelled label={label}>
      {(tied) => (
        <select {...tied} value={value} onChange={(event) => set(event.target.value)}>
          <option value="">(choose)</option>
          {groups.map(({ name, choices }) => (
            <optgroup key={name} label={name}>
              {choices.map((choice) => (
                <option key={choice.value} value={choice.value}>
                  {choice.name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      )}
    </Labelled>
  );
}

/** The name of an item or a product. */
function nameOf(id: string): string {
  if (isItem(id)) return words.item(id);
  return isProduct(id) ? words.product(id) : id;
}

const named = (ids: readonly string[]): Group['choices'] =>
  ids.map((value) => ({ value, name: capital(nameOf(value)) }));

/** Groups with nothing in them are left out. */
const filled = (groups: readonly Group[]): readonly Group[] =>
  groups.filter(({ choices }) => choices.length > 0);

function replaceable(procedure: Procedure): readonly Group[] {
  const { items, products } = thingsOf(procedure);
  return filled([
    { name: 'Worn', choices: named(items) },
    { name: 'Products', choices: named(products) },
  ]);
}

const LIKE: Readonly<Record<Likeness, string>> = {
  all: 'Covers all that it covers',
  some: 'Covers a part of what it covers',
  none: 'Covers something else',
};

function standIns(procedure: Procedure, from: string): readonly Group[] {
  return standInsFor(procedure, from).map(({ like, ids }) => ({
    name: isProduct(from) ? 'Products' : LIKE[like],
    choices: named(ids),
  }));
}

interface DoneProps {
  readonly source: Source;
  readonly question: SwapQuestion;
  readonly answer: Swapped | undefined;
}

/** What is worse, and what is no longer covered. */
function Lost({ given, answer: { done } }: { readonly given: Procedure; readonly answer: Swapped }) {
  const bare = leftBare(given, done.procedure);
  return (
    <>
      <h3>What is lost</h3>
      {done.lost.length === 0 && bare.length === 0 && <p>No figure of the check is worse than before.</p>}
      <ul>
        {done.lost.map((one) => (
          <li key={one.figure}>{capital(words.order.difference(one))}.</li>
        ))}
        {bare.length > 0 && (
          <li>
            Covered before and bare now, from the start on:{' '}
            {bare.map((surface) => words.surface(given, surface)).join('; ')}.
          </li>
        )}
      </ul>
    </>
  );
}

function Learning({
  given,
  found,
  rows,
}: {
  readonly given: Procedure;
  readonly found: Procedure;
  readonly rows: readonly Row[];
}) {
  const retraining = retrainingFor(found, changesOf(rows));
  return (
    <>
      <h3>Who has to learn it</h3>
      {retraining.length === 0 && (
        <p>
          No step is new to anybody: every one is as it was. Whether what comes instead has to be practised or
          fit tested is not judged here.
        </p>
      )}
      {retraining.map((one) => (
        <details key={one.person}>
          <summary>{words.order.retraining(found, one)}</summary>
          <ul>
            {one.changes.map((change) => (
              <li key={`${change.what} ${change.step.id}`}>{words.order.change(given, found, change)}</li>
            ))}
          </ul>
        </details>
      ))}
    </>
  );
}

function Done({ source, question, answer }: DoneProps) {
  const { procedure: given, from, to } = question;
  const [whole, setWhole] = useState(false);
  const rows = useMemo(() => (answer ? rowsOf(given, answer.done.procedure) : []), [given, answer]);
  const title = `${capital(nameOf(to))} in place of ${nameOf(from)}`;
  if (!answer) {
    return (
      <section aria-labelledby="swapped-title">
        <AnswerHeading id="swapped-title">{title}</AnswerHeading>
        <p>No way was found to do these steps with it.</p>
      </section>
    );
  }
  const { done, asides } = answer;
  const shown = whole ? rows : rows.filter(({ what }) => what !== 'same');
  return (
    <section aria-labelledby="swapped-title">
      <AnswerHeading id="swapped-title">{title}</AnswerHeading>
      <div className="proof">
        <p>
          <b>{words.order.rewriting(done.rewriting)}</b> {words.order.kept(done.kept)}
        </p>
      </div>
      <Lost given={given} answer={answer} />
      <Figures
        caption={`Against the ${words.agent(done.agent)}. Weighed from top to bottom: the first figure that differs decides.`}
        before={done.before}
        after={done.measure}
        heads={['Before', 'After']}
      />
      <Asides asides={asides} />
      <Take
        source={source}
        given={given}
        found={done.procedure}
        done={title}
        press="Take this into a draft"
      />
      <Learning given={given} found={done.procedure} rows={rows} />
      <h3>What changes, step by step: {countsText(rows)}</h3>
      <Tick on={whole} set={setWhole}>
        Every step
      </Tick>
      <StepRows before={given} after={done.procedure} rows={shown} />
    </section>
  );
}

interface SwapProps {
  readonly source: Source;
  readonly procedure: Procedure;
  readonly wanted: Wanted;
  readonly change: (wanted: Wanted) => void;
  readonly runner: Runner<SwapQuestion, Swapped | undefined>;
}

export function Swap({ source, procedure, wanted, change, runner }: SwapProps) {
  const { run, start, cancel } = runner;
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const candidates = from === '' ? [] : standIns(procedure, from);
  const ready = from !== '' && to !== '' && whyNoSubstitute(procedure, from, to) === undefined;
  const limits: Limits = { agent: wanted.agent, free: false, milliseconds: Number(wanted.time) * 1000 };
  const choose = (next: string): void => {
    setFrom(next);
    setTo('');
  };
  return (
    <>
      <p>
        The supplier sends something else: see whether the same steps will do, or which few must change,
        before a new order is searched. Whether it fits, protects and may be used for this is not judged here:
        equipment instructions, fit testing and local rules decide.
      </p>
      <section aria-label="What stands for what" className="card">
        <div className="fields">
          <List label="In place of" value={from} groups={replaceable(procedure)} set={choose} />
          <List label="What comes instead" value={to} groups={candidates} set={setTo} />
        </div>
        <AgentAndTime wanted={wanted} change={change} />
        <Controls
          run={run}
          start={() => start({ procedure, from, to, limits })}
          cancel={cancel}
          press={['See what changes', 'See what changes']}
          disabled={!ready}
        />
      </section>
      {run.is === 'done' && (
        <Done
          key={`${run.question.from} ${run.question.to} ${run.took}`}
          source={source}
          question={run.question}
          answer={run.answer}
        />
      )}
    </>
  );
}
