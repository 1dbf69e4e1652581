// Whatever lies over the line, and what the check says of coverage before an entry.
import type { Desk } from './desk.ts';
import { Emergencies } from './Emergency.tsx';
import { Handover, More } from './More.tsx';
import { Early, Write, Wrong } from './Panels.tsx';
import { SourceOf } from './Timers.tsx';
import { useNow } from './useRun.ts';

export function Over({ desk }: { readonly desk: Desk }) {
  const { panel, words, press, open } = desk;
  const close = (): void => open('none');
  switch (panel) {
    case 'wrong':
      return <Wrong desk={desk} />;
    case 'emergencies':
      return <Emergencies desk={desk} />;
    case 'early':
      return <Early desk={desk} />;
    case 'hand-over':
      return <Handover desk={desk} />;
    case 'more':
      return <More desk={desk} />;
    case 'decline':
      return (
        <Write
          title="Why not this way? It is recorded."
          label="Reason (no names)"
          button={words.guide.presses.decline}
          usual={['Not possible in this room', 'The wearer is already past it', 'Too long for the wearer']}
          close={close}
          write={(reason) => press({ is: 'decline', reason })}
        />
      );
    case 'reason':
      return (
        <Write
          title="Something is bare or was not seen. Why go in all the same?"
          label="Reason (no names)"
          button="Record it and go in"
          close={close}
          write={(reason) => press({ is: desk.tried, reason })}
        />
      );
    default:
      return null;
  }
}

export function Coverage({ desk }: { readonly desk: Desk }) {
  const { state, words } = desk;
  const { bare, setup } = state.shown.script;
  return (
    <section aria-label="What the check says of coverage">
      <h2>What the check says of coverage</h2>
      {bare.length === 0 && (
        <p>No place left bare was found in the procedure as written. Look all the same.</p>
      )}
      <ul>
        {bare.map((finding) => {
          const { title, text } = words.finding(setup.procedure, finding);
          return (
            <li key={title + text}>
              <b>{title}</b> {text}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** How long the wearer has been in the room, and what is published of limits where the unit has set none. */
export function Wear({ desk }: { readonly desk: Desk }) {
  const { screen, state, words } = desk;
  const { entered } = state.shown;
  const now = useNow(entered !== null && !state.shown.ended);
  const minutes = entered === null ? 0 : Math.floor((now - entered) / 60_000);
  const { limit, published } = screen.wear;
  return (
    <section aria-label="Time in the suit">
      {entered !== null && (
        <p>
          In the room since {new Date(entered).toLocaleTimeString()}: <b className="g-left">{minutes} min</b>
        </p>
      )}
      {limit ? (
        <p>
          Limit of the unit: {limit.limitMinutes} min <span className="g-source">{limit.source}</span>
        </p>
      ) : (
        <ul>
          {published.map((id) => (
            <li key={id}>
              {words.evidence(id).says} <SourceOf spec={{ evidence: id }} words={words} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
