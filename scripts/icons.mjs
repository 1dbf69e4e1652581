// Draws the program's icons, the same glove-shaped shield with a broken line across it as src/app/icon.svg, in the sizes
// that installation asks for. Drawn here from numbers, so that anybody can change them and no other program is needed:
// `node scripts/icons.mjs` writes src/app/public/icons.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { crc32, deflateSync } from 'node:zlib';

/** @typedef {readonly [number, number]} Point */
/** @typedef {readonly [number, number, number, number]} Colour red, green, blue, cover */

/** In the drawing's own units: a square of this side. */
const SIDE = 32;
const CORNER = 6;
/** @type {Colour} */
const GROUND = [0x0f, 0x4c, 0x5c, 255];
/** @type {Colour} */
const SHAPE = [255, 255, 255, 255];
/** @type {Colour} */
const LINE = [0xe0, 0xa0, 0x30, 255];
/** @type {Colour} */
const NOTHING = [0, 0, 0, 0];
/** Points per edge of a pixel: smooth edges. */
const FINE = 4;

/**
 * @param {Point} a
 * @param {Point} b
 * @param {Point} c
 * @param {Point} d
 * @returns {Point[]} the curve from a to d, pulled by b and c
 */
function curve(a, b, c, d) {
  return Array.from({ length: 12 }, (_, step) => {
    const t = (step + 1) / 12;
    const u = 1 - t;
    const at = (/** @type {0 | 1} */ axis) =>
      u ** 3 * a[axis] + 3 * u * u * t * b[axis] + 3 * u * t * t * c[axis] + t ** 3 * d[axis];
    return [at(0), at(1)];
  });
}

/** @type {readonly Point[]} */
const OUTLINE = [
  [11, 5],
  [20, 5],
  [23, 16],
  ...curve([23, 16], [24, 22], [21, 27], [16, 27]),
  ...curve([16, 27], [11, 27], [8, 23], [9, 17]),
];

/**
 * @param {number} x
 * @param {number} y
 */
function isInShape(x, y) {
  let inside = false;
  for (const [index, [ax, ay]] of OUTLINE.entries()) {
    const [bx, by] = /** @type {Point} */ (OUTLINE.at(index - 1));
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

/**
 * Dashes of 4 with gaps of 3, 3 thick, across the middle.
 * @param {number} x
 * @param {number} y
 */
const isOnLine = (x, y) => Math.abs(y - 16) <= 1.5 && x >= 4 && x <= 28 && (x - 4) % 7 < 4;

/**
 * @param {number} x
 * @param {number} y
 */
function isInGround(x, y) {
  const over = (/** @type {number} */ at) => Math.max(CORNER - at, at - (SIDE - CORNER), 0);
  return Math.hypot(over(x), over(y)) <= CORNER;
}

/**
 * @param {number} x
 * @param {number} y
 * @param {boolean} full whether the ground fills the whole square, for systems that cut icons to a form of their own
 */
function colourAt(x, y, full) {
  // Such a system may cut away a tenth at each edge: the drawing keeps inside.
  const [dx, dy] = full ? [(x - 16) / 0.8 + 16, (y - 16) / 0.8 + 16] : [x, y];
  if (isOnLine(dx, dy)) return LINE;
  if (isInShape(dx, dy)) return SHAPE;
  return full || isInGround(x, y) ? GROUND : NOTHING;
}

/**
 * @param {number} left
 * @param {number} top
 * @param {number} size
 * @param {boolean} full
 * @returns {number[]} red, green, blue, cover of one pixel
 */
function pixel(left, top, size, full) {
  const sum = [0, 0, 0, 0];
  for (let at = 0; at < FINE * FINE; at += 1) {
    const x = ((left + ((at % FINE) + 0.5) / FINE) * SIDE) / size;
    const y = ((top + (Math.floor(at / FINE) + 0.5) / FINE) * SIDE) / size;
    const [red, green, blue, cover] = colourAt(x, y, full);
    for (const [index, value] of [red * cover, green * cover, blue * cover, cover].entries())
      sum[index] = (sum[index] ?? 0) + value;
  }
  const [red = 0, green = 0, blue = 0, cover = 0] = sum;
  const shade = (/** @type {number} */ value) => (cover === 0 ? 0 : Math.round(value / cover));
  return [shade(red), shade(green), shade(blue), Math.round(cover / (FINE * FINE))];
}

/**
 * The colours at the corners of the pixels, row after row.
 * @param {number} size
 * @param {boolean} full
 */
function cornersOf(size, full) {
  const edge = size + 1;
  return Array.from({ length: edge * edge }, (_, at) =>
    colourAt(((at % edge) * SIDE) / size, (Math.floor(at / edge) * SIDE) / size, full),
  );
}

/**
 * The picture's rows, each with the leading 0 that PNG asks for (no filter). Only pixels on an edge are looked at closely.
 * @param {number} size in pixels
 * @param {boolean} full
 */
export function rowsOf(size, full) {
  const corners = cornersOf(size, full);
  const rows = Buffer.alloc(size * (size * 4 + 1));
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      const at = y * (size + 1) + x;
      const [first, ...others] = [at, at + 1, at + size + 1, at + size + 2].map((corner) => corners[corner]);
      const even = first !== undefined && others.every((colour) => colour === first);
      rows.set(even ? first : pixel(x, y, size, full), y * (size * 4 + 1) + 1 + x * 4);
    }
  return rows;
}

/**
 * @param {string} name
 * @param {Buffer} data
 */
function chunk(name, data) {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(data.length, 0);
  around.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)]);
}

/**
 * @param {number} size
 * @param {boolean} full
 */
function png(size, full) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  // Eight bits each of red, green, blue and cover.
  head.set([8, 6, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rowsOf(size, full), { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** @type {readonly (readonly [name: string, size: number, full: boolean])[]} */
export const ICONS = [
  ['icon-192.png', 192, false],
  ['icon-512.png', 512, false],
  ['maskable-512.png', 512, true],
  ['apple-touch.png', 180, true],
];

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const folder = fileURLToPath(new URL('../src/app/public/icons', import.meta.url));
  mkdirSync(folder, { recursive: true });
  for (const [name, size, full] of ICONS) writeFileSync(join(folder, name), png(size, full));
}
