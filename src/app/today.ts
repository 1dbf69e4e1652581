// What day it is where this device stands. The only place that asks the clock for it; everything else is given the day.

const two = (number: number): string => String(number).padStart(2, '0');

const dayOf = (at: Date): string => `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;

export const today = (): string => dayOf(new Date());
