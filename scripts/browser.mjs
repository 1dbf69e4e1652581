// Finds the browser of the browser tests, and fetches it from Debian's packages where that is possible unattended.
// The version that Playwright would download is not used: the tests must run where only packages can be had.
import { existsSync } from 'node:fs';
import { run } from './run.mjs';

const CHOSEN = process.env.DOFFLINE_CHROMIUM;
const CHROMIUM = CHOSEN ?? '/usr/bin/chromium';

const APT = { DEBIAN_FRONTEND: 'noninteractive' };

/** @returns {Promise<string | undefined>} why there is no browser; undefined when there is one */
export async function whyNoBrowser() {
  if (existsSync(CHROMIUM)) return undefined;
  if (CHOSEN !== undefined) return `DOFFLINE_CHROMIUM names ${CHROMIUM}, which does not exist`;
  const byHand = 'install Debian’s package chromium, or set DOFFLINE_CHROMIUM to a Chromium program';
  if (!existsSync('/usr/bin/apt-get')) return `${CHROMIUM} is missing and there is no apt-get: ${byHand}`;
  if (process.getuid?.() !== 0) return `${CHROMIUM} is missing and only root may install it: ${byHand}`;
  console.log('Installing Chromium from Debian’s packages ...');
  const update = await run('apt-get', ['update'], { env: APT, quiet: true });
  // A page without fonts measures nothing: a minimal Debian has none.
  const packages = ['chromium', 'fonts-liberation'];
  const install = await run('apt-get', ['install', '-y', '--no-install-recommends', ...packages], {
    env: APT,
    quiet: true,
    minutes: 10,
  });
  if (install.status === 0 && existsSync(CHROMIUM)) return undefined;
  return `Chromium could not be installed: ${(update.output + install.output).trim().split('\n').slice(-3).join(' | ')}`;
}
