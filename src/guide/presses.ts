// What can be pressed at this moment. A page shows these and no others; whoever presses something else is refused.
import type { PressName } from '../words/guide.ts';
import { answersTo, type Line } from './script.ts';
import { type Core, currentLine, running, type State } from './state.ts';
import { cuttable, pendingAt, startable } from './timing.ts';

export type { PressName } from '../words/guide.ts';

const when = (condition: boolean, ...names: readonly PressName[]): readonly PressName[] =>
  condition ? names : [];

/** On the line itself. */
function onLine(core: Core, line: Line): readonly PressName[] {
  const owes = line.kind === 'look' && pendingAt(core).length > 0;
  const isOffered = core.offer !== null && line.kind !== 'back';
  const canAnswer = answersTo(line).length > 0 && !owes && !isOffered;
  const open = running(core).some(({ kind }) => kind !== 'wear' && kind !== 'wear-warning');
  return [
    ...when(canAnswer, 'seen', 'not-seen'),
    ...when(line.kind === 'question', 'answer'),
    ...when(line.kind === 'inside', 'leave'),
    ...when(line.kind === 'finish' && !open && !isOffered, 'end'),
    ...when(answersTo(line).length === 0 && !['question', 'inside', 'finish'].includes(line.kind), 'forward'),
  ];
}

function onTop(core: Core): readonly PressName[] {
  if (core.emergencies.length > 0) return ['forward', 'return', 'break-off'];
  if (core.stopped) return ['resume', 'break-off'];
  return core.recap ? ['forward'] : onLine(core, currentLine(core));
}

/** The exit is over; an emergency may still come, and its card is read like any other. */
function afterTheEnd({ shown: core, unsaved }: State): readonly PressName[] {
  return [
    ...when(core.emergencies.length > 0, 'forward', 'return'),
    ...when(startable(core).length > 0, 'start-timer'),
    ...when(cuttable(core).length > 0, 'go-early'),
    ...when(unsaved.length > 0, 'retry'),
    'note',
    'emergency',
  ];
}

/** The names of all that can be pressed, the next thing first. */
export function pressesOf(state: State): readonly PressName[] {
  const { shown: core, core: all, saving, unsaved, handover } = state;
  if (core.ended) return afterTheEnd(state);
  if (core !== all)
    return [
      ...when(saving.length === 0, 'retry'),
      'go-on',
      ...when(all.stopped === null && all.ended === null, 'stop'),
      'emergency',
    ];
  return [
    ...onTop(core),
    ...when(core.offer !== null, 'accept', 'decline'),
    ...when(startable(core).length > 0, 'start-timer'),
    ...when(cuttable(core).length > 0, 'go-early'),
    'slip',
    'deviation',
    ...when(handover === null, 'hand-over'),
    ...when(handover !== null, 'take-over', 'keep'),
    'note',
    ...when(unsaved.length > 0, 'retry'),
    ...when(saving.length > 0, 'go-on'),
    ...when(core.stopped === null, 'stop'),
    'emergency',
  ];
}
