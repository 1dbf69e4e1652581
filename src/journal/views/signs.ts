// What a look at the logbook should make somebody ask: over the limit, still in long past it, in two rooms at once, nobody
// watching. Signs are data with codes; they accuse nobody, and an empty list says only that none of these was found.
import { isInside } from './room.ts';
import { byPerson, observerOf, type Stay } from './stay.ts';

export const SIGNS = [
  'over-limit',
  'near-limit',
  'forgotten',
  'two-rooms',
  'twice-in-room',
  'no-observer',
  'observer-not-in',
  'out-before-in',
  'out-twice',
  'way-in-missing',
  'ahead-of-clock',
] as const;
export type SignCode = (typeof SIGNS)[number];

export interface Sign {
  readonly code: SignCode;
  readonly visit: string;
  /** The other visit that it is about, where there is one. */
  readonly other: string | null;
}

/** Minutes: so long before a limit it warns; so long past it, or inside without one, somebody was forgotten. */
export interface Bounds {
  readonly warn: number;
  readonly past: number;
  readonly noLimit: number;
}

const MINUTE = 60_000;

/** Milliseconds left of the limit, less than nought where it is past; null without a limit or a way in. */
export const leftOfLimit = ({ entered, limit }: Stay, now: number): number | null =>
  entered === null || limit === null ? null : Date.parse(entered) + limit.minutes * MINUTE - now;

function onTime(stay: Stay, now: number, { warn, past, noLimit }: Bounds): SignCode | undefined {
  const left = leftOfLimit(stay, now);
  const inside = now - Date.parse(stay.entered ?? '');
  if (left === null) return inside > noLimit * MINUTE ? 'forgotten' : undefined;
  if (left < -past * MINUTE) return 'forgotten';
  if (left < 0) return 'over-limit';
  return left <= warn * MINUTE ? 'near-limit' : undefined;
}

/** A clock may differ by so much before a time counts as lying ahead of it: the journal's own measure of clocks. */
const CLOCKS = 30_000;

function ofInside(stay: Stay, inside: readonly Stay[], now: number, bounds: Bounds): readonly Sign[] {
  const { visit, person, room } = stay;
  const sign = (code: SignCode, other: string | null = null): Sign => ({ code, visit, other });
  const time = onTime(stay, now, bounds);
  const observer = observerOf(stay);
  const watched = observer !== null && inside.some((one) => one.person === observer);
  const isWearer = stay.role === 'wearer';
  return [
    ...(time === undefined ? [] : [sign(time)]),
    ...inside
      .filter((one) => one.person === person && one.visit !== visit)
      .map((one) => sign(one.room === room ? 'twice-in-room' : 'two-rooms', one.visit)),
    ...(isWearer && observer === null ? [sign('no-observer')] : []),
    ...(isWearer && observer !== null && !watched ? [sign('observer-not-in')] : []),
    ...(Date.parse(stay.entered ?? '') > now + CLOCKS ? [sign('ahead-of-clock')] : []),
  ];
}

/** What does not fit of a stay by itself, whether it goes on or has ended. */
function ofAny({ visit, entered, left, leftTwice }: Stay): readonly Sign[] {
  const sign = (code: SignCode): Sign => ({ code, visit, other: null });
  return [
    ...(entered === null ? [sign('way-in-missing')] : []),
    ...(entered !== null && left !== null && left < entered ? [sign('out-before-in')] : []),
    ...(leftTwice ? [sign('out-twice')] : []),
  ];
}

/** What a person's ended stays overlap with, of their own: in two rooms at once, then. */
function ofPast(stay: Stay, stays: readonly Stay[]): readonly Sign[] {
  const { visit, person, entered, left, room } = stay;
  if (entered === null || left === null) return [];
  return stays
    .filter(
      (one) =>
        one.person === person &&
        one.visit !== visit &&
        one.entered !== null &&
        one.entered < left &&
        (one.left ?? left) > entered,
    )
    .map((one) => ({ code: one.room === room ? 'twice-in-room' : 'two-rooms', visit, other: one.visit }));
}

/** Of all stays that were, in their order. `now` in milliseconds. */
export function signsOf(all: readonly Stay[], now: number, bounds: Bounds): readonly Sign[] {
  const stays = all.filter(({ undone }) => !undone);
  const inside = stays.filter(isInside);
  const grouped = byPerson(stays);
  return stays.flatMap((stay) => [
    ...(isInside(stay) ? ofInside(stay, inside, now, bounds) : ofPast(stay, grouped.get(stay.person) ?? [])),
    ...ofAny(stay),
  ]);
}
