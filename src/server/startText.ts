// What the terminal shows when the server has started: where it is, who may come, and what is missing. The setup code, the
// demonstration's passwords and the fingerprint stand here and nowhere else.
import { renderUnicodeCompact } from 'uqr';
import type { Person } from './setup.ts';

export interface Started {
  readonly address: string;
  readonly place: string;
  /** Whether others on the network can reach it. */
  readonly open: boolean;
  readonly secure: boolean;
  readonly setupCode: string | undefined;
  readonly people: readonly Person[];
  readonly hasHealthKey: boolean;
  readonly trust: { readonly address: string; readonly fingerprint: string } | undefined;
  readonly behindProxy: boolean;
}

const HEALTH =
  'Health records of staff cannot be kept: DOFFLINE_HEALTH_KEY is not set (docs/server.md tells how to make one).';

const INSECURE = [
  'This address is not secure: no offline use, the screen does not stay on, no installation, and others on the network can',
  'read passwords. Start with --https, or with the hospital’s certificate (--cert, --key), or behind its proxy.',
];

const reachText = ({ address, open, behindProxy, place }: Started): readonly string[] => [
  `Doffline serves the unit at ${address}/${open || behindProxy ? '' : ' (this machine only; --host 0.0.0.0 opens it to the network)'}`,
  `Its data is in ${place}. Stop it with Ctrl+C.`,
];

const setupText = ({ setupCode, address }: Started): readonly string[] =>
  setupCode === undefined
    ? []
    : [
        '',
        `There is no lead yet. Create the unit at ${address}/unit#setup=${setupCode}`,
        `or give this code there: ${setupCode}`,
      ];

const peopleText = (people: readonly Person[]): readonly string[] =>
  people.length === 0
    ? []
    : [
        '',
        'The unit is invented, and so are these people. Their passwords are shown this once:',
        ...people.map(({ name, role, password }) => `  ${name.padEnd(20)} ${password}   (${role})`),
      ];

const trustText = ({ trust }: Started): readonly string[] =>
  trust === undefined
    ? []
    : [
        '',
        `Tablets learn to trust this server at ${trust.address}/`,
        renderUnicodeCompact(`${trust.address}/`, { border: 2 }),
        'Compare there the certificate’s fingerprint (SHA-256):',
        `  ${trust.fingerprint}`,
      ];

export function startText(started: Started): string {
  const { open, secure, people, hasHealthKey, behindProxy } = started;
  return [
    ...reachText(started),
    ...(open && !secure && !behindProxy ? ['', ...INSECURE] : []),
    ...setupText(started),
    ...peopleText(people),
    ...trustText(started),
    ...(hasHealthKey ? [] : ['', HEALTH]),
    '',
  ].join('\n');
}
