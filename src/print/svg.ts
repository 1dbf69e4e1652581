// A few lines of SVG as text, and the box that a path fills. Only for drawings of our own, whose paths hold nothing but
// absolute M, L, C and Z.
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

export function tag(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  inside = '',
): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(String(value))}"`);
  return `<${name}${written.join('')}>${inside}</${name}>`;
}

export const text = (content: string): string => escaped(content);

/** The box around several boxes; undefined without any. */
export function around(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  const x = Math.min(...boxes.map((box) => box.x));
  const y = Math.min(...boxes.map((box) => box.y));
  return {
    x,
    y,
    width: Math.max(...boxes.map((box) => box.x + box.width)) - x,
    height: Math.max(...boxes.map((box) => box.y + box.height)) - y,
  };
}

/** The box of a path's points; `mirrorAt` turns it round a middle line. */
export function boxOf(path: string, mirrorAt?: number): Box {
  const numbers = (path.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  const xs = numbers.filter((_, index) => index % 2 === 0);
  const ys = numbers.filter((_, index) => index % 2 === 1);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const y = Math.min(...ys);
  return {
    x: mirrorAt === undefined ? left : 2 * mirrorAt - right,
    y,
    width: right - left,
    height: Math.max(...ys) - y,
  };
}
