// The id by which this browser writes in the journal, where it has one yet.

export function deviceNow(): string | null {
  try {
    return window.localStorage.getItem('doffline-device');
  } catch {
    return null;
  }
}
