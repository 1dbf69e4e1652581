// `npm start`: from a fresh clone to a running page. Installs what is missing, builds, serves on this machine only.
// The port is PORT or 4173, or the next free one.
import { pathToFileURL } from 'node:url';
import { buildApp } from './build.mjs';
import { bundle } from './bundle.mjs';
import { ensureInstalled } from './install.mjs';

try {
  ensureInstalled();
  console.error('Building the page ...');
  await buildApp();
  await bundle('typeset');
  const server = await bundle('server');
  await import(pathToFileURL(server).href);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
