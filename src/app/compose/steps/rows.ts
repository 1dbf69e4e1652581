// What each row of the list of steps shows, and when its height is looked at again.
import { useMemo } from 'react';
import { ListLayout } from 'react-aria-components';
import type { Procedure, Step } from '../../../domain/procedure.ts';
import { sentenceOf } from '../editing.ts';

/** All that a row shows. The same object as long as nothing of it changes, so that an edit draws only the rows it touches. */
export interface RowView {
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

/** The rows of a draft, in its order. */
export const useRowViews = (draft: Procedure, chosen: string | undefined): readonly RowView[] =>
  useMemo(
    () => draft.steps.map((step, index) => sameAsBefore(step, viewOf(draft, step, index, chosen))),
    [draft, chosen],
  );

/**
 * Rows of several lines. A row is measured when it is new, or its view or the list's width has changed; not when only its neighbours
 * have, as the list itself would do: each measuring lays the page out anew.
 */
export class StepLayout extends ListLayout<RowView> {
  protected override buildItem(...args: Parameters<ListLayout<RowView>['buildItem']>) {
    const [{ key, value }] = args;
    const before = this.layoutNodes.get(key);
    const built = super.buildItem(...args);
    const same =
      before !== undefined &&
      before.node?.value === value &&
      before.layoutInfo.rect.width === built.layoutInfo.rect.width;
    if (same && !before.layoutInfo.estimatedSize) built.layoutInfo.estimatedSize = false;
    return built;
  }
}
