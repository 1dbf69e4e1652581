// A route walked link by link: buttons or the arrow keys, the sentence of the link, and the picture of its step with the
// contact of this link as an arrow.
import { useEffect, useState } from 'react';
import type { Finding } from '../../check/finding.ts';
import type { ViewProps } from '../view.ts';
import { Legend } from '../picture/Legend.tsx';
import { Picture } from '../picture/Picture.tsx';
import { words } from '../words.ts';

interface RouteWalkProps extends ViewProps {
  readonly finding: Finding;
}

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input, select, textarea, [role=radiogroup], [role=grid]') !== null;

/** Left and right walk the route from wherever the focus is, unless it is in a field that needs them. */
function useArrows(move: (by: number) => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.altKey || event.ctrlKey || event.metaKey || typing(event.target)) return;
      if (event.key === 'ArrowRight') move(1);
      else if (event.key === 'ArrowLeft') move(-1);
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [move]);
}

export function RouteWalk({ judged, board, finding }: RouteWalkProps) {
  const { procedure } = judged;
  const sentences = words.route(procedure, finding);
  const [at, setAt] = useState(0);
  const last = sentences.length - 1;
  const move = (by: number): void => setAt((now) => Math.min(Math.max(now + by, 0), Math.max(last, 0)));
  useArrows(move);
  const sentence = sentences[at];
  if (!sentence) return null;
  const { to, from } = sentence;
  const link = to === undefined ? undefined : { to, ...(from === undefined ? {} : { from }) };
  const step = Math.max(sentence.step, 0);
  return (
    <section className="route" aria-labelledby="route-title">
      <h2 id="route-title">Its route</h2>
      <div className="route-view">
        <div className="route-here">
          <p className="route-now" aria-live="polite">
            <b>
              Link {at + 1} of {sentences.length}.
            </b>{' '}
            {sentence.text}
          </p>
          {/* Not `isDisabled`: a button that goes off under the keyboard takes the focus with it. */}
          <div className="stepper">
            <button type="button" className="button" aria-disabled={at === 0} onClick={() => move(-1)}>
              ← Previous link
            </button>
            <button type="button" className="button main" aria-disabled={at === last} onClick={() => move(1)}>
              Next link →
            </button>
          </div>
          <p className="quiet">Left and right arrow keys do the same.</p>
        </div>
        <div className="route-picture">
          <Picture procedure={procedure} board={board} step={step} moment="before" link={link} alone />
          <Legend link />
        </div>
        <ol className="links">
          {sentences.map((one, index) => (
            <li key={one.text}>
              <button
                type="button"
                onClick={() => setAt(index)}
                aria-current={index === at ? 'step' : undefined}
              >
                <b>{index + 1}</b> {one.text}
              </button>
            </li>
          ))}
        </ol>
      </div>
    </section>
  );
}
