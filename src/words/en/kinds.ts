// What kinds of finding there are, how grave they are, and why the end of a route matters: English labels.
import type { FindingKind, Severity } from '../../check/finding.ts';
import type { SurfaceClass } from '../../contacts/plan.ts';

export const KIND_TITLES: Readonly<Record<FindingKind, string>> = {
  impossible: 'Cannot be done',
  open: 'Open route',
  accepted: 'Contaminated by design',
  'one-slip': 'One slip away',
  practice: 'Departs from published practice',
  variant: 'Worse if left out or moved',
  coverage: 'Left bare, open or on',
  acceptance: 'Acceptance to look at again',
};

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = { error: 'error', note: 'note' };

/** Why an end of a route matters. */
export const WHY: Readonly<Record<SurfaceClass, string>> = {
  mucosa: 'Mucosa is where an agent gets in most easily.',
  skin: 'Bare skin carries contamination to eyes, nose and mouth, and may have small wounds.',
  clothes: 'These clothes are kept on, and are touched with bare hands later.',
  shoes: 'These shoes walk out of the unit.',
  'clean-side': 'Others use the clean side without protection.',
  equipment: 'What is still worn passes contamination on to whatever it touches next.',
  fixture: 'Whoever uses it next may be contaminated by it.',
};
