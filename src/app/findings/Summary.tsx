// How many findings of each kind, in honest words: a zero says what was not found, never that all is well.
import type { FindingKind } from '../../check/finding.ts';
import { type Count, countsOf, type Shown } from '../model/findings.ts';
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

interface OneCountProps {
  readonly count: Count;
  /** Not tried yet: no number, lest a nought be read as a result. */
  readonly waiting: boolean;
  readonly compact: boolean;
}

function OneCount({ count: { kind, open, accepted }, waiting, compact }: OneCountProps) {
  const means = waiting ? 'being tried now' : open === 0 ? NONE : MEANS[kind];
  return (
    <li className={`count kind-${kind}`}>
      <span className={open > 0 ? 'figure some' : 'figure'}>{waiting ? '…' : open}</span>
      <span>
        <b>{words.findingKind(kind)}</b>
        {!compact && (
          <span className="quiet">
            {means}
            {accepted > 0 && `; ${accepted} accepted in writing`}
          </span>
        )}
        {compact && waiting && <span className="visually-hidden">: {means}</span>}
      </span>
    </li>
  );
}

interface SummaryProps {
  readonly shown: readonly Shown[];
  readonly title: string;
  readonly level: 2 | 3;
  /** Whether mends and variants have been tried: until then nothing can be said of variants. */
  readonly complete: boolean;
  /** Names and numbers only. */
  readonly compact?: boolean;
}

export function Summary({ shown, title, level, complete, compact = false }: SummaryProps) {
  const Heading = `h${level}` as const;
  return (
    <section className={compact ? 'summary compact' : 'summary'}>
      <Heading>{title}</Heading>
      <ul className="counts">
        {countsOf(shown).map((count) => (
          <OneCount
            key={count.kind}
            count={count}
            waiting={count.kind === 'variant' && !complete}
            compact={compact}
          />
        ))}
      </ul>
      <p className="quiet">
        A nought says that this check found none. A short list does not mean that a procedure is safe.
      </p>
    </section>
  );
}
