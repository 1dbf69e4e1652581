// What the guide is told, and what it asks of the shell. Events carry the time, because the guide has no clock; whoever
// pressed is an id of the staff list. Effects are plain data, done in their order.
import type { DeviationId, EarlyReason, QuestionId, Reply } from '../domain/guiding.ts';
import type { EmergencyId } from '../domain/emergencies.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Language } from '../words/index.ts';
import type { Found } from './continuation.ts';
import type { GuideEntry, Means } from './entries.ts';
import type { Known } from './known.ts';

/** What somebody does: a press without who and when. */
export type Press =
  /** The next screen of what is read, or of an emergency's card; on from what was read again. */
  | { readonly is: 'forward' }
  /** Answers to a line. `reason` where something is bare before an entry. */
  | { readonly is: 'seen'; readonly means?: Means; readonly reason?: string }
  | { readonly is: 'not-seen'; readonly reason?: string }
  /** A slip or circumstance of the plan, of this step or an earlier one. */
  | { readonly is: 'slip'; readonly event: string; readonly text?: string }
  | {
      readonly is: 'deviation';
      readonly category: DeviationId;
      readonly surfaces?: readonly string[];
      readonly text?: string;
    }
  | { readonly is: 'start-timer' }
  | { readonly is: 'go-early'; readonly reason: EarlyReason; readonly text?: string }
  | { readonly is: 'stop'; readonly text?: string }
  | { readonly is: 'resume' }
  | { readonly is: 'emergency'; readonly emergency: EmergencyId }
  | { readonly is: 'return' }
  | { readonly is: 'accept' }
  | { readonly is: 'decline'; readonly reason: string }
  | { readonly is: 'hand-over'; readonly to: string }
  /** By the receiver, who says which line was answered last. */
  | { readonly is: 'take-over'; readonly line: number | null }
  | { readonly is: 'keep' }
  | { readonly is: 'answer'; readonly question: QuestionId; readonly reply: Reply }
  | { readonly is: 'note'; readonly text: string }
  | { readonly is: 'leave' }
  | { readonly is: 'end' }
  | { readonly is: 'break-off'; readonly reason: string }
  | { readonly is: 'go-on' }
  | { readonly is: 'retry' };

/** What happens without a press. */
export type Happening =
  /** The clock moved on; timers that are due end. */
  | { readonly is: 'time' }
  | { readonly is: 'stored' | 'store-failed'; readonly entries: readonly string[] }
  /** The search's answer. */
  | { readonly is: 'continuation'; readonly search: string; readonly found: Found }
  /** The shell was away: what runs outside of the guide is to be started again. */
  | { readonly is: 'woke' };

/** Milliseconds since 1970 by the device's clock; `by` null where nobody pressed. */
export type Event = (Press | Happening) & { readonly at: number; readonly by: string | null };

export type Effect =
  | { readonly do: 'append'; readonly entries: readonly GuideEntry[] }
  /** Beside the large text, never in its place. `for` is a name in the procedure. */
  | { readonly do: 'speak'; readonly text: string; readonly language: Language; readonly for: string }
  /** Tell the guide the time when it is due. */
  | { readonly do: 'start-timer'; readonly timer: string; readonly due: number }
  | { readonly do: 'stop-timer'; readonly timer: string }
  | { readonly do: 'keep-awake'; readonly on: boolean }
  | {
      readonly do: 'search-continuation';
      readonly search: string;
      readonly procedure: Procedure;
      readonly doneSteps: number;
      readonly known: Known;
    }
  | {
      readonly do: 'sound' | 'vibrate';
      readonly what: 'time-up' | 'warning' | 'stop' | 'emergency' | 'refused';
    };
