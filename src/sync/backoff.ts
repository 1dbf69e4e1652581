// How long to wait after failures: twice as long each time, to a limit, and never the same for two devices, so that a ward
// full of tablets does not come back at one instant. The figures are the house's own choice.

const FIRST_MS = 1000;
const LONGEST_MS = 60_000;

/** After something was refused that somebody must mend. */
export const REFUSED_MS = 300_000;

/** `chance` from 0 to below 1 makes it between half and all of its length. */
export function pauseAfter(failures: number, chance: number): number {
  const whole = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(failures - 1, 16));
  return Math.round(whole * (0.5 + chance / 2));
}
