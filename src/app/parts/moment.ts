// When something was, the same on every page: the day as the trade's papers have it, and the device's own time of day.
const two = (number: number): string => String(number).padStart(2, '0');

/** '2026-11-25 14:05' */
export function momentText(at: string | number): string {
  const when = new Date(at);
  const day = `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}`;
  return `${day} ${two(when.getHours())}:${two(when.getMinutes())}`;
}

/** '2026-11-25 14:05:09' */
export const instantText = (at: string | number): string => `${momentText(at)}:${secondText(at).slice(-2)}`;

/** '14:05:09' */
export function secondText(at: string | number): string {
  const when = new Date(at);
  return [when.getHours(), when.getMinutes(), when.getSeconds()].map(two).join(':');
}
