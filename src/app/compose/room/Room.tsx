// The room as a plan in three stripes, from the patient's side to the clean side, each with its zones and what stands in
// them; and the products at hand.
import { Button } from 'react-aria-components';
import { LONGEST } from '../../../domain/lengths.ts';
import { type ProductId, PRODUCT_IDS } from '../../../domain/products.ts';
import {
  type Fixture,
  FIXTURE_KINDS,
  type FixtureKindId,
  fixtureKind,
  type Zone,
  ZONE_SIDES,
  type ZoneSide,
} from '../../../domain/room.ts';
import { Tick, Ticks } from '../../parts/Choices.tsx';
import { words } from '../../words.ts';
import { type Editing, stepNumbers } from '../editing.ts';
import { nameFrom, renamed } from '../model/names.ts';
import { setProducts, stepsUsing } from '../model/people.ts';
import {
  addFixture,
  addZone,
  changeFixture,
  changeZone,
  isFloor,
  removeFixture,
  removeZone,
  usesOf,
  zoneHeld,
} from '../model/room.ts';
import { Chooser, NameLine, Select } from '../parts.tsx';

const spaced = (id: string): string => id.replaceAll('-', ' ');

const SIDE_NAMES: Readonly<Record<ZoneSide, string>> = {
  patient: 'Patient’s side',
  doffing: 'Doffing area',
  clean: 'Clean side',
};

const WORKED: Readonly<Record<NonNullable<Fixture['worked']>, string>> = {
  hand: 'by hand',
  elbow: 'by elbow',
  pedal: 'by pedal',
  sensor: 'by sensor',
  open: 'stands open',
};

interface FixtureProps extends Editing {
  readonly fixture: Fixture;
}

function FixtureFields({ draft, edit, fixture }: FixtureProps) {
  const { id } = fixture;
  const kind = fixtureKind(fixture.kind);
  const change = (part: Parameters<typeof changeFixture>[2], done: string) =>
    edit(changeFixture(draft, id, part), done);
  return (
    <div className="fields">
      {!isFloor(fixture) && (
        <>
          <NameLine
            label="Name"
            value={id}
            most={LONGEST.name}
            rename={(typed) => edit(renamed(draft, 'fixture', id, nameFrom(typed)), `Rename ${spaced(id)}`)}
          />
          <Select
            label="Stands in"
            value={fixture.zone}
            choices={draft.zones.map((zone) => ({ value: zone.id, name: spaced(zone.id) }))}
            set={(zone) => change({ zone }, `Move ${spaced(id)}`)}
          />
        </>
      )}
      {kind.worked && (
        <Select
          label="Worked"
          value={fixture.worked ?? ''}
          choices={kind.worked.map((way) => ({ value: way, name: WORKED[way] }))}
          set={(way) =>
            change({ worked: way as NonNullable<Fixture['worked']> }, `Change how ${spaced(id)} is worked`)
          }
        />
      )}
      {kind.underfoot && (
        <Select
          label="Soaked with"
          value={fixture.product ?? ''}
          none="nothing"
          choices={draft.products.map((one) => ({ value: one, name: words.product(one) }))}
          set={(one) => change({ product: one === '' ? undefined : one }, `Change ${spaced(id)}`)}
        />
      )}
      <Tick on={fixture.clean} set={(clean) => change({ clean }, `Change ${spaced(id)}`)}>
        Kept clean (protected)
      </Tick>
    </div>
  );
}

function OneFixture(props: FixtureProps) {
  const { draft, edit, fixture } = props;
  const used = usesOf(draft, 'fixture', fixture.id);
  return (
    <li className="fixture-card">
      <details>
        <summary>
          {spaced(fixture.id)} <span className="quiet">{spaced(fixture.kind)}</span>{' '}
          {fixture.clean && <span className="badge">kept clean</span>}
        </summary>
        <FixtureFields {...props} />
        {!isFloor(fixture) && (
          <div className="actions">
            <Button
              className="button"
              aria-label={`Remove ${spaced(fixture.id)}`}
              isDisabled={used.length > 0}
              onPress={() => edit(removeFixture(draft, fixture.id), `Remove ${spaced(fixture.id)}`)}
            >
              Remove
            </Button>
            {used.length > 0 && <span className="quiet">Named in {stepNumbers(used)}.</span>}
          </div>
        )}
      </details>
    </li>
  );
}

