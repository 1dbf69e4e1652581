// What the shape's checker says, turned into diagnostics with places; then the wrong values are taken out, so that
// names in the rest of the file are still checked and one fault does not hide the next.
import type * as z from 'zod';
import { ACTION_IDS, type ActionId } from '../domain/actions.ts';
import { TECHNIQUE_IDS } from '../domain/techniques/index.ts';
import { CATALOGUE } from './catalogue.ts';
import type { DiagnosticCode, DiagnosticParams } from './diagnostics.ts';
import { allowedKeys } from './keys.ts';
import { nameParams, type Path, type Report } from './report.ts';
import { STEP_KEYS, stepKeys } from './shape-steps.ts';
import type { Plain } from './yaml.ts';

type Issue = z.core.$ZodIssue;

function valueAt(root: Plain, path: Path): Plain {
  let value: unknown = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Reflect.get(value, key);
  }
  return value as Plain;
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  object: 'a group of "key: value" lines',
  record: 'a group of "key: value" lines',
};

function found(value: Plain): string {
  if (typeof value === 'boolean') return `${value}`;
  if (typeof value === 'string') return 'text';
  return Array.isArray(value) ? 'a list' : 'a group of "key: value" lines';
}

const ADVICE: Readonly<Record<string, string>> = {
  array: 'Write [one, two], or one line "- ..." for each.',
  string: 'Put it in quotes if it is meant as text.',
  boolean: 'Write true or false without quotes.',
};

/** The action of the step that a path leads into, if it does and the action is known. */
function actionAt(root: Plain, path: Path): ActionId | undefined {
  if (path[0] !== 'steps' || path.length < 2) return undefined;
  const action = valueAt(root, [...path.slice(0, 2), 'do']);
  return ACTION_IDS.find((id) => id === action);
}

/** The items of the step that a path leads into, as words. */
function itemsAt(root: Plain, path: Path): string {
  const item = valueAt(root, [...path.slice(0, 2), 'item']);
  if (Array.isArray(item)) return item.filter((one) => typeof one === 'string').join(' and ');
  return typeof item === 'string' ? item : '';
}

interface Reading {
  readonly root: Plain;
  readonly report: Report;
}

function reportMissing(path: Path, allowed: readonly string[], { root, report }: Reading): void {
  const name = String(path.at(-1));
  const action = path.length === 3 ? actionAt(root, path) : undefined;
  const params = { name, allowed, ...(action === undefined ? {} : { action }) };
  report.value(path.slice(0, -1), action === undefined ? 'missing-key' : 'action-needs-field', params);
}

/** Wrong kind of value: missing, empty, or another kind than expected. */
function reportKind(path: Path, expected: string, allowed: readonly string[], reading: Reading): void {
  const value = valueAt(reading.root, path);
  const words = EXPECTED[expected] ?? expected;
  if (value === undefined && path.length > 0) reportMissing(path, allowed, reading);
  else if (value === null || value === undefined || value === '')
    reading.report.value(path, 'empty-value', { expected: words });
  else {
    const advice = expected === 'string' && typeof value !== 'boolean' ? undefined : ADVICE[expected];
    const params = { expected: words, found: found(value), ...(advice === undefined ? {} : { advice }) };
    reading.report.value(path, 'wrong-type', params);
  }
}

function reportWord(path: Path, issue: Extract<Issue, { code: 'invalid_value' }>, reading: Reading): void {
  const value = valueAt(reading.root, path);
  const allowed = issue.values.map(String);
  if (typeof value !== 'string' || value === '') {
    reportKind(path, 'one word', allowed, reading);
    return;
  }
  const action = actionAt(reading.root, path);
  if (issue.message === 'unknown-technique' && action && TECHNIQUE_IDS.some((id) => id === value)) {
    reading.report.name(path, 'technique-does-not-fit', value, allowed, {
      what: `${action} ${itemsAt(reading.root, path)}`.trim(),
    });
  } else reading.report.name(path, codeOf(issue.message) ?? 'wrong-type', value, allowed);
}

/** Schemas carry the code of their diagnostic as their error. */
const codeOf = (message: string): DiagnosticCode | undefined =>
  Object.hasOwn(CATALOGUE, message) ? (message as DiagnosticCode) : undefined;

