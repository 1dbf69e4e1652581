// Checks of people and room: who wears what, who starts where, and whether zones, fixtures and products that are
// named exist. Whether it can be worn like that is for the plan to find out.
import { FIXTURE_KINDS } from '../domain/room.ts';
import { ROLES } from '../domain/procedure.ts';
import { type Context, defaultStart, floorOf, type LoosePerson, roleOf, UNDERNEATH } from './context.ts';
import type { Path } from './report.ts';

/** First word of the surfaces of the room. */
const ROOM = 'room';

export function checkZone(context: Context, path: Path, zone: string | undefined): void {
  if (zone === undefined || !context.zones || context.zones.has(zone)) return;
  context.report.name(path, 'unknown-zone', zone, [...context.zones.keys()]);
}

export function checkProduct(context: Context, path: Path, product: string | undefined): void {
  if (product === undefined || !context.products || context.products.includes(product)) return;
  context.report.name(path, 'product-not-listed', product, context.products);
}

function checkTwice(context: Context, path: Path, list: readonly (string | undefined)[] | undefined): void {
  list?.forEach((name, index) => {
    if (name !== undefined && list.indexOf(name) < index) {
      context.report.value([...path, index], 'listed-twice', { name });
    }
  });
}

function checkWorn(context: Context, name: string, person: LoosePerson): void {
  const seen = new Set<string>(person.underneath === undefined ? UNDERNEATH : []);
  for (const key of ['underneath', 'wears'] as const) {
    person[key]?.forEach((item, index) => {
      if (item === undefined) return;
      if (seen.has(item)) context.report.value(['people', name, key, index], 'worn-twice', { name: item });
      seen.add(item);
    });
  }
}

function checkStarts(context: Context, name: string, person: LoosePerson): void {
  const { zones, file, report } = context;
  checkZone(context, ['people', name, 'starts'], person.starts);
  if (person.starts !== undefined || !zones || file.kind === undefined) return;
  const role = roleOf(name, person);
  if (role !== undefined && defaultStart(role, file.kind, zones) === undefined) {
    report.key(['people', name], 'start-zone-needed', { name, allowed: [...zones.keys()] });
  }
}

export function checkPeople(context: Context): void {
  const { people, report } = context;
  for (const [name, person] of people) {
    // A name that cannot be one was reported.
    if (context.file.people?.[name] === undefined) continue;
    if (name === ROOM) report.key(['people', name], 'reserved-name', { name });
    if (roleOf(name, person) === undefined)
      report.key(['people', name], 'role-needed', { name, allowed: ROLES });
    checkWorn(context, name, person);
    checkStarts(context, name, person);
  }
  if (context.file.people && people.size === 0) {
    report.value(['people'], 'empty-value', { expected: 'at least one person' });
  }
}

type LooseFixture = NonNullable<NonNullable<NonNullable<Context['file']['room']>['fixtures']>[string]>;

function checkFixture(context: Context, name: string, fixture: LooseFixture): void {
  const { report } = context;
  const path = ['room', 'fixtures', name];
  checkZone(context, [...path, 'zone'], fixture.zone);
  checkProduct(context, [...path, 'product'], fixture.product);
  const kind = FIXTURE_KINDS.find(({ id }) => id === fixture.kind);
  if (!kind) return;
  const ways: readonly string[] = 'worked' in kind ? kind.worked : [];
  if (fixture.worked !== undefined && !ways.includes(fixture.worked)) {
    report.name([...path, 'worked'], 'worked-does-not-fit', fixture.worked, ways, { kind: kind.id });
  }
  if (fixture.product !== undefined && !('underfoot' in kind)) {
    report.key([...path, 'product'], 'fixture-takes-no-product', { kind: kind.id });
  }
}

export function checkRoom(context: Context): void {
  const { file, report, zones } = context;
  if (zones?.size === 0) report.value(['room', 'zones'], 'empty-value', { expected: 'at least one zone' });
  checkTwice(context, ['products'], file.products);
  checkTwice(context, ['agents'], file.agents);
  for (const [name, fixture] of Object.entries(file.room?.fixtures ?? {})) {
    if (fixture) checkFixture(context, name, fixture);
    const zone = [...(zones?.keys() ?? [])].find((one) => floorOf(one) === name);
    const wrong =
      fixture?.zone !== undefined &&
      fixture.kind !== undefined &&
      (fixture.zone !== zone || fixture.kind !== 'floor');
    if (zone !== undefined && wrong) report.key(['room', 'fixtures', name], 'floor-name-taken', { name });
  }
}
