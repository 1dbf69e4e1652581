// How many findings of each kind, in honest words: a zero says what was not found, never that all is well.
import type { FindingKind } from '../../check/finding.ts';
import { countsOf, type Shown } from '../model/findings.ts';
import { words } from '../words.ts';

/** What each count is a count of. */
const MEANS: Readonly<Record<FindingKind, string>> = {
  impossible: 'steps that cannot be done as written',
  open: 'protected surfaces contaminated though nobody slips',
  accepted: 'contamination that the procedure takes on and must deal with',
  'one-slip': 'single slips or circumstances that reach a protected surface',
  practice: 'departures from published practice',
  variant: 'steps that make it worse when left out or moved',
  coverage: 'places that nothing worn covers',
};

const NONE = 'none found by this check';

interface SummaryProps {
  readonly shown: readonly Shown[];
  readonly title: string;
  readonly level: 2 | 3;
  /** Names and numbers only. */
  readonly compact?: boolean;
}

export function Summary({ shown, title, level, compact = false }: SummaryProps) {
  const Heading = `h${level}` as const;
  return (
    <section className={compact ? 'summary compact' : 'summary'}>
      <Heading>{title}</Heading>
      <ul className="counts">
        {countsOf(shown).map(({ kind, open, accepted }) => (
          <li key={kind} className={`count kind-${kind}`}>
            <span className="figure">{open}</span>
            <span>
              <b>{words.findingKind(kind)}</b>
              {!compact && (
                <span className="quiet">
                  {open === 0 ? NONE : MEANS[kind]}
                  {accepted > 0 && `; ${accepted} accepted in writing`}
                </span>
              )}
            </span>
          </li>
        ))}
      </ul>
      <p className="quiet">
        A nought says that this check found none. A short list does not mean that a procedure is safe.
      </p>
    </section>
  );
}
