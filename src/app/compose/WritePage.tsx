// Writing one draft: its title, undo and redo, and the views of it. Every edit is kept at once and checked at once.
import { useCallback, useEffect, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link, useLocation, useSearchParams } from 'wouter';
import { costOfProcedure } from '../../costing/cost.ts';
import { LONGEST } from '../../domain/lengths.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { Ledger } from '../ledger/Ledger.tsx';
import { donningFor } from '../library.ts';
import { NoDraft } from '../pages/NotFound.tsx';
import { useLanding } from '../parts/useLanding.ts';
import { PrintPanel } from '../print/PrintPanel.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { Supplies } from '../supplies/Supplies.tsx';
import { Surfaces } from '../surfaces/Surfaces.tsx';
import { Send } from '../versions/Send.tsx';
import type { ViewProps } from '../view.ts';
import { words } from '../words.ts';
import { type Checked, useChecked } from './checked.ts';
import type { Editing } from './editing.ts';
import { File } from './File.tsx';
import { TextLine } from './parts.tsx';
import { People } from './people/People.tsx';
import { Room } from './room/Room.tsx';
import { Rules } from './rules/Rules.tsx';
import { Steps } from './steps/Steps.tsx';
import type { DraftState } from './store/drafts.ts';
import { textOf } from './model/draft.ts';
import { drafts, useDraft } from './store/useDrafts.ts';
import { Unfinished } from './Unfinished.tsx';

const VIEWS = [
  { view: 'people', name: 'People' },
  { view: 'room', name: 'Room' },
  { view: 'steps', name: 'Steps' },
  { view: 'rules', name: 'Rules' },
  { view: 'ledger', name: 'Ledger' },
  { view: 'surfaces', name: 'Surfaces' },
  { view: 'supplies', name: 'Supplies' },
  { view: 'file', name: 'File' },
  { view: 'review', name: 'Review' },
] as const;

/** Where a new draft goes on from each view, so that nobody has to go back up to the list of views. */
const NEXT: Readonly<Record<string, (typeof VIEWS)[number]['view'] | undefined>> = {
  people: 'room',
  room: 'steps',
  steps: 'review',
  rules: 'review',
};

function Next({ id, view }: { readonly id: string; readonly view: string }) {
  const next = VIEWS.find((one) => one.view === NEXT[view]);
  if (!next) return null;
  return (
    <p className="actions next-view">
      <Link href={`/write/${id}/${next.view}`} className="button">
        Next: {next.name}
      </Link>
    </p>
  );
}

/** Fields with an undo of their own keep it. */
const ownUndo = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input[type=text], textarea') !== null &&
  !target.dataset.draft;

/** Control or Command with Z, and with Shift Z or Y. */
function useUndoKeys(id: string): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || ownUndo(event.target)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      drafts.apply(id, { do: key === 'y' || event.shiftKey ? 'redo' : 'undo' });
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [id]);
}

function History({ id, state }: { readonly id: string; readonly state: DraftState }) {
  const { past, present, future } = state.history;
  const next = future[0];
  // The last there is to undo or redo was pressed: the other button has the focus.
  const { place: undo, land: landOnUndo } = useLanding<HTMLButtonElement>();
  const { place: redo, land: landOnRedo } = useLanding<HTMLButtonElement>();
  return (
    <div role="toolbar" aria-label="Undo and redo" className="actions history">
      <Button
        ref={undo}
        className="button"
        aria-keyshortcuts="Control+Z"
        aria-label={past.length > 0 ? `Undo: ${present.done}` : 'Undo'}
        isDisabled={past.length === 0}
        onPress={() => {
          drafts.apply(id, { do: 'undo' });
          landOnRedo();
        }}
      >
        ↶ Undo
      </Button>
      <Button
        ref={redo}
        className="button"
        aria-keyshortcuts="Control+Y"
        aria-label={next ? `Redo: ${next.done}` : 'Redo'}
        isDisabled={next === undefined}
        onPress={() => {
          drafts.apply(id, { do: 'redo' });
          landOnUndo();
        }}
      >
        ↷ Redo
      </Button>
      <span className="quiet last-done">{present.done}</span>
    </div>
  );
}

const KEPT: Readonly<Record<DraftState['kept'], string>> = {
  all: 'Kept in this browser.',
  some: 'Kept in this browser, with fewer undo steps: its store is nearly full.',
  none: 'Not kept: the browser’s store is full or closed. Save the file before you leave.',
};

function progressText({ judged, current, complete, why, diagnostics }: Checked, draft: Procedure): string {
  if (draft.steps.length === 0) return 'Nothing to check yet: there are no steps.';
  if (why !== undefined) return `The check stopped: ${why}.`;
  if (!current) return 'Checking …';
  if (!judged) return diagnostics ? 'Not finished, so not checked.' : 'Checking …';
  return complete ? 'Checked as it stands.' : 'Checked; trying mends and moved steps …';
}

