// What the picture of one step shows, worked out from the board: who is in it, what they have on in wearing order,
// what one sees of it and what is hidden, and which surfaces touch. The drawing itself only follows this.
import { type Body, coveredBy, outermost, partSurface } from '../../contacts/body.ts';
import type { Scene } from '../../contacts/scene.ts';
import { itemKind, type ItemId, type PartId } from '../../domain/items.ts';
import { type Place, PLACES, type Side, TISSUE, placeName } from '../../domain/places.ts';
import type { Procedure, Role } from '../../domain/procedure.ts';
import { type Board, type BoardContact, contactsOf } from './board.ts';
import { leastAt, type Mark, markOf } from './marks.ts';
import { namedBy } from './surfaceId.ts';

/** `before`: as the step begins, with what it touches. `after`: as it ends, with what it changed. */
export type Moment = 'before' | 'after';

export interface SeenSurface {
  readonly surface: string;
  readonly least: number;
  readonly mark: Mark;
  readonly touched: boolean;
  /** Wiped or rubbed in this step. */
  readonly cleaned: boolean;
  readonly changed: boolean;
}

export interface SeenPart extends SeenSurface {
  readonly part: PartId;
}

export interface SeenLayer {
  readonly item: ItemId;
  readonly side?: Side;
  readonly fastened: boolean;
  readonly parts: readonly SeenPart[];
}

export interface SeenPlace extends SeenSurface {
  readonly place: Place;
}

export interface PersonView {
  readonly id: string;
  readonly role: Role;
  readonly zone: string;
  readonly seated?: string;
  readonly standing: string;
  readonly layers: readonly SeenLayer[];
  readonly bare: readonly SeenPlace[];
  /** Surfaces of what is worn that the drawing shows. */
  readonly drawn: ReadonlySet<string>;
  /** Backs, insides and what lies beneath: touched now, or with something to say. */
  readonly hidden: readonly SeenSurface[];
}

export interface FixtureView extends SeenSurface {
  readonly fixture: string;
  readonly kind: string;
  readonly clean: boolean;
}

/** Always made, made only by a slip, or resting where it lies (a lining, a sole on the floor). */
export type TouchKind = 'always' | 'slip' | 'resting';

export interface Touch {
  readonly a: string;
  readonly b: string;
  readonly kind: TouchKind;
  /** Indices into the board's events. */
  readonly events: readonly number[];
}

export interface Cleaned {
  readonly surface: string;
  readonly credited: boolean;
}

export interface PictureView {
  readonly step: number;
  readonly moment: Moment;
  readonly people: readonly PersonView[];
  readonly fixtures: readonly FixtureView[];
  readonly touches: readonly Touch[];
  /** What is wiped or rubbed, and whether that counts against the agent at all. */
  readonly cleaned: readonly Cleaned[];
}

/** Which parts of an item the drawing shows. */
export type Shapes = (item: ItemId) => readonly PartId[];

interface Stage {
  readonly board: Board;
  readonly step: number;
  readonly moment: Moment;
  readonly touched: ReadonlySet<string>;
  readonly cleaned: ReadonlySet<string>;
}

function seen({ board, step, moment, touched, cleaned }: Stage, surface: string): SeenSurface {
  const [before, after] = [leastAt(board, surface, step - 1), leastAt(board, surface, step)];
  const least = moment === 'before' ? before : after;
  return {
    surface,
    least,
    mark: markOf(least),
    touched: moment === 'before' && touched.has(surface),
    cleaned: moment === 'before' && cleaned.has(surface),
    changed: moment === 'after' && before !== after,
  };
}

