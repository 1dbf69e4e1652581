// What the pages about versions say beside the sentences of the procedure, in plain English: one table for each vocabulary.
import type { ConflictCode, Stage } from '../../journal/views/versions.ts';
import type { DiffGroup } from '../../versions/diff.ts';
import type { HindranceCode } from '../../versions/sending.ts';

export const STAGE_NAMES: Readonly<Record<Stage, string>> = {
  draft: 'draft',
  review: 'under review',
  approved: 'approved',
  retired: 'retired',
};

/** Why a draft cannot be sent, and what to do. */
export const HINDERS: Readonly<Record<HindranceCode, string>> = {
  'not-finished': 'The draft is not finished: the step list says what is missing.',
  'not-checked': 'The check has not yet run to its end on exactly this draft. Wait for it.',
  'not-worked-out':
    'The check could not work this draft out exactly, so nobody can say what it leaves open. Make it simpler.',
  'to-mend': 'These errors must be mended. They cannot be accepted:',
  'to-accept': 'These errors must be mended, or accepted in writing on the page “Rules”:',
  'review-past':
    'The day has passed on which these were to be looked at again, so they count as not accepted. Each is to be accepted anew on the page “Rules”, by a role and with a new day, or its step mended:',
  'no-title': 'It has no title.',
  'no-version': 'It needs the name of a version, of 32 characters at most.',
  'version-taken':
    'A version of this name was approved already. An approved version is never changed: give this one another name.',
  'same-sent': 'Exactly this draft is under review already.',
  'too-long': 'The file is longer than the journal keeps.',
};

export const DIFF_TITLES: Readonly<Record<DiffGroup, string>> = {
  'new-errors': 'New errors',
  'new-findings': 'New notes of the check',
  'gone-findings': 'No longer found',
  'new-steps': 'New steps',
  'gone-steps': 'Steps left out',
  'moved-steps': 'Steps moved',
  'changed-steps': 'Steps changed',
  people: 'People',
  room: 'Room and products',
  rules: 'Title, rules and source',
  accepted: 'Accepted in writing',
  'not-compared': 'What cannot be compared',
};

/** An entry that changed nothing, and why. */
export const CONFLICTS: Readonly<Record<ConflictCode, string>> = {
  'never-changed': 'that version was approved already, and an approved version is never changed',
  'not-drafted': 'no such version was ever drafted',
  'other-content': 'it is about another file than the version holds',
  'wrong-stage': 'the version was not at a stage at which that can be done',
};

export const ENTRY_NAMES: Readonly<Record<string, string>> = {
  'procedure.drafted': 'a draft',
  'procedure.sent-for-review': 'sending for review',
  'procedure.sent-back': 'sending back',
  'procedure.approved': 'an approval',
  'procedure.retired': 'a retirement',
  'departure.accepted': 'an accepted departure',
};

/** '2026-11-25T08:01:00.000Z' as people read it. The device's clock. */
export const instantText = (at: string): string => `${at.slice(0, 10)} at ${at.slice(11, 16)} UTC`;

export const dueText = (days: number): string => {
  if (days < 0) return `overdue by ${-days} ${days === -1 ? 'day' : 'days'}`;
  return days === 0 ? 'due today' : `due in ${days} ${days === 1 ? 'day' : 'days'}`;
};

export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
