// What the logbook's pages say, in plain English: one table for each vocabulary.
import type { Asked, RoomRole } from '../../journal/kinds/rooms.ts';
import type { SignCode } from '../../journal/views/signs.ts';

export const ROLE_NAMES: Readonly<Record<RoomRole, string>> = {
  wearer: 'Wearer',
  observer: 'Observer',
  assistant: 'Assistant',
  rescuer: 'Rescuer',
  cleaner: 'Cleaner',
  laboratory: 'Laboratory',
  waste: 'Waste',
  transport: 'Transport',
  maintenance: 'Maintenance',
  visitor: 'Visitor',
  other: 'Other',
};

export const NO_ROLE = 'Role not recorded';

export const ASKED_NAMES: Readonly<Record<Asked, string>> = {
  asked: 'Asked now',
  later: 'Asked later, at the end of the exit',
  'not-asked': 'Not asked',
};

/** In the log, afterwards. */
export const ASKED_TOLD: Readonly<Record<Asked, string>> = {
  asked: 'End questions asked',
  later: 'End questions left to the exit',
  'not-asked': 'End questions NOT asked',
};

interface SignLabel {
  /** Stands beside the words, so that colour is never alone. */
  readonly mark: string;
  /** `other` is the other room, where the sign has one. */
  readonly text: (other: string) => string;
  readonly grave: boolean;
}

export const SIGN_LABELS: Readonly<Record<SignCode, SignLabel>> = {
  'over-limit': { mark: '■', grave: true, text: () => 'Over the limit' },
  'near-limit': { mark: '▲', grave: false, text: () => 'The limit is near' },
  forgotten: {
    mark: '■',
    grave: true,
    text: () => 'Still in, for very long. Look now. If they came out unwritten, sign them out late',
  },
  'two-rooms': { mark: '■', grave: true, text: (other) => `In two rooms at once: also in ${other}` },
  'twice-in-room': { mark: '▲', grave: false, text: () => 'Signed in twice: one way out was not written' },
  'no-observer': { mark: '■', grave: true, text: () => 'No observer is named' },
  'observer-not-in': { mark: '▲', grave: false, text: () => 'The observer is not signed in' },
  'out-before-in': { mark: '▲', grave: false, text: () => 'Out before in: one of the times is wrong' },
  'out-twice': {
    mark: '▲',
    grave: false,
    text: () => 'Two ways out were written at different times. The later one is shown',
  },
  'way-in-missing': { mark: '▲', grave: false, text: () => 'The way in was not written, or has not arrived' },
  'ahead-of-clock': { mark: '▲', grave: false, text: () => 'The time in lies ahead of this device’s clock' },
};

export const LOG = {
  title: 'Logbook',
  places: { now: 'In the room now', in: 'Sign in', day: 'The day’s log', with: 'Who was with whom' },
  lead: 'Who is in each room now, as it was written on this device and on those it hears of. It says who was signed in, not who is really there: look.',
  health:
    'No health data here: no temperature, no symptom. What a wearer answered at the end of an exit stands with that exit, and is told to observers, the lead and occupational health; their health records are occupational health’s alone.',
  names: 'Role and initials of the staff list, never a name. Visitors too.',
  stays: 'It is written for good. A mistake is put right by a correction, which stands beside it.',
  look: (people: number): string =>
    people === 1
      ? 'One person is signed in past the limit.'
      : `${people} people are signed in past the limit.`,
  nobody: 'Nobody is signed in.',
  nobodyIn: (room: string): string => `Nobody is signed in to ${room}.`,
  reading: 'Reading the journal …',
  failed: 'The journal cannot be read:',
  forms: {
    who: 'Who',
    role: 'As what',
    room: 'Room',
    roomHint: 'The doffing area belongs to its room: sign observers and assistants in too.',
    worn: 'Ensemble, by the approved version',
    wornNone: '(in own words, below)',
    ensemble: 'Ensemble in own words',
    items: 'Sizes and lots',
    itemsHint: 'As they stand on the pack. Leave empty what nobody read.',
    size: (item: string): string => `Size: ${item}`,
    lot: (item: string): string => `Lot: ${item}`,
    more: 'One more item',
    item: 'Item',
    observer: 'Observer',
    limit: 'Limit, minutes',
    limitSource: 'Where the limit is written',
    limitNone: 'No limit is kept under Guide, “Plan, phones, limits”. Write one here, or leave both empty.',
    drill: 'Drill: for practice, no patient',
    when: 'When',
    whenNow: 'Now',
    whenEarlier: 'Earlier: a late entry',
    at: 'It happened at',
    late: 'Why it is written late (no names)',
    by: 'Written by',
    ask: 'Ask the wearer',
    asked: 'Were the end questions asked?',
    exit: (when: string): string => `The exit begun at ${when} goes with it`,
    reason: 'What was wrong or missing (no names)',
    correct: 'What is put right',
  },
  corrections: {
    change: 'Some of it was wrong or missing: change it',
    'way-out': 'They did not come out: still in',
    visit: 'They never went in',
  },
  acts: {
    in: 'Sign in',
    out: 'Sign out',
    observer: 'Change observer',
    correct: 'Correct',
    print: 'Print',
    back: 'Back',
  },
  yes: 'A yes, or not sure: they stay, the people in the unit’s exposure plan are called, occupational health is told. Do not write the answer here.',
  open: (press: string): string =>
    `The donning that is read aloud with this visit goes on. Press “${press}” there; sign out here only if its device is lost.`,
  guided: 'By the exit that is read aloud, from its own entries: nobody signed them in here.',
  guidedOpen:
    'The exit that is read aloud signs them out as it ends or is handed over. Sign out here only if they went before, or if its device is lost.',
  openGo: 'Go there',
  printed:
    'As it was written on this device and on those it hears of. It says who was signed in, not who was really there.',
  already: (room: string): string =>
    `They are signed in to ${room} already. Two rooms at once will be pointed out.`,
  with: {
    lead: 'Everybody who was in the same room at the same time, as the log has it. It may miss people: those whom nobody signed in.',
    judged: 'Who was exposed is for the unit’s plan and occupational health to judge, not for this list.',
    none: 'Nobody was in the same room at that time, as the log has it.',
    notIn: 'They were in no room at that time, as the log has it.',
    open: 'open: still in, or never signed out',
    atMost: 'at most: no way in written',
    named: 'Named as observer, but not signed in to the room:',
    minutesNote: 'Minutes are rounded up. 0: one came as the other went.',
  },
  mistakes: {
    who: 'Say who.',
    role: 'Say as what.',
    room: 'Say which room, in letters or numbers.',
    by: 'Say who writes it.',
    at: 'Say when it happened.',
    ahead: 'That time lies ahead. Say when it really happened.',
    before: 'That is before they went in.',
    late: 'Say why it is written late.',
    limit: 'The limit is a whole number of minutes, and needs where it is written.',
    asked: 'Say whether the end questions were asked.',
    observer: 'Say who watches from now on.',
    reason: 'Say what was wrong or missing.',
    nothing: 'Nothing was changed.',
    self: 'Nobody watches themselves: choose somebody else.',
  },
} as const;
