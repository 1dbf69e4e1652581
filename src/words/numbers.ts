// Numbers as every language writes them, but for the decimal mark and the space before the sign. Two significant
// digits: the chances behind them hold no more.
const SMALLEST = 0.000_1;

/** Writes a chance from 0 to 1 in percent; `space` stands before the sign. */
export function percentIn(locale: string, space: string): (chance: number) => string {
  const digits = new Intl.NumberFormat(locale, { maximumSignificantDigits: 2, useGrouping: false });
  const sign = `${space}%`;
  return (chance) => {
    const value = chance * 100;
    if (value === 0) return `0${sign}`;
    if (value < SMALLEST) return `< ${digits.format(SMALLEST)}${sign}`;
    return value > 99.5 && value < 100 ? `> 99${sign}` : `${digits.format(value)}${sign}`;
  };
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
