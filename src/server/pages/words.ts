// Every sentence of the two pages that the server writes itself: about its address, and how a tablet comes to trust it. In
// simple English. The tablets' menus are from memory, and differ between versions: the page says so.

export const ADDRESS_WORDS = {
  title: 'About this address',
  secure: 'This address is secure. The page can be kept on the tablet, keep the screen on, and be installed.',
  insecure: 'This address is not secure. What does not work here:',
  lost: [
    'No offline use: without the network the page does not open. Keep it open during an exit.',
    'The screen does not stay on by itself: set the tablet to stay on.',
    'The page cannot be installed on the tablet.',
    'Others on the network can read what is sent, passwords too. Use a secure address for real work.',
  ],
  works: 'What works: the record of an exit is kept on the tablet, and sent when the server can be reached.',
  mend: 'What to do: trust the unit’s server on this tablet, then use its secure address.',
  mendByStart: 'What to do: ask whoever runs the server for a secure address (docs/server.md tells how).',
  open: 'Open Doffline',
} as const;

export const TRUST_WORDS = {
  title: 'Trust the unit’s server on this tablet',
  why: 'The server has a certificate of the unit’s own. A tablet must be told once that it may trust it. This page gives nothing else.',
  compare: 'Compare these letters with those on the server’s screen. If one differs, stop and ask.',
  scan: 'To bring this page to a tablet, point its camera here:',
  fetch: 'Fetch the certificate',
  steps: 'Then, on the tablet (menus differ between versions):',
  platforms: [
    {
      name: 'iPadOS',
      steps: [
        'Settings, Profile Downloaded, Install.',
        'Settings, General, About, Certificate Trust Settings: switch the certificate on. Without this it is not trusted.',
      ],
    },
    {
      name: 'Android',
      steps: [
        'Settings, Security, More, Install a certificate, CA certificate: choose the file that was fetched.',
      ],
    },
  ],
  last: 'Last, open the secure address:',
  bounds:
    'This certificate can vouch for the unit’s own names and for private addresses only, for no other site.',
} as const;
