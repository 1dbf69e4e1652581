// Which keys may stand at a path of the file, read off the shape itself so that no second list can disagree.
import * as z from 'zod';
import type { Path } from './report.ts';
import { procedureFile } from './shape.ts';
import { STEP_KEYS } from './shape-steps.ts';

const isSchema = (value: unknown): value is z.ZodType => value instanceof z.ZodType;

/** The schema one key further in; undefined where there is none. */
function inside(schema: z.ZodType, key: string | number): z.ZodType | undefined {
  if (schema instanceof z.ZodOptional) {
    const inner: unknown = schema.unwrap();
    return isSchema(inner) ? inside(inner, key) : undefined;
  }
  let next: unknown;
  if (schema instanceof z.ZodObject)
    next = Object.hasOwn(schema.shape, key) ? Reflect.get(schema.shape, key) : undefined;
  else if (schema instanceof z.ZodArray) next = schema.element;
  else if (schema instanceof z.ZodRecord) next = schema.valueType;
  return isSchema(next) ? next : undefined;
}

const bare = (schema: z.ZodType): unknown => (schema instanceof z.ZodOptional ? schema.unwrap() : schema);

/** Keys allowed in the group at this path, in the order of the canonical form; of steps, those of any action. */
export function allowedKeys(path: Path): readonly string[] {
  if (path[0] === 'steps' && path.length === 2) return STEP_KEYS;
  let schema: z.ZodType | undefined = procedureFile;
  for (const key of path) schema = schema && inside(schema, key);
  const found = schema && bare(schema);
  return found instanceof z.ZodObject ? Object.keys(found.shape) : [];
}
