// What is accepted in writing, as far as a language needs it to say something of it: the same for every language.
import type { Finding, FindingCode } from '../check/finding.ts';
import type { AcceptedPlace } from './compare.ts';
import { oneOf } from './given.ts';
import type { Setting } from './setting.ts';
import type { Explained } from './words.ts';

/** The finding that was accepted, as far as its place is known: enough for its heading. A code of no such finding is its own. */
export function foundAt(setting: Setting, { finding, step, surface }: AcceptedPlace): Finding {
  const at = setting.steps.findIndex(({ id }) => id === step);
  const [person] = (surface ?? '').split('.');
  return {
    code: finding as FindingCode,
    kind: finding.startsWith('coverage.') ? 'coverage' : 'practice',
    severity: 'note',
    steps: at < 0 ? [] : [at],
    ...(surface === undefined ? {} : { surface }),
    surfaces: surface === undefined ? [] : [surface],
    params: person ? { person } : {},
    events: [],
    route: [],
    mends: [],
    evidence: [],
  };
}

/** What is wrong with an acceptance. */
const WRONGS = ['unmatched', 'void', 'overdue'] as const;
type AcceptanceWrong = (typeof WRONGS)[number];

export interface AcceptanceTold {
  /** Heading of what it accepts. */
  readonly what: string;
  /** The step that it is for, as the language refers to one; empty where it names none. */
  readonly where: string;
  readonly by: string;
  readonly date: string;
  readonly review: string;
  /** Its place in the list of what is accepted, from 1. */
  readonly entry: string;
}

export type AcceptanceTable = Readonly<Record<AcceptanceWrong, (told: AcceptanceTold) => Explained>>;

/** How a finding about an acceptance is told; `titleOf` and `stepAt` are the language's own. */
export function acceptanceSaid(
  table: AcceptanceTable,
  setting: Setting,
  { code, params, steps: [at] }: Finding,
  titleOf: (finding: Finding) => string,
  stepAt: (index: number) => string,
): Explained {
  const { finding = '', step, surface, by = '', date = '', review = '', entry = '' } = params;
  const place = { finding, ...(step ? { step } : {}), ...(surface ? { surface } : {}) };
  const wrong = oneOf(WRONGS, code.slice(code.indexOf('.') + 1)) ?? 'unmatched';
  return table[wrong]({
    what: titleOf(foundAt(setting, place)),
    where: at === undefined ? '' : stepAt(at),
    by,
    date,
    review,
    entry,
  });
}
