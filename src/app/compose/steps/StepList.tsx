// The steps in order: chosen to be changed, ticked to be moved, copied or deleted together, moved by dragging or by keys.
import { useCallback } from 'react';
import {
  Button,
  CheckboxButton,
  CheckboxField,
  DropIndicator,
  GridList,
  GridListItem,
  type Selection,
  useDragAndDrop,
} from 'react-aria-components';
import type { Step } from '../../../domain/procedure.ts';
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

function Marks({ found }: { readonly found: readonly Shown[] }) {
  const errors = found.filter(({ finding }) => finding.severity === 'error' && !finding.accepted).length;
  const notes = found.length - errors;
  // Room is kept where there are none, so that no row moves under a finger when the check answers.
  if (found.length === 0) return <span className="step-marks" />;
  return (
    <span className="step-marks">
      <span aria-hidden="true">
        {[errors > 0 ? `▲ ${errors}` : '', notes > 0 ? `● ${notes}` : ''].join(' ')}
      </span>
      <span className="visually-hidden">
        {errors} errors, {notes} notes
      </span>
    </span>
  );
}

function useReorder({ draft, edit }: Editing) {
  return useDragAndDrop({
    getItems: (keys) =>
      [...keys].map((key) => ({
        'text/plain': draft.steps.find(({ id }) => id === key)?.action ?? '',
      })),
    onReorder: ({ keys, target }) => {
      if (target.dropPosition === 'on') return;
      const ids = new Set([...keys].map(String));
      const moved = moveSteps(draft, ids, String(target.key), target.dropPosition);
      edit(moved, ids.size === 1 ? 'Move a step' : `Move ${ids.size} steps`);
    },
    renderDropIndicator: (target) => <DropIndicator target={target} className="drop-line" />,
  });
}

interface RowProps {
  readonly draft: Editing['draft'];
  readonly step: Step;
  readonly index: number;
  readonly found: readonly Shown[];
  readonly chosen: boolean;
}

function Row({ draft, step, index, found, chosen }: RowProps) {
  const sentence = sentenceOf(draft, step);
  return (
    <GridListItem
      id={step.id}
      textValue={`${index + 1} ${sentence}`}
      className={chosen ? 'edit-step chosen' : 'edit-step'}
    >
      <Button slot="drag" className="grip" aria-label={`Move step ${index + 1}`}>
        ⠿
      </Button>
      <CheckboxField slot="selection" className="row-tick">
        <CheckboxButton className="pill">
          <span className="tick" aria-hidden="true" />
        </CheckboxButton>
      </CheckboxField>
      <span className="step-number">{index + 1}</span>
      <span className="step-text">
        {sentence}
        {step.note && <span className="quiet note">{step.note}</span>}
      </span>
      <Marks found={found} />
    </GridListItem>
  );
}

export function StepList({ draft, edit, found, chosen, choose, ticked, tick }: StepListProps) {
  const { dragAndDropHooks } = useReorder({ draft, edit });
  const onSelection = useCallback(
    (keys: Selection) =>
      tick(keys === 'all' ? new Set(draft.steps.map(({ id }) => id)) : new Set([...keys].map(String))),
    [draft, tick],
  );
  return (
    <GridList
      aria-label="Steps"
      className="edit-steps"
      selectionMode="multiple"
      selectionBehavior="toggle"
      selectedKeys={ticked}
      onSelectionChange={onSelection}
      onAction={(key) => choose(String(key))}
      dragAndDropHooks={dragAndDropHooks}
      dependencies={[draft, found, chosen]}
      renderEmptyState={() => <p className="quiet">No steps yet. Type the first one above.</p>}
    >
      {draft.steps.map((step, index) => (
        <Row
          key={step.id}
          draft={draft}
          step={step}
          index={index}
          found={found.get(step.id) ?? []}
          chosen={step.id === chosen}
        />
      ))}
    </GridList>
  );
}
