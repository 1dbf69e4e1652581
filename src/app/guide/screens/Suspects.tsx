// After a slip: which surfaces are suspect now, in words, and what of the body may be contaminated.
import { countedIn } from '../../../words/guideLabels.ts';
import type { Desk } from './desk.ts';
import { SourceOf } from './Timers.tsx';

const MOST = 8;

type Labels = Desk['words']['guide']['labels']['suspects'];

/** As many places as the notice over the line names; all stand below. */
const NAMED = 2;

/** All that the list below names: places, and what was recorded without one. */
const countOf = ({ suspects, reached }: Desk['screen']): number =>
  (suspects?.length ?? 1) + (reached?.unplaced.length ?? 0);

/** What of the body may be contaminated, and the card that is for it; until that was opened. */
export function Exposure({ desk }: { readonly desk: Desk }) {
  const { words, screen, state } = desk;
  const { exposed } = screen;
  if (!exposed) return null;
  const { procedure } = state.shown.script.setup;
  const { guide } = words;
  const labels = guide.labels.suspects;
  const places = [
    ...(exposed.unknown ? [labels.everything] : []),
    ...exposed.unplaced.map((category) => guide.deviations[category]),
    ...exposed.surfaces.map((surface) => words.surface(procedure, surface)),
  ];
  const cards = exposed.cards.map((card) => guide.emergencies[card]).join(' / ');
  const button = cards === '' ? guide.presses.emergency : `${guide.presses.emergency} → ${cards}`;
  return <b>{labels.exposed(namedIn(places, countOf(screen), labels), button)}</b>;
}

/** Over the line, short: something protected may be contaminated, and whether another way on is better. */
export function After({ desk }: { readonly desk: Desk }) {
  const { words, screen, panel } = desk;
  const { exposed, reached, sought, phase } = screen;
  const labels = words.guide.labels.suspects;
  // Whoever takes over reads it in the panel.
  if (phase === 'emergency' || panel === 'hand-over' || (!exposed && !sought)) return null;
  return (
    <output className="g-after">
      <Exposure desk={desk} /> {!exposed && reached && `${labels.protected} `}
      {sought && (sought === 'nothing-better' ? labels.nothingBetter : labels.notSought)}
    </output>
  );
}

/** The first of them, and how many more the list below holds. */
function namedIn(places: readonly string[], all: number, { alsoOthers }: Labels): string {
  const named = places.slice(0, NAMED);
  const others = all - named.length;
  return others > 0 ? alsoOthers(named.join(', '), String(others)) : named.join(', ');
}

/** Every place and what was recorded without one, in one list, the surest first; those behind the first stand under how many they are. */
function SuspectList({ desk }: { readonly desk: Desk }) {
  const { words, screen, state } = desk;
  const { procedure } = state.shown.script.setup;
  const { guide } = words;
  const labels = guide.labels.suspects;
  const rows = [
    ...(screen.reached?.unplaced ?? []).map((category) => (
      <li key={category}>
        {guide.labels.line.colon(guide.deviations[category])} <b>{guide.suspect}</b>
      </li>
    )),
    ...(screen.suspects ?? []).map(({ surface, needs }) => (
      <li key={surface}>
        {guide.labels.line.colon(words.surface(procedure, surface))}{' '}
        <b>{needs === 0 ? guide.contaminated : guide.suspect}</b>
        {needs > 0 && <span> ({countedIn(labels.unseen, needs)})</span>}
      </li>
    )),
  ];
  return (
    <>
      <ul>{rows.slice(0, MOST)}</ul>
      {rows.length > MOST && (
        <details>
          <summary>{labels.andMore(String(rows.length - MOST))}</summary>
          <ul>{rows.slice(MOST)}</ul>
        </details>
      )}
    </>
  );
}

export function Suspects({ desk }: { readonly desk: Desk }) {
  const { words, screen, state } = desk;
  const { suspects, unplaced, searching, reached } = screen;
  if (state.shown.deviations.length === 0) return null;
  const labels = words.guide.labels.suspects;
  return (
    <section className="g-suspects" aria-label={labels.title}>
      <h2>{labels.after}</h2>
      {suspects === null && <p>{labels.notWorkedOut}</p>}
      <SuspectList desk={desk} />
      {suspects?.length === 0 && unplaced === 0 && <p>{labels.none}</p>}
      {unplaced > 0 && <p>{labels.unplaced}</p>}
      {reached && (
        <p>
          <SourceOf spec={{ evidence: 'guide.exposure' }} words={words} />
        </p>
      )}
      {searching && <p>{words.guide.searching}</p>}
    </section>
  );
}
