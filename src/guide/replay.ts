// An exit rebuilt from what was recorded of it: after a crash, on another device, or to look at it again. What is shown is
// all that was recorded; what is volatile (entries on their way, a running search, a hand-over not taken, the place on
// an emergency's card) begins anew.
import { settled } from './begin.ts';
import type { GuideEntry } from './entries.ts';
import { evolve, startCore } from './evolve.ts';
import type { Script } from './script.ts';
import type { State } from './state.ts';

type Recorded = Pick<GuideEntry, 'kind' | 'body' | 'at' | 'by'>;

/**
 * `script` is the one that it began with: made from the text that the first entry names, for the same unit settings.
 * Throws where the entries do not begin an exit of this text.
 */
export function replay(script: Script, entries: readonly Recorded[], approved = false): State {
  const [first, ...rest] = entries as readonly GuideEntry[];
  if (first?.kind !== 'exit.started') throw new Error('an exit begins with its beginning');
  if (first.body.content !== script.setup.identity.content) throw new Error('the exit was of another text');
  const core = rest.reduce(evolve, startCore(script, first.body));
  const visit = entries.flatMap((entry) => ('visit' in entry.body ? [entry.body.visit] : []));
  return settled(core, { visit: visit[0] ?? core.exit, approved });
}
