// Which unit this device belongs to, as the server said when it joined. Kept beside the journal, which writes by the same
// device's id and for the same unit; without it the page never asks a server for anything.

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

/** The page must be loaded anew after this: the journal's parts have read the old ids. Throws where nothing can be kept. */
export function keepPaired({ unit, device, label, role }: Paired): void {
  const { id, title } = unit;
  window.localStorage.setItem(DEVICE, device);
  window.localStorage.setItem(UNIT, JSON.stringify({ id, title }));
  window.localStorage.setItem(PAIRED, JSON.stringify({ unit: { id, title }, device, label, role }));
}
