// What is wrong with an entry of the journal, in plain English.
import type { Flaw, FlawCode } from '../../journal/verify.ts';

const WRONG: Readonly<Record<FlawCode, string>> = {
  missing: 'is missing, and perhaps more behind it',
  'out-of-order': 'stands in the wrong place, or twice',
  altered: 'was altered after it was stored',
  unreadable: 'cannot be read',
  mislabelled: 'is filed under another device or number than it says',
  'link-altered': 'has another hash in the unit’s chain than it should',
  'link-broken': 'does not follow on the entry before it',
  'device-missing': 'is missing in its device’s own chain',
  'device-repeated': 'comes twice in its device’s own chain',
  'device-broken': 'does not follow on its device’s entry before it',
  'other-unit': 'belongs to another unit',
  'body-wrong': 'says something that an entry of its kind cannot say',
  'end-missing': 'is missing at the end, and perhaps more behind it',
  'end-unnoted': 'is the last, but the journal’s note of its end says otherwise',
  'other-chain': 'is not the one that was expected',
};

export const flawText = ({ code, unitNumber, device }: Flaw): string =>
  `Entry ${unitNumber}${device === '' ? '' : ` (device ${device})`} ${WRONG[code]}.`;