/** Insides lie on what is beneath, soles stand on the floor: true of every step, so said but not drawn. */
function rests({ a, b }: BoardContact): boolean {
  const [one, other] = [namedBy(a), namedBy(b)];
  const isFoot = (named: typeof one) =>
    (named.is === 'part' && named.part === 'sole') ||
    (named.is === 'place' && placeName(named.place) === 'sole');
  const isLining = (named: typeof one, against: typeof one) =>
    named.is === 'part' &&
    named.part.startsWith('inside') &&
    !(against.is === 'part' && itemKind(against.item).group === 'glove') &&
    !(against.is === 'place' && placeName(against.place) === 'hand');
  return (
    (isFoot(one) && other.is === 'fixture') ||
    (isFoot(other) && one.is === 'fixture') ||
    isLining(one, other) ||
    isLining(other, one)
  );
}

/** The step's contacts, each pair once; a contact that always happens hides the same one by a slip. */
export function touchesOf(contacts: readonly BoardContact[]): readonly Touch[] {
  const found = new Map<string, Touch>();
  for (const contact of contacts) {
    const key = [contact.a, contact.b].toSorted().join(' ');
    const always = contact.events.length === 0;
    const known = found.get(key);
    if (known && (known.kind !== 'slip' || !always)) continue;
    const kind: TouchKind = always ? (rests(contact) ? 'resting' : 'always') : 'slip';
    found.set(key, { a: contact.a, b: contact.b, kind, events: contact.events });
  }
  return [...found.values()];
}

const isSeen = (body: Body, layer: Body['layers'][number], id: PartId): boolean => {
  const part = itemKind(layer.item).parts.find((candidate) => candidate.id === id);
  if (!part) return false;
  const places = coveredBy(layer, part);
  return places.some((place) => outermost(body, place) === partSurface(body.id, layer, part));
};

function layersOf(stage: Stage, body: Body): readonly SeenLayer[] {
  return body.layers.map((layer) => ({
    item: layer.item,
    ...(layer.side ? { side: layer.side } : {}),
    fastened: layer.fastened,
    parts: itemKind(layer.item).parts.map((part) => ({
      part: part.id,
      ...seen(stage, partSurface(body.id, layer, part)),
    })),
  }));
}

/** Parts one sees in the drawing: those that are outermost somewhere, and trims of an item of which one sees something. */
function drawnParts(body: Body, shapes: Shapes): ReadonlySet<string> {
  const drawn = new Set<string>();
  for (const layer of body.layers) {
    const { parts } = itemKind(layer.item);
    const free = parts.every((part) => part.covers.length === 0);
    const some = free || parts.some((part) => isSeen(body, layer, part.id));
    for (const part of parts) {
      const trims = part.covers.length === 0 && some;
      if (shapes(layer.item).includes(part.id) && (trims || isSeen(body, layer, part.id)))
        drawn.add(partSurface(body.id, layer, part));
    }
  }
  return drawn;
}

const RANK: Readonly<Record<Mark, number>> = { contaminated: 0, slips: 1, nothing: 2 };

function hiddenOf(stage: Stage, body: Body, drawn: ReadonlySet<string>): readonly SeenSurface[] {
  const worn = body.layers.flatMap((layer) =>
    itemKind(layer.item).parts.map((part) => partSurface(body.id, layer, part)),
  );
  const skin = PLACES.filter((place) => TISSUE[placeName(place)] !== undefined)
    .filter((place) => outermost(body, place) !== `${body.id}.${place}`)
    .map((place) => `${body.id}.${place}`);
  const coming = [...stage.touched].filter((id) => id.startsWith(`${body.id}.`));
  return [...new Set([...worn, ...skin, ...(stage.moment === 'before' ? coming : [])])]
    .filter((id) => !drawn.has(id) && outermostBare(body, id) === undefined)
    .map((id) => seen(stage, id))
    .filter((one) => one.touched || one.cleaned || one.changed || one.mark !== 'nothing')
    .toSorted(
      (one, other) => Number(other.touched) - Number(one.touched) || RANK[one.mark] - RANK[other.mark],
    );
}

/** The place of a bare surface; undefined where something is worn over it. */
function outermostBare(body: Body, id: string): Place | undefined {
  const named = namedBy(id);
  return named.is === 'place' && outermost(body, named.place) === id ? named.place : undefined;
}

