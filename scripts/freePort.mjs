// A port nobody uses, for programs that tests start: two checkouts can be tested at once.
import { createServer } from 'node:net';

/** @returns {Promise<number>} a port of this machine alone that was free a moment ago */
export const freePort = () =>
  new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
