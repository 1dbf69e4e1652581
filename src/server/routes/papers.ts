// Papers over the wire: which there are, and one of them, set of the text that was sent. Nothing is kept and nothing recorded: who
// may read the unit's procedures may print them.
import { PAPER_KINDS, PAPER_LANGUAGES, PAPER_SIZES } from '../../api/shapes/papers.ts';
import type { Handlers } from '../context.ts';

/** What is offered, wherever papers are set. */
export const OFFER = { kinds: [...PAPER_KINDS], sizes: [...PAPER_SIZES], languages: [...PAPER_LANGUAGES] };

export const paperRoutes: Pick<Handlers, 'read-papers' | 'set-paper'> = {
  'read-papers': ({ context }) => {
    context.papers.ready();
    return Promise.resolve(OFFER);
  },

  'set-paper': async ({ context, who, body, gone }) => {
    if (who.is !== 'nobody')
      await context.limits.papers.count(who.is === 'person' ? who.account.id : who.device.id);
    return context.papers.set(body, gone);
  },
};