function bareOf(stage: Stage, body: Body): readonly SeenPlace[] {
  return PLACES.filter((place) => outermost(body, place) === `${body.id}.${place}`).map((place) => ({
    place,
    ...seen(stage, `${body.id}.${place}`),
  }));
}

function personView(stage: Stage, body: Body, shapes: Shapes): PersonView {
  const drawn = drawnParts(body, shapes);
  return {
    id: body.id,
    role: body.role,
    zone: body.zone,
    standing: body.standing,
    ...(body.seated === undefined ? {} : { seated: body.seated }),
    layers: layersOf(stage, body),
    bare: bareOf(stage, body),
    drawn,
    hidden: hiddenOf(stage, body, drawn),
  };
}

/** The wearer, and whoever acts, helps, is helped or is touched. */
function peopleIn(procedure: Procedure, step: number, touched: ReadonlySet<string>): readonly string[] {
  const { who, of, helper } = procedure.steps[step] ?? { who: '' };
  return procedure.people
    .filter(
      ({ id, role }) =>
        role === 'wearer' ||
        [who, of, helper].includes(id) ||
        [...touched].some((one) => one.startsWith(`${id}.`)),
    )
    .map(({ id }) => id);
}

function fixturesIn(stage: Stage, procedure: Procedure, scene: Scene, people: readonly string[]) {
  const zones = people.map((id) => scene.bodies[id]?.zone);
  const feet = people.flatMap((id) => [scene.bodies[id]?.standing, scene.bodies[id]?.seated]);
  return procedure.fixtures.flatMap((fixture): FixtureView[] => {
    const surfaces = stage.board.surfaces.filter(({ id }) => id.startsWith(`room.${fixture.id}.`));
    const views = surfaces.map(({ id }) => seen(stage, id));
    const first =
      views.toSorted((a, b) => RANK[a.mark] - RANK[b.mark]).find((one) => one.touched) ?? views[0];
    const inPlay = views.some((one) => one.touched || one.changed) || feet.includes(fixture.id);
    if (!first || (!inPlay && !(zones.includes(fixture.zone) && fixture.kind !== 'floor'))) return [];
    return [{ ...first, fixture: fixture.id, kind: fixture.kind, clean: fixture.clean }];
  });
}

export interface PictureQuestion {
  readonly step: number;
  readonly moment: Moment;
  readonly shapes: Shapes;
  /** Surfaces to show whatever else is in the picture: the ends of a link of a route. */
  readonly also?: readonly string[];
  /** Slips' contacts count as touching too. */
  readonly slips?: boolean;
  /** Of the step's contacts only the surfaces of `also` are shown as touching. */
  readonly alone?: boolean;
}

/** The picture of a step; undefined where there is no such step. */
export function pictureOf(
  procedure: Procedure,
  board: Board,
  { step, moment, shapes, also = [], slips = false, alone = false }: PictureQuestion,
): PictureView | undefined {
  const at = board.steps[step];
  if (!at) return undefined;
  const touches = touchesOf(contactsOf(board, step));
  const active = touches.filter(({ kind }) => kind === 'always' || (slips && kind === 'slip'));
  const touched = new Set([...(alone ? [] : active.flatMap(({ a, b }) => [a, b])), ...also]);
  const cleaned = new Set(alone ? [] : at.cleaned.map(({ surface }) => surface));
  const stage: Stage = { board, step, moment, touched, cleaned };
  const scene = moment === 'before' ? at.before : at.after;
  const people = peopleIn(procedure, step, touched);
  return {
    step,
    moment,
    people: people.flatMap((id) => {
      const body = scene.bodies[id];
      return body ? [personView(stage, body, shapes)] : [];
    }),
    fixtures: fixturesIn(stage, procedure, scene, people),
    touches,
    cleaned: [...new Map(at.cleaned.map((one) => [one.surface, one])).values()],
  };
}
