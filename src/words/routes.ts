// A route put together in the order of the procedure: a sentence for each contact, and one for each cleaning that failed
// on the way. What the sentences are is each language's own.
import type { Finding, RouteLink } from '../check/finding.ts';
import { readEvent } from './events.ts';
import type { RouteSentence, Setting } from './words.ts';

export interface RouteSayer {
  readonly link: (setting: Setting, link: RouteLink) => string;
  /** A slip of the combination that no contact needs: a cleaning that failed, a hole that was not seen. */
  readonly failure: (setting: Setting, key: string, step: number) => string;
}

/** The sentences of a route in the order of the procedure. */
export function routeSentences(
  say: RouteSayer,
  setting: Setting,
  { route, events }: Pick<Finding, 'route' | 'events'>,
): readonly RouteSentence[] {
  const told = new Set(route.flatMap((link) => link.events));
  const links = route.map((link): RouteSentence => ({ ...link, text: say.link(setting, link) }));
  const failures = events
    .filter((key) => !told.has(key))
    .map((key): RouteSentence => {
      const step = readEvent(setting, key)?.index ?? -1;
      return { text: say.failure(setting, key, step), step, events: [key] };
    });
  return [...links, ...failures].sort((a, b) => a.step - b.step);
}
