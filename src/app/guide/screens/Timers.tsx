// Times: what is left of each, large, wherever one is in the guide; and what the step still owes, with where it is written.
import type { Screen } from '../../../guide/index.ts';
import { evidence, type EvidenceId } from '../../../evidence/index.ts';
import type { GuideWords } from '../../../words/guide.ts';
import type { Words } from '../../../words/index.ts';
import { useNow } from './useRun.ts';

type Timer = Screen['timers'][number];

const SECOND = 1000;
const MINUTE = 60;

function leftText(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  return `${Math.floor(whole / MINUTE)}:${String(whole % MINUTE).padStart(2, '0')}`;
}

interface TimesProps {
  readonly timers: readonly Timer[];
  readonly guide: GuideWords;
}

export function Times({ timers, guide }: TimesProps) {
  const now = useNow(timers.length > 0);
  if (timers.length === 0) return null;
  return (
    <ul className="g-times plain" aria-label={guide.labels.line.times}>
      {timers.map(({ id, kind, startedAt, seconds }) => {
        const left = seconds - (now - startedAt) / SECOND;
        return (
          <li key={id} className={`g-time kind-${kind}`}>
            <span>{guide.timers[kind]}</span>{' '}
            <b role="timer" className="g-left">
              {left > 0 ? leftText(left) : guide.timeUp}
            </b>
          </li>
        );
      })}
    </ul>
  );
}

interface SourceProps {
  readonly spec: { readonly evidence?: EvidenceId; readonly source?: string };
  readonly words: Words;
}

/** Where a time or an action is written. */
export function SourceOf({ spec, words }: SourceProps) {
  if (spec.evidence === undefined) return <span className="g-source">{spec.source ?? ''}</span>;
  const { source, status } = words.evidence(spec.evidence);
  return (
    <span className="g-source">
      {source} ({status}; {evidence(spec.evidence).id})
    </span>
  );
}

interface OwedProps {
  readonly owed: Screen['owed'];
  readonly words: Words;
}

export function Owed({ owed, words }: OwedProps) {
  return (
    <ul className="plain g-owed">
      {owed.map((spec) => (
        <li key={spec.id}>
          {words.guide.labels.line.colon(words.guide.timers[spec.kind])} <b>{leftText(spec.seconds)}</b>{' '}
          <SourceOf spec={spec} words={words} />
        </li>
      ))}
    </ul>
  );
}
