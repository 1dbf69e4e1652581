// The icons in the repository are the ones that scripts/icons.mjs draws, and the manifest names them with their true sizes.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { ICONS, rowsOf } from '../../scripts/icons.mjs';
import { ROOT } from './imports.ts';

const PUBLIC = join(ROOT, 'src/app/public');

/** Side in pixels and the rows of a PNG with one data chunk. */
function pictureIn(name: string) {
  const file = readFileSync(join(PUBLIC, 'icons', name));
  const at = file.indexOf('IDAT', 0, 'latin1');
  const length = file.readUInt32BE(at - 4);
  return { side: file.readUInt32BE(16), rows: inflateSync(file.subarray(at + 4, at + 4 + length)) };
}

test.each(ICONS)('%s is what the script draws', (name, size, full) => {
  const { side, rows } = pictureIn(name);
  expect(side).toBe(size);
  expect(rows.equals(rowsOf(size, full))).toBe(true);
});

test('the manifest names icons that are there, in their sizes', () => {
  const { icons } = JSON.parse(readFileSync(join(PUBLIC, 'app.webmanifest'), 'utf8')) as {
    readonly icons: readonly { readonly src: string; readonly sizes: string }[];
  };
  expect(icons.length).toBeGreaterThanOrEqual(3);
  for (const { src, sizes } of icons) {
    const { side } = pictureIn(src.replace('/icons/', ''));
    expect(sizes).toBe(`${side}x${side}`);
  }
});
