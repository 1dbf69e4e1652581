// How far the check is. Said once in a live region, never in the way of what is already there.
import type { Progress } from '../check/client.ts';

export function Waiting({ progress }: { readonly progress: Progress }) {
  const { state, result, why } = progress;
  if (state === 'failed') {
    return (
      <p role="alert" className="wrong">
        The check stopped: {why}. What is shown may be incomplete. Reload the page to try again.
      </p>
    );
  }
  const text =
    state === 'done' ? '' : result?.judged ? 'Trying mends and moved steps …' : 'Checking the procedure …';
  return (
    <output className={text ? 'waiting' : 'visually-hidden'}>
      {text && <progress aria-label={text} />}
      {text}
    </output>
  );
}
