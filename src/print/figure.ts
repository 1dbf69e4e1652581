// One person for paper: white shapes with black outlines, hatching where contaminated, a thick outline round what the step
// is about. No colour carries meaning, so that any printer will do.
import { type Body, coveredBy, outermost, partSurface } from '../contacts/body.ts';
import { itemKind, type PartId } from '../domain/items.ts';
import { isPaired, type PlaceName } from '../domain/places.ts';
import { BODY, DRAWINGS, type Shape } from '../drawing/shapes.ts';
import { FIGURE } from '../drawing/geometry.ts';
import { type Box, boxOf, tag } from './svg.ts';

const MIDDLE = FIGURE.width / 2;
const MIRROR = `matrix(-1 0 0 1 ${FIGURE.width} 0)`;

/** A shape as it is drawn, and whether the step is about it. */
export interface Drawn {
  readonly svg: string;
  readonly box: Box;
  readonly meant: boolean;
}

export interface Look {
  readonly hatched: (surface: string) => boolean;
  /** Whether the step is about a surface. */
  readonly meant: (surface: string) => boolean;
}

interface Piece {
  readonly d: string;
  readonly mirror: boolean;
  readonly clear: boolean;
  readonly fill: string;
  readonly surface: string;
}

const SKIN = '#e2e2e2';
const DARK = '#9a9a9a';

function drawn({ d, mirror, clear, fill, surface }: Piece, look: Look): Drawn {
  const meant = look.meant(surface);
  const path = { d, 'fill-rule': 'evenodd', ...(mirror ? { transform: MIRROR } : {}) };
  const line = { stroke: '#000', 'stroke-width': 1.2, 'stroke-linejoin': 'round' };
  return {
    meant,
    box: boxOf(d, mirror ? MIDDLE : undefined),
    svg:
      tag('path', { ...path, ...line, fill, 'fill-opacity': clear ? 0.25 : 1 }) +
      (look.hatched(surface) ? tag('path', { ...path, fill: 'url(#hatch)' }) : ''),
  };
}

/** The thick outlines come last, or what is worn over it would hide half of them. */
const outline = (
  { d, mirror, surface }: Pick<Piece, 'd' | 'mirror' | 'surface'>,
  look: Look,
): readonly string[] =>
  look.meant(surface)
    ? [
        tag('path', {
          d,
          fill: 'none',
          stroke: '#000',
          'stroke-width': 4.5,
          'stroke-linejoin': 'round',
          ...(mirror ? { transform: MIRROR } : {}),
        }),
      ]
    : [];

function bodyPieces(body: Body): readonly Piece[] {
  return BODY.map(({ place, d, mirror = false }): Piece => {
    const side = isPaired(place as PlaceName) ? `.${mirror ? 'left' : 'right'}` : '';
    const fill = place === 'scalp' || place === 'mouth' ? DARK : place === 'eyes' ? '#fff' : SKIN;
    return { d, mirror, clear: false, fill, surface: `${body.id}.${place}${side}` };
  });
}

const FILLS: Readonly<Record<string, string>> = {
  'glove-inner': '#f0f0f0',
  shoes: DARK,
  'rubber-boot': '#cfcfcf',
  scrubs: '#ececec',
  blower: '#cfcfcf',
};

function layerPieces(body: Body, layer: Body['layers'][number]): readonly Piece[] {
  const drawing = DRAWINGS[layer.item];
  const surfaceOf = (id: PartId): string => {
    const part = itemKind(layer.item).parts.find((candidate) => candidate.id === id);
    return part ? partSurface(body.id, layer, part) : '';
  };
  return drawing.shapes.map((shape: Shape) => ({
    d: shape.d,
    mirror: layer.side === 'left' || shape.mirror === true,
    clear: shape.clear ?? false,
    fill: FILLS[drawing.tint] ?? '#fff',
    surface: surfaceOf(shape.part),
  }));
}

const trim = (layer: Body['layers'][number]): string => {
  const { lines } = DRAWINGS[layer.item];
  return lines === undefined
    ? ''
    : tag('path', {
        d: lines,
        fill: 'none',
        stroke: '#000',
        'stroke-width': 1,
        ...(layer.side === 'left' ? { transform: MIRROR } : {}),
      });
};

/** Whether anything of a layer is outermost somewhere. */
function isSeen(body: Body, layer: Body['layers'][number]): boolean {
  const { parts } = itemKind(layer.item);
  return (
    parts.every((part) => part.covers.length === 0) ||
    parts.some((part) =>
      coveredBy(layer, part).some((place) => outermost(body, place) === partSurface(body.id, layer, part)),
    )
  );
}

export interface Person {
  readonly svg: string;
  /** Boxes of what the step is about. */
  readonly meant: readonly Box[];
}

/** A person as they stand, 200 by 440 units. */
export function personOf(body: Body, look: Look): Person {
  const bare = bodyPieces(body);
  const layers = body.layers.map((layer) => ({ layer, pieces: layerPieces(body, layer) }));
  const ofBody = bare.map((piece) => drawn(piece, look));
  const ofLayers = layers.map(({ layer, pieces }) => ({
    layer,
    shapes: pieces.map((piece) => drawn(piece, look)),
  }));
  const all = [...ofBody, ...ofLayers.flatMap(({ shapes }) => shapes)];
  const seen = layers.filter(({ layer }) => isSeen(body, layer)).flatMap(({ pieces }) => pieces);
  return {
    svg: [
      ...ofBody.map(({ svg }) => svg),
      ...ofLayers.flatMap(({ layer, shapes }) => [...shapes.map(({ svg }) => svg), trim(layer)]),
      ...[...bare, ...seen].flatMap((piece) => outline(piece, look)),
    ].join(''),
    meant: all.filter(({ meant }) => meant).map(({ box }) => box),
  };
}
