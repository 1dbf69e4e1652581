// Fetches the programs that read PDF files back (Debian's poppler-utils) where that is possible unattended. Without them the
// tests of the papers say so and check less.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { run } from './run.mjs';

const APT = { DEBIAN_FRONTEND: 'noninteractive' };

export async function fetchPdfTools() {
  if (spawnSync('pdftotext', ['-v']).status === 0) return;
  if (!existsSync('/usr/bin/apt-get') || process.getuid?.() !== 0) return;
  console.log('Installing poppler-utils from Debian’s packages ...');
  await run('apt-get', ['update'], { env: APT, quiet: true });
  const install = ['install', '-y', '--no-install-recommends', 'poppler-utils'];
  await run('apt-get', install, { env: APT, quiet: true, minutes: 5 });
}
