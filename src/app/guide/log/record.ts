// The record of an exit as lines of text: what was read, answered, not seen and recorded, in its order. It says 'no deviation
// seen' or what was; never that anybody or anything is free of contamination.
import type { DeviationId, QuestionId, Reply } from '../../../domain/guiding.ts';
import { EMERGENCY_IDS } from '../../../domain/emergencies.ts';
import { type GuideEntry, type Script, timerKind } from '../../../guide/index.ts';
import { WITHHELD } from '../../../journal/withheld.ts';
import { memberText, type StaffState } from '../../../versions/staff.ts';
import { roomAfterWord, roomName } from '../../logbook/model.ts';
import type { Words } from '../../../words/index.ts';
import type { ExitHead, Recorded } from './exits.ts';

type EntryBodies = {
  readonly [Kind in GuideEntry['kind']]: Extract<GuideEntry, { readonly kind: Kind }>['body'];
};

export interface RecordLine {
  readonly at: string;
  readonly text: string;
  /** Something that was not as read, or not seen. */
  readonly stands: boolean;
}

interface Reader {
  readonly script: Script;
  readonly words: Words;
  readonly staff: StaffState;
  /** Whether the wearer's own answers are told: they are of somebody's health, and stay out unless asked for. */
  readonly answers: boolean;
}

const OTHER = 'other:';

function stepText({ script, words }: Reader, line: number): string {
  const { procedure } = script.setup;
  const index = script.lines[line]?.step ?? -1;
  const step = procedure.steps[index];
  const kind = script.lines[line]?.kind ?? 'finish';
  const what = kind === 'back' ? ' (said back)' : kind === 'hold' ? ' (hold)' : '';
  if (step) return `Step ${index + 1}, ${words.stepLabel(procedure, step)}${what}`;
  return kind === 'all-round' ? 'Look all round' : 'After the last step';
}

/** Of a time: what it is for, and the step or the emergency that it belongs to. */
function timerText({ script, words }: Reader, timer: string): string {
  const { procedure } = script.setup;
  const kind = timerKind(timer);
  const isOf = (id: string): boolean => timer === `${id}-${kind}`;
  const index = procedure.steps.findIndex(({ id }) => isOf(id));
  const step = procedure.steps[index];
  const emergency = EMERGENCY_IDS.find(isOf);
  const of = step
    ? `Step ${index + 1}, ${words.stepLabel(procedure, step)}`
    : emergency && words.guide.emergencies[emergency];
  return [of, words.guide.timers[kind]].filter((part) => part !== undefined).join('; ');
}

function slipText(
  { script, words }: Reader,
  { slip, text, surfaces }: EntryBodies['exit.slip-recorded'],
): string {
  const { procedure } = script.setup;
  const what = slip.startsWith(OTHER)
    ? (words.guide.deviations[slip.slice(OTHER.length) as DeviationId] ?? slip.slice(OTHER.length))
    : words.event(procedure, slip);
  const touched = surfaces.map((surface) => words.surface(procedure, surface)).join(', ');
  return [what, touched && `touched: ${touched}`, text ?? ''].filter((part) => part !== '').join('; ');
}

/** A device that does not run exits is told that it was answered, not what. */
const isWithheldReply = (answer: string): boolean => answer === WITHHELD;

function replyText({ guide }: Words, question: QuestionId, answer: Reply, answers: boolean): string {
  if (isWithheldReply(answer))
    return 'A question to the wearer was answered; this device is not told the answer';
  return answers
    ? `${guide.questions[question]} ${guide.replies[answer]}`
    : 'A question to the wearer was answered; the answer is left out';
}

type Saying = {
  readonly [Kind in keyof EntryBodies]: (
    reader: Reader,
    body: EntryBodies[Kind],
  ) => readonly [string, boolean] | null;
};

const because = (text: string | null): string => (text === null ? '' : `: ${text}`);

