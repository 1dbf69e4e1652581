// Writing the steps: the field that adds one, the list, and beside it the chosen step with what the check says of it.
import { type KeyboardEvent, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { applyEdit, type Edit } from '../../../check/edit.ts';
import type { Procedure, Step } from '../../../domain/procedure.ts';
import { Summary } from '../../findings/Summary.tsx';
import { landOn } from '../../parts/useLanding.ts';
import { useWide } from '../../parts/useWide.ts';
import { Legend } from '../../picture/Legend.tsx';
import { Picture } from '../../picture/Picture.tsx';
import type { Checked } from '../checked.ts';
import type { Editing } from '../editing.ts';
import { Findings } from '../findings.tsx';
import {
  duplicateSteps,
  type Ids,
  insertSteps,
  type NewStep,
  removeSteps,
  shiftSteps,
} from '../model/steps.ts';
import { AddStep } from './AddStep.tsx';
import { StepEditor } from './StepEditor.tsx';
import { StepList } from './StepList.tsx';

interface StepsProps extends Editing {
  readonly checked: Checked;
  readonly chosenId: string | undefined;
  readonly choose: (id: string) => void;
}

const stepsText = (ids: Ids): string => (ids.size === 1 ? 'a step' : `${ids.size} steps`);

interface ToolbarProps extends Editing {
  /** The ticked steps, else the chosen one. */
  readonly ids: Ids;
  readonly select: (ids: Ids) => void;
}

/** What is done to several steps at once. */
function Toolbar({ draft, edit, ids, select }: ToolbarProps) {
  const none = ids.size === 0;
  const shift = (by: -1 | 1) => edit(shiftSteps(draft, ids, by), `Move ${stepsText(ids)}`);
  const copy = (): void => {
    const { procedure, ids: made } = duplicateSteps(draft, ids);
    edit(procedure, `Duplicate ${stepsText(ids)}`);
    select(new Set(made));
  };
  return (
    <div role="toolbar" aria-label="Chosen steps" className="actions step-tools">
      <Button className="button" isDisabled={none} onPress={() => shift(-1)}>
        ↑ Earlier
      </Button>
      <Button className="button" isDisabled={none} onPress={() => shift(1)}>
        ↓ Later
      </Button>
      <Button className="button" isDisabled={none} onPress={copy}>
        Duplicate
      </Button>
      <Button
        className="button"
        isDisabled={none}
        onPress={() => {
          edit(removeSteps(draft, ids), `Delete ${stepsText(ids)}`);
          select(new Set());
        }}
      >
        Delete
      </Button>
      <span className="quiet">{none ? 'Choose or tick steps.' : `For ${stepsText(ids)}.`}</span>
    </div>
  );
}

interface ChosenProps extends Editing {
  readonly checked: Checked;
  readonly step: Step;
  readonly apply: ((edit: Edit, sentence: string) => void) | undefined;
  readonly back: (() => void) | undefined;
}

function Chosen({ draft, edit, checked, step, apply, back }: ChosenProps) {
  const { judged, board, byStep, complete } = checked;
  const at = draft.steps.indexOf(step);
  const top = useRef<HTMLElement>(null);
  const alone = back !== undefined;
  useEffect(() => {
    // It has taken the place of the list, which was scrolled to a row.
    if (!alone) return;
    top.current?.scrollIntoView({ block: 'start' });
    top.current?.focus({ preventScroll: true });
  }, [alone]);
  const checkedAt = judged?.procedure.steps.findIndex(({ id }) => id === step.id) ?? -1;
  return (
    <section ref={top} tabIndex={-1} className="chosen-step" aria-labelledby="chosen-title">
      {back && (
        <Button className="button" onPress={back}>
          ← All steps
        </Button>
      )}
      <h2 id="chosen-title">
        Step {at + 1} of {draft.steps.length}
      </h2>
      <StepEditor key={step.id} draft={draft} edit={edit} step={step} />
      {judged && board && checkedAt >= 0 && (
        <>
          <Findings
            findings={byStep.get(step.id) ?? []}
            title="Found at this step"
            none="Nothing found here by this check."
            procedure={judged.procedure}
            apply={apply}
            complete={complete}
          />
          <h3>Its picture</h3>
          <Picture procedure={judged.procedure} board={board} step={checkedAt} moment="before" />
          <Legend />
        </>
      )}
    </section>
  );
}

/** The place of the next step: after the chosen one, else at the end. */
function useAdd({ draft, edit }: Editing, chosen: Step | undefined, choose: (id: string) => void) {
  const at = chosen ? draft.steps.indexOf(chosen) + 1 : draft.steps.length;
  const where = chosen && at < draft.steps.length ? `after step ${at}` : 'at the end';
  const add = (step: NewStep): void => {
    const { procedure, ids } = insertSteps(draft, at, [step]);
    edit(procedure, 'Add a step');
    if (ids[0] !== undefined) choose(ids[0]);
  };
  return { add, where };
}

interface KeysProps extends Editing {
  readonly ticked: Ids;
  readonly tick: (ids: Ids) => void;
}

/** In the list: Alt with arrows moves, Delete deletes, Control D duplicates the ticked steps, else the focused one. */
function useKeys({ draft, edit, ticked, tick }: KeysProps): {
  readonly onKeyDownCapture: (event: KeyboardEvent<HTMLElement>) => void;
} {
  const work = (key: string, ids: Ids): (() => void) | undefined => {
    const name = stepsText(ids);
    if (key === 'ArrowUp') return () => edit(shiftSteps(draft, ids, -1), `Move ${name}`);
    if (key === 'ArrowDown') return () => edit(shiftSteps(draft, ids, 1), `Move ${name}`);
    if (key === 'd') return () => edit(duplicateSteps(draft, ids).procedure, `Duplicate ${name}`);
    if (key !== 'Delete') return undefined;
    return () => {
      edit(removeSteps(draft, ids), `Delete ${name}`);
      tick(NONE);
    };
  };
  return {
    onKeyDownCapture: (event) => {
      const row =
        event.target instanceof HTMLElement ? event.target.closest<HTMLElement>('[data-key]') : null;
      const wanted =
        event.key === 'Delete' || (event.key === 'd' && (event.ctrlKey || event.metaKey)) || event.altKey;
      if (!row?.dataset.key || !wanted) return;
      const act = work(event.key, ticked.size > 0 ? ticked : new Set([row.dataset.key]));
      if (!act) return;
      event.preventDefault();
      event.stopPropagation();
      act();
    },
  };
}

const NONE: Ids = new Set();

/** The ticked steps that are still there. */
function knownOf({ steps }: Procedure, ticked: Ids): Ids {
  const known = new Set(steps.flatMap(({ id }) => (ticked.has(id) ? [id] : [])));
  return known.size === 0 ? NONE : known;
}

const rowOf = (id: string): HTMLElement | null =>
  document.querySelector<HTMLElement>(`.edit-step[data-key="${CSS.escape(id)}"]`);

/** Where there is no room for both, the chosen step stands in the place of the list until one goes back to its row. */
function useOpened(wide: boolean, chosen: Step | undefined, choose: (id: string) => void) {
  const [opened, open] = useState(false);
  const chooseRow = useCallback(
    (id: string) => {
      choose(id);
      open(true);
    },
    [choose],
  );
  const toList = (): void => {
    open(false);
    landOn(() => (chosen ? rowOf(chosen.id) : null));
  };
  return { alone: opened && !wide, chooseRow, back: wide ? undefined : toList };
}

export function Steps({ draft, edit, checked, chosenId, choose }: StepsProps) {
  const [ticked, tick] = useState<Ids>(NONE);
  const wide = useWide();
  const chosen = draft.steps.find(({ id }) => id === chosenId);
  const known = useMemo(() => knownOf(draft, ticked), [draft, ticked]);
  const ids = known.size > 0 ? known : chosen ? new Set([chosen.id]) : NONE;
  const { add, where } = useAdd({ draft, edit }, chosen, choose);
  const { judged, current, complete, shown, general, byStep } = checked;
  const apply = current
    ? (change: Edit, sentence: string) => edit(applyEdit(draft, change), `Mend: ${sentence}`)
    : undefined;
  const { alone, chooseRow, back } = useOpened(wide, chosen, choose);
  const keys = useKeys({ draft, edit, ticked: known, tick });
  const panel = chosen && (
    <Chosen draft={draft} edit={edit} checked={checked} step={chosen} apply={apply} back={back} />
  );
  if (alone && panel) return panel;
  return (
    <div className="steps-view compose-view">
      <section aria-labelledby="steps-title">
        <h2 id="steps-title">Steps</h2>
        <AddStep draft={draft} add={add} where={where} />
        <Toolbar draft={draft} edit={edit} ids={ids} select={tick} />
        <div {...keys}>
          <StepList
            draft={draft}
            edit={edit}
            found={byStep}
            chosen={chosen?.id}
            choose={chooseRow}
            ticked={known}
            tick={tick}
          />
        </div>
      </section>
      <div className={wide ? 'beside' : ''}>
        {judged && (
          <Summary
            shown={shown}
            title="What the check found"
            level={2}
            complete={complete}
            limits={judged?.limits ?? []}
            compact
          />
        )}
        {wide && panel}
        {judged && general.length > 0 && (
          <Findings
            findings={general}
            title="About the whole procedure"
            none=""
            procedure={judged.procedure}
            apply={apply}
            complete={complete}
          />
        )}
        {!chosen && judged && (
          <p className="quiet">Choose a step to change it and to see what the check says of it.</p>
        )}
      </div>
    </div>
  );
}
