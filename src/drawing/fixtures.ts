// How each kind of fixture looks in the strip under the figures, 44 by 40 units. Floors and mats lie under the feet instead.
import type { FixtureKindId } from '../domain/room.ts';

export const FIXTURE_DRAWINGS: Readonly<Record<FixtureKindId, string>> = {
  floor: 'M2 30 H42 V36 H2 Z',
  mat: 'M2 30 H42 V36 H2 Z',
  chair: 'M10 4 H16 V20 H36 V38 H31 V26 H16 V38 H10 Z',
  bin: 'M8 6 H36 V12 H8 Z M10 13 H34 L31 38 H13 Z',
  dispenser: 'M16 2 H30 V8 H25 V12 H32 V38 H12 V12 H20 V8 H16 Z',
  tap: 'M6 12 H30 C36 12 38 16 38 24 H32 C32 20 31 18 28 18 H24 V36 H16 V18 H6 Z',
  door: 'M10 2 H34 V38 H10 Z M27 19 H31 V24 H27 Z',
  table: 'M4 12 H40 V18 H37 V38 H32 V18 H12 V38 H7 V18 H4 Z',
  mirror: 'M12 2 H32 V38 H12 Z M16 6 H28 V34 H16 Z',
  scissors: 'M12 4 L22 20 L32 4 L34 6 L25 24 A6 6 0 1 1 22 26 A6 6 0 1 1 19 24 L10 6 Z',
  logbook: 'M8 4 H36 V36 H8 Z M14 4 V36 H16 V4 Z',
  container: 'M6 12 H38 V17 H6 Z M8 18 H36 L33 38 H11 Z',
  'glove-box': 'M6 14 H38 V36 H6 Z M16 20 H28 V26 H16 Z',
  rail: 'M4 10 H40 V15 H34 V38 H30 V15 H14 V38 H10 V15 H4 Z',
};
