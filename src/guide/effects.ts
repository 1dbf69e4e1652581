// What the shell has to do once entries are stored: speak what is shown, wake for a timer, sound, and look for another way
// on after a slip.
import { timerSounds } from './sounds.ts';
import type { Draft } from './entries.ts';
import type { Effect } from './events.ts';
import { excludedBy, type Known } from './known.ts';
import type { Line } from './script.ts';
import { languageFor } from './setup.ts';
import { type Core, currentLine, dueAt, running, seenSteps } from './state.ts';

/** What is known of an exit so far: recorded, looked for and not seen, and the rest open. */
export function knownOf(core: Core): Known {
  const { happened, taints } = core;
  return {
    happened,
    excluded: excludedBy(core.script.setup.procedure, seenSteps(core), happened),
    taints,
  };
}

const SPOKEN: readonly Line['kind'][] = ['read', 'back', 'hold', 'question'];

/** The large text, to each who acts on it, in their language. */
function spoken(core: Core): readonly Effect[] {
  const { setup } = core.script;
  const line = currentLine(core);
  if (!SPOKEN.includes(line.kind)) return [];
  return line.for.map((person): Effect => {
    const language = languageFor(setup, person);
    return { do: 'speak', text: (line.texts[language] ?? []).join(' '), language, for: person };
  });
}

const startOf = (core: Core, id: string): readonly Effect[] =>
  core.timers
    .filter((timer) => timer.id === id && timer.ended === null)
    .map((timer): Effect => ({ do: 'start-timer', timer: timer.id, due: dueAt(timer) }));

function effectsOfEntry(core: Core, { kind, body }: Draft): readonly Effect[] {
  switch (kind) {
    case 'exit.line-shown':
      return spoken(core);
    case 'exit.timer-started':
      return startOf(core, body.timer);
    case 'exit.timer-ended':
      return [
        { do: 'stop-timer', timer: body.timer },
        ...(body.how === 'elapsed' ? timerSounds(body.timer) : []),
      ];
    case 'exit.stopped':
      return [
        { do: 'sound', what: 'stop' },
        { do: 'vibrate', what: 'stop' },
      ];
    case 'emergency.opened':
      return [{ do: 'vibrate', what: 'emergency' }];
    case 'exit.ended':
      return [{ do: 'keep-awake', on: false }];
    default:
      return [];
  }
}

/** The effects of entries, given the exit after all of them. */
export const effectsOf = (core: Core, drafts: readonly Draft[]): readonly Effect[] =>
  drafts.flatMap((draft) => effectsOfEntry(core, draft));

/** Whether a search for another way on makes sense: a doffing that goes on, with steps left. */
export const isSearchable = ({ ended, script }: Core): boolean =>
  ended === null && script.setup.procedure.kind === 'doffing';

export const searchFor = (core: Core, search: string, doneSteps: number): Effect => ({
  do: 'search-continuation',
  search,
  procedure: core.script.setup.procedure,
  doneSteps,
  known: knownOf(core),
});

/** What runs outside of the guide, to be started again after the shell was away. */
export const rearmed = (core: Core): readonly Effect[] => [
  { do: 'keep-awake', on: core.ended === null },
  ...running(core).map((timer): Effect => ({ do: 'start-timer', timer: timer.id, due: dueAt(timer) })),
];
