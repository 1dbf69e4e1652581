// Departures from published practice as findings: an error until the unit accepts it in writing, then a note.
import type { Compiled } from '../contacts/interpret.ts';
import { departures } from '../practice/index.ts';
import { acceptanceFor } from './acceptance.ts';
import type { Finding } from './finding.ts';

export function practice(compiled: Compiled): readonly Finding[] {
  const { steps, accepted } = compiled.procedure;
  return departures(compiled).map((departure): Finding => {
    const acceptance = acceptanceFor(accepted, departure.rule, steps[departure.step]?.id);
    return {
      code: departure.rule,
      kind: 'practice',
      severity: acceptance ? 'note' : 'error',
      steps: [departure.step, ...(departure.others ?? [])],
      surfaces: [],
      params: departure.params,
      events: [],
      route: [],
      mends: [],
      evidence: [departure.rule],
      ...(acceptance ? { accepted: acceptance } : {}),
    };
  });
}
