// One person from the front: the body, then each worn item as a layer in wearing order, each part with the pattern of
// what is known of it.
import { placeName, type Side, sideOf } from '../../domain/places.ts';
import type { PersonView, SeenLayer, SeenPart, SeenPlace, SeenSurface } from '../model/picture.ts';
import { fillOf, type PatternIds } from './Patterns.tsx';
import { ringOf } from './ring.ts';
import { BODY, DRAWINGS, type Shape } from '../../drawing/shapes.ts';

const MIRROR = 'matrix(-1 0 0 1 200 0)';

interface MarkedProps {
  readonly d: string;
  readonly seen: SeenSurface | undefined;
  readonly tint: string;
  readonly ids: PatternIds;
  readonly mirror?: boolean;
  readonly clear?: boolean;
}

function Marked({ d, seen, tint, ids, mirror = false, clear = false }: MarkedProps) {
  const fill = seen && fillOf(ids, seen.mark);
  const ring = seen && ringOf(seen);
  return (
    <g {...(mirror ? { transform: MIRROR } : {})}>
      <path d={d} fillRule="evenodd" className={`shape tint-${tint}${clear ? ' clear' : ''}`} />
      {fill && <path d={d} fillRule="evenodd" fill={fill} className={clear ? 'over clear-over' : 'over'} />}
      {ring && <path d={d} fillRule="evenodd" className={ring} />}
    </g>
  );
}

function BodyShapes({ bare, ids }: { readonly bare: readonly SeenPlace[]; readonly ids: PatternIds }) {
  const at = (place: string, mirror: boolean) =>
    bare.find(
      (one) =>
        placeName(one.place) === place && (sideOf(one.place) ?? 'right') === (mirror ? 'left' : 'right'),
    );
  return (
    <>
      {BODY.map(({ place, d, mirror = false }) => (
        <Marked
          key={`${place}${String(mirror)}`}
          d={d}
          seen={at(place, mirror)}
          tint={place === 'mouth' || place === 'eyes' ? place : place === 'scalp' ? 'scalp' : 'skin'}
          ids={ids}
          mirror={mirror}
        />
      ))}
    </>
  );
}

const isLeft = (side: Side | undefined, shape: Shape): boolean => side === 'left' || shape.mirror === true;

function LayerShapes({ layer, ids }: { readonly layer: SeenLayer; readonly ids: PatternIds }) {
  const drawing = DRAWINGS[layer.item];
  const of = (part: string): SeenPart | undefined => layer.parts.find((one) => one.part === part);
  return (
    <g className={layer.fastened ? 'layer' : 'layer undone'}>
      {drawing.shapes.map((shape: Shape) => (
        <Marked
          key={shape.d}
          d={shape.d}
          seen={of(shape.part)}
          tint={drawing.tint}
          ids={ids}
          mirror={isLeft(layer.side, shape)}
          clear={shape.clear ?? false}
        />
      ))}
      {drawing.lines && (
        <path d={drawing.lines} className="trim" {...(layer.side === 'left' ? { transform: MIRROR } : {})} />
      )}
    </g>
  );
}

export function Figure({ person, ids }: { readonly person: PersonView; readonly ids: PatternIds }) {
  return (
    <>
      <BodyShapes bare={person.bare} ids={ids} />
      {person.layers.map((layer) => (
        <LayerShapes key={`${layer.item}${layer.side ?? ''}`} layer={layer} ids={ids} />
      ))}
    </>
  );
}
