// A field of the browser's own with its label above it, and below it a hint and what is wrong, which a screen reader tells
// with it.
import { type ReactNode, useId } from 'react';

/** What ties the field to its label, its hint and what is wrong. */
interface Tied {
  readonly id: string;
  readonly 'aria-describedby'?: string;
  readonly 'aria-invalid'?: true;
}

interface LabelledProps {
  readonly label: string;
  readonly hint?: ReactNode;
  /** What is wrong with what stands in it; empty where nothing is. */
  readonly wrong?: string;
  /** Long contents, a line of its own. */
  readonly long?: boolean;
  readonly children: (tied: Tied) => ReactNode;
}

export function Labelled({ label, hint, wrong = '', long = false, children }: LabelledProps) {
  const id = useId();
  const told = [...(wrong ? [`${id}-wrong`] : []), ...(hint ? [`${id}-hint`] : [])].join(' ');
  return (
    <div className={long ? 'field long' : 'field'}>
      <label htmlFor={id}>{label}</label>
      {children({
        id,
        ...(told ? { 'aria-describedby': told } : {}),
        ...(wrong ? { 'aria-invalid': true } : {}),
      })}
      {(hint || wrong) && (
        <span className="field-says">
          {wrong && (
            <span id={`${id}-wrong`} className="wrong">
              {wrong}
            </span>
          )}
          {hint && (
            <span id={`${id}-hint`} className="quiet">
              {hint}
            </span>
          )}
        </span>
      )}
    </div>
  );
}
