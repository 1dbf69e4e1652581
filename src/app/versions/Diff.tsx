// What is different from another version, in whole sentences: what is worse first. Both are checked for it, in a worker.
import { useComparison } from '../compare/client.ts';
import { diffParts } from '../../versions/diff.ts';
import { words } from '../words.ts';
import { counted, DIFF_TITLES } from './labels.ts';

interface Side {
  readonly text: string;
  readonly fileName: string;
}

interface DiffProps {
  readonly before: Side;
  readonly now: Side;
  /** What the first is called: 'version 1, which is in force'. */
  readonly than: string;
}

export function Diff({ before, now, than }: DiffProps) {
  const { state, answer, why } = useComparison(before, now);
  const compared = answer && 'compared' in answer ? answer.compared : undefined;
  const waiting = state === 'running' ? (compared ? 'Trying moved steps …' : 'Comparing …') : '';
  const parts = compared ? diffParts(words, compared.a, compared.b, compared.comparison) : [];
  return (
    <section aria-labelledby="diff-title" className="diff">
      <h2 id="diff-title">What is different from {than}</h2>
      <output className={waiting ? 'waiting' : 'visually-hidden'}>{waiting}</output>
      {state === 'failed' && (
        <p role="alert" className="wrong">
          Comparing stopped: {why}. Reload the page to try again.
        </p>
      )}
      {compared && parts.length === 0 && <p>Nothing: it says and does the same.</p>}
      {compared && parts.length > 0 && !parts.some(({ group }) => group === 'new-errors') && (
        <p className="quiet">It has no error that {than} has not.</p>
      )}
      {parts.map(({ group, sentences }) => (
        <details key={group} open={group !== 'new-findings' && group !== 'gone-findings'}>
          <summary>
            <b>
              {DIFF_TITLES[group]} ({sentences.length})
            </b>
          </summary>
          <ul className="plain" lang={words.language}>
            {sentences.map((sentence) => (
              <li key={sentence} className="step-change">
                {sentence}
              </li>
            ))}
          </ul>
        </details>
      ))}
      {compared && !compared.complete && state === 'running' && (
        <p className="quiet">{counted(parts.length, 'group')} so far; moved steps are still being tried.</p>
      )}
    </section>
  );
}
