// Who was with somebody, and for how long: overlap of stays in the same room. It errs to 'may have met': a stay without a
// way out goes on until now, one without a way in has no beginning, and who came as another went counts with no minutes.
import { byPerson, type Stay } from './stay.ts';

/** Milliseconds. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface Meeting {
  readonly stay: Stay;
  readonly room: string;
  readonly span: Span;
  /** No way out was written for the other: it may go on. */
  readonly open: boolean;
  /** No way in was written for the other: together for this long at most. */
  readonly atMost: boolean;
}

export interface Met {
  readonly person: string;
  readonly meetings: readonly Meeting[];
  /** Milliseconds together, what overlaps counted once. */
  readonly together: number;
}

export interface Company {
  /** Their own stays in the window. */
  readonly stays: readonly Stay[];
  /** Whoever was in the same room at the same time, the longest together first. */
  readonly met: readonly Met[];
  /** Named as their observers, without a stay of their own in the same room at the time. */
  readonly onlyNamed: readonly string[];
}

/** When somebody may have been inside. Times that contradict each other: between the two. */
function spanOf({ entered, left }: Stay, now: number): Span {
  const from = entered === null ? Number.NEGATIVE_INFINITY : Date.parse(entered);
  const to = left === null ? Math.max(now, from) : Date.parse(left);
  return { from: Math.min(from, to), to: Math.max(from, to) };
}

function common(spans: readonly Span[]): Span | undefined {
  const from = Math.max(...spans.map((span) => span.from));
  const to = Math.min(...spans.map((span) => span.to));
  return from <= to ? { from, to } : undefined;
}

/** Length of all spans together, what overlaps counted once. */
export function lengthOf(spans: readonly Span[]): number {
  let [total, reached] = [0, Number.NEGATIVE_INFINITY];
  for (const { from, to } of spans.toSorted((a, b) => a.from - b.from)) {
    total += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return total;
}

function meeting(mine: Stay, other: Stay, window: Span, now: number): readonly Meeting[] {
  const span = common([spanOf(mine, now), spanOf(other, now), window]);
  if (!span) return [];
  const open = other.left === null;
  const atMost = other.entered === null || mine.entered === null;
  return [{ stay: other, room: mine.room, span, open, atMost }];
}

const inWindow = (stay: Stay, window: Span, now: number): boolean =>
  common([spanOf(stay, now), window]) !== undefined;

/**
 * Who was with a person between two times, in milliseconds. Stays that never were are left out; drills too, unless they are
 * asked for: nobody is exposed in one.
 */
export function companyOf(
  all: readonly Stay[],
  person: string,
  { window, now, drills }: { readonly window: Span; readonly now: number; readonly drills: boolean },
): Company {
  const stays = all.filter(({ undone, drill }) => !undone && (drills || !drill));
  const mine = stays.filter((stay) => stay.person === person && inWindow(stay, window, now));
  const meetings = mine.flatMap((stay) =>
    stays
      .filter((other) => other.person !== person && other.room === stay.room && other.drill === stay.drill)
      .flatMap((other) => meeting(stay, other, window, now)),
  );
  const others = byPerson(meetings.map(({ stay }) => stay));
  const met = [...others.keys()]
    .map((one): Met => {
      const theirs = meetings.filter(({ stay }) => stay.person === one);
      const together = lengthOf(theirs.map(({ span }) => span));
      return { person: one, meetings: theirs, together };
    })
    .toSorted((a, b) => b.together - a.together || (a.person < b.person ? -1 : 1));
  const known = new Set([person, ...met.map((one) => one.person)]);
  const named = mine.flatMap(({ observers }) => observers.map(({ observer }) => observer));
  return { stays: mine, met, onlyNamed: [...new Set(named)].filter((one) => !known.has(one)) };
}
