// The picture of the step, beside the line and never under it, as the exit stands; and the key to its patterns. Where there is no room
// beside, in a tablet held upright, below; on a phone not at all.
import { useId, useMemo } from 'react';
import { capital } from '../../../words/capital.ts';
import { MARKS } from '../../model/marks.ts';
import { Swatch } from '../../picture/Legend.tsx';
import { patternIds } from '../../picture/Patterns.tsx';
import { Picture } from '../../picture/Picture.tsx';
import type { Desk } from './desk.ts';
import { stepShown } from './Large.tsx';
import { asRecorded, momentOf } from './recorded.ts';
import { useBoard } from './useBoard.ts';

interface KeyProps {
  readonly words: Desk['words'];
  /** Something was recorded, and the picture shows it. */
  readonly recorded: boolean;
  /** The step's end: what it changed is outlined. */
  readonly outlined: boolean;
}

function Key({ words, recorded, outlined }: KeyProps) {
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
      {outlined && (
        <li>
          <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
            <rect x="3" y="3" width="22" height="14" rx="2" className="ring changed" />
          </svg>{' '}
          {key.changed}
        </li>
      )}
      <li>{recorded ? key.recorded : key.planned}</li>
    </ul>
  );
}

export function Side({ desk: { screen, state, words } }: { readonly desk: Desk }) {
  const core = state.shown;
  const { procedure } = core.script.setup;
  const planned = useBoard(procedure);
  const step = stepShown(screen, core);
  const board = useMemo(() => planned && asRecorded(planned, core, step), [planned, core, step]);
  const isShown = step < procedure.steps.length && !['emergency', 'stopped', 'ended'].includes(screen.phase);
  if (!board || !isShown) return null;
  const moment = momentOf(core, step);
  return (
    <div className="g-side">
      <Picture procedure={procedure} board={board} step={step} moment={moment} alone whole />
      <Key words={words} recorded={board !== planned} outlined={moment === 'after'} />
    </div>
  );
}