const SAYINGS: Saying = {
  'exit.started': ({ script }, { drill, version, room }) => [
    `${drill ? 'Drill' : 'Exit'} began: ${script.setup.procedure.title}, version ${version}, ${roomName(room)}`,
    false,
  ],
  'exit.line-shown': () => null,
  'exit.line-confirmed': (reader, { line, means }) => [
    `${stepText(reader, line)}: seen as read (${means})`,
    false,
  ],
  'exit.not-seen': (reader, { line }) => [`${stepText(reader, line)}: not seen`, true],
  'exit.slip-recorded': (reader, body) => [`${stepText(reader, body.line)}: ${slipText(reader, body)}`, true],
  'exit.continuation-offered': ({ words }, { continuation: { barriers } }) => [
    words.guide.offer(words.barriers(barriers.before), words.barriers(barriers.after)),
    false,
  ],
  'exit.continuation-answered': (_, { choice, text }) => [
    choice === null ? `The other way was not taken${because(text)}` : 'The other way was taken',
    false,
  ],
  'exit.stopped': (reader, { line, text }) => [`STOP at: ${stepText(reader, line)}${because(text)}`, true],
  'exit.resumed': (reader, { line }) => [`Went on from: ${stepText(reader, line)}`, false],
  'exit.timer-started': (reader, { timer, seconds }) => [
    `${timerText(reader, timer)}: time started, ${seconds} s`,
    false,
  ],
  'exit.timer-ended': (reader, { timer, how, seconds }) => [
    `${timerText(reader, timer)}: time ${how === 'elapsed' ? 'was up' : how === 'cut-short' ? 'was cut short' : 'was called off'}, after ${seconds} s`,
    how === 'cut-short',
  ],
  'exit.handed-over': ({ staff }, { from, to }) => [
    `Handed over from ${memberText(staff, from)} to ${memberText(staff, to)}`,
    false,
  ],
  'exit.ended': (_, { how, deviations, linesNotSeen }) => [
    `${how === 'finished' ? 'Ended' : 'Broken off'}: deviations recorded ${deviations}, answers “not seen” ${linesNotSeen}`,
    how === 'broken-off',
  ],
  'exit.question-answered': ({ words, answers }, { question, answer }) => [
    replyText(words, question, answer, answers),
    answer !== 'no' && !isWithheldReply(answer),
  ],
  'room.entered': (_, { room }) => [`Went into ${roomName(room)}`, false],
  'room.left': (_, { room }) => [`Came out of ${roomName(room)}`, false],
  'emergency.opened': ({ words }, { emergency }) => [
    `Emergency: ${words.guide.emergencies[emergency]}`,
    true,
  ],
  'note.added': (_, { text }) => [`Note: ${text}`, false],
};

export function recordLines(reader: Reader, entries: readonly Recorded[]): readonly RecordLine[] {
  return entries.flatMap(({ kind, body, at }): readonly RecordLine[] => {
    const said = (SAYINGS[kind] as Saying['note.added'])(reader, body as EntryBodies['note.added']);
    return said ? [{ at, text: said[0], stands: said[1] }] : [];
  });
}

interface Told {
  readonly head: ExitHead;
  readonly outcome: string;
  readonly lines: readonly RecordLine[];
}

/** As a text file: head, outcome, what stands out, then everything. Times in UTC, as they were recorded. */
export function recordText({ head, outcome, lines }: Told, { words, staff }: Reader): string {
  const out = lines.filter(({ stands }) => stands);
  const row = ({ at, text }: RecordLine): string => `${at}  ${text}`;
  return [
    `${head.drill ? 'DRILL' : 'EXIT'} ${head.exit}`,
    `Procedure: ${head.procedure}, version ${head.version}, content ${head.content}`,
    `Room: ${roomAfterWord(head.room)}. Wearer: ${memberText(staff, head.wearer)}. Observer: ${memberText(staff, head.observer)}.`,
    outcome,
    '',
    'What stands out',
    ...(out.length > 0 ? out.map(row) : [words.guide.outcomes['no-deviation-seen']]),
    '',
    'Everything, in its order (times in UTC)',
    ...lines.map(row),
    '',
    ...words.cautions,
    '',
  ].join('\n');
}
