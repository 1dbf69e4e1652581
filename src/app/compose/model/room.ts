// Edits of the room. Every zone has a floor of its own, last in the list as the reader of the file puts it, so that a
// draft and its text never differ. A name that is changed is changed wherever it is used.
import type { Procedure, Step } from '../../../domain/procedure.ts';
import {
  type Fixture,
  type FixtureKindId,
  fixtureKind,
  type Zone,
  type ZoneSide,
} from '../../../domain/room.ts';
import { floorOf } from '../../../language/context.ts';
import { automaticFloor } from '../../../language/resolve.ts';
import { freeName } from './names.ts';

/** Floors that came with a zone that is gone go too; new zones get theirs. */
function withFloors(procedure: Procedure, zones: readonly Zone[], fixtures: readonly Fixture[]): Procedure {
  const floors = new Set([...procedure.zones, ...zones].map(({ id }) => floorOf(id)));
  const others = fixtures.filter(({ id }) => !floors.has(id));
  const known = new Map(fixtures.map((fixture) => [fixture.id, fixture]));
  return {
    ...procedure,
    zones,
    fixtures: [...others, ...zones.map((zone) => known.get(floorOf(zone.id)) ?? automaticFloor(zone))],
  };
}

/** Whether the fixture came with its zone. */
export const isFloor = ({ id, zone }: Fixture): boolean => id === floorOf(zone);

export function addZone(procedure: Procedure, side: ZoneSide): Procedure {
  const names = [...procedure.zones, ...procedure.fixtures].map(({ id }) => id);
  const id = freeName(names, side === 'clean' ? 'clean-side' : `${side}-area`);
  return withFloors(procedure, [...procedure.zones, { id, side }], procedure.fixtures);
}

/** Another side; its floor is protected from then on only where the zone is clean. */
export function changeZone(procedure: Procedure, id: string, side: ZoneSide): Procedure {
  const zones = procedure.zones.map((zone) => (zone.id === id ? { ...zone, side } : zone));
  const kept = procedure.fixtures.filter((fixture) => fixture.id !== floorOf(id));
  return withFloors(procedure, zones, kept);
}

export function addFixture(procedure: Procedure, kind: FixtureKindId, zone: string): Procedure {
  const id = freeName(
    procedure.fixtures.map((fixture) => fixture.id),
    kind,
  );
  const worked = fixtureKind(kind).worked?.[0];
  const fixture: Fixture = { id, kind, zone, clean: false, ...(worked ? { worked } : {}) };
  return withFloors(
    procedure,
    procedure.zones,
    [fixture, ...procedure.fixtures].toSorted(stable(procedure, id)),
  );
}

/** The new one after those that are there. */
const stable =
  ({ fixtures }: Procedure, id: string) =>
  (a: Fixture, b: Fixture): number => {
    const at = (one: Fixture): number =>
      one.id === id ? fixtures.length : fixtures.findIndex((other) => other.id === one.id);
    return at(a) - at(b);
  };

export type FixtureChange = Partial<Pick<Fixture, 'zone' | 'clean'>> & {
  readonly worked?: Fixture['worked'] | undefined;
  readonly product?: string | undefined;
};

export function changeFixture(procedure: Procedure, id: string, change: FixtureChange): Procedure {
  const fixtures = procedure.fixtures.map((fixture) =>
    fixture.id === id
      ? (Object.fromEntries(
          Object.entries({ ...fixture, ...change }).filter(
            ([, value]) => value !== undefined && value !== '',
          ),
        ) as unknown as Fixture)
      : fixture,
  );
  return { ...procedure, fixtures };
}

/** Numbers (from 1) of the steps that name a fixture, or a zone or its floor. */
export function usesOf({ steps }: Procedure, is: 'fixture' | 'zone', id: string): readonly number[] {
  const names = (step: Step): boolean =>
    step.fixture === (is === 'zone' ? floorOf(id) : id) || (is === 'zone' && step.zone === id);
  return steps.flatMap((step, index) => (names(step) ? [index + 1] : []));
}

const ofFixture =
  (id: string) =>
  (entry: { readonly surface?: string }): boolean =>
    entry.surface === `room.${id}` || (entry.surface?.startsWith(`room.${id}.`) ?? false);

/** What the file says of the start of its surfaces goes with it. */
function without(procedure: Procedure, ids: readonly string[]): Procedure {
  const gone = (entry: { readonly surface?: string }): boolean => ids.some((id) => ofFixture(id)(entry));
  return {
    ...procedure,
    fixtures: procedure.fixtures.filter(({ id }) => !ids.includes(id)),
    start: procedure.start.filter((entry) => !gone(entry)),
    accepted: procedure.accepted.filter((entry) => !gone(entry)),
  };
}

/** Without the fixture, unless a step names it; a floor goes with its zone only. */
export function removeFixture(procedure: Procedure, id: string): Procedure {
  const floor = procedure.fixtures.some((fixture) => fixture.id === id && isFloor(fixture));
  return floor || usesOf(procedure, 'fixture', id).length > 0 ? procedure : without(procedure, [id]);
}

/** Why a zone cannot go: steps, people and things are in it, or it is the last one. */
export function zoneHeld(procedure: Procedure, id: string): boolean {
  return (
    procedure.zones.length < 2 ||
    usesOf(procedure, 'zone', id).length > 0 ||
    procedure.people.some(({ starts }) => starts === id) ||
    procedure.fixtures.some((fixture) => fixture.zone === id && !isFloor(fixture))
  );
}

export function removeZone(procedure: Procedure, id: string): Procedure {
  if (zoneHeld(procedure, id)) return procedure;
  const rest = without(procedure, [floorOf(id)]);
  return withFloors(
    rest,
    rest.zones.filter((zone) => zone.id !== id),
    rest.fixtures,
  );
}
