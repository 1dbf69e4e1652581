// Edits of who takes part and what they wear. Worn items stand in the order of putting on: each lies over those before.
import type { ItemId } from '../../../domain/items.ts';
import type { Person, Procedure, ProcedureKind, Role } from '../../../domain/procedure.ts';
import type { ProductId } from '../../../domain/products.ts';
import { defaultStart, UNDERNEATH } from '../../../language/context.ts';
import { freeName } from './names.ts';

function startOf({ zones }: Procedure, role: Role, kind: ProcedureKind): string {
  return defaultStart(role, kind, new Map(zones.map(({ id, side }) => [id, side]))) ?? zones[0]?.id ?? '';
}

export function addPerson(procedure: Procedure, role: Role): Procedure {
  const person: Person = {
    id: freeName(
      procedure.people.map(({ id }) => id),
      role,
    ),
    role,
    wears: [],
    underneath: UNDERNEATH,
    starts: startOf(procedure, role, procedure.kind),
    hand: 'right',
    leavesBare: [],
  };
  return { ...procedure, people: [...procedure.people, person] };
}

/** Numbers (from 1) of the steps in which somebody takes part. */
export const stepsWith = ({ steps }: Procedure, id: string): readonly number[] =>
  steps.flatMap(({ who, of, helper }, index) => ([who, of, helper].includes(id) ? [index + 1] : []));

/** Without this person, unless a step needs them or nobody else is left. */
export function removePerson(procedure: Procedure, id: string): Procedure {
  if (procedure.people.length < 2 || stepsWith(procedure, id).length > 0) return procedure;
  const others = (entry: { readonly surface?: string }): boolean => !entry.surface?.startsWith(`${id}.`);
  return {
    ...procedure,
    people: procedure.people.filter((person) => person.id !== id),
    start: procedure.start.filter(others),
    accepted: procedure.accepted.filter(others),
  };
}

export function changePerson(
  procedure: Procedure,
  id: string,
  change: Partial<Omit<Person, 'id'>>,
): Procedure {
  return {
    ...procedure,
    people: procedure.people.map((person) => (person.id === id ? { ...person, ...change } : person)),
  };
}

const wornBy = ({ people }: Procedure, id: string): readonly ItemId[] =>
  people.find((person) => person.id === id)?.wears ?? [];

/** Put on last, so over everything that is there. */
export function wear(procedure: Procedure, id: string, item: ItemId): Procedure {
  const person = procedure.people.find((one) => one.id === id);
  if (!person || person.wears.includes(item) || person.underneath.includes(item)) return procedure;
  return changePerson(procedure, id, { wears: [...person.wears, item] });
}

/** Not worn any more; what the file says of the start of its surfaces goes with it. */
export function unwear(procedure: Procedure, id: string, item: ItemId): Procedure {
  const wears = wornBy(procedure, id).filter((other) => other !== item);
  const others = (entry: { readonly surface?: string }): boolean =>
    !entry.surface?.startsWith(`${id}.${item}.`);
  return {
    ...changePerson(procedure, id, { wears }),
    start: procedure.start.filter(others),
    accepted: procedure.accepted.filter(others),
  };
}

/** Items to another place in the order of putting on. */
export function moveWorn(
  procedure: Procedure,
  id: string,
  items: ReadonlySet<string>,
  target: string,
  where: 'before' | 'after',
): Procedure {
  const wears = wornBy(procedure, id);
  const at = wears.indexOf(target as ItemId);
  if (at < 0) return procedure;
  const edge = where === 'before' ? at : at + 1;
  const rest = (list: readonly ItemId[]) => list.filter((item) => !items.has(item));
  const order = [
    ...rest(wears.slice(0, edge)),
    ...wears.filter((item) => items.has(item)),
    ...rest(wears.slice(edge)),
  ];
  return order.every((item, index) => item === wears[index])
    ? procedure
    : changePerson(procedure, id, { wears: order });
}

/** One place earlier or later in the order of putting on. */
export function shiftWorn(procedure: Procedure, id: string, item: ItemId, by: -1 | 1): Procedure {
  const wears = wornBy(procedure, id);
  const other = wears[wears.indexOf(item) + by];
  return other === undefined || !wears.includes(item)
    ? procedure
    : moveWorn(procedure, id, new Set([item]), other, by === -1 ? 'before' : 'after');
}

/** The other kind; who stood where that kind of procedure starts stands where the other one does. */
export function changeKind(procedure: Procedure, kind: ProcedureKind): Procedure {
  if (kind === procedure.kind) return procedure;
  const people = procedure.people.map((person) =>
    person.starts === startOf(procedure, person.role, procedure.kind)
      ? { ...person, starts: startOf(procedure, person.role, kind) }
      : person,
  );
  return { ...procedure, kind, people };
}

export function setProducts(procedure: Procedure, products: readonly ProductId[]): Procedure {
  return { ...procedure, products };
}

/** Numbers (from 1) of the steps that use a product. */
export const stepsUsing = ({ steps }: Procedure, product: ProductId): readonly number[] =>
  steps.flatMap((step, index) => (step.product === product ? [index + 1] : []));
