// Days as the unit writes them, `2026-11-25`, without a clock: what day it is comes in from outside.

const DAY = 24 * 60 * 60 * 1000;

/** A day that there is: not the 31st of June. */
export const isDay = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) &&
  !Number.isNaN(Date.parse(text)) &&
  new Date(Date.parse(text)).toISOString().slice(0, 10) === text;

/** Days from one to another; negative where the second is earlier. NaN for what is no day. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY);

/** The same day a year later, or the day before where there is none. */
export function yearLater(day: string): string {
  const [year = '', ...rest] = day.split('-');
  const later = [String(Number(year) + 1).padStart(4, '0'), ...rest].join('-');
  return isDay(later) ? later : `${later.slice(0, 8)}28`;
}
