// Nobody is in a room twice at one time because an exit says so and somebody wrote it too: what the logbook's own entries cover
// is taken out of what exits say, and what one exit says out of the next. What is left is exactly the time of which nobody
// wrote. Who watches by the exit watches the wearer's written stay as well.
import type { Stay } from './stay.ts';

/** Instants as text; behind every other where it goes on. */
interface Span {
  readonly from: string;
  readonly to: string;
}

const EVER = '\uFFFF';

/** Without a way in it counts from the beginning; times that contradict each other: between the two. */
function spanOf({ entered, left }: Stay): Span {
  const [from, to] = [entered ?? '', left ?? EVER];
  return from <= to ? { from, to } : { from: to, to: from };
}

function without(span: Span, cover: Span): readonly Span[] {
  if (cover.to < span.from || cover.from > span.to) return [span];
  return [
    ...(span.from < cover.from ? [{ from: span.from, to: cover.from }] : []),
    ...(cover.to < span.to ? [{ from: cover.to, to: span.to }] : []),
  ];
}

/** Stays with the same are in one place. */
const placeOf = ({ person, room, drill }: Stay): string => `${person} ${room} ${drill}`;

/** By place: each stay meets only the few that may cover it, not those of years. */
function byPlace(stays: readonly Stay[]): Map<string, Stay[]> {
  const places = new Map<string, Stay[]>();
  for (const stay of stays) {
    const there = places.get(placeOf(stay));
    if (there) there.push(stay);
    else places.set(placeOf(stay), [stay]);
  }
  return places;
}

/** `others` are in the same place. */
function uncovered(stay: Stay, others: readonly Stay[]): readonly Stay[] {
  const covers = others.filter((one) => !one.undone).map(spanOf);
  const spans = covers.reduce((left, cover) => left.flatMap((span) => without(span, cover)), [spanOf(stay)]);
  return spans.map(({ from, to }) => ({ ...stay, entered: from, left: to === EVER ? null : to }));
}

const meets = (a: Span, b: Span): boolean => a.from <= b.to && b.from <= a.to;

/** `guided` are in the same place. */
function watchedBy(stay: Stay, guided: readonly Stay[]): Stay {
  const watches = guided
    .filter((one) => !one.undone && meets(spanOf(one), spanOf(stay)))
    .flatMap(({ observers }) => observers);
  if (watches.length === 0) return stay;
  const observers = [...stay.observers, ...watches];
  return {
    ...stay,
    observers: observers.toSorted((a, b) => (a.from < b.from ? -1 : Number(a.from > b.from))),
  };
}

/** In the order given, those by exits behind. */
export function onceEach(stays: readonly Stay[]): readonly Stay[] {
  const guided = stays.filter((stay) => stay.guided !== null);
  if (guided.length === 0) return stays;
  const guidedThere = byPlace(guided);
  const written = stays
    .filter((stay) => stay.guided === null)
    .map((stay) => watchedBy(stay, guidedThere.get(placeOf(stay)) ?? []));
  const kept = byPlace(written);
  const added = guided.flatMap((stay) => {
    const there = kept.get(placeOf(stay)) ?? [];
    const parts = stay.undone ? [stay] : uncovered(stay, there);
    kept.set(placeOf(stay), [...there, ...parts]);
    return parts;
  });
  return [...written, ...added];
}
