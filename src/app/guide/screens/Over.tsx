// Whatever lies over the line, and what the check says of coverage before an entry.
import type { Desk } from './desk.ts';
import { Emergencies } from './Emergency.tsx';
import { Handover, More } from './More.tsx';
import { Early, Write, Wrong } from './Panels.tsx';
import { SourceOf } from './Timers.tsx';
import { secondText } from '../../parts/moment.ts';
import { useNow } from './useRun.ts';

export function Over({ desk }: { readonly desk: Desk }) {
  const { panel, words, press, open } = desk;
  const { wrong } = words.guide.labels;
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
          title={wrong.decline}
          words={words}
          button={words.guide.presses.decline}
          usual={wrong.declines}
          close={close}
          write={(reason) => press({ is: 'decline', reason })}
        />
      );
    case 'reason':
      return (
        <Write
          title={wrong.bare}
          words={words}
          button={wrong.goIn}
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
  const { coverage } = words.guide.labels;
  return (
    <section aria-label={coverage.title}>
      <h2>{coverage.title}</h2>
      {bare.length === 0 && <p>{coverage.none}</p>}
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
  const { suit } = words.guide.labels;
  return (
    <section aria-label={suit.title}>
      {entered !== null && (
        <p>
          {suit.since(secondText(entered))}: <b className="g-left">{minutes} min</b>
        </p>
      )}
      {limit ? (
        <p>
          {suit.limit(String(limit.limitMinutes))} <span className="g-source">{limit.source}</span>
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