function OneZone({ draft, edit, zone }: Editing & { readonly zone: Zone }) {
  const here = draft.fixtures.filter((fixture) => fixture.zone === zone.id);
  const kinds = FIXTURE_KINDS.filter(({ id }) => id !== 'floor');
  const held = zoneHeld(draft, zone.id);
  return (
    <section className="zone" aria-labelledby={`zone-${zone.id}`}>
      <h4 id={`zone-${zone.id}`} className="sentence">
        {spaced(zone.id)}
      </h4>
      <ul className="plain">
        {here.map((fixture) => (
          <OneFixture key={fixture.id} draft={draft} edit={edit} fixture={fixture} />
        ))}
      </ul>
      <Chooser
        label={`Fixture for ${spaced(zone.id)}`}
        press="Add"
        choices={kinds.map(({ id }) => ({ value: id, name: spaced(id) }))}
        take={(kind) => edit(addFixture(draft, kind as FixtureKindId, zone.id), `Add: ${spaced(kind)}`)}
      />
      <details>
        <summary>Name and side of this zone</summary>
        <div className="fields">
          <NameLine
            label="Name"
            value={zone.id}
            most={LONGEST.zone}
            rename={(typed) => edit(renamed(draft, 'zone', zone.id, nameFrom(typed)), 'Rename a zone')}
          />
          <Select
            label="Side"
            value={zone.side}
            choices={ZONE_SIDES.map((side) => ({ value: side, name: SIDE_NAMES[side] }))}
            set={(side) => edit(changeZone(draft, zone.id, side as ZoneSide), 'Change a zone’s side')}
          />
        </div>
        <div className="actions">
          <Button
            className="button"
            aria-label={`Remove zone ${spaced(zone.id)}`}
            isDisabled={held}
            onPress={() => edit(removeZone(draft, zone.id), 'Remove a zone')}
          >
            Remove
          </Button>
          {held && <span className="quiet">Somebody or something is in it, or a step names it.</span>}
        </div>
      </details>
    </section>
  );
}

function Products({ draft, edit }: Editing) {
  const chosen = new Set(draft.products);
  const set = (now: ReadonlySet<ProductId>): void => {
    // One that a step or a mat uses stays.
    const used = PRODUCT_IDS.filter(
      (id) => stepsUsing(draft, id).length > 0 || draft.fixtures.some(({ product }) => product === id),
    );
    const kept = draft.products.filter((id) => now.has(id) || used.includes(id));
    edit(
      setProducts(draft, [...kept, ...PRODUCT_IDS.filter((id) => now.has(id) && !chosen.has(id))]),
      'Change the products',
    );
  };
  return (
    <section aria-labelledby="products-title">
      <h3 id="products-title">Products at hand</h3>
      <Ticks
        label="Those that a step uses stay"
        values={PRODUCT_IDS}
        chosen={chosen}
        set={set}
        nameOf={words.product}
      />
    </section>
  );
}

export function Room({ draft, edit }: Editing) {
  return (
    <section aria-labelledby="room-title">
      <h2 id="room-title">Room</h2>
      <div className="plan">
        {ZONE_SIDES.map((side) => (
          <div key={side} className={`stripe side-${side}`}>
            <h3>{SIDE_NAMES[side]}</h3>
            {draft.zones
              .filter((zone) => zone.side === side)
              .map((zone) => (
                <OneZone key={zone.id} draft={draft} edit={edit} zone={zone} />
              ))}
            <Button className="button" onPress={() => edit(addZone(draft, side), 'Add a zone')}>
              + zone
            </Button>
          </div>
        ))}
      </div>
      <Products draft={draft} edit={edit} />
    </section>
  );
}
