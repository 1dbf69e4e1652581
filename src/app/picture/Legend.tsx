// What the patterns and lines of the picture mean; always on screen with it.
import { useId } from 'react';
import type { Mark } from '../model/marks.ts';
import { type PatternIds, patternIds, Patterns } from './Patterns.tsx';

const ENTRIES = [
  { mark: 'contaminated', text: 'Contaminated though nobody slips' },
  { mark: 'slips', text: 'Contaminated only if slips or circumstances happen' },
  { mark: 'nothing', text: 'Nothing known to contaminate it' },
] as const;

interface SwatchProps {
  readonly mark: Mark;
  readonly ids: PatternIds;
}

/** A surface as the picture draws it. */
export function Swatch({ mark, ids }: SwatchProps) {
  return (
    <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
      <Patterns ids={ids} />
      <rect x="1" y="1" width="26" height="18" className="shape tint-skin" />
      {mark !== 'nothing' && (
        <rect x="1" y="1" width="26" height="18" fill={`url(#${ids[mark]})`} className="over" />
      )}
    </svg>
  );
}

interface LegendProps {
  /** Contacts by a slip are drawn as well. */
  readonly slips?: boolean;
  /** Only a link of a route is drawn. */
  readonly link?: boolean;
}

export function Legend({ slips = false, link = false }: LegendProps) {
  const ids = patternIds(useId().replaceAll(/[^\w-]/g, ''));
  return (
    <ul className="legend" aria-label="Legend of the picture">
      {ENTRIES.map(({ mark, text }) => (
        <li key={mark}>
          <Swatch mark={mark} ids={ids} />
          {text}
        </li>
      ))}
      <li>
        <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
          {link ? (
            <path d="M2 10 H18" className="link-line" />
          ) : (
            <line x1="2" y1="10" x2="26" y2="10" className="contact-line" />
          )}
          {link ? (
            <path d="M16 4 L26 10 L16 16 Z" className="link-head" />
          ) : (
            <circle cx="14" cy="10" r="8" className="contact-disc" />
          )}
        </svg>
        {link ? 'Contamination passes on by this link' : 'Touches in this step'}
      </li>
      {!link && (
        <li>
          <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
            <rect x="3" y="3" width="22" height="14" rx="2" className="ring cleaned" />
          </svg>
          Wiped or rubbed in this step
        </li>
      )}
      {slips && (
        <li>
          <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true" className="contact slip">
            <line x1="2" y1="10" x2="26" y2="10" className="contact-line" />
          </svg>
          Touches only by a slip
        </li>
      )}
    </ul>
  );
}
