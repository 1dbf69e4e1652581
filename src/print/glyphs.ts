// A sign for each action, 40 by 40 units, drawn by hand for this tool: what is done is plain before a word is read. An action
// without a sign does not compile.
import type { ActionId } from '../domain/actions.ts';

const LINE = 'fill="none" stroke="#000" stroke-width="3.4" stroke-linecap="round" stroke-linejoin="round"';

const line = (d: string): string => `<path d="${d}" ${LINE}/>`;
const solid = (d: string): string => `<path d="${d}" fill="#000"/>`;

const DROP = (x: number, y: number): string =>
  solid(
    `M${x} ${y} C${x + 3} ${y + 5} ${x + 6} ${y + 8} ${x + 6} ${y + 12} C${x + 6} ${y + 20} ${x - 6} ${y + 20} ${x - 6} ${y + 12} C${x - 6} ${y + 8} ${x - 3} ${y + 5} ${x} ${y} Z`,
  );
const SEAT = line('M10 14 L10 36 M10 26 L26 26 L26 36');

export const GLYPHS: Readonly<Record<ActionId, string>> = {
  remove: line('M8 32 L31 9 M15 8 L32 8 L32 25'),
  'put-on': line('M32 8 L9 31 M25 32 L8 32 L8 15'),
  unfasten: line('M16 20 L4 20 M10 13 L4 20 L10 27 M24 20 L36 20 M30 13 L36 20 L30 27'),
  fasten: line('M3 20 L16 20 M10 13 L16 20 L10 27 M37 20 L24 20 M30 13 L24 20 L30 27'),
  sanitise: DROP(12, 5) + DROP(28, 16),
  wipe: line('M6 12 L30 12 L34 28 L10 28 Z M4 35 C10 31 14 39 20 35 C26 31 30 39 36 35'),
  inspect: `${line('M3 20 C11 7 29 7 37 20 C29 33 11 33 3 20 Z')}<circle cx="20" cy="20" r="5.5" fill="#000"/>`,
  say: line('M5 7 L35 7 L35 26 L20 26 L11 35 L11 26 L5 26 Z M12 14 L28 14 M12 20 L24 20'),
  move: line('M4 20 L34 20 M23 8 L35 20 L23 32'),
  'step-on': line('M20 4 L20 26 M11 17 L20 26 L29 17 M5 35 L35 35'),
  sit: SEAT + line('M30 4 L30 18 M24 12 L30 19 L36 12'),
  stand: SEAT + line('M30 19 L30 4 M24 11 L30 4 L36 11'),
  touch: `${line('M20 4 L20 10 M20 30 L20 36 M4 20 L10 20 M30 20 L36 20')}<circle cx="20" cy="20" r="6" fill="#000"/>`,
};
