// Which unit this device belongs to, as the server said when it joined. Kept beside the journal, which writes by the same
// device's id and for the same unit; without it the page never asks a server for anything.
import { type Role, ROLES } from '../../api/roles.ts';

const PAIRED = 'doffline-paired';
/** Where the journal's own part of the page keeps them (src/app/journal/device.ts). */
const DEVICE = 'doffline-device';
const UNIT = 'doffline-unit';

export interface Paired {
  readonly unit: { readonly id: string; readonly title: string };
  readonly device: string;
  readonly label: string;
  readonly role: string;
}

export function pairedAs(): Paired | undefined {
  try {
    const kept = window.localStorage.getItem(PAIRED);
    return kept === null ? undefined : (JSON.parse(kept) as Paired);
  } catch {
    return undefined;
  }
}

/** The role that the lead gave this device; undefined on a device alone, and where it is not known yet. */
export function roleHere(): Role | undefined {
  const role = pairedAs()?.role;
  return ROLES.find((one) => one === role);
}

const hearers = new Set<() => void>();

/** Told when the role has changed; another tab of this browser may have been told it. */
export function onRole(hear: () => void): () => void {
  hearers.add(hear);
  window.addEventListener('storage', hear);
  return () => {
    hearers.delete(hear);
    window.removeEventListener('storage', hear);
  };
}

/** As the server says it whenever it is asked: a device that was paired by an older page may not know it. */
export function keepRole({ device, role }: Pick<Paired, 'device' | 'role'>): void {
  const paired = pairedAs();
  if (!paired || paired.device !== device || paired.role === role) return;
  try {
    window.localStorage.setItem(PAIRED, JSON.stringify({ ...paired, role }));
  } catch {
    // It is told again at the next contact.
  }
  for (const hear of hearers) hear();
}

/** The page must be loaded anew after this: the journal's parts have read the old ids. Throws where nothing can be kept. */
export function keepPaired({ unit, device, label, role }: Paired): void {
  const { id, title } = unit;
  window.localStorage.setItem(DEVICE, device);
  window.localStorage.setItem(UNIT, JSON.stringify({ id, title }));
  window.localStorage.setItem(PAIRED, JSON.stringify({ unit: { id, title }, device, label, role }));
}
