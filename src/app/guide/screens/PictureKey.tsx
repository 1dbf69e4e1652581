// The key to the picture beside a line, the same on the observer's screen and on a second display: what its patterns mean, and
// whether it shows the plan or what was recorded.
import { useId } from 'react';
import { capital } from '../../../words/capital.ts';
import type { Words } from '../../../words/index.ts';
import { MARKS } from '../../model/marks.ts';
import { Swatch } from '../../picture/Legend.tsx';
import { patternIds } from '../../picture/Patterns.tsx';
import type { Recorded } from '../shell/view.ts';

interface KeyProps {
  readonly words: Words;
  readonly recorded: Pick<Recorded, 'moment' | 'worse'>;
}

export function PictureKey({ words, recorded: { moment, worse } }: KeyProps) {
  const ids = patternIds(useId().replaceAll(/[^\w-]/g, ''));
  const { key } = words.guide.labels;
  const texts = { contaminated: key.contaminated, slips: capital(words.guide.suspect), nothing: key.nothing };
  return (
    <ul className="plain g-key" aria-label={key.title}>
      {MARKS.map((mark) => (
        <li key={mark}>
          <Swatch mark={mark} ids={ids} /> {texts[mark]}
        </li>
      ))}
      {moment === 'after' && (
        <li>
          <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
            <rect x="3" y="3" width="22" height="14" rx="2" className="ring changed" />
          </svg>{' '}
          {key.changed}
        </li>
      )}
      <li>{worse === null ? key.planned : key.recorded}</li>
    </ul>
  );
}
