// What speaks against beginning, each with the way to mend it; an exit for real begins with it only knowingly.
import { Link } from 'wouter';
import { Tick } from '../../parts/Choices.tsx';
import { WARNINGS } from './labels.ts';
import type { Warned } from './warned.ts';

interface WarningsProps {
  readonly warnings: readonly Warned[];
  /** Notes that are gone on with. */
  readonly known: readonly string[];
  readonly set: (known: readonly string[]) => void;
  /** An exit for real; a drill is only told. */
  readonly asks: boolean;
}

export function Warnings({ warnings, known, set, asks }: WarningsProps) {
  return (
    <section aria-live="polite" aria-label={WARNINGS.title}>
      {warnings.map(({ says, note, exit, language }) => (
        <div key={note} className="g-warned">
          <p>
            <b lang={language}>{says}</b>{' '}
            {exit !== undefined && <Link href={`/guide/${exit}`}>{WARNINGS.goTo}</Link>}
          </p>
          {asks && (
            <Tick
              on={known.includes(note)}
              set={(on) => set(on ? [...known, note] : known.filter((one) => one !== note))}
            >
              {WARNINGS.knowingly}
            </Tick>
          )}
        </div>
      ))}
    </section>
  );
}
