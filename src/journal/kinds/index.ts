// The table of kinds. To add one: its schema in a file beside this, and a line here. To change one: `revised` with the new
// schema and the step from the old; the old schema stays for ever, because journals are never rewritten.
import * as exits from './exits.ts';
import { type BodyOf, kind, type KindTable, revised } from './kind.ts';
import * as procedures from './procedures.ts';
import * as rooms from './rooms.ts';
import * as unit from './unit.ts';

export const KINDS = {
  'unit.created': kind(unit.unitCreated, ['title']),
  'device.paired': kind(unit.devicePaired, ['label']),
  'device.revoked': kind(unit.deviceRevoked, ['reason']),
  'procedure.drafted': kind(procedures.procedureDrafted, ['text']),
  'procedure.sent-for-review': kind(procedures.procedureSent),
  'procedure.sent-back': kind(procedures.procedureSentBack, ['reason']),
  'procedure.approved': kind(procedures.procedureApproved),
  'procedure.retired': kind(procedures.procedureRetired, ['reason']),
  'departure.accepted': kind(procedures.departureAccepted, ['reason']),
  'product.time-recorded': kind(unit.productTime, ['label']),
  'staff.listed': kind(unit.staffListed, ['role', 'initials']),
  'language.signed-off': kind(unit.languageSignedOff),
  'exit.started': revised(kind(exits.exitStartedFirst), exits.exitStarted, exits.startedFrom),
  'exit.line-shown': kind(exits.lineShown),
  'exit.line-confirmed': kind(exits.lineConfirmed),
  'exit.not-seen': kind(exits.notSeen),
  'exit.slip-recorded': kind(exits.slipRecorded, ['text']),
  'exit.continuation-offered': kind(exits.continuationOffered, ['continuation']),
  'exit.continuation-answered': kind(exits.continuationAnswered, ['text']),
  'exit.stopped': kind(exits.exitStopped, ['text']),
  'exit.resumed': kind(exits.exitResumed),
  'exit.timer-started': kind(exits.timerStarted),
  'exit.timer-ended': kind(exits.timerEnded),
  'exit.handed-over': kind(exits.handedOver),
  'exit.ended': kind(exits.exitEnded),
  'exit.question-answered': revised(
    kind(exits.questionAnsweredFirst),
    exits.questionAnswered,
    exits.answeredFrom,
    ['answer', 'salt'],
  ),
  'room.entered': revised(kind(rooms.roomEnteredFirst), rooms.roomEntered, rooms.enteredFrom, [
    'ensemble',
    'items',
    'limit',
    'late',
  ]),
  'room.left': revised(kind(rooms.roomLeftFirst), rooms.roomLeft, rooms.leftFrom, ['late']),
  'room.observer-changed': kind(rooms.observerChanged, ['late']),
  'room.corrected': kind(rooms.roomCorrected, ['ensemble', 'items', 'limit', 'reason']),
  'emergency.opened': kind(rooms.emergencyOpened),
  'note.added': kind(unit.noteAdded, ['text']),
  'health.sealed': kind(unit.healthSealed, ['sealed']),
  'health.read': kind(unit.healthRead, ['people', 'records']),
  'health.let-in': kind(unit.healthLetIn),
} as const satisfies KindTable;

export type KindName = keyof typeof KINDS;
export type Bodies = { readonly [Name in KindName]: Readonly<BodyOf<(typeof KINDS)[Name]>> };
