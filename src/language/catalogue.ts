// The English of every diagnostic, written once: docs, command line and page all read it from here. What is wrong
// is one sentence; how to mend it is one or more, each left out when one of its `{parameters}` is missing.

export type Severity = 'error' | 'note';

/** One entry. */
export interface DiagnosticWords {
  readonly severity: Severity;
  readonly wrong: string;
  readonly mend: readonly string[];
}

const error = (wrong: string, ...mend: readonly string[]) =>
  ({ severity: 'error', wrong, mend }) as const satisfies DiagnosticWords;
const note = (wrong: string, ...mend: readonly string[]) =>
  ({ severity: 'note', wrong, mend }) as const satisfies DiagnosticWords;

const NEAREST = 'Did you mean "{nearest}"?';
const ALLOWED = 'Allowed here: {allowed}.';

export const CATALOGUE = {
  // The text as a whole.
  'empty-file': error('The file holds no procedure.', 'Start it with "doffline: 1" and a title.'),
  'too-large': error(
    'The file is larger than a procedure can be ({size}, at most {limit}).',
    'Split it, or check that this is the right file.',
  ),
  'not-text': error(
    'The file is not plain text: a {character} stands here.',
    'Save it as plain text (UTF-8) from a text editor.',
  ),
  'control-character': error(
    'An invisible control character ({character}) stands here.',
    'Delete it, or type the line anew.',
  ),
  syntax: error('This is not well-formed: {reason}.', '{advice}'),
  tab: error('A tab is used to indent.', 'Indent with spaces only.'),
  'too-deep': error(
    'The file is nested too deeply (more than {limit} levels).',
    'Check brackets and indentation here.',
  ),
  'several-documents': error(
    'The file holds more than one document.',
    'Keep one procedure per file; remove the line "---".',
  ),
  'aliases-not-allowed': error(
    'Anchors (&) and aliases (*) are not allowed.',
    'Write the text out; put it in quotes if the sign is meant.',
  ),
  'tags-not-allowed': error(
    'Tags (!) and directives (%) are not allowed.',
    'Remove it; put the text in quotes if the sign is meant.',
  ),
  'more-problems': note(
    'There are {count} more problems after these.',
    'Mend the first ones and read the file again.',
  ),

  // Keys and kinds of value.
  'duplicate-key': error(
    '"{name}" is written twice in the same place (first in line {first}).',
    'Keep one of them.',
  ),
  'unknown-key': error('"{name}" is not known here.', NEAREST, ALLOWED),
  'missing-key': error('"{name}" is missing.', 'Write a line "{name}: ...".', ALLOWED),
  'empty-value': error('Nothing is written here.', 'Write {expected}, or remove the line.'),
  'too-long': error(
    '"{name}" is {length} characters long, and at most {limit} are taken here.',
    'Shorten it by {over}.',
  ),
  'several-lines': error('This runs over several lines.', 'Write it on one line.'),
  'wrong-type': error('Here should be {expected}, but it is {found}.', '{advice}'),
  'bad-name': error(
    '"{name}" cannot be used as a name.',
    'Start with a letter; use only letters, digits and hyphens, without spaces.',
  ),
  'reserved-name': error('"{name}" is a name with a meaning of its own.', 'Choose another one.'),
  'listed-twice': error('"{name}" is listed twice.', 'Keep it once.'),
  'bad-date': error('"{name}" is not a date of the calendar.', 'Write year-month-day, like 2026-03-31.'),
  'version-not-known': error('Format version "{name}" is not known to this program.', ALLOWED),

  // Words of the trade.
  'unknown-kind': error('"{name}" is not a kind of procedure.', NEAREST, ALLOWED),
  'unknown-item': error('"{name}" is not a known item.', NEAREST, ALLOWED),
  'unknown-part': error('"{name}" is not a part of an item.', NEAREST, ALLOWED),
  'unknown-place': error('"{name}" is not a place of the body.', NEAREST, ALLOWED),
  'unknown-product': error('"{name}" is not a known product.', NEAREST, ALLOWED),
  'unknown-agent': error('"{name}" is not a known kind of agent.', NEAREST, ALLOWED),
  'unknown-role': error('"{name}" is not a role.', NEAREST, ALLOWED),
  'unknown-side': error('"{name}" is not a side.', NEAREST, ALLOWED),
  'unknown-zone-side': error('"{name}" is not a side of the room.', NEAREST, ALLOWED),
  'unknown-fixture-kind': error('"{name}" is not a kind of fixture.', NEAREST, ALLOWED),
  'unknown-worked': error('"{name}" is not a way to work a fixture.', NEAREST, ALLOWED),
  'unknown-state': error('"{name}" is not a state of a surface.', NEAREST, ALLOWED),
  'unknown-dependence': error('"{name}" is not a degree of dependence.', NEAREST, ALLOWED),
  'unknown-evidence': error('"{name}" is not a piece of evidence that this program knows.', NEAREST, ALLOWED),
  'unknown-practice': note(
    'No practice has the name "{name}", so this accepts nothing.',
    NEAREST,
    'The names stand in front of each finding.',
  ),
  'unknown-action': error('"{name}" is not an action.', NEAREST, ALLOWED),
  'unknown-technique': error('"{name}" is not a known technique.', NEAREST, ALLOWED),

  // Names of this file.
  'unknown-person': error('Nobody here is called "{name}".', NEAREST, 'People of this file: {allowed}.'),
  'unknown-zone': error('There is no zone "{name}".', NEAREST, 'Zones of this file: {allowed}.'),
  'unknown-fixture': error('There is no fixture "{name}".', NEAREST, 'Fixtures of this file: {allowed}.'),
  'unknown-step': error('There is no step "{name}".', NEAREST),
  'unknown-surface': error('There is no surface "{name}".', NEAREST, ALLOWED),
  'product-not-listed': error(
    '"{name}" is not among the products of this file.',
    NEAREST,
    'Add it to "products" if the room has it. Listed: {allowed}.',
  ),

  // People, room, start.
  'role-needed': error('"{name}" has no role.', 'Write a line "role: ..." below it.', ALLOWED),
  'start-zone-needed': error(
    'It is not said in which zone "{name}" starts.',
    'Write a line "starts: ..." below it.',
    ALLOWED,
  ),
  'worn-twice': error(
    '"{name}" is worn twice by the same person.',
    'Keep it once in "wears" and "underneath".',
  ),
  'worked-does-not-fit': error(
    'A {kind} is not worked by "{name}".',
    'Remove it, or check the kind.',
    ALLOWED,
  ),
  'fixture-takes-no-product': error(
    'A {kind} cannot be soaked with a product.',
    'Only what one steps on can.',
  ),
  'floor-name-taken': error(
    '"{name}" is the name of the floor of that zone.',
    'Make it of kind floor in that zone, or choose another name.',
  ),
  'stated-twice': error('The start of "{name}" is stated twice.', 'Keep one of them.'),

  // Steps and acceptances.
  'action-needs-field': error('"{action}" needs "{name}".', 'Write "{name}: ...".', ALLOWED),
  'action-needs-one-of': error('"{action}" needs to know on what.', 'Write one of: {allowed}.'),
  'action-takes-no-field': error('"{action}" has no use for "{name}".', 'Remove it.', ALLOWED),
  'technique-does-not-fit': error('"{name}" is not a way to {what}.', NEAREST, ALLOWED),
  'action-does-not-fit': error('There is no known way to {what}.', 'Items this fits: {allowed}.'),
  'part-does-not-fit': error('{items} has no part "{name}".', NEAREST, ALLOWED),
  'part-needs-item': error('A part is named but no item.', 'Write "item: ...".'),
  'side-needs-pair': error('{items} does not come as left and right.', 'Remove the side.'),
  'helper-is-doer': error(
    '"{name}" cannot help with a step of their own.',
    NEAREST,
    'Others in this file: {allowed}.',
  ),
  'duplicate-step-id': error(
    'Two steps are called "{name}" (also in line {first}).',
    'Give one of them another id; steps without an id are counted s1, s2 and so on.',
  ),
  'review-before-date': error(
    'The review comes before the date it was accepted.',
    'Set the review after {date}.',
  ),
} as const;
