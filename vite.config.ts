// The page: sources in src/app, result in dist/app. Nothing is inlined into the HTML or as data: addresses, because
// the server's content security policy allows only files of its own.
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import packageJson from './package.json' with { type: 'json' };
import { offline } from './scripts/offline.mjs';

export default defineConfig({
  root: fileURLToPath(new URL('src/app', import.meta.url)),
  plugins: [react(), offline(packageJson.version)],
  worker: { format: 'es' },
  build: {
    outDir: fileURLToPath(new URL('dist/app', import.meta.url)),
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: true,
    // One page with an accessible component library, loaded once and kept offline.
    chunkSizeWarningLimit: 3000,
    // How long plugins took on a busy machine is no warning to whoever starts the program.
    rolldownOptions: { checks: { bundlerTimings: false } },
  },
  server: { host: '127.0.0.1' },
});
