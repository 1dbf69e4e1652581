// How many findings of each kind, in honest words: a zero says what was not found, never that all is well.
import type { FindingKind } from '../../check/finding.ts';
import type { Limit } from '../../check/limits.ts';
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
  acceptance: 'acceptances in writing that hold nothing',
};

const NONE = 'none found by this check';

/** Kinds that need the conditions; where these could not be worked out, nobody looked. */
const FROM_CONDITIONS: ReadonlySet<FindingKind> = new Set(['accepted', 'one-slip', 'variant']);

/** Why there is no number: not tried yet, or not at all; lest a nought be read as a result. */
function missing(kind: FindingKind, complete: boolean, limits: readonly Limit[]): string | undefined {
  if (FROM_CONDITIONS.has(kind) && limits.some(({ code }) => code === 'exact')) return 'not looked at';
  return kind === 'variant' && !complete ? 'being tried now' : undefined;
}

interface OneCountProps {
  readonly count: Count;
  /** Why there is no number. */
  readonly without: string | undefined;
  readonly compact: boolean;
}

function OneCount({ count: { kind, open, accepted }, without, compact }: OneCountProps) {
  const means = without ?? (open === 0 ? NONE : MEANS[kind]);
  return (
    <li className={`count kind-${kind}`}>
      <span className={open > 0 ? 'figure some' : 'figure'}>{without ? '…' : open}</span>
      <span>
        <b>{words.findingKind(kind)}</b>
        {!compact && (
          <span className="quiet">
            {means}
            {accepted > 0 && `; ${accepted} accepted in writing`}
          </span>
        )}
        {compact && without && <span className="visually-hidden">: {means}</span>}
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
  /** What the check left undone: a short list is then shorter than it would be. */
  readonly limits: readonly Limit[];
  /** Names and numbers only. */
  readonly compact?: boolean;
}

export function Summary({ shown, title, level, complete, limits, compact = false }: SummaryProps) {
  const Heading = `h${level}` as const;
  return (
    <section className={compact ? 'summary compact' : 'summary'}>
      <Heading>{title}</Heading>
      <ul className="counts">
        {countsOf(shown).map((count) => (
          <OneCount
            key={count.kind}
            count={count}
            without={missing(count.kind, complete, limits)}
            compact={compact}
          />
        ))}
      </ul>
      {limits.length > 0 && (
        <ul className="limits" aria-label="What the check left undone">
          {limits.map((limit) => (
            <li key={`${limit.code} ${limit.agent ?? ''}`}>{words.limit(limit)}</li>
          ))}
        </ul>
      )}
      <p className="quiet">
        A nought says that this check found none. A short list does not mean that a procedure is safe.
      </p>
    </section>
  );
}