function Status({ draft, checked, kept }: { draft: Procedure; checked: Checked; kept: DraftState['kept'] }) {
  return (
    <p className="write-status quiet">
      <span className="badge">Draft</span> <span className="badge">{words.kind(draft.kind)}</span>{' '}
      {draft.invented && <span className="badge invented">Invented, for demonstration</span>}{' '}
      <output>{progressText(checked, draft)}</output>{' '}
      <span className={kept === 'all' ? '' : 'wrong'}>{KEPT[kept]}</span>
    </p>
  );
}

interface BodyProps extends Editing {
  readonly id: string;
  readonly view: string;
  readonly checked: Checked;
}

/** The quick check of a draft leaves the supplies out: they are counted where they are looked at. */
function CountedSupplies(props: ViewProps) {
  const { judged } = props;
  const counted = useMemo(() => ({ ...judged, cost: costOfProcedure(judged.procedure) }), [judged]);
  return <Supplies {...props} judged={counted} />;
}

function CheckedView({
  id,
  view,
  checked,
  lead,
}: Omit<BodyProps, keyof Editing> & { readonly lead: (step: number) => void }) {
  const { judged, board, shown, choice, complete, surfaces } = checked;
  if (!judged || !board) return <p>There is nothing to show until the draft has been checked.</p>;
  const props = { id, judged, board, shown, choice, complete };
  if (view === 'ledger') return <Ledger {...props} lead={(_, step) => lead(step)} />;
  if (view === 'supplies') return <CountedSupplies {...props} />;
  return surfaces ? <Surfaces {...props} /> : <p>Chances are worked out after a short pause …</p>;
}

function Body({ id, view, checked, ...editing }: BodyProps) {
  const [, go] = useLocation();
  const [chosen, choose] = useState<string>();
  const chooseStep = useCallback(
    (step: string) => {
      choose(step);
      go(`/write/${id}/steps`, { replace: true });
    },
    [go, id],
  );
  const unfinished = <Unfinished draft={editing.draft} checked={checked} choose={chooseStep} />;
  if (view === 'people') return <People {...editing} />;
  if (view === 'room') return <Room {...editing} />;
  if (view === 'file') return <File {...editing} />;
  if (view === 'review') return <Send id={id} {...editing} checked={checked} />;
  if (view === 'rules') return <Rules {...editing} checked={checked} />;
  if (view === 'ledger' || view === 'surfaces' || view === 'supplies') {
    const lead = (step: number): void => chooseStep(checked.judged?.procedure.steps[step - 1]?.id ?? '');
    return <CheckedView id={id} view={view} checked={checked} lead={lead} />;
  }
  return (
    <>
      {unfinished}
      <Steps {...editing} checked={checked} chosenId={chosen} choose={choose} />
    </>
  );
}

function CommentsLost() {
  const [params, setParams] = useSearchParams();
  if (params.get('comments') === null) return null;
  return (
    <output className="caution-box plain">
      <p>
        The file has comments. A procedure does not hold them: they are not in this draft and will not be in
        the file that you save. The file that you opened stays as it is.
      </p>
      <Button className="button" onPress={() => setParams({}, { replace: true })}>
        Understood
      </Button>
    </output>
  );
}

function Draft({
  id,
  view,
  state,
}: {
  readonly id: string;
  readonly view: string;
  readonly state: DraftState;
}) {
  const draft = state.history.present.procedure;
  const checked = useChecked(id, draft);
  const edit = useCallback<Editing['edit']>(
    (procedure, done, merge) =>
      drafts.apply(id, { do: 'edit', procedure, done, ...(merge === undefined ? {} : { merge }) }),
    [id],
  );
  const editing = useMemo(() => ({ draft, edit }), [draft, edit]);
  useUndoKeys(id);
  useTitle(`Write: ${draft.title}`);
  return (
    <div className="write">
      <h1 className="visually-hidden">Write: {draft.title}</h1>
      <div className="write-head">
        <TextLine
          label="Title"
          most={LONGEST.label}
          value={draft.title}
          set={(title) => edit({ ...draft, title }, 'Change the title', 'title')}
        />
        <History id={id} state={state} />
        {draft.kind === 'doffing' && (
          <Link href={`/order/draft/${id}/search`} className="button">
            Better order …
          </Link>
        )}
      </div>
      <Status draft={draft} checked={checked} kept={state.kept} />
      <CommentsLost />
      <PrintPanel
        printable={() => ({
          text: textOf(draft),
          approval: { is: 'draft' },
          donning: donningFor(draft.donning),
        })}
      />
      <nav className="tabs write-tabs" aria-label="Views of this draft">
        {VIEWS.map((one) => (
          <Link
            key={one.view}
            href={`/write/${id}/${one.view}`}
            {...(one.view === view ? { 'aria-current': 'page' as const } : {})}
          >
            {one.name}
          </Link>
        ))}
      </nav>
      <Body id={id} view={view} checked={checked} {...editing} />
      <Next id={id} view={view} />
    </div>
  );
}

export function WritePage({ id, view }: { readonly id: string; readonly view: string }) {
  const state = useDraft(id);
  if (!state) return <NoDraft />;
  return <Draft key={id} id={id} view={view} state={state} />;
}
