// One procedure: its head, the check's summary, and the views of it: steps with picture, ledger, surfaces, one finding.
import { useMemo } from 'react';
import { Link, useSearchParams } from 'wouter';
import { useCheck } from '../check/client.ts';
import type { Judged } from '../check/result.ts';
import type { ProcedureKind } from '../../domain/procedure.ts';
import { AgentChooser } from '../findings/Filters.tsx';
import { FindingPage } from '../findings/FindingPage.tsx';
import { Unpictured } from '../findings/Unpictured.tsx';
import { useBook } from '../journal/useBook.ts';
import { Ledger } from '../ledger/Ledger.tsx';
import { donningFor, type Entry, questionFor, useEntry } from '../library.ts';
import { worstOf } from '../model/board.ts';
import { type AgentChoice, choiceFrom, shownFor } from '../model/findings.ts';
import { Diagnostics } from '../parts/Diagnostics.tsx';
import { ProcedureHead } from '../parts/ProcedureHead.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import type { Printable } from '../print/paper.ts';
import { PrintPanel } from '../print/PrintPanel.tsx';
import { Steps } from '../steps/Steps.tsx';
import { Supplies } from '../supplies/Supplies.tsx';
import { Surfaces } from '../surfaces/Surfaces.tsx';
import type { ViewProps } from '../view.ts';
import { NotFound } from './NotFound.tsx';

const VIEWS = [
  { view: 'steps', name: 'Steps' },
  { view: 'ledger', name: 'Ledger' },
  { view: 'surfaces', name: 'Surfaces' },
  { view: 'supplies', name: 'Supplies' },
] as const;

interface ViewsProps {
  readonly id: string;
  readonly view: string;
  readonly search: string;
  readonly kind: ProcedureKind;
}

function Views({ id, view, search, kind }: ViewsProps) {
  return (
    <nav className="tabs" aria-label="Views of this procedure">
      {VIEWS.map((one) => (
        <Link
          key={one.view}
          href={`/procedure/${id}/${one.view}${search}`}
          {...(one.view === view ? { 'aria-current': 'page' as const } : {})}
        >
          {one.name}
        </Link>
      ))}
      {kind === 'doffing' && <Link href={`/order/procedure/${id}/search`}>Better order</Link>}
      <Link href={`/guide?procedure=${id}`}>Guide</Link>
    </nav>
  );
}

/** The agent is part of the address, so that a link shows what was meant. */
function useAgent(judged: Judged | undefined): readonly [AgentChoice, (choice: AgentChoice) => void] {
  const [params, setParams] = useSearchParams();
  const choice = choiceFrom(params.get('agent'), judged?.procedure.agents ?? []);
  const choose = (next: AgentChoice) =>
    setParams((before) => {
      before.set('agent', next);
      return before;
    });
  return [choice, choose];
}

interface BodyProps extends ViewProps {
  readonly view: string;
  readonly findingKey: string | undefined;
}

function Body({ view, findingKey, ...props }: BodyProps) {
  if (view === 'ledger') return <Ledger {...props} />;
  if (view === 'surfaces') return <Surfaces {...props} />;
  if (view === 'supplies') return <Supplies {...props} />;
  if (view === 'finding') return <FindingPage {...props} findingKey={findingKey} />;
  return <Steps {...props} />;
}

const printableOf = ({ text, donning, approval }: Entry): Printable => ({
  text,
  donning: donningFor(donning),
  approval: approval ?? { is: 'not-recorded' },
});

interface CheckedProps {
  readonly entry: Entry;
  readonly view: string;
  readonly findingKey: string | undefined;
}

function Checked({ entry, view, findingKey }: CheckedProps) {
  const progress = useCheck(questionFor(entry));
  const { result } = progress;
  const judged = result?.judged;
  const [choice, choose] = useAgent(judged);
  const board = useMemo(
    () => judged && worstOf(judged.boards.filter((one) => choice === 'all' || one.agents.includes(choice))),
    [judged, choice],
  );
  const shown = useMemo(() => shownFor(judged?.findings ?? [], choice), [judged, choice]);
  const search = `?agent=${choice}`;
  return (
    <>
      <ProcedureHead entry={entry} procedure={judged?.procedure} brief={view !== 'steps'}>
        <Waiting progress={progress} />
      </ProcedureHead>
      {result && result.diagnostics.length > 0 && (
        <Diagnostics diagnostics={result.diagnostics} text={entry.text} />
      )}
      {judged && judged.boards.length === 0 && (
        <Unpictured judged={judged} shown={shown} complete={result?.complete ?? false} />
      )}
      {judged && board && (
        <>
          <div className="bar">
            <Views id={entry.id} view={view} search={search} kind={judged.procedure.kind} />
            <AgentChooser named={judged.procedure.agents} choice={choice} choose={choose} />
          </div>
          <PrintPanel printable={() => printableOf(entry)} />
          <Body
            id={entry.id}
            judged={judged}
            board={board}
            shown={shown}
            choice={choice}
            view={view}
            findingKey={findingKey}
            complete={result?.complete ?? false}
          />
        </>
      )}
    </>
  );
}

interface ProcedurePageProps {
  readonly id: string;
  readonly view: string;
  readonly findingKey: string | undefined;
}

export function ProcedurePage({ id, view, findingKey }: ProcedurePageProps) {
  const entry = useEntry(id);
  const { is } = useBook();
  if (!entry && is === 'opening') return <output className="waiting">Opening the journal …</output>;
  if (!entry) return <NotFound what={`The procedure “${id}”`} />;
  return <Checked key={entry.id + entry.text} entry={entry} view={view} findingKey={findingKey} />;
}
