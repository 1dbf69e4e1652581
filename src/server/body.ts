// Reading a request's body: so long and no longer, as UTF-8 and nothing else, as JSON, in the shape that is asked for. The length is counted while it comes,
// because who sends it may say another, or none.
import type { IncomingMessage } from 'node:http';
import type * as z from 'zod';
import { Refusal } from './refusal.ts';

/**
 * Fields and list items at most, told by their commas before anything is made of them: a million fields take seconds, in which nobody
 * else is answered. One entry alone never has so many; a device that is refused sends fewer at once.
 */
const MOST_COMMAS = 300_000;

function hasTooMany(text: string): boolean {
  let count = 0;
  for (let at = text.indexOf(','); at !== -1; at = text.indexOf(',', at + 1)) count += 1;
  return count > MOST_COMMAS;
}

const TYPE = /^application\/json(;\s*charset=utf-8)?$/i;

async function bytesOf(incoming: IncomingMessage, most: number): Promise<Buffer> {
  if (Number(incoming.headers['content-length'] ?? 0) > most) throw new Refusal('too-large');
  const parts: Buffer[] = [];
  let length = 0;
  // Not destroyed when it is too long: the refusal goes out by the same connection.
  for await (const part of incoming.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    length += part.length;
    if (length > most) throw new Refusal('too-large');
    parts.push(part);
  }
  return Buffer.concat(parts);
}

function readJson<Result>(read: () => Result): Result {
  try {
    return read();
  } catch {
    throw new Refusal('not-json');
  }
}

/** What was sent, at most so many bytes long. */
export async function jsonOf(incoming: IncomingMessage, most: number): Promise<unknown> {
  if (!TYPE.test(incoming.headers['content-type'] ?? '')) throw new Refusal('wrong-type');
  const bytes = await bytesOf(incoming, most);
  const text = readJson(() => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  if (hasTooMany(text)) throw new Refusal('too-large');
  return readJson(() => JSON.parse(text) as unknown);
}

/** Names of what is wrong, with their place; never what was sent. */
export function checked<Shape extends z.ZodType>(shape: Shape, value: unknown): z.output<Shape> {
  const read = shape.safeParse(value);
  if (read.success) return read.data;
  const where = read.error.issues.slice(0, 10).map(({ path }) => path.map(String).join('.').slice(0, 100));
  throw new Refusal('wrong-shape', { where });
}
