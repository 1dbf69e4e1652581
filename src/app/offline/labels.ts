// What the page says about offline use, versions and what does not work at this address.
import type { Ability, Missing } from './support.ts';
import type { Kept } from './version.ts';

export const ABILITY: Readonly<Record<Ability, string>> = {
  offline: 'Works without a network',
  'wake-lock': 'Keeps the screen awake during an exit',
  installation: 'Can be installed like a program',
};

export const MISSING: Readonly<Record<Missing, string>> = {
  insecure: 'no: this address is not https',
  browser: 'no: this browser cannot',
};

export const KEPT: Readonly<Record<Kept, string>> = {
  unavailable: 'This page needs its server each time it is opened.',
  fetching: 'The page is being kept on this device. Wait before you go where there is no network.',
  ready: 'The whole page is kept on this device. It opens and works without a network.',
  failed: 'The page could not be kept on this device. Reload it while the server is in reach.',
};

export const INSECURE =
  'This address is not https, so the browser does not let the page work without a network, keep the screen awake, or be installed.';

/** The server's own page about its address (src/server/pages/address.ts). */
export const SECURE_ADDRESS = { at: '/address', says: 'How to open it by https' } as const;

export const NEWER = {
  says: 'A newer version is here.',
  load: 'Load it',
  held: 'An exit is under way on this device. Load the newer version when it has ended.',
} as const;

/** The browser's promise not to throw away what is kept when room is short. */
export const LASTING = {
  asking: 'The browser has not answered yet.',
  yes: 'The browser has promised to keep what is recorded here, even when room is short.',
  no: 'The browser has not promised to keep what is recorded here when room is short. Installing the page, or using it often, may change that. Send entries to the unit’s server soon.',
  unknown: 'This browser cannot be asked to keep what is recorded here when room is short.',
  ask: 'Ask again',
} as const;
