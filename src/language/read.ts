// Text to procedure, in four grades: text, tree of plain values, shape, procedure. Each goes on after errors as far
// as it makes sense: broken syntax ends the reading (everything after it would be guesswork), a wrong value is
// taken out and the names in the rest are still checked. A procedure comes only when nothing is wrong.
import type * as z from 'zod';
import type { Procedure } from '../domain/procedure.ts';
import { checkAccepted, checkStart } from './check-lists.ts';
import { checkPeople, checkRoom } from './check-room.ts';
import { checkSteps, stepIds } from './check-steps.ts';
import { createContext } from './context.ts';
import type { Diagnostic, Span } from './diagnostics.ts';
import { reportIssues } from './issues.ts';
import { createLines, type Lines } from './lines.ts';
import { createReport, type Report, valueSpot } from './report.ts';
import { resolveProcedure } from './resolve.ts';
import { type FileShape, fileWithoutSteps, type LooseFile } from './shape.ts';
import { step, type StepShape } from './shape-steps.ts';
import { textFault, withoutMark } from './text.ts';
import { type Plain, readYaml, type WritableSpots } from './yaml.ts';

/** The document as read, errors and all. */
export interface ReadDocument {
  readonly file: string;
  /** Without a byte-order mark. */
  readonly text: string;
  /** Plain values as written; undefined when the text is not well-formed. */
  readonly value: Plain;
}

/** Where things stand. Plain maps, so that they pass to and from a worker. */
export interface Positions {
  /** By step id: the whole step. Ids that are given twice lead to the first. */
  readonly steps: ReadonlyMap<string, Span>;
  /** By path with dots, as `steps.3.item` or `people.wearer.wears.0`: the value; '' is the whole file. */
  readonly paths: ReadonlyMap<string, Span>;
}

export interface ReadResult {
  /** Only when no diagnostic is an error. */
  readonly procedure?: Procedure;
  /** In the order of the file. */
  readonly diagnostics: readonly Diagnostic[];
  readonly document: ReadDocument;
  readonly positions: Positions;
}

function checkNames(file: LooseFile, report: Report): void {
  const context = createContext(file, report);
  checkPeople(context);
  checkRoom(context);
  checkStart(context);
  checkSteps(context);
  checkAccepted(context);
}

type Checked = { readonly file: FileShape } | { readonly issues: readonly z.core.$ZodIssue[] };

/** Steps one by one: the library gathers issues through call arguments, and a hundred thousand overflow its stack. */
function checkShape(value: Plain): Checked {
  const outer = fileWithoutSteps.safeParse(value);
  const issues: z.core.$ZodIssue[] = outer.error ? [...outer.error.issues] : [];
  const written: unknown =
    typeof value === 'object' && value !== null ? Reflect.get(value, 'steps') : undefined;
  const steps: StepShape[] = [];
  for (const [index, entry] of (Array.isArray(written) ? written : []).entries()) {
    const inner = step.safeParse(entry);
    if (inner.success) steps.push(inner.data);
    else
      for (const issue of inner.error.issues)
        issues.push({ ...issue, path: ['steps', index, ...issue.path] });
  }
  return outer.success && issues.length === 0 ? { file: { ...outer.data, steps } } : { issues };
}

function readShape(value: Plain, report: Report): Procedure | undefined {
  if (value === null) {
    report.value([], 'empty-file');
    return undefined;
  }
  const checked = checkShape(value);
  if ('file' in checked) checkNames(checked.file, report);
  else {
    const rest = structuredCopy(value);
    reportIssues(rest, checked.issues, report);
    if (typeof rest === 'object' && rest !== null && !Array.isArray(rest))
      checkNames(rest as LooseFile, report);
  }
  return 'file' in checked && !report.failed() ? resolveProcedure(checked.file) : undefined;
}

/** A copy whose values can be taken out without changing the document as read. */
function structuredCopy(value: Plain): Plain {
  if (Array.isArray(value)) return (value as readonly Plain[]).map(structuredCopy);
  if (typeof value !== 'object' || value === null) return value;
  const copy = Object.create(null) as Record<string, Plain>;
  for (const [key, inner] of Object.entries(value)) copy[key] = structuredCopy(inner);
  return copy;
}

function positionsOf(value: Plain, spots: WritableSpots, lines: Lines): Positions {
  const written: unknown =
    typeof value === 'object' && value !== null ? Reflect.get(value, 'steps') : undefined;
  const steps = new Map<string, Span>();
  if (Array.isArray(written)) {
    const named = written.map((step: unknown) =>
      typeof step === 'object' && step !== null ? step : undefined,
    );
    stepIds(named).forEach((id, index) => {
      const span = lines.span(valueSpot(spots, ['steps', index]));
      if (!steps.has(id)) steps.set(id, span);
    });
  }
  let paths: ReadonlyMap<string, Span> | undefined;
  return {
    steps,
    // Only few readers ask, and there are many.
    get paths() {
      paths ??= new Map([...spots.values].map(([path, spot]) => [path, lines.span(spot)]));
      return paths;
    },
  };
}

/** Steps and people in one file, and entries of everything else: far more than any unit needs. */
const MOST_STEPS = 20_000;
const MOST_PEOPLE = 200;
const MOST_ENTRIES = 20_000;

const entriesOf = (value: Plain): number =>
  typeof value === 'object' && value !== null ? Object.keys(value).length : 0;

const peopleIn = (value: Plain): number =>
  typeof value === 'object' && value !== null ? entriesOf(Reflect.get(value, 'people') as Plain) : 0;

/** The plain value of a text, unless it holds more than a procedure can. */
function readWithin(text: string, report: Report, spots: WritableSpots): Plain {
  const value = readYaml(text, report, spots);
  let [steps, others] = [0, 0];
  for (const path of spots.values.keys()) {
    if (!path.startsWith('steps.')) others += 1;
    else if (!path.includes('.', 'steps.'.length)) steps += 1;
  }
  const people = peopleIn(value);
  const limit =
    steps > MOST_STEPS
      ? `${MOST_STEPS} steps`
      : people > MOST_PEOPLE
        ? `${MOST_PEOPLE} people`
        : `${MOST_ENTRIES} entries`;
  if (steps <= MOST_STEPS && people <= MOST_PEOPLE && others <= MOST_ENTRIES) return value;
  const size = `${steps} steps, ${people} people, ${others} other entries`;
  report.value([], 'too-large', { size, limit });
  return undefined;
}

/**
 * Reads a procedure file. Never throws: whatever the text, there is a procedure or at least one error.
 * `file` is the name that diagnostics carry.
 */
export function readProcedure(written: string, file = 'procedure.yaml'): ReadResult {
  const text = withoutMark(written);
  const lines = createLines(text);
  const spots: WritableSpots = { values: new Map(), keys: new Map() };
  const report = createReport(file, lines, spots);
  const fault = textFault(text);
  if (fault) report.at(fault.spot, fault.code, fault.params);
  const value = fault ? undefined : readWithin(text, report, spots);
  const procedure = report.failed() && value === undefined ? undefined : readShape(value, report);
  return {
    ...(procedure === undefined ? {} : { procedure }),
    diagnostics: report.diagnostics(),
    document: { file, text, value },
    positions: positionsOf(value, spots, lines),
  };
}
