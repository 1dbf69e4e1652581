// The drawing's measures as the layout asks for them, and which parts of an item it shows.
import type { ItemId, PartId } from '../../domain/items.ts';
import type { Measures } from '../model/layout.ts';
import { mirrored, spotOf } from '../../drawing/geometry.ts';
import { DRAWINGS, type Shape } from '../../drawing/shapes.ts';

export const shapesOf = (item: ItemId): readonly PartId[] =>
  DRAWINGS[item].shapes.map((shape: Shape) => shape.part);

export const MEASURES: Measures = {
  partAt: (item, part, side) => {
    const shape = DRAWINGS[item].shapes.find((candidate: Shape) => candidate.part === part);
    if (!shape) return undefined;
    return side === 'left' || shape.mirror ? mirrored(shape.at) : shape.at;
  },
  placeAt: spotOf,
};
