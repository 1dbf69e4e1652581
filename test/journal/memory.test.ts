// The plainest store, held to the contract.
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { journalContract } from './contract.ts';

journalContract(
  'memory',
  async () => {
    const store = memoryStore();
    return Promise.resolve({
      open: async () => Promise.resolve(store),
      remove: async () => Promise.resolve(),
    });
  },
  false,
);
