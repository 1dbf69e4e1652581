// Finds the browser of the browser tests, and fetches it from Debian's packages where that is possible unattended.
// The version that Playwright would download is not used: the tests must run where only packages can be had.
import { existsSync } from 'node:fs';
import { chromiumPath, PACKAGES } from './chromium.mjs';
import { run } from './run.mjs';

const APT = { DEBIAN_FRONTEND: 'noninteractive' };

/** Installs the first of the packages that can be had: not every Debian has the headless shell. */
async function install() {
  console.log('Installing Chromium from Debian’s packages ...');
  let output = (await run('apt-get', ['update'], { env: APT, quiet: true })).output;
  for (const [name, program] of PACKAGES) {
    // A page without fonts measures nothing: a minimal Debian has none.
    const packages = ['install', '-y', '--no-install-recommends', name, 'fonts-liberation'];
    const done = await run('apt-get', packages, { env: APT, quiet: true, minutes: 10 });
    if (done.status === 0 && existsSync(program)) return undefined;
    output += done.output;
  }
  return `Chromium could not be installed: ${output.trim().split('\n').slice(-3).join(' | ')}`;
}

/** @returns {Promise<string | undefined>} why there is no browser; undefined when there is one */
export async function whyNoBrowser() {
  const program = chromiumPath();
  const chosen = process.env.DOFFLINE_CHROMIUM;
  if (chosen !== undefined)
    return existsSync(chosen) ? undefined : `DOFFLINE_CHROMIUM names ${chosen}, which does not exist`;
  // On a machine of continuous integration the better one is fetched even where the other is there: it pays for itself.
  const isWanted = process.env.CI === 'true' && program !== PACKAGES[0][1];
  const isThere = existsSync(program);
  if (isThere && !isWanted) return undefined;
  const why = whyNotFetched() ?? (await install());
  return isThere ? undefined : why;
}

/** @returns {string | undefined} */
function whyNotFetched() {
  const byHand = 'install Debian’s package chromium, or set DOFFLINE_CHROMIUM to a Chromium program';
  if (!existsSync('/usr/bin/apt-get')) return `there is no Chromium and no apt-get: ${byHand}`;
  if (process.getuid?.() !== 0) return `there is no Chromium and only root may install it: ${byHand}`;
  return undefined;
}