function reportKeys(path: Path, keys: readonly string[], { root, report }: Reading): void {
  const action = path.length === 2 ? actionAt(root, path) : undefined;
  const allowed = action === undefined ? allowedKeys(path) : stepKeys(action);
  for (const key of keys) {
    const known = action !== undefined && STEP_KEYS.includes(key);
    const params = { ...nameParams(key, allowed), ...(action === undefined ? {} : { action }) };
    report.key([...path, key], known ? 'action-takes-no-field' : 'unknown-key', params);
  }
}

function reportUnion(path: Path, issue: Extract<Issue, { code: 'invalid_union' }>, reading: Reading): void {
  const value = valueAt(reading.root, path);
  if (issue.errors.length === 0) {
    if (typeof value === 'string' && value !== '')
      reading.report.name(path, 'unknown-action', value, ACTION_IDS);
    else reportKind(path, 'one word', ACTION_IDS, reading);
    return;
  }
  const [one = [], list = []] = issue.errors;
  for (const inner of Array.isArray(value) ? list : one)
    reportIssue({ ...inner, path: [...path, ...inner.path] }, reading);
}

/** An alias stands there: reported before, and of no value. */
function reportedBefore(root: Plain, path: Path): boolean {
  const holder = valueAt(root, path.slice(0, -1));
  const last = path.at(-1);
  if (last === undefined || typeof holder !== 'object' || holder === null) return false;
  return Object.hasOwn(holder, last) && Reflect.get(holder, last) === undefined;
}

const lengthOf = (
  name: string,
  value: Plain,
  { maximum }: Pick<z.core.$ZodIssueTooBig, 'maximum'>,
): DiagnosticParams => {
  const length = typeof value === 'string' ? value.trim().length : 0;
  const limit = Number(maximum);
  return { name, length, limit, over: length - limit };
};

/** A key that is no name, or too long for one. */
function reportNamed(path: Path, issues: readonly Issue[], { report }: Reading): void {
  const name = String(path.at(-1));
  const long = issues.find((one) => one.code === 'too_big');
  if (long) report.key(path, 'too-long', lengthOf(name.slice(0, 80), name, long));
  else report.key(path, 'bad-name', { name: name.slice(0, 80) });
}

function reportIssue(issue: Issue, reading: Reading): void {
  const path = issue.path as Path;
  if (reportedBefore(reading.root, path)) return;
  const value = valueAt(reading.root, path);
  if (issue.code === 'invalid_value') reportWord(path, issue, reading);
  else if (issue.code === 'unrecognized_keys') reportKeys(path, issue.keys, reading);
  else if (issue.code === 'invalid_union') reportUnion(path, issue, reading);
  else if (issue.code === 'invalid_type') reportKind(path, issue.expected, [], reading);
  else if (issue.code === 'too_big')
    reading.report.value(path, 'too-long', lengthOf(String(path.at(-1)), value, issue));
  else if (issue.code === 'invalid_key') reportNamed(path, issue.issues, reading);
  else if (issue.code === 'too_small' || issue.message === 'empty-value') {
    const expected = issue.code === 'too_small' && issue.origin === 'array' ? 'at least one entry' : 'text';
    reading.report.value(path, 'empty-value', { expected });
  } else {
    const name = typeof value === 'string' ? value.slice(0, 80) : '';
    const params = { name, expected: 'something else', found: found(value) };
    reading.report.value(path, codeOf(issue.message) ?? 'wrong-type', params);
  }
}

/** Where a value must be taken out for an issue: unknown keys, wrong values, whole steps without a known action. */
function wrongPaths(issue: Issue): readonly Path[] {
  const path = issue.path as Path;
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => [...path, key]);
  return [issue.code === 'invalid_union' && issue.errors.length === 0 ? path.slice(0, -1) : path];
}

function takeOut(root: Plain, path: Path): void {
  const last = path.at(-1);
  const holder = valueAt(root, path.slice(0, -1));
  if (last === undefined || typeof holder !== 'object' || holder === null) return;
  if (Object.hasOwn(holder, last)) Reflect.set(holder, last, undefined);
}

/** Reports every issue and takes the wrong values out of `root`, which is changed. */
export function reportIssues(root: Plain, issues: readonly Issue[], report: Report): void {
  for (const issue of issues) reportIssue(issue, { root, report });
  for (const path of issues.flatMap(wrongPaths)) takeOut(root, path);
}
