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
