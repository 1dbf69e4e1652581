// What the unit's page says to the lead.
import type { Role } from '../../api/roles.ts';

export const ROLE: Readonly<Record<Role, string>> = {
  observer: 'observer',
  lead: 'lead',
  stores: 'stores',
  'occupational-health': 'occupational health',
  reader: 'reader',
};

export const LISTS = { asking: 'Asking the server …', again: 'Load again' } as const;

export const ACCOUNTS = {
  title: 'Accounts',
  says: 'Who may sign in, and as what. A change ends all sessions of that account at once.',
  first: 'has not changed the first password yet',
  closed: 'closed',
  you: 'you',
  role: 'Role',
  changeRole: 'Change the role …',
  changeTitle: 'Change a role',
  renewTitle: 'Give a new first password',
  closeTitle: 'Close an account',
  openTitle: 'Open an account again',
  willChange: (name: string, from: Role, to: Role): string =>
    `${name} will be ${ROLE[to]} instead of ${ROLE[from]}, and must sign in again.`,
  renew: 'New first password …',
  willRenew: (name: string): string =>
    `${name} gets a new first password, shown to you once. The one before ends, and so do all sessions.`,
  close: 'Close the account …',
  willClose: (name: string): string =>
    `${name} can no longer sign in, from this moment on. The account can be opened again.`,
  open: 'Open the account …',
  willOpen: (name: string): string => `${name} can sign in again, with the password as it was.`,
  self: 'This is your own account: you will be signed out.',
  onlyLead:
    'You are the unit’s only lead: another one must be made first, before you can be closed or get another role.',
  changed: 'Changed.',
  waits: 'not let in to health records yet',
  letIn: 'let in to health records',
  /** Beside an account that waits. */
  waitsSays: (name: string): string =>
    `This account signs in, but neither reads nor writes health records until it is let in: by somebody of occupational health who is let in, on the page “Health records”, or by whoever runs the server’s machine: ./doffline account let-in "${name}". You cannot do it: whoever makes accounts must not read health records by them.`,
  /** Before something that ends being let in. */
  willWait: (name: string): string =>
    `${name} then neither reads nor writes health records until somebody of occupational health who is let in lets them in, or whoever runs the server’s machine.`,
  /** Before an account that is let in is closed or loses the role. */
  wouldWait: 'Opened again or given the role again, it waits to be let in to health records.',
  nobodyElse:
    'Nobody else is let in now: afterwards only whoever runs the server’s machine can let somebody in (./doffline account let-in).',
  firstIn:
    'The unit’s first account of occupational health is let in to health records at once. Every later one waits until somebody of occupational health lets it in, or whoever runs the server’s machine.',
  act: {
    press: 'Do it',
    busy: 'Doing it …',
    failed: 'Not done',
    stays: 'It can be changed back. Nothing of it stands in the journal.',
  },
  /** Where being let in ends. */
  staysOut: 'You cannot let the account in to health records again. Nothing of it stands in the journal.',
  make: 'New account',
  name: 'Name',
  nameHint: 'They sign in with it. Upper and lower case are the same.',
  may: (what: string): string => `May: ${what}.`,
  press: 'Create the account',
  password: (name: string): string => `First password of ${name}`,
  once: 'It is shown this once. Give it to them alone; they must choose their own when they first sign in, on this page.',
  putAway: 'Put the password away',
} as const;

export const OWN = {
  title: 'Your own password',
  says: 'Changing it ends all your sessions and begins a new one here.',
  old: 'Password that you have now',
  own: 'New password',
  press: 'Change my password',
  empty: 'Type both passwords.',
} as const;

export const PAIR = {
  title: 'Pair a tablet',
  says: 'A code lets one tablet join the unit, once, within minutes. It then needs nobody to sign in during an exit.',
  form: 'A code for a tablet',
  which: 'Which tablet',
  fresh: 'A new one',
  whichHint: 'One that lost its place goes on under its own id, so that its entries follow on.',
  out: (label: string): string => `${label} (taken out)`,
  label: 'What it is called',
  labelHint: 'Where it stands, for instance: Tablet in the anteroom. Everybody sees it; no names.',
  role: 'Role of those who record on it',
  records: (what: string): string => `It records: ${what}.`,
  press: 'Show a code',
  code: 'Code',
  left: (time: string): string => `Good for another ${time} minutes, for one tablet.`,
  how: 'Point the tablet’s camera at the picture, or open this address there:',
  orType: 'Or, on the tablet: “This device”, then type the code under “Join a unit”.',
  alt: 'QR code of the address that stands beside it, with the code in it',
  ended: 'This code has ended and is worth nothing any more.',
  joined: (label: string): string => `${label} has joined the unit.`,
  another: 'Make another code',
  done: 'Put the code away',
  next: 'Pair another tablet',
  here: 'No tablet reaches this address: it is this machine’s own. Start the server with --host 0.0.0.0 and --https (docs/server.md, “A secure address”).',
} as const;

export const DEVICES = {
  title: 'Devices',
  says: 'Every tablet that was ever paired.',
  none: 'No tablet has been paired yet.',
  inUnit: 'in the unit',
  out: (when: string): string => `taken out ${when}`,
  outTitle: (count: number): string => `Taken out (${count})`,
  paired: (when: string): string => `paired ${when}`,
  heard: (when: string): string => `last heard ${when}`,
  unheard: 'not heard since',
  clock: (seconds: number): string =>
    `its clock is ${Math.abs(seconds)} s ${seconds > 0 ? 'ahead of' : 'behind'} the server’s`,
  takeOut: (label: string): string => `Take out ${label} …`,
  ask: 'Take this device out of the unit',
  will: (label: string): string =>
    `${label} is taken out at once: the server takes nothing more from it and shows it nothing more. It is told so.`,
  keeps:
    'What it has not sent stays on it and is not lost: have it brought to you. Its entries in the journal stay. Paired again under its id, it goes on and sends the rest.',
  reason: 'Reason',
  reasonHint: 'It stands in the journal, which everybody of the unit can read. No names.',
  reasonMissing: 'type a reason, 300 characters at most.',
  act: {
    press: 'Take it out',
    busy: 'Taking it out …',
    failed: 'Not taken out',
    stays: 'That it was taken out, when and why stays in the journal for good.',
  },
  done: (label: string): string => `${label} is taken out.`,
} as const;

export const NOT_LEAD = {
  title: 'What your role may do',
  lead: 'Accounts, pairing tablets and taking them out are the lead’s. Ask them for what you need there.',
  waits: 'this account is not let in to them yet. The page says who can do that.',
  onDevice: 'What a tablet of your role records',
} as const;
