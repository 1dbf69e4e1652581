// What speaks against beginning as it is filled in: steps that need an assistant while none is named, and a wearer who stands in an
// exit that has not ended. Pure: staff and exits come in.
import { assistedSteps, type Occasion } from '../../../guide/index.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import type { StaffState } from '../../../versions/staff.ts';
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
}

interface Asked {
  readonly wearer: string;
  readonly assistant: string;
  readonly procedure: Procedure | undefined;
  readonly staff: StaffState;
  readonly exits: readonly ExitHead[];
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

export const warningsOf = (asked: Asked): readonly Warned[] => [
  ...assistantLacks(asked),
  ...wearerElsewhere(asked),
];
