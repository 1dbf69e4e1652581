// Checks of steps: people, zones, fixtures and products they name, and whether technique, part and side are words
// that go with the item. Whether a step can be done at that moment is for the plan to find out.
import { type ActionId, ACTIONS } from '../domain/actions.ts';
import { type ItemId, ITEM_IDS, itemKind, type PartId } from '../domain/items.ts';
import { fits, techniqueOf, techniquesFor } from '../domain/techniques/index.ts';
import { checkProduct, checkZone } from './check-room.ts';
import type { Context, LooseStep } from './context.ts';
import type { Path } from './report.ts';
import { FIELD_KEYS, NEEDS_ONE_OF } from './shape-steps.ts';

export const stepItems = (step: LooseStep): readonly ItemId[] =>
  typeof step.item === 'string' ? [step.item] : (step.item ?? []);

/** Ids of all steps: as written, else s1, s2 and so on by position. */
export const stepIds = (steps: Context['steps']): readonly string[] =>
  steps.map((step, index) => step?.id ?? `s${index + 1}`);

function checkPerson(context: Context, path: Path, name: string | undefined): void {
  if (name === undefined || context.file.people === undefined || context.people.has(name)) return;
  context.report.name(path, 'unknown-person', name, [...context.people.keys()]);
}

function checkHelper({ report, people, wearer }: Context, path: Path, step: LooseStep): void {
  if (step.helper === undefined || step.helper !== (step.who ?? wearer)) return;
  const others = [...people.keys()].filter((name) => name !== step.helper);
  report.value([...path, 'helper'], 'helper-is-doer', { name: step.helper, allowed: others });
}

function checkFixtureName({ report, fixtures }: Context, path: Path, name: string | undefined): void {
  if (name === undefined || !fixtures || fixtures.includes(name)) return;
  report.name(path, 'unknown-fixture', name, fixtures);
}

const needsItem = (action: ActionId): boolean =>
  ACTIONS.some(({ id, needs }) => id === action && needs.some((field) => field === 'items'));

function checkTechnique({ report }: Context, path: Path, step: LooseStep): void {
  const { do: action, technique } = step;
  const items = stepItems(step);
  const wrong =
    Object.hasOwn(step, 'item') && (step.item === undefined || items.some((item) => item === undefined));
  if (action === undefined || wrong || (items.length === 0 && needsItem(action))) return;
  const ways = techniquesFor(action, items).map(({ id }) => id);
  const what = [action, items.join(' and ')].filter(Boolean).join(' ');
  if (ways.length === 0) {
    const fitting = ITEM_IDS.filter((item) => techniquesFor(action, [item]).length > 0);
    report.value([...path, 'item'], 'action-does-not-fit', { what, allowed: fitting });
  } else if (technique !== undefined && !fits(techniqueOf(technique), action, items)) {
    report.name([...path, 'technique'], 'technique-does-not-fit', technique, ways, { what });
  }
}

function checkPart({ report }: Context, path: Path, step: LooseStep): void {
  const items = stepItems(step).filter((item) => item !== undefined);
  if (step.part !== undefined && items.length === 0) report.value([...path, 'part'], 'part-needs-item');
  const parts = [
    ...new Set(items.flatMap((item): readonly PartId[] => itemKind(item).parts.map(({ id }) => id))),
  ];
  if (step.part !== undefined && items.length > 0 && !parts.includes(step.part)) {
    report.name([...path, 'part'], 'part-does-not-fit', step.part, parts, { items: items.join(' and ') });
  }
  if (step.side !== undefined && items.length > 0 && !items.some((item) => itemKind(item).pair)) {
    report.key([...path, 'side'], 'side-needs-pair', { items: items.join(' and ') });
  }
}

function checkStep(context: Context, step: LooseStep, path: Path): void {
  for (const key of ['who', 'of', 'helper'] as const) checkPerson(context, [...path, key], step[key]);
  checkZone(context, [...path, 'to'], step.to);
  checkFixtureName(context, [...path, 'on'], step.on);
  checkProduct(context, [...path, 'with'], step.with);
  checkHelper(context, path, step);
  checkTechnique(context, path, step);
  checkPart(context, path, step);
  const keys = (step.do && NEEDS_ONE_OF[step.do])?.map((field) => FIELD_KEYS[field]) ?? [];
  // A key that holds a wrong value was reported, and is still there.
  if (step.do && keys.length > 0 && !keys.some((key) => Object.hasOwn(step, key))) {
    context.report.value(path, 'action-needs-one-of', { action: step.do, allowed: keys });
  }
}

function checkIds({ report, steps }: Context): void {
  const written = new Map<string, number>();
  stepIds(steps).forEach((id, index) => {
    const other = written.get(id);
    if (other === undefined) written.set(id, index);
    else {
      const [shown, first] = steps[index]?.id === undefined ? [other, index] : [index, other];
      const holder = ['steps', shown, 'id'];
      report.value(holder, 'duplicate-step-id', { name: id, first: report.lineOf(['steps', first]) });
    }
  });
}

export function checkSteps(context: Context): void {
  context.steps.forEach((step, index) => {
    if (step) checkStep(context, step, ['steps', index]);
  });
  checkIds(context);
}
