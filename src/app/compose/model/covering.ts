// What covers what as somebody stands at the start: for the figure, and place by place in words.
import { bodyOf, covers, type Layer, outermost, partSurface } from '../../../contacts/body.ts';
import { type ItemId, itemKind } from '../../../domain/items.ts';
import { type Place, PLACES, placeName, type Side, TISSUE } from '../../../domain/places.ts';
import type { Person } from '../../../domain/procedure.ts';
import type { PersonView, SeenSurface } from '../../model/picture.ts';

export interface Cover {
  readonly place: Place;
  /** Outermost first; empty where it is bare. */
  readonly layers: readonly { readonly item: ItemId; readonly side?: Side }[];
  /** The person's ensemble leaves it bare on purpose. */
  readonly meant: boolean;
}

/** Every place of skin and mucosa, and what lies over it. */
export function coversOf(person: Person): readonly Cover[] {
  const { layers } = bodyOf(person);
  return PLACES.filter((place) => TISSUE[placeName(place)]).map((place) => ({
    place,
    layers: layers
      .filter((layer) => covers(layer, place))
      .map(({ item, side }) => (side ? { item, side } : { item }))
      .reverse(),
    meant: person.leavesBare.includes(place),
  }));
}

const plain = (surface: string): SeenSurface => ({
  surface,
  least: -1,
  mark: 'nothing',
  touched: false,
  cleaned: false,
  changed: false,
});

function layerView(person: string, layer: Layer): PersonView['layers'][number] {
  const { item, side, fastened } = layer;
  const parts = itemKind(item).parts.map((part) => ({
    ...plain(partSurface(person, layer, part)),
    part: part.id,
  }));
  return { item, fastened, parts, ...(side ? { side } : {}) };
}

/** The person as the figure draws them, with nothing said of contamination. */
export function figureOf(person: Person): PersonView {
  const body = bodyOf(person);
  const bare = PLACES.filter((place) => outermost(body, place) === `${person.id}.${place}`);
  return {
    id: person.id,
    role: person.role,
    zone: person.starts,
    standing: body.standing,
    layers: body.layers.map((layer) => layerView(person.id, layer)),
    bare: bare.map((place) => ({ ...plain(`${person.id}.${place}`), place })),
    drawn: new Set(),
    hidden: [],
  };
}
