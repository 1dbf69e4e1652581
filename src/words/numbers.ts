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
    return value > 99.5 && value < 100 ? `> 99${sign}` : `${digits.format(value)}${sign}`;
  };
}

/** Two texts of one kind: of what was, and of what is. */
export type Pair = readonly [from: string, to: string];

const MOST_DIGITS = 14;

/** The first number of decimals at which two numbers read differently, and neither as one of the bounds. */
function decimals(locale: string, from: number, to: number, bounds: readonly number[]): Pair | undefined {
  for (let digits = 1; digits <= MOST_DIGITS; digits += 1) {
    const options = { minimumFractionDigits: digits, maximumFractionDigits: digits, useGrouping: false };
    const digit = new Intl.NumberFormat(locale, options);
    const [before, after] = [digit.format(from), digit.format(to)];
    const rounded = [from, to].some((value) =>
      bounds.some((bound) => value !== bound && digit.format(value) === digit.format(bound)),
    );
    if (before !== after && !rounded) return [before, after];
  }
  return undefined;
}

/** Two chances with as many decimals as it takes to tell them apart: '1.10 %' and '1.12 %'. */
export function percentsIn(locale: string, space: string): (from: number, to: number) => Pair {
  const percent = percentIn(locale, space);
  const both = percentIn(locale, space, 2);
  return (from, to) => {
    if (from === to) return [percent(from), percent(to)];
    const short: Pair = [both(from), both(to)];
    if (short[0] !== short[1]) return short;
    const apart = decimals(locale, from * 100, to * 100, [0, 100]);
    return apart ? [`${apart[0]}${space}%`, `${apart[1]}${space}%`] : short;
  };
}

/** Two times; in seconds with decimals where whole ones are the same. */
export function durationsIn(locale: string): (from: number, to: number) => Pair {
  return (from, to) => {
    const short: Pair = [duration(from), duration(to)];
    if (short[0] !== short[1] || from === to) return short;
    const apart = decimals(locale, from, to, []);
    return apart ? [`${apart[0]} s`, `${apart[1]} s`] : short;
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
