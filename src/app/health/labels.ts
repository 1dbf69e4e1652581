// What the page of health records says. The names of reasons are the unit's to read; the journal keeps their ids.
import { MOST_RECORDS } from '../../api/shapes/health.ts';
import type { READING_REASONS } from '../../journal/kinds/unit.ts';

export const REASONS: Readonly<Record<(typeof READING_REASONS)[number], string>> = {
  'follow-up': 'Follow-up of somebody exposed',
  exposure: 'An exposure is being judged',
  'fit-for-work': 'Whether somebody is fit for work',
  'asked-by-person': 'The person asked for it',
  'record-put-right': 'A record is to be put right',
  'review-of-records': 'Review of the records',
};

export const HEALTH = {
  title: 'Health records of staff',
  link: 'Health records',
  forWhom: 'For occupational health.',
  kept: 'The unit’s server keeps them sealed. This page keeps nothing of them: what it shows is gone when you leave it or load it again. It works only while the server answers.',
  otherRole: (role: string): string =>
    `This page is for occupational health. You are signed in with the role ${role}, and nothing is shown to it here.`,
  signedInAs: (name: string): string => `Signed in as ${name}, occupational health.`,
  waits: (name: string): string => `Signed in as ${name}, occupational health, not let in yet.`,
} as const;

/** For whoever waits. */
export const WAITING = {
  title: 'Not let in yet',
  what: 'You are signed in, but this account is not let in to health records: it neither reads nor writes any.',
  why: 'The lead makes accounts and gives first passwords. So that nobody reads health records in somebody else’s place, an account that the lead made, opened again or gave this role or a new password waits.',
  who: 'Who can let you in: somebody of occupational health who is let in, on this page under “Who is let in”. They should ask you, face to face, whether you chose your password yourself. Where nobody is let in: whoever runs the server’s machine, with this command.',
  command: (name: string): string => `./doffline account let-in "${name}"`,
  ask: 'Ask again whether I am let in',
} as const;

export const LET_IN = {
  title: 'Who is let in',
  says: 'An account of occupational health that the lead made, opened again or gave this role or a new first password reads nothing here until it is let in.',
  asking: 'Asking the server …',
  again: 'Load again',
  list: 'Accounts of occupational health',
  in: 'let in',
  inSince: (when: string): string => `let in since ${when}`,
  waits: 'waits to be let in',
  waitsSince: (when: string): string => `waits since ${when}`,
  closed: 'closed',
  you: 'you',
  press: (name: string): string => `Let ${name} in …`,
  confirm: 'Let an account in to health records',
  will: (name: string): string =>
    `${name} will read and write health records of staff, everybody’s, and can let others in.`,
  ask: (name: string): string =>
    `Ask ${name} first, face to face or on a number that you know: did they themselves choose the password that this account has now? Whoever gave the first one could have signed in with it in their place. In doubt go back, and let nobody in.`,
  first: 'Its owner must first sign in and choose an own password: the lead knows the one it has.',
  act: {
    press: 'Let in',
    busy: 'Letting in …',
    failed: 'Not let in',
    stays: 'The journal says for good that you did it, and when. The lead can close the account.',
  },
  done: (name: string): string => `${name} is let in.`,
  unknown:
    'The server did not answer, so it is not known whether this was done. Load the list again before you try once more.',
  log: 'Who let whom in',
  logSays: 'From the journal, the latest first.',
  none: 'Nothing stands there: these accounts are older than this list.',
  older: 'Older ones stand in the journal.',
  columns: ['When', 'Who was let in', 'By whom'],
  account: (id: string): string => `account ${id}`,
  how: {
    first: 'by itself, as the unit’s first, when the lead made it:',
    'occupational-health': 'by',
    machine: 'by whoever runs the server’s machine',
  },
} as const;

export const READ = {
  title: 'Read',
  before:
    'Before anything is shown the journal is told that you read, whose records, when and why. Ask for no more than you need.',
  why: 'Reason',
  which: 'Which records',
  whiches: { person: 'One person’s', number: 'One record', all: 'Everybody’s' },
  number: 'Number of the record',
  press: 'Tell the journal and read',
  reading: 'Reading …',
  shown: (count: number): string => {
    if (count === 0) return 'No record was found. The journal says that you asked.';
    return count === 1
      ? '1 record is shown. The journal says that you read it.'
      : `${count} records are shown. The journal says that you read them.`;
  },
  more: (from: number): string =>
    `The server searches ${MOST_RECORDS} records at a time. From record ${from} on there are more.`,
  on: (from: number): string => `Read on from record ${from}`,
  forget: 'Put away what is shown',
  record: (number: number): string => `Record ${number}`,
  written: (at: string, by: string): string => `Written ${at} by ${by}.`,
  empty: 'Nothing is written in it.',
} as const;

export const WRITE = {
  title: 'Write',
  says: 'Write nothing here that somebody may need in an emergency: only occupational health can read it, and only while the server answers.',
  form: 'What it is',
  formHint: 'For instance: follow-up day. Kept in small letters with hyphens.',
  version: 'Version of the form',
  line: (at: number): string => `Line ${at}`,
  name: 'What is recorded',
  value: 'What is to be kept',
  add: 'Add a line',
  remove: (at: number): string => `Take out line ${at}`,
  press: 'Seal and keep …',
  confirm: 'Keep this record',
  will: (form: string, whose: string, lines: number): string =>
    `The record “${form}” of ${whose}, ${lines === 1 ? '1 line' : `${lines} lines`}, will be sealed and kept.`,
  kept: (number: number): string => `Record ${number} is kept, sealed. To see it, read it with a reason.`,
  unknown:
    'The server did not answer. Whether it kept the record is not known: read the person’s records before you write it again.',
} as const;

export const READINGS = {
  title: 'Who read what',
  list: 'Readings',
  says: 'From the journal: every time somebody read, or asked for records that were not there.',
  press: 'Show who read',
  again: 'Ask again who read',
  none: 'Nobody has read any.',
  count: (shown: number, all: number): string => `${shown} of ${all} readings, the latest first.`,
  older: 'Show older ones',
  columns: ['When', 'Who', 'Whose', 'Records', 'Reason'],
  account: (id: string): string => `account ${id}`,
  nothing: 'none found',
} as const;

export const WHOSE = {
  list: 'Person (staff list of this device)',
  id: 'Id of the person in the staff list',
  hint: 'As the journal page of the unit’s devices shows it: p- and letters and digits. Never a name.',
} as const;
