// Which Chromium the browser tests and benches drive. Debian's headless shell is the same engine without windows, menus and
// their processes, and takes a third less of the processor; the whole browser serves where the shell is not installed.
import { existsSync } from 'node:fs';

/** Debian's packages and their programs, the better first. */
export const PACKAGES = /** @type {const} */ ([
  ['chromium-headless-shell', '/usr/bin/chromium-headless-shell'],
  ['chromium', '/usr/bin/chromium'],
]);

/** The one chosen by hand, the first that is installed, or where it would be. */
export function chromiumPath() {
  const installed = PACKAGES.map(([, program]) => program).find(existsSync);
  return process.env.DOFFLINE_CHROMIUM ?? installed ?? PACKAGES[0][1];
}
