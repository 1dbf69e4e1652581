// The figure of what somebody wears, and beside it in words which item covers which place, outermost first. Bare places
// are named first: they are what the ensemble leaves open.
import { useId } from 'react';
import type { Person, Procedure } from '../../../domain/procedure.ts';
import { Figure } from '../../picture/Figure.tsx';
import { patternIds, Patterns } from '../../picture/Patterns.tsx';
import { namesBeside } from '../../model/names.ts';
import { words } from '../../words.ts';
import { type Cover, coversOf, figureOf } from '../model/covering.ts';

interface CoveringProps {
  readonly draft: Procedure;
  readonly person: Person;
}

const layersText = ({ layers }: Cover): string =>
  layers.map(({ item }) => words.item(item)).join(' over ') || 'bare';

/** Left and right in one line where they are the same. */
function rows(
  covers: readonly Cover[],
  nameOf: (place: string) => string,
): readonly (readonly [string, Cover])[] {
  return covers.flatMap((cover, index): readonly (readonly [string, Cover])[] => {
    const [name = '', side] = cover.place.split('.');
    const other = side === 'left' ? covers[index + 1] : covers[index - 1];
    const same = side !== undefined && other !== undefined && layersText(other) === layersText(cover);
    if (same && side === 'right') return [];
    return [[same ? `both ${name}s` : nameOf(cover.place), cover]];
  });
}

export function Covering({ draft, person }: CoveringProps) {
  const id = useId().replaceAll(/[^\w-]/g, '');
  const ids = patternIds(id);
  const beside = namesBeside(draft, person.id, words);
  const all = rows(coversOf(person), (place) => beside(`${person.id}.${place}`));
  const bare = all.filter(([, { layers }]) => layers.length === 0);
  const covered = all.filter(([, { layers }]) => layers.length > 0);
  const who = words.person(draft, person.id);
  return (
    <div className="covering">
      <svg
        className="picture cover-figure"
        viewBox="0 0 200 440"
        role="img"
        aria-label={`${who} from the front, wearing ${person.wears.map(words.item).join(', ') || 'nothing over the clothes'}`}
      >
        <Patterns ids={ids} />
        <Figure person={figureOf(person)} ids={ids} />
      </svg>
      <dl className="covers">
        <dt>Bare</dt>
        <dd>
          {bare.length === 0
            ? 'No place of skin or mucosa.'
            : bare.map(([name, { meant }]) => `${name}${meant ? ' (on purpose)' : ''}`).join(', ')}
        </dd>
        {covered.map(([name, cover]) => (
          <div key={cover.place}>
            <dt>{name}</dt>
            <dd>{layersText(cover)}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
