// The steps in order: chosen to be changed, ticked to be moved, copied or deleted together, moved by dragging or by keys.
import { createContext, memo, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react';
import {
  Button,
  CheckboxButton,
  CheckboxField,
  DropIndicator,
  GridList,
  GridListItem,
  ListLayout,
  type Selection,
  useDragAndDrop,
  Virtualizer,
} from 'react-aria-components';
import type { Procedure, Step } from '../../../domain/procedure.ts';
import type { Shown } from '../../model/findings.ts';
import { type Editing, sentenceOf } from '../editing.ts';
import { moveSteps } from '../model/steps.ts';

interface StepListProps extends Editing {
  /** Findings beside each step, by its id. */
  readonly found: ReadonlyMap<string, readonly Shown[]>;
  readonly chosen: string | undefined;
  readonly choose: (id: string) => void;
  readonly ticked: ReadonlySet<string>;
  readonly tick: (ids: ReadonlySet<string>) => void;
}

/** All that a row shows. The same object as long as nothing of it changes, so that an edit draws only the rows it touches. */
interface RowView {
  readonly id: string;
  readonly number: number;
  readonly sentence: string;
  readonly note: string | undefined;
  readonly chosen: boolean;
}

const sameView = (one: RowView, other: RowView): boolean =>
  one.number === other.number &&
  one.sentence === other.sentence &&
  one.note === other.note &&
  one.chosen === other.chosen;

const viewOf = (draft: Procedure, step: Step, index: number, chosen: string | undefined): RowView => ({
  id: step.id,
  number: index + 1,
  sentence: sentenceOf(draft, step),
  note: step.note,
  chosen: step.id === chosen,
});

/** A step is a new object when it is edited, so its last view can stand beside it. */
const VIEWS = new WeakMap<Step, RowView>();

function sameAsBefore(step: Step, view: RowView): RowView {
  const before = VIEWS.get(step);
  if (before && sameView(before, view)) return before;
  VIEWS.set(step, view);
  return view;
}

/** Findings beside each step. Apart from the rows: an answer of the check then draws these marks anew and nothing else. */
const Found = createContext<StepListProps['found']>(new Map());

const isError = ({ finding }: Shown): boolean => finding.severity === 'error' && !finding.accepted;

function Marks({ step }: { readonly step: string }) {
  const beside = useContext(Found).get(step) ?? [];
  const errors = beside.filter(isError).length;
  const notes = beside.length - errors;
  // Room is kept where there are none, so that no row moves under a finger when the check answers.
  if (errors + notes === 0) return <span className="step-marks" />;
  return (
    <span className="step-marks">
      <span aria-hidden="true">
        {[errors > 0 ? `▲\u00a0${errors}` : '', notes > 0 ? `●\u00a0${notes}` : ''].join(' ')}
      </span>
      <span className="visually-hidden">
        {errors} errors, {notes} notes
      </span>
    </span>
  );
}

/** What is called later is the newest, what is handed down is always the same. */
function useNewest<Value>(value: Value): () => Value {
  const newest = useRef(value);
  useEffect(() => {
    newest.current = value;
  });
  return useCallback(() => newest.current, []);
}

function useReorder(editing: Editing) {
  const now = useNewest(editing);
  const options = useMemo<Parameters<typeof useDragAndDrop>[0]>(
    () => ({
      getItems: (keys) =>
        [...keys].map((key) => ({
          'text/plain': now().draft.steps.find(({ id }) => id === key)?.action ?? '',
        })),
      onReorder: ({ keys, target }) => {
        if (target.dropPosition === 'on') return;
        const { draft, edit } = now();
        const ids = new Set([...keys].map(String));
        const moved = moveSteps(draft, ids, String(target.key), target.dropPosition);
        edit(moved, ids.size === 1 ? 'Move a step' : `Move ${ids.size} steps`);
      },
      renderDropIndicator: (target) => <DropIndicator target={target} className="drop-line" />,
    }),
    [now],
  );
  return useDragAndDrop(options);
}

const row = (view: RowView) => (
  <GridListItem
    id={view.id}
    textValue={`${view.number} ${view.sentence}`}
    className={view.chosen ? 'edit-step chosen' : 'edit-step'}
  >
    <Button slot="drag" className="grip" aria-label={`Move step ${view.number}`}>
      ⠿
    </Button>
    <CheckboxField slot="selection" className="row-tick">
      <CheckboxButton className="pill">
        <span className="tick" aria-hidden="true" />
      </CheckboxButton>
    </CheckboxField>
    <span className="step-number">{view.number}</span>
    <span className="step-text">
      {view.sentence}
      {view.note && <span className="quiet note">{view.note}</span>}
    </span>
    <Marks step={view.id} />
  </GridListItem>
);

/** Of a longer list only the rows in sight are in the page, so that an edit draws no others. Decided as it is opened. */
const LONG = 40;

/** A row of one line; the others are measured. */
const LAYOUT = { estimatedRowHeight: 49, dropIndicatorThickness: 3 };

const NO_STEPS = () => <p className="quiet">No steps yet. Type the first one above.</p>;

function Rows({ draft, edit, chosen, choose, ticked, tick }: Omit<StepListProps, 'found'>) {
  const { dragAndDropHooks } = useReorder({ draft, edit });
  const views = useMemo(
    () => draft.steps.map((step, index) => sameAsBefore(step, viewOf(draft, step, index, chosen))),
    [draft, chosen],
  );
  const onSelection = useCallback(
    (keys: Selection) =>
      tick(keys === 'all' ? new Set(draft.steps.map(({ id }) => id)) : new Set([...keys].map(String))),
    [draft, tick],
  );
  const list = (
    <GridList
      aria-label="Steps"
      className="edit-steps"
      selectionMode="multiple"
      selectionBehavior="toggle"
      selectedKeys={ticked}
      onSelectionChange={onSelection}
      onAction={(key) => choose(String(key))}
      dragAndDropHooks={dragAndDropHooks}
      items={views}
      renderEmptyState={NO_STEPS}
    >
      {row}
    </GridList>
  );
  const [long] = useState(() => draft.steps.length > LONG);
  return long ? (
    <Virtualizer layout={ListLayout} layoutOptions={LAYOUT}>
      {list}
    </Virtualizer>
  ) : (
    list
  );
}

/** Drawn anew only with the draft, not with every answer of the check. */
const KeptRows = memo(Rows);

export function StepList({ found, ...rest }: StepListProps) {
  return (
    <Found.Provider value={found}>
      <KeptRows {...rest} />
    </Found.Provider>
  );
}
