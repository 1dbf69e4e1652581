// Numbers as every language writes them, but for the decimal mark and the space before the sign. Two significant
// digits: the chances behind them hold no more.
const SMALLEST = 0.000_1;

/** Writes a chance from 0 to 1 in percent; `space` stands before the sign. `least` digits, noughts at the end too. */
export function percentIn(locale: string, space: string, least = 1): (chance: number) => string {
  const digits = new Intl.NumberFormat(locale, {
    minimumSignificantDigits: least,
    maximumSignificantDigits: 2,
    useGrouping: false,
  });
  const sign = `${space}%`;
  const tiny = `< ${new Intl.NumberFormat(locale, { maximumSignificantDigits: 1 }).format(SMALLEST)}${sign}`;
  return (chance) => {
    const value = chance * 100;
    if (value === 0) return `0${sign}`;
    if (value < SMALLEST) return tiny;
    return value >= 99.5 && value < 100 ? `> 99${sign}` : `${digits.format(value)}${sign}`;
  };
}

/** Two figures of one kind as they read: of what was, and of what is; where they read alike and differ, less than what. */
export type Pair = readonly [from: string, to: string, within?: string];

/** One in the last place that a percentage shows; whole ones for what reads as above 99. */
function lastPlace(percent: number): number {
  const [, power = '0'] = percent.toExponential(1).split('e');
  return Math.min(1, Math.max(SMALLEST, 10 ** (Number(power) - 1)));
}

/** Two chances, the noughts at their ends written too: '1.0 %' and '1.1 %'. `points` writes a size in percentage points. */
export function percentsIn(
  locale: string,
  space: string,
  points: (size: string) => string,
): (from: number, to: number) => Pair {
  const percent = percentIn(locale, space);
  const both = percentIn(locale, space, 2);
  const bound = new Intl.NumberFormat(locale, { maximumSignificantDigits: 1 });
  return (from, to) => {
    if (from === to) return [percent(from), percent(to)];
    const [before, after] = [both(from), both(to)];
    if (before !== after) return [before, after];
    return [before, after, points(bound.format(lastPlace(Math.max(from, to) * 100)))];
  };
}

/** Two times, to the second. */
export function durations(from: number, to: number): Pair {
  const [before, after] = [duration(from), duration(to)];
  return before === after && from !== to ? [before, after, duration(1)] : [before, after];
}

/** '12 min 05 s': the units' signs are international. */
export function duration(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  return minutes === 0 ? `${whole} s` : `${minutes} min ${String(whole % 60).padStart(2, '0')} s`;
}

const MINUS = '\u2212';

/** '+' or '\u2212' before what `write` makes of the rest; nothing before a nought. */
export const signed = (value: number, write: (size: number) => string): string =>
  value === 0 ? write(0) : `${value < 0 ? MINUS : '+'}${write(Math.abs(value))}`;

/** Percentage points of a difference of chances, without their unit; two digits, signed; the smallest by their bound. */
export function pointsIn(locale: string): (difference: number) => string {
  const digits = new Intl.NumberFormat(locale, { maximumSignificantDigits: 2, useGrouping: false });
  const write = (size: number): string => digits.format(size);
  return (difference) => {
    const points = difference * 100;
    if (points === 0 || Math.abs(points) >= SMALLEST) return signed(points, write);
    return points < 0 ? `> ${signed(-SMALLEST, write)}` : `< ${signed(SMALLEST, write)}`;
  };
}
