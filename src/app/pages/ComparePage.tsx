// Two procedures side by side: choose them, then the picture, then findings, chances, barriers, minutes and supplies.
import { useId } from 'react';
import { Link, useSearchParams } from 'wouter';
import { agentsOfBoth } from '../../compare/compare.ts';
import { useComparison } from '../compare/client.ts';
import { AlignedSteps, StepSentences } from '../compare/Aligned.tsx';
import { Barriers, ClassChances } from '../compare/Chances.tsx';
import { CostChanges } from '../compare/Costs.tsx';
import { FindingChanges } from '../compare/Findings.tsx';
import type { Compared } from '../compare/result.ts';
import { AgentChooser } from '../findings/Filters.tsx';
import { type Entry, LIBRARY, questionFor, useEntry, useOpened, useVersionEntries } from '../library.ts';
import { apartText, namesOf } from '../model/choiceNames.ts';
import { type AgentChoice, choiceFrom } from '../model/findings.ts';
import { useTitle } from '../parts/useTitle.ts';
import { words } from '../words.ts';
import { capital } from '../../words/capital.ts';

interface ChooserProps {
  readonly label: string;
  readonly value: string;
  readonly entries: readonly Entry[];
  readonly choose: (id: string) => void;
}

function groupOf({ opened, invented, stage }: Entry): string {
  if (stage !== undefined) return 'Versions in the journal';
  return opened ? 'Opened from this machine' : invented ? 'The invented unit' : 'After published procedures';
}

function Chooser({ label, value, entries, choose }: ChooserProps) {
  const groups = [...new Set(entries.map(groupOf))];
  const names = namesOf(entries);
  const chosen = entries.find((entry) => entry.id === value);
  const id = useId();
  return (
    <div className="chooser">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => choose(event.target.value)}>
        {/* Without it the browser would show the first of the list, as if it were chosen. */}
        {!chosen && <option value="">(choose)</option>}
        {groups.map((group) => (
          <optgroup key={group} label={group}>
            {entries
              .filter((entry) => groupOf(entry) === group)
              .map((entry) => (
                <option key={entry.id} value={entry.id}>
                  {names.get(entry.id)}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
      {/* A narrow list cuts long titles off before what tells them apart. */}
      {chosen && (
        <span className="quiet">
          {capital(apartText(chosen))}: {chosen.fileName}
        </span>
      )}
    </div>
  );
}

/** What only one of them has comes before every figure. */
function Gaps({ compared: { a, b, comparison } }: { readonly compared: Compared }) {
  const { gaps, exact } = comparison;
  if (gaps.length === 0 && exact) return null;
  return (
    <section aria-labelledby="gaps-title">
      <h2 id="gaps-title">What cannot be compared</h2>
      <ul className="plain caution-box">
        {gaps.map((gap) => (
          <li key={`${gap.what} ${gap.only} ${gap.id}`}>{words.compare.gap(a, b, gap)}</li>
        ))}
        {!exact && <li>One of them was not worked out exactly: nothing is said of its surfaces.</li>}
      </ul>
    </section>
  );
}

interface ResultProps {
  readonly compared: Compared;
  readonly ids: readonly [string, string];
  readonly choice: AgentChoice;
  readonly choose: (choice: AgentChoice) => void;
}

function Result({ compared, ids, choice, choose }: ResultProps) {
  return (
    <>
      <AlignedSteps compared={compared} />
      <div className="bar">
        <AgentChooser named={agentsOfBoth(compared.a, compared.b)} choice={choice} choose={choose} />
      </div>
      <Gaps compared={compared} />
      <FindingChanges compared={compared} ids={ids} choice={choice} />
      {compared.comparison.exact && (
        <>
          <ClassChances compared={compared} choice={choice} />
          <Barriers compared={compared} choice={choice} />
        </>
      )}
      <CostChanges compared={compared} />
      <StepSentences compared={compared} />
    </>
  );
}

interface BothProps {
  readonly a: Entry;
  readonly b: Entry;
  readonly wanted: string | null;
  readonly choose: (choice: AgentChoice) => void;
}

function Both({ a, b, wanted, choose }: BothProps) {
  const { state, answer, why } = useComparison(questionFor(a), questionFor(b));
  const compared = answer && 'compared' in answer ? answer.compared : undefined;
  const broken = answer && 'broken' in answer ? answer.broken : [];
  const waiting = state === 'running' ? (compared ? 'Trying moved steps …' : 'Comparing …') : '';
  const choice = choiceFrom(wanted, compared ? agentsOfBoth(compared.a, compared.b) : []);
  return (
    <>
      <output className={waiting ? 'waiting' : 'visually-hidden'}>
        {waiting && <progress aria-label={waiting} />}
        {waiting}
      </output>
      {state === 'failed' && (
        <p role="alert" className="wrong">
          Comparing stopped: {why}. What is shown may be incomplete. Reload the page to try again.
        </p>
      )}
      {broken.map((side) => {
        const entry = side === 'a' ? a : b;
        return (
          <p key={side} role="alert" className="wrong">
            {entry.fileName} has errors and cannot be compared.{' '}
            <Link href={`/procedure/${entry.id}/steps`}>See where they are.</Link>
          </p>
        );
      })}
      {compared && <Result compared={compared} ids={[a.id, b.id]} choice={choice} choose={choose} />}
    </>
  );
}

const FIRST = 'larkmoor-suit-doffing';
const SECOND = 'larkmoor-suit-doffing-v2';

export function ComparePage() {
  const [params, setParams] = useSearchParams();
  const opened = useOpened();
  useTitle('Compare');
  const set = (values: Readonly<Record<string, string>>) =>
    setParams((before) => {
      for (const [name, value] of Object.entries(values)) before.set(name, value);
      return before;
    });
  const [idA, idB] = [params.get('a') ?? FIRST, params.get('b') ?? SECOND];
  const [a, b] = [useEntry(idA), useEntry(idB)];
  const ofUnit = useVersionEntries();
  const entries = [...(opened ? [opened] : []), ...ofUnit, ...LIBRARY];
  return (
    <div className="compare">
      <h1>Compare two procedures</h1>
      <p className="lead">
        What changed in the steps, and what that changes. No figure says that either is safe.
      </p>
      <div className="choosers">
        <Chooser label="First" value={a?.id ?? ''} entries={entries} choose={(id) => set({ a: id })} />
        <Chooser label="Second" value={b?.id ?? ''} entries={entries} choose={(id) => set({ b: id })} />
        <button type="button" className="button" onClick={() => set({ a: idB, b: idA })}>
          Swap
        </button>
      </div>
      {a && b ? (
        <Both
          key={`${a.id} ${b.id} ${a.text.length} ${b.text.length}`}
          a={a}
          b={b}
          wanted={params.get('agent')}
          choose={(agent) => set({ agent })}
        />
      ) : (
        <p role="alert">One of the two is not here any more. Choose another.</p>
      )}
    </div>
  );
}
