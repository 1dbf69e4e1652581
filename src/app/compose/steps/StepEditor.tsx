// One step, field by field: only the fields its action knows, in each only what fits, the usual first.
import { LONGEST } from '../../../domain/lengths.ts';
import { ACTION_IDS, type ActionId } from '../../../domain/actions.ts';
import type { ItemId, PartId } from '../../../domain/items.ts';
import { isPaired, type Place, PLACES, placeName, type Side, SIDES } from '../../../domain/places.ts';
import type { Step } from '../../../domain/procedure.ts';
import type { ProductId } from '../../../domain/products.ts';
import { type TechniqueId, usualTechnique } from '../../../domain/techniques/index.ts';
import { words } from '../../words.ts';
import { type Editing, labelOf, sentenceOf } from '../editing.ts';
import {
  fixtureChoices,
  hasSides,
  itemChoices,
  needsOf,
  othersThan,
  partChoices,
  productChoices,
  takes,
  techniqueChoices,
  togetherChoices,
} from '../model/fields.ts';
import { type Field, withField } from '../model/refit.ts';
import { type NewStep, replaceStep } from '../model/steps.ts';
import { type Choice, Select, TextLine } from '../parts.tsx';

const spaced = (id: string): string => id.replaceAll('-', ' ');
const plain = (id: string): Choice => ({ value: id, name: spaced(id) });
const placeText = (place: Place): string =>
  isPaired(placeName(place)) ? `${place.split('.')[1] ?? ''} ${placeName(place)}` : place;

interface FieldsProps {
  readonly draft: Editing['draft'];
  readonly step: Step;
  readonly set: <Key extends Field>(field: Key, value: NewStep[Key] | undefined) => void;
}

const orNone = <T extends string>(value: T | ''): T | undefined => (value === '' ? undefined : value);

/** Nothing may be chosen where the action can do without. */
const optional = (step: Step, field: Parameters<typeof takes>[1]) =>
  needsOf(step.action).includes(field) ? {} : { none: '(none)' };

function Items({ draft, step, set }: FieldsProps) {
  if (!takes(step.action, 'items')) return null;
  const [first = '', second = ''] = step.items;
  const together = togetherChoices(draft, { ...step, items: step.items.slice(0, 1) });
  const named = (item: ItemId): Choice => ({ value: item, name: words.item(item) });
  const put = (...items: readonly string[]) =>
    set(
      'items',
      items.filter((item) => item !== '').map((item) => item as ItemId),
    );
  return (
    <>
      <Select
        label="Item"
        value={first}
        choices={itemChoices(draft, step).map(named)}
        set={(item) => put(item)}
        {...optional(step, 'items')}
      />
      {(together.length > 0 || second !== '') && (
        <Select
          label="Together with"
          value={second}
          choices={together.map(named)}
          set={(item) => put(first, item)}
          none="(nothing else)"
        />
      )}
    </>
  );
}

function Technique({ draft, step, set }: FieldsProps) {
  const ways = techniqueChoices(step);
  if (!takes(step.action, 'technique') || ways.length < 2) return null;
  const usual = usualTechnique(step.action, step.items);
  return (
    <Select
      label="Technique"
      value={step.technique ?? ''}
      choices={ways.map((id) => ({ value: id, name: words.technique(id) }))}
      set={(id) => set('technique', orNone(id as TechniqueId | ''))}
      {...(usual ? { none: `usual: ${words.technique(usual.id as TechniqueId)}` } : {})}
      key={draft.kind}
    />
  );
}

function WhatOf({ step, set }: FieldsProps) {
  const parts = partChoices(step);
  return (
    <>
      {takes(step.action, 'side') && hasSides(step) && (
        <Select
          label="Side"
          value={step.side ?? ''}
          choices={SIDES.map(plain)}
          set={(side) => set('side', orNone(side as Side | ''))}
          none="both"
        />
      )}
      {takes(step.action, 'part') && parts.length > 0 && (
        <Select
          label="Part of it"
          value={step.part ?? ''}
          choices={parts.map(plain)}
          set={(part) => set('part', orNone(part as PartId | ''))}
          none="(all of it)"
        />
      )}
      {takes(step.action, 'place') && (
        <Select
          label="Place of the body"
          value={step.place ?? ''}
          choices={PLACES.map((place) => ({ value: place, name: placeText(place) }))}
          set={(place) => set('place', orNone(place as Place | ''))}
          none="(none)"
        />
      )}
    </>
  );
}

function WithWhat({ draft, step, set }: FieldsProps) {
  const { action } = step;
  return (
    <>
      {takes(action, 'product') && (
        <Select
          label="Product"
          value={step.product ?? ''}
          choices={productChoices(draft, action).map((id) => ({ value: id, name: words.product(id) }))}
          set={(id) => set('product', orNone(id as ProductId | ''))}
        />
      )}
      {takes(action, 'zone') && (
        <Select
          label="To"
          value={step.zone ?? ''}
          choices={draft.zones.map(({ id }) => plain(id))}
          set={(id) => set('zone', orNone(id))}
        />
      )}
      {takes(action, 'fixture') && (
        <Select
          label="Fixture"
          value={step.fixture ?? ''}
          choices={fixtureChoices(draft, action).map(plain)}
          set={(id) => set('fixture', orNone(id))}
          {...optional(step, 'fixture')}
        />
      )}
    </>
  );
}

function Others({ draft, step, set }: FieldsProps) {
  const others = othersThan(draft, step.who).map(
    (id): Choice => ({ value: id, name: words.person(draft, id) }),
  );
  if (others.length === 0) return null;
  return (
    <>
      {takes(step.action, 'of') && (
        <Select
          label="Whose"
          value={step.of ?? ''}
          choices={others}
          set={(id) => set('of', orNone(id))}
          none="their own"
        />
      )}
      {takes(step.action, 'helper') && (
        <Select
          label={step.action === 'say' ? 'To' : 'Helped by'}
          value={step.helper ?? ''}
          choices={others}
          set={(id) => set('helper', orNone(id))}
          none="nobody"
        />
      )}
    </>
  );
}

export function StepEditor({ draft, edit, step }: Editing & { readonly step: Step }) {
  const set: FieldsProps['set'] = (field, value) => {
    const changed = withField(draft, step, field, value);
    // Arrow keys in a list go through every value in between: that is one change.
    edit(replaceStep(draft, step.id, changed), `Change ${labelOf(draft, step)}`, `${field} ${step.id}`);
  };
  const fields = { draft, step, set };
  const note = (text: string): void => {
    const { note: _, ...rest } = step;
    const noted = replaceStep(draft, step.id, text === '' ? rest : { ...rest, note: text });
    edit(noted, `Note on ${labelOf(draft, step)}`, `note ${step.id}`);
  };
  return (
    <>
      <p className="step-now">{sentenceOf(draft, step)}</p>
      <div className="fields">
        <Select
          label="Who"
          value={step.who}
          choices={draft.people.map(({ id }) => ({ value: id, name: words.person(draft, id) }))}
          set={(who) => set('who', who)}
        />
        <Select
          label="Action"
          value={step.action}
          choices={ACTION_IDS.map((id) => ({ value: id, name: words.action(id) }))}
          set={(action) => set('action', action as ActionId)}
        />
        <Items {...fields} />
        <WhatOf {...fields} />
        <Technique {...fields} />
        <WithWhat {...fields} />
        <Others {...fields} />
        <TextLine label="Note for the reader" most={LONGEST.note} value={step.note ?? ''} set={note} long />
      </div>
    </>
  );
}
