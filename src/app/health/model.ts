// For whom the page of health records opens, and what it says where the server does not let them on. Nothing of a record is in
// any of these sentences.
import type { AnswerOf, BodyOf } from '../../api/routes.ts';
import type { House } from '../door/model.ts';

export type HealthReading = BodyOf<'read-health-records'>;
export type HealthRecords = AnswerOf<'read-health-records'>['records'];
export type HealthAccounts = AnswerOf<'list-health-accounts'>;
export type HealthAccount = HealthAccounts['accounts'][number];
export type Letting = HealthAccounts['lettings'][number];
export type Reading = AnswerOf<'list-health-readings'>['readings'][number];

const KEY = 'Health records can be neither read nor written until then; everything else works.';

export const HEALTH_HOUSE: House = {
  stands: ({ role, firstPassword, health }) => {
    if (role !== 'occupational-health') return 'other';
    if (firstPassword) return 'first';
    return health === 'in' ? 'in' : 'other';
  },
  lost: 'The server does not answer. This page needs it: health records lie there and nowhere on this device. Nothing was shown.',
  says: {
    'not-found':
      'No unit’s server answers at this address. This page needs it: health records lie there and nowhere else.',
    'not-waiting':
      'This account does not wait any more, or the lead changed it since this list was loaded. Load the list again, and ask the person again.',
    'still-first-password':
      'This account still has the password that the lead gave. Its owner must sign in and choose an own one first.',
    'health-key-missing': `The server has no key for health records: it was started without DOFFLINE_HEALTH_KEY. Tell its administrator. ${KEY}`,
    'health-key-unknown':
      'A record was sealed with a key that the server does not hold any more. Tell its administrator to add the older key to DOFFLINE_HEALTH_KEY.',
    malformed: 'Something in this record cannot be kept: a character is broken. Type it anew.',
    'too-large': 'This is longer than the server keeps in one record. Write it as two.',
  },
};
