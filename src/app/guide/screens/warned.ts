// What speaks against beginning as it is filled in: steps that need an assistant while none is named, a wearer who stands in an exit
// that has not ended, and what the version accepts in writing past its day of review. Pure: staff, exits, today and words come in.
import { assistedSteps, type Occasion } from '../../../guide/index.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { overdueIn } from '../../../versions/sending.ts';
import type { StaffState } from '../../../versions/staff.ts';
import type { Words } from '../../../words/index.ts';
import { roomName } from '../../logbook/model.ts';
import { momentText } from '../../parts/moment.ts';
import { type ExitHead, openExits } from '../log/exits.ts';
import { WARNINGS } from './labels.ts';

type Known = NonNullable<Occasion['knowingly']>[number];

export interface Warned {
  readonly warned: Known['warned'];
  readonly says: string;
  /** As it is recorded by whoever begins all the same. */
  readonly note: string;
  /** The other exit. */
  readonly exit?: string;
  /** Language of what is said, where it is not the page's. */
  readonly language?: string;
}

interface Asked {
  readonly wearer: string;
  readonly assistant: string;
  readonly procedure: Procedure | undefined;
  readonly staff: StaffState;
  readonly exits: readonly ExitHead[];
  readonly today: string;
  readonly words: Pick<Words, 'guide' | 'compare' | 'language'>;
}

function assistantLacks({ assistant, procedure }: Asked): readonly Warned[] {
  const steps = procedure && assistant.trim() === '' ? assistedSteps(procedure) : [];
  const numbers = steps.map((step) => step + 1).join(', ');
  return steps.length === 0
    ? []
    : [
        {
          warned: 'no-assistant',
          says: WARNINGS.noAssistant(numbers),
          note: WARNINGS.notes.noAssistant(numbers),
        },
      ];
}

function wearerElsewhere({ wearer, staff, exits }: Asked): readonly Warned[] {
  const initials = wearer.trim().toLocaleUpperCase();
  const same = Object.values(staff).filter((member) => member.initials === initials);
  const heads = openExits(Object.fromEntries(exits.map((head) => [head.exit, head])));
  return heads
    .filter((head) => same.some(({ person }) => person === head.wearer))
    .map(({ exit, at, room }) => ({
      warned: 'wearer-in-another',
      says: WARNINGS.inAnother(initials, momentText(at), roomName(room)),
      note: WARNINGS.notes.inAnother(exit),
      exit,
    }));
}

/** Each once, the longest overdue first. The exit begins all the same: in a night nobody is there to accept it anew. */
function overdueDepartures({ procedure, today, words }: Asked): readonly Warned[] {
  const { says, note } = words.guide.labels.overdue;
  const found = new Map<string, Warned>();
  for (const one of procedure ? overdueIn(procedure.accepted, today) : []) {
    const what = words.compare.departure(procedure!, one);
    const warned: Warned = {
      warned: 'departure-overdue',
      says: says(what, one.review),
      note: note(what, one.review),
      language: words.language,
    };
    found.set(warned.note, warned);
  }
  return [...found.values()];
}

export const warningsOf = (asked: Asked): readonly Warned[] => [
  ...assistantLacks(asked),
  ...wearerElsewhere(asked),
  ...overdueDepartures(asked),
];
