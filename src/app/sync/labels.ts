// What the page says about sending and receiving.
import type { KindName } from '../../journal/kinds/index.ts';
import type { ProblemCode, Todo } from '../../api/problems.ts';

/** What somebody must do about a refusal, by what the server says that is to be done. */
const TODO: Readonly<Record<Todo, string>> = {
  'mend-request':
    'This page and the server do not fit together. Load the newest version of the page, then tell the administrator.',
  'sign-in': 'This device has lost its place in the unit. Ask the lead for a new code and join again.',
  'change-password': 'Sign in and choose your own password first.',
  'pair-again': 'This device has lost its place in the unit. Ask the lead for a new code and join again.',
  'ask-lead': 'Keep this device and show it to the lead.',
  'ask-occupational-health':
    'Somebody of occupational health who is let in to health records must let this account in.',
  'send-from-expected': 'Nothing: it is sent again.',
  'keep-and-tell-lead':
    'Two records claim one place in this device’s chain. Nothing is deleted and nothing more is sent. Keep this device and show it to the lead.',
  'read-from-start': 'Nothing: the unit’s record is read again.',
  'retry-later': 'Nothing: it is tried again.',
  'tell-administrator':
    'Tell the administrator of the server. Nothing recorded here is lost; it is tried again.',
};

/** Where what is to be done can be said more exactly than that. */
const TODO_ABOUT: Partial<Readonly<Record<ProblemCode, string>>> = {
  'kind-not-allowed':
    'Keep this device. The lead takes it out on the page “The unit’s server”, and makes a code there for the same tablet with the role lead. Joined with that code under “This device”, it goes on under its id and sends the rest.',
};

interface Told {
  readonly code: ProblemCode;
  readonly todo: Todo;
}

export const todoText = ({ code, todo }: Told): string => TODO_ABOUT[code] ?? TODO[todo];

const REVOKED =
  'The lead has taken this device out of the unit (device-revoked): nothing is sent or received. What it holds stays on it.';

const NOT_OF_ROLE = (number: number | undefined): string =>
  `${number === undefined ? 'An entry' : `Entry ${number}`} of this device is of a kind that the server takes from no device of its role (kind-not-allowed). It waits here, and so does everything recorded after it.`;

export const SYNC = {
  title: 'The unit’s server',
  alone: 'This device belongs to no unit’s server. What is recorded stays on this device alone.',
  allSent: 'All sent.',
  nothingYet: 'The server has not answered yet.',
  unreached: 'The server is not in reach. It is tried again by itself.',
  lastAnswer: (when: string): string => `The server last answered at ${when}.`,
  waiting: (count: number, since: string): string =>
    `${count === 1 ? '1 entry is' : `${count} entries are`} waiting since ${since}.`,
  refused: (code: string, number: number | undefined): string => {
    if (code === 'device-revoked') return REVOKED;
    if (code === 'kind-not-allowed') return NOT_OF_ROLE(number);
    return number === undefined ? `Refused: ${code}.` : `Refused: ${code}, entry ${number} of this device.`;
  },
  tryNow: 'Try now',
  more: 'What to do',
} as const;

export const JOIN = {
  title: 'Join a unit',
  code: 'Code from the lead',
  says: 'The lead makes a code for each device. It works once, for a few minutes.',
  lead: 'For the lead: make a code, or set up the unit',
  join: 'Join',
  wrongUnit: (here: string, there: string): string =>
    `This device already holds records of unit ${here}; this server is unit ${there}’s. Export them under Journal and join with another device.`,
  midExit: 'An exit is under way on this device. Join when it has ended.',
  noServer: 'No unit’s server answered at this address.',
  noRoom: 'The browser does not let this page keep anything. Leave its private window and try again.',
} as const;

const entriesOf = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);

/** What was recorded here before this device joined. */
export const STAYING = {
  before: (count: number): string =>
    `This device holds ${entriesOf(count)} that no server has. They carry the name that it has now; joining gives it another. They stay on this device, in its journal, and are never sent. Save them first, and give the file to the lead.`,
  after: (count: number): string =>
    `${entriesOf(count)} from before this device joined stay on this device alone: the server does not take them. They are not lost: they stand in its journal, until the browser's data are deleted. Save them, and give the file to the lead.`,
  /** Of a device that lost its place in the unit, which has a name there. */
  again: (count: number, device: string): string =>
    `${entriesOf(count)} of this device ${count === 1 ? 'is' : 'are'} not on the server yet. With a code that the lead makes for this same tablet (${device}) it goes on under its id and sends them. With a code for a new one it gets another name, and they stay on this device alone. Save them first, and give the file to the lead.`,
  save: 'Save them as a file',
  file: 'from-before-joining.jsonl',
  unsentFile: 'not-on-the-server.jsonl',
} as const;

/** Where an exit begins on a device from which its entries do not go. */
export const EXIT_STAYS = {
  out: 'This device is not in the unit any more: the entries of an exit or a drill that begins here stay on this device until the lead pairs it again under its id. Where another tablet is at hand, begin there.',
  role: 'The entries of an exit or a drill that begins here stay on this device, and what is recorded after them too, until the lead pairs it again under its id in such a role. Where another tablet is at hand, begin there.',
} as const;

export const ACCOUNT = {
  title: 'One exit, from all devices',
  list: 'Exits',
  none: 'No exit is recorded here.',
  order:
    'In the order in which the unit’s server stored the lines. Each time is the clock of the device that wrote the line; clocks can be wrong and do not order anything.',
  notThere: 'not on the server yet',
  place: 'Place',
  device: 'Device',
  clock: 'Its clock',
  what: 'What',
  clocks: 'Clocks',
  thisClock: (seconds: number): string =>
    seconds === 0
      ? 'This device’s clock is within a second of the server’s, as last measured.'
      : `This device’s clock is ${Math.abs(seconds)} s ${seconds > 0 ? 'ahead of' : 'behind'} the server’s, as last measured.`,
  noClock: 'This device’s clock has not been compared with the server’s.',
} as const;

/** Kinds of entries that stand in an account of an exit, in a few words. */
export const LINES: Readonly<Partial<Record<KindName, string>>> = {
  'exit.started': 'Began',
  'exit.line-shown': 'Line shown',
  'exit.line-confirmed': 'Line confirmed',
  'exit.not-seen': 'Not seen',
  'exit.slip-recorded': 'Slip recorded',
  'exit.continuation-offered': 'Ways on offered',
  'exit.continuation-answered': 'Way on chosen',
  'exit.stopped': 'Stopped',
  'exit.resumed': 'Went on',
  'exit.timer-started': 'Timer started',
  'exit.timer-ended': 'Timer ended',
  'exit.handed-over': 'Handed over',
  'exit.ended': 'Ended',
  'exit.question-answered': 'Question answered',
  'room.left': 'Left the room',
  'emergency.opened': 'Emergency opened',
  'note.added': 'Note',
};
