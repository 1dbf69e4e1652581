// What the unit's page says before anybody is in: whether there is a unit, how it is made, who may come.
export const UNIT = {
  title: 'The unit’s server',
  link: 'Unit’s server',
  forWhom: 'Its beginning, who may sign in, and which tablets belong to it.',
  kept: 'Only the unit’s server keeps what stands here, and this page works only while it answers. No password is kept in the browser by this page.',
  signedInAs: (name: string, role: string, unit: string): string =>
    `Signed in as ${name}, ${role}, at ${unit}.`,
  lost: 'The unit’s server does not answer. What you typed stays. See whether this device is in the unit’s network and whether the server runs (./doffline serve starts it; npm start serves this page without one). Then ask again.',
  none: 'No unit’s server answers at this address. Open this page at the address that ./doffline serve showed in its terminal.',
  unsure:
    'The server did not answer, so it is not known whether this was done. What you typed stays. See whether the server runs and whether this device is in its network, load the lists again, and only then try once more.',
  noCode:
    'There is no unit yet, and this server has no code for its first lead. Start the server again: its terminal shows one.',
} as const;

export const SETUP = {
  title: 'Create the unit',
  says: 'There is no unit yet on this server. Whoever can read the server’s terminal makes it, once, with the code that stands there.',
  again: 'Another lead, by the server’s code',
  againSays: (unit: string): string =>
    `The server was started with a code for another lead of ${unit}. Whoever has an account signs in instead.`,
  known: (unit: string): string =>
    `The journal on this server is that of unit ${unit}, and nobody has an account there. The code makes its lead.`,
  code: 'Code that the server showed',
  codeHint: 'It stands in the server’s terminal, behind “setup=”.',
  codeRead: 'Read from the address, and taken out of the address bar.',
  own: 'Our unit',
  lead: 'Its lead',
  unitTitle: 'Name of the unit',
  unitHint: 'As it stands above lists and on papers.',
  id: 'Short name',
  idHint: 'In the journal, for good: small letters, digits and hyphens.',
  name: 'Your name',
  nameHint: 'You sign in with it. It stays on the server and is in no journal.',
  password: 'Your password',
  repeat: 'Your password once more',
  press: 'Create the unit',
  pressLead: 'Make me a lead',
  there: 'The unit is there already: somebody made it, or you did and the answer was lost. Sign in.',
} as const;

export const DEMO = {
  title: 'Only to try it out',
  says: 'One press makes the invented unit Larkmoor, with somebody of each role. Nobody and nothing in it exists, and it never becomes a real unit: for that, start the server with another data folder.',
  press: 'Make the invented unit',
  made: 'The invented unit is made',
  people:
    'Everything in it is invented, these people too. Their passwords are shown this once: write them down before you go on.',
  list: 'Invented people',
  columns: ['Name', 'Role', 'Password'],
  go: 'Go on as the lead',
} as const;

export const WRONG = {
  code: 'Type the code that stands in the server’s terminal.',
  empty: (what: string): string => `Type ${what}.`,
  long: (most: number): string =>
    `Shorter: ${most} characters at most, without line breaks or unusual characters.`,
  id: 'Small letters, digits and single hyphens, 40 characters at most; a letter or digit at each end.',
  password: 'Not yet: take one that keeps to what stands below.',
  repeat: 'The two passwords differ. Type the same twice.',
} as const;
