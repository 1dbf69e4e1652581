// What the guide has stored, entry by entry: kinds and bodies as the journal knows them, so that a shell only adds unit
// and device. A line is its number in the script, a step its id in the procedure, a person an id of the staff list.
import type { QuestionId, Reply } from '../domain/guiding.ts';
import type { EmergencyId } from '../domain/emergencies.ts';
import type { ProcedureKind } from '../domain/procedure.ts';
import type { Continuation } from './continuation.ts';
import type { Pack } from './setup.ts';

/** By which means something was pressed. */
export type Means = 'key' | 'pedal' | 'touch' | 'other';

interface OfLine {
  readonly exit: string;
  readonly line: number;
  readonly step: string;
}

export interface EntryBodies {
  'exit.started': {
    readonly exit: string;
    readonly drill: boolean;
    readonly procedure: string;
    readonly version: string;
    readonly content: string;
    readonly agent: string;
    readonly room: string;
    readonly wearer: string;
    readonly observer: string;
    readonly assistants: readonly string[];
    readonly kind: ProcedureKind;
  };
  'exit.line-shown': OfLine;
  'exit.line-confirmed': OfLine & { readonly means: Means };
  'exit.not-seen': OfLine;
  /** `slip`: the key of an event, or `other:` and a category. */
  'exit.slip-recorded': OfLine & {
    readonly slip: string;
    readonly surfaces: readonly string[];
    readonly text: string | null;
  };
  'exit.continuation-offered': {
    readonly exit: string;
    readonly offer: string;
    readonly step: string;
    readonly choices: readonly string[];
    readonly continuation: Continuation;
  };
  'exit.continuation-answered': {
    readonly exit: string;
    readonly offer: string;
    readonly choice: string | null;
    readonly text: string | null;
  };
  'exit.stopped': OfLine & { readonly text: string | null };
  'exit.resumed': OfLine;
  'exit.timer-started': {
    readonly exit: string;
    readonly timer: string;
    readonly step: string;
    readonly seconds: number;
  };
  'exit.timer-ended': {
    readonly exit: string;
    readonly timer: string;
    readonly how: 'elapsed' | 'cut-short' | 'cancelled';
    readonly seconds: number;
  };
  'exit.handed-over': OfLine & { readonly role: 'observer'; readonly from: string; readonly to: string };
  'exit.ended': {
    readonly exit: string;
    readonly how: 'finished' | 'broken-off';
    readonly deviations: number;
    readonly linesNotSeen: number;
  };
  'exit.question-answered': { readonly exit: string; readonly question: QuestionId; readonly answer: Reply };
  'room.entered': {
    readonly visit: string;
    readonly person: string;
    readonly room: string;
    readonly happened: string;
    readonly role: 'wearer';
    readonly worn: { readonly procedure: string; readonly version: string; readonly content: string };
    readonly ensemble: null;
    /** Read on the packs before the first line; nothing is asked for while somebody is dressed. */
    readonly items: readonly Pack[];
    readonly observer: string;
    readonly limit: { readonly minutes: number; readonly source: string } | null;
    readonly drill: boolean;
    readonly late: null;
  };
  'room.left': {
    readonly visit: string;
    readonly person: string;
    readonly room: string;
    readonly happened: string;
    readonly exit: string | null;
    /** The end questions come at the end of the doffing. */
    readonly asked: 'later';
    readonly late: null;
  };
  'emergency.opened': {
    readonly emergency: EmergencyId;
    readonly room: string;
    readonly exit: string | null;
    readonly happened: string;
  };
  'note.added': { readonly about: 'exit'; readonly id: string; readonly text: string };
}

export type EntryKind = keyof EntryBodies;

/** What is to be recorded, before it has its number. */
export type Draft = {
  readonly [Kind in EntryKind]: { readonly kind: Kind; readonly body: EntryBodies[Kind] };
}[EntryKind];

/** An entry as the guide hands it out. `id` is its own within the exit, for the acknowledgement. */
export type GuideEntry = Draft & {
  readonly id: string;
  /** The device's clock: an instant in UTC. */
  readonly at: string;
  readonly by: string | null;
};

/** Written before a category where no slip of the plan fits. */
export const OTHER = 'other:';
/** A time that was not waited for, at a step whose plan knows no slip for it. */
export const TOO_SHORT = `${OTHER}too-short`;
