// A procedure to its canonical file: keys in a fixed order, defaults left out, one line per step. Reading it gives the
// same procedure again, and printing that the same text. Comments and layout of the file it came from are not kept.
import { Document, isCollection, isPair, type YAMLMap, type YAMLSeq } from 'yaml';
import { isPaired, type Place, placeName, sideOf } from '../domain/places.ts';
import type { Person, Procedure, Step } from '../domain/procedure.ts';
import type { Fixture } from '../domain/room.ts';
import { defaultDoer, defaultStart, floorOf, UNDERNEATH } from './context.ts';
import { automaticFloor, defaultWorked, defined } from './resolve.ts';
import { FIELD_KEYS } from './shape-steps.ts';

type Collection = YAMLMap | YAMLSeq;

/** A value, or nothing where the reader would fill in the same. */
const unless = <T>(value: T, usual: unknown): T | undefined =>
  JSON.stringify(value) === JSON.stringify(usual) ? undefined : value;
const unlessEmpty = <T>(list: readonly T[]): readonly T[] | undefined => (list.length > 0 ? list : undefined);

/** Left followed by right is written as the pair. */
function placesShort(places: readonly Place[]): readonly string[] {
  return places.flatMap((place, index) => {
    const name = placeName(place);
    const before = index > 0 ? places[index - 1] : undefined;
    if (!isPaired(name)) return [place];
    if (sideOf(place) === 'left') return places[index + 1] === `${name}.right` ? [name] : [place];
    return before === `${name}.left` ? [] : [place];
  });
}

function personOf(person: Person, { kind, zones }: Procedure): object {
  const start = defaultStart(person.role, kind, new Map(zones.map(({ id, side }) => [id, side])));
  return defined({
    role: unless(person.role, person.id),
    wears: unlessEmpty(person.wears),
    underneath: unless(person.underneath, UNDERNEATH),
    starts: unless(person.starts, start),
    hand: unless(person.hand, 'right'),
    'leaves-bare': unlessEmpty(placesShort(person.leavesBare)),
  });
}

function fixtureOf({ kind, zone, clean, worked, product }: Fixture, floor: Fixture | undefined): object {
  return defined({
    kind,
    zone,
    clean: unless(clean, floor?.clean ?? false),
    worked: unless(worked, defaultWorked(kind)),
    product,
  });
}

function roomOf({ zones, fixtures }: Procedure): object {
  const floors = new Map(zones.map((zone) => [floorOf(zone.id), automaticFloor(zone)]));
  const written = fixtures.filter((fixture) => {
    const floor = floors.get(fixture.id);
    return !floor || fixture.zone !== floor.zone || Object.keys(fixtureOf(fixture, floor)).length > 2;
  });
  const entries = written.map((fixture) => [fixture.id, fixtureOf(fixture, floors.get(fixture.id))] as const);
  return {
    zones: Object.fromEntries(zones.map(({ id, side }) => [id, side])),
    ...(entries.length > 0 ? { fixtures: Object.fromEntries(entries) } : {}),
  };
}

function stepOf(step: Step, index: number, doer: string | undefined): object {
  const { items } = step;
  return defined({
    id: unless(step.id, `s${index + 1}`),
    who: unless(step.who, doer),
    do: step.action,
    [FIELD_KEYS.items]: items.length === 1 ? items[0] : unlessEmpty(items),
    [FIELD_KEYS.side]: step.side,
    [FIELD_KEYS.part]: step.part,
    [FIELD_KEYS.of]: step.of,
    [FIELD_KEYS.place]: step.place,
    [FIELD_KEYS.zone]: step.zone,
    [FIELD_KEYS.fixture]: step.fixture,
    [FIELD_KEYS.product]: step.product,
    [FIELD_KEYS.technique]: step.technique,
    [FIELD_KEYS.helper]: step.helper,
    pinned: step.pinned,
    note: step.note,
  });
}

function policyOf({ creditSpraying, observer }: Procedure['policy']): object | undefined {
  const policy = defined({
    'credit-spraying': unless(creditSpraying, false),
    observer: observer && { misses: observer.misses, dependence: observer.dependence },
  });
  return Object.keys(policy).length > 0 ? policy : undefined;
}

/** The procedure as the file's plain values, keys in canonical order. */
function fileOf(procedure: Procedure): Readonly<Record<string, unknown>> {
  const { source, people, start, accepted } = procedure;
  const doer = defaultDoer(new Map(people.map(({ id, role }) => [id, { role }])));
  return defined({
    doffline: 1,
    title: procedure.title,
    kind: procedure.kind,
    version: procedure.version,
    invented: unless(procedure.invented, false),
    about: procedure.about,
    source:
      source && inOrder(source, ['title', 'publisher', 'year', 'where', 'seen', 'memory', 'interpreted']),
    agents: unless(procedure.agents, ['enveloped']),
    donning: procedure.donning,
    people: Object.fromEntries(people.map((person) => [person.id, personOf(person, procedure)])),
    room: roomOf(procedure),
    products: unlessEmpty(procedure.products),
    start: unlessEmpty(start.map((entry) => inOrder(entry, ['surface', 'state', 'reason']))),
    policy: policyOf(procedure.policy),
    steps: procedure.steps.map((step, index) => stepOf(step, index, doer)),
    accepted: unlessEmpty(
      accepted.map((entry) =>
        inOrder(entry, ['finding', 'step', 'surface', 'reason', 'by', 'date', 'review']),
      ),
    ),
  });
}

const inOrder = <T extends object>(value: T, keys: readonly (keyof T & string)[]): object =>
  defined(Object.fromEntries(keys.map((key) => [key, value[key]])));

/** The lists and groups directly inside a list or group. */
function inner(node: unknown): readonly Collection[] {
  if (!isCollection(node)) return [];
  const values = node.items.map((entry): unknown => (isPair(entry) ? entry.value : entry));
  return values.filter((value) => isCollection(value));
}

function inOneLine(nodes: readonly unknown[]): void {
  for (const node of nodes) if (isCollection(node)) node.flow = true;
}

/** One line for each list, fixture and step; a step with a note, and what carries sentences, goes line by line. */
function layOut(document: Document): void {
  const at = (...path: readonly string[]): unknown => document.getIn(path, true);
  inOneLine([at('agents'), at('room', 'zones'), at('products'), at('policy')]);
  inOneLine(inner(at('people')).flatMap(inner));
  inOneLine([...inner(at('room', 'fixtures')), ...inner(at('start'))]);
  const steps = inner(at('steps'));
  inOneLine(steps.filter((step) => !step.has('note')));
  inOneLine(steps.flatMap(inner));
}

/** The canonical text of a procedure; comments of a file that it was read from are not kept. */
export function printProcedure(procedure: Procedure): string {
  const document = new Document(fileOf(procedure), { aliasDuplicateObjects: false });
  layOut(document);
  return document.toString({ lineWidth: 0, flowCollectionPadding: false });
}
