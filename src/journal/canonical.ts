// One way to write a value as text, so that equal values have equal hashes on every machine. It is RFC 8785 (JSON
// Canonicalization Scheme) for values that leave no choice open: integers that a double holds exactly, well-formed text,
// booleans, null, lists and objects. Fractions are refused rather than printed: nothing here needs them.

export type Plain = string | number | boolean | null | readonly Plain[] | PlainObject;
export interface PlainObject {
  readonly [key: string]: Plain;
}

/** Deeper than any body; keeps a hostile one from exhausting the stack. */
const MOST_DEPTH = 16;
const LONE_SURROGATE = /\p{Surrogate}/u;

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

export const isPlainObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' &&
  value !== null &&
  [Object.prototype, null].includes(Object.getPrototypeOf(value) as object | null);

function faultInObject(value: Readonly<Record<string, unknown>>, depth: number): string | undefined {
  for (const [key, one] of Object.entries(value)) {
    const fault = LONE_SURROGATE.test(key) ? 'its name is no well-formed text' : faultIn(one, depth + 1);
    if (fault !== undefined) return `${key}: ${fault}`;
  }
  return undefined;
}

function faultInList(value: readonly unknown[], depth: number): string | undefined {
  for (const [index, one] of value.entries()) {
    const fault = faultIn(one, depth + 1);
    if (fault !== undefined) return `${index}: ${fault}`;
  }
  return undefined;
}

/** Why a value has no canonical text, with the way to the place; undefined where it has one. */
export function faultIn(value: unknown, depth = 0): string | undefined {
  if (depth > MOST_DEPTH) return `nested deeper than ${MOST_DEPTH}`;
  if (value === null || typeof value === 'boolean') return undefined;
  if (typeof value === 'string')
    return LONE_SURROGATE.test(value) ? 'text that is not well-formed' : undefined;
  if (typeof value === 'number')
    return Number.isSafeInteger(value) && !Object.is(value, -0) ? undefined : 'not an exact integer';
  if (isList(value)) return faultInList(value, depth);
  return isPlainObject(value) ? faultInObject(value, depth) : `a ${typeof value}`;
}

/** Keys in the order of their UTF-16 code units, no blanks. The value must be without fault. */
export function canonical(value: Plain): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (isList(value)) return `[${value.map(canonical).join(',')}]`;
  const parts = Object.keys(value)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonical(value[key]!)}`);
  return `{${parts.join(',')}}`;
}
