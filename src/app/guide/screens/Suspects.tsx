// After a slip: which surfaces are suspect now, in words, and the other way on that was found, with the barriers of every
// protected place before and after, the worst first; taken, or not taken with a reason.
import { changesIn, type Place } from '../../../guide/index.ts';
import { changesOf } from './way.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { OFFER } from './labels.ts';

const MOST = 8;

export function Suspects({ desk }: { readonly desk: Desk }) {
  const { words, screen, state } = desk;
  const { suspects, unplaced, searching } = screen;
  const { procedure } = state.shown.script.setup;
  const { deviations } = state.shown;
  if (deviations.length === 0) return null;
  return (
    <section className="g-suspects" aria-label="What may be contaminated">
      <h2>After what was recorded</h2>
      {suspects === null && (
        <p>What is suspect could not be worked out: take everything touched as suspect.</p>
      )}
      <ul>
        {suspects?.slice(0, MOST).map(({ surface, needs }) => (
          <li key={surface}>
            {words.surface(procedure, surface)}:{' '}
            <b>{needs === 0 ? words.guide.contaminated : words.guide.suspect}</b>
            {needs > 0 && <span> (with {needs === 1 ? '1 more slip' : `${needs} more slips`} unseen)</span>}
          </li>
        ))}
      </ul>
      {suspects && suspects.length > MOST && <p>And {suspects.length - MOST} more.</p>}
      {suspects?.length === 0 && unplaced === 0 && (
        <p>No surface is nearer to contamination than the procedure as read takes into account.</p>
      )}
      {unplaced > 0 && <p>What it touched was not recorded: take what was near as suspect.</p>}
      {searching && <p>{words.guide.searching}</p>}
    </section>
  );
}

interface PlacesProps {
  readonly places: readonly Place[];
  readonly desk: Desk;
}

/** One place a row: what it takes as read, and this way. */
function Places({ places, desk }: PlacesProps) {
  const { words, state } = desk;
  const { procedure } = state.shown.script.setup;
  return (
    <ol className="plain g-places">
      {places.map(({ surface, before, after }) => (
        <li key={surface}>
          {words.surface(procedure, surface)}: {words.barriers(before)}
          {before !== after && (
            <>
              {' '}
              → <b>{words.barriers(after)}</b>
            </>
          )}
        </li>
      ))}
    </ol>
  );
}

export function Offer({ desk }: { readonly desk: Desk }) {
  const { words, screen, state, press, open } = desk;
  const { offer } = screen;
  if (!offer) return null;
  const { barriers, steps, places = [] } = offer.continuation;
  const { procedure } = state.shown.script.setup;
  const { changed, unchanged } = changesIn(places);
  return (
    <section className="g-offer" aria-label="Another way on">
      <h2>
        {barriers.before === barriers.after && changed.length > 0
          ? OFFER.heading(changed.length)
          : words.guide.offer(words.barriers(barriers.before), words.barriers(barriers.after))}
      </h2>
      <ul>
        {changesOf(procedure, offer.done, steps, words).map(({ id, label, what, after }) => (
          <li key={id}>
            <b>{what}</b>: {label}
            {after !== undefined && <span>, after: {after}</span>}
          </li>
        ))}
      </ul>
      <div className="g-acts">
        <Act kind="main" press={() => press({ is: 'accept' })}>
          {words.guide.presses.accept}
        </Act>
        <Act press={() => open('decline')}>{words.guide.presses.decline}</Act>
      </div>
      {changed.length > 0 && (
        <>
          <p>{OFFER.changed(changed.length)}</p>
          <Places places={changed} desk={desk} />
        </>
      )}
      {unchanged.length > 0 && (
        <details>
          <summary>{OFFER.unchanged(unchanged.length)}</summary>
          <Places places={unchanged} desk={desk} />
        </details>
      )}
    </section>
  );
}
