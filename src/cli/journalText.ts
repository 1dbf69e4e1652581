// What the journal's commands say, in plain English.
import type { Audit } from '../journal/audit.ts';
import type { Flaw, FlawCode } from '../journal/verify.ts';
import { printable, wrapped } from './io.ts';

/** What is wrong, as the end of a sentence that begins with the entry. */
const WRONG: Readonly<Record<FlawCode, string>> = {
  missing: 'is missing, and perhaps more after it',
  'out-of-order': 'stands in the wrong place, or twice',
  altered: 'was altered: its content has another hash than the one it was stored with',
  unreadable: 'cannot be read',
  mislabelled: 'is filed under another device or number than it says itself',
  'link-altered': 'has another hash in the unit’s chain than its place, its predecessor and its content make',
  'link-broken': 'names another predecessor in the unit’s chain than the entry before it',
  'device-missing': 'is missing in its device’s chain, and perhaps more after it',
  'device-repeated': 'comes again in its device’s chain, or out of order',
  'device-broken': 'names another predecessor than its device’s entry before it',
  'other-unit': 'belongs to another unit than the first entry',
  'body-wrong': 'has a body that its kind does not allow',
  'end-missing': 'is missing at the end, and perhaps more after it',
  'end-unnoted': 'is the last, but the journal’s note of its end says otherwise',
  'other-chain': 'is not the one that was asked for: the chain was written anew, or is another journal’s',
};

const nameOf = ({ unitNumber, device, number }: Flaw): string =>
  device === ''
    ? `Entry ${unitNumber}`
    : `Entry ${unitNumber} (device ${printable(device)}, its number ${number})`;

export const flawSentence = (flaw: Flaw): string =>
  `${nameOf(flaw)} ${WRONG[flaw.code]}. Found: ${printable(flaw.found)}. It should be: ${printable(flaw.expected)}.`;

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

const KEEP =
  'Write number and hash down apart from the journal: with --expect a later verify then also finds a journal that was written anew as a whole, or cut off at its end.';

const VERIFIED =
  'No altered, missing or moved entry was found. That says nothing of whether what was written is true.';

export function auditText(place: string, { entries, devices, head, ...found }: Audit): string {
  const { flaws, more, damage, falseSnapshots } = found;
  const wrong = [
    ...flaws.map(flawSentence),
    ...(more > 0 ? [`And ${more} more.`] : []),
    ...damage.map((one) => `The database: ${printable(one)}`),
    ...falseSnapshots.map(
      (view) =>
        `The snapshot of the view "${view}" is not what the entries make. The view may show what is not so.`,
    ),
  ];
  const size = `${counted(entries, 'entry', 'entries')} by ${counted(devices, 'device', 'devices')}`;
  return [
    `${printable(place)}: ${size}.`,
    ...(wrong.length > 0 ? wrong : [VERIFIED]).map((line) => wrapped(line)),
    `It ends at ${head.number}:${head.hash}`,
    ...(wrong.length > 0 || entries === 0 ? [] : [wrapped(KEEP)]),
    '',
  ].join('\n');
}

export const isSound = ({ flaws, damage, falseSnapshots }: Audit): boolean =>
  flaws.length + damage.length + falseSnapshots.length === 0;

interface KeptRecords {
  /** When the backup was begun, by the clock of the machine that made it. */
  readonly madeAt: string;
}

type In = 'folder' | 'database';

const lines = (texts: readonly string[]): string => texts.map((text) => `${wrapped(text)}\n`).join('');

const OF_DATABASE =
  'The server’s records (accounts, devices) are not in this file: they are in the database, and in the hospital’s own backup of it.';
const HASHES =
  'The server’s records are in it too: accounts, devices, passwords as hashes; no session and no pairing code. Only the owner of the file may read it: keep it so.';

/** What a backup holds besides the journal. */
export function keptText(from: In, kept: KeptRecords | undefined): string {
  if (kept) return lines([HASHES]);
  return lines([from === 'database' ? OF_DATABASE : 'There are no server’s records beside this journal.']);
}

/** Why a backup was not put in place, and how to go on. */
export function thereText(there: readonly string[], hasRecords: boolean): string {
  const names = there.map(printable).join(' and ');
  const kept = hasRecords
    ? 'put aside under another name, and the backup’s journal and records take the place of both'
    : 'put aside under another name; this backup holds no server’s records, so those that are there stay';
  return lines([
    `error: There is a journal or a unit’s records already: ${names}. Nothing was changed: a backup is never mixed with what is newer.`,
    `To go on: stop the server; restore into an empty folder with --data to look at it; or, with --force, what is there is ${kept}.`,
  ]);
}

/** What is so after a restore, and what somebody must now do. */
export function restoredText(
  into: In,
  kept: KeptRecords | undefined,
  { aside, takenOut }: { readonly aside: readonly string[]; readonly takenOut: number | undefined },
): string {
  const records =
    takenOut === undefined || !kept
      ? [
          into === 'database'
            ? 'The server’s records were not restored: a database’s are in the hospital’s own backup of it.'
            : 'This backup holds no server’s records.',
        ]
      : [
          `The server’s records of ${kept.madeAt} are back. Everybody signs in again, and open pairing codes are void. Devices that were taken out since, as far as the journal or the records put aside tell: ${takenOut}. They stay out.`,
          'What was changed after the backup and is written nowhere else is as it was then: a device taken out, an account closed, a role, a password. Let the lead look through devices and accounts before anybody works on.',
        ];
  return lines([
    ...records,
    ...aside.map((name) => `What was there is kept as ${printable(name)}`),
    'Start the server again.',
  ]);
}
