// The steps in order: chosen to be changed, ticked to be moved, copied or deleted together, moved by dragging or by keys.
import { createContext, memo, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react';
import {
  Button,
  CheckboxButton,
  CheckboxField,
  Collection,
  DropIndicator,
  GridList,
  GridListItem,
  type Selection,
  useDragAndDrop,
  Virtualizer,
} from 'react-aria-components';
import type { Shown } from '../../model/findings.ts';
import type { Editing } from '../editing.ts';
import { moveSteps } from '../model/steps.ts';
import { type RowView, StepLayout, useRowViews } from './rows.ts';

interface StepListProps extends Editing {
  /** Findings beside each step, by its id. */
  readonly found: ReadonlyMap<string, readonly Shown[]>;
  readonly chosen: string | undefined;
  readonly choose: (id: string) => void;
  readonly ticked: ReadonlySet<string>;
  readonly tick: (ids: ReadonlySet<string>) => void;
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

function useReorder(now: () => Editing) {
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

/** The rows, apart from the list around them: an edit then draws the list once, when its rows are known, and not before as well. */
const Views = createContext<readonly RowView[]>([]);
const Items = () => <Collection items={useContext(Views)}>{row}</Collection>;

interface RowsProps extends Pick<StepListProps, 'choose' | 'ticked' | 'tick'> {
  readonly now: () => Editing;
  readonly long: boolean;
}

function Rows({ now, long, choose, ticked, tick }: RowsProps) {
  const { dragAndDropHooks } = useReorder(now);
  const onSelection = useCallback(
    (keys: Selection) =>
      tick(keys === 'all' ? new Set(now().draft.steps.map(({ id }) => id)) : new Set([...keys].map(String))),
    [now, tick],
  );
  const onAction = useCallback((key: string | number) => choose(String(key)), [choose]);
  const list = (
    <GridList
      aria-label="Steps"
      className="edit-steps"
      selectionMode="multiple"
      selectionBehavior="toggle"
      selectedKeys={ticked}
      onSelectionChange={onSelection}
      onAction={onAction}
      dragAndDropHooks={dragAndDropHooks}
      renderEmptyState={NO_STEPS}
    >
      <Items />
    </GridList>
  );
  return long ? (
    <Virtualizer layout={StepLayout} layoutOptions={LAYOUT}>
      {list}
    </Virtualizer>
  ) : (
    list
  );
}

/** Drawn anew neither with the draft nor with an answer of the check: {@link Items} and {@link Marks} are. */
const KeptRows = memo(Rows);

export function StepList({ draft, edit, found, chosen, ...rest }: StepListProps) {
  const now = useNewest({ draft, edit });
  const views = useRowViews(draft, chosen);
  const [long] = useState(() => draft.steps.length > LONG);
  return (
    <Found.Provider value={found}>
      <Views.Provider value={views}>
        <KeptRows now={now} long={long} {...rest} />
      </Views.Provider>
    </Found.Provider>
  );
}
