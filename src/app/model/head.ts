// The head of a procedure file, for the list of procedures: enough to show a title before anything is checked. Only the
// text above people, room and steps is parsed, which is quick for a whole library; the reading proper is the
// language's, in the worker. A file with errors must still have a name.
import { parse } from 'yaml';
import { cutTo, LONGEST } from '../../domain/lengths.ts';
import { shownText } from './shown.ts';

export interface Head {
  readonly title: string;
  readonly kind: 'doffing' | 'donning';
  readonly invented: boolean;
  readonly version?: string;
  readonly about?: string;
  readonly donning?: string;
  readonly source?: string;
  /** What was read at the source and what is from memory. */
  readonly seen?: string;
}

const text = (value: unknown): string | undefined =>
  typeof value === 'string' && value.trim() !== '' ? cutTo(LONGEST.text, shownText(value.trim())) : undefined;

/** Of one line; what is longer is refused, and until it is mended only its beginning is shown. */
const line = (value: unknown): string | undefined => {
  const whole = text(value);
  return whole === undefined ? undefined : cutTo(LONGEST.label, whole);
};

const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};

function sourceOf(value: unknown): string | undefined {
  const { title, publisher, year, where } = record(value);
  const parts = [title, publisher, year, where].map((part) =>
    typeof part === 'number' ? String(part) : text(part),
  );
  const found = parts.filter((part) => part !== undefined);
  return found.length > 0 ? found.join(', ') : undefined;
}

const BODY = /^(people|room|products|policy|start|steps|accepted)\s*:/m;

/** Many times the longest head: a hostile one must not hold up the page. */
const MOST = 20_000;

function headValue(fileText: string): Readonly<Record<string, unknown>> {
  const start = fileText.slice(0, MOST);
  const end = BODY.exec(start)?.index ?? Math.min(start.length, 4000);
  try {
    return record(parse(start.slice(0, end)));
  } catch {
    return {};
  }
}

/** Head of a file's text. Never throws: what cannot be read is left out. */
export function headOf(fileText: string): Head {
  const value = headValue(fileText);
  const version = typeof value.version === 'number' ? String(value.version) : line(value.version);
  const about = text(value.about);
  const donning = text(value.donning);
  const source = sourceOf(value.source);
  const seen = text(record(value.source).seen);
  return {
    title: line(value.title) ?? 'Procedure without a title',
    kind: value.kind === 'donning' ? 'donning' : 'doffing',
    invented: value.invented === true,
    ...(version === undefined ? {} : { version }),
    ...(about === undefined ? {} : { about }),
    ...(donning === undefined ? {} : { donning }),
    ...(source === undefined ? {} : { source }),
    ...(seen === undefined ? {} : { seen }),
  };
}
