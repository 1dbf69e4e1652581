// What this browser can do at this address, and why not where it cannot. Browsers keep offline use, the wake lock and
// installation from pages that came over a plain connection; the page says so instead of failing in the anteroom.

export const ABILITIES = ['offline', 'wake-lock', 'installation'] as const;
export type Ability = (typeof ABILITIES)[number];

/** `insecure`: the address is not https. `browser`: this browser has it nowhere. */
export type Missing = 'insecure' | 'browser';

export interface World {
  readonly secure: boolean;
  readonly serviceWorker: boolean;
  readonly wakeLock: boolean;
}

/** Of the page that runs. */
export const thisWorld = (): World => ({
  secure: window.isSecureContext,
  serviceWorker: 'serviceWorker' in navigator,
  wakeLock: 'wakeLock' in navigator,
});

/** Why an ability is missing; undefined where it is there. Installation rests on offline use. */
export function missing(ability: Ability, { secure, serviceWorker, wakeLock }: World): Missing | undefined {
  if (!secure) return 'insecure';
  return (ability === 'wake-lock' ? wakeLock : serviceWorker) ? undefined : 'browser';
}
