// The other way on that was found after a slip, with the barriers of every protected place before and after, the worst first;
// taken, or not taken with a reason.
import { changesIn, type Place } from '../../../guide/index.ts';
import { countedIn, numberedIn } from '../../../words/guideLabels.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { changesOf } from './way.ts';

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

/** Outside of what scrolls: an offer is answered without looking for the answers. */
export function OfferActs({ desk: { words, press, open } }: { readonly desk: Desk }) {
  return (
    <div className="g-acts">
      <Act kind="main" press={() => press({ is: 'accept' })}>
        {words.guide.presses.accept}
      </Act>
      <Act press={() => open('decline')}>{words.guide.presses.decline}</Act>
    </div>
  );
}

export function OfferText({ desk }: { readonly desk: Desk }) {
  const { words, screen, state } = desk;
  const { offer } = screen;
  if (!offer) return null;
  const { barriers, steps, places = [] } = offer.continuation;
  const { procedure } = state.shown.script.setup;
  const { changed, unchanged } = changesIn(places);
  const labels = words.guide.labels.offer;
  return (
    <div className="g-offer-text">
      <h2>
        {barriers.before === barriers.after && changed.length > 0
          ? countedIn(labels.heading, changed.length)
          : words.guide.offer(words.barriers(barriers.before), words.barriers(barriers.after))}
      </h2>
      <ul>
        {changesOf(procedure, offer.done, steps, words).map(({ label, what, numbers, after }) => (
          <li key={what + label}>
            <b>
              {labels.what[what]}, {numberedIn(what === 'left out' ? labels.step : labels.as, numbers)}
            </b>
            : {label}
            {after && (
              <span>, {labels.behind(`${numberedIn(labels.step, [after.number])}, ${after.label}`)}</span>
            )}
          </li>
        ))}
      </ul>
      {changed.length > 0 && (
        <>
          <p>{countedIn(labels.changed, changed.length)}</p>
          <Places places={changed} desk={desk} />
        </>
      )}
      {unchanged.length > 0 && (
        <details>
          <summary>{countedIn(labels.unchanged, unchanged.length)}</summary>
          <Places places={unchanged} desk={desk} />
        </details>
      )}
    </div>
  );
}
