// What every part of the observer's screen is given.
import type { Press, Screen, State } from '../../../guide/index.ts';
import type { Language, Words } from '../../../words/index.ts';
import type { Run } from '../shell/runner.ts';

/** The observer's, in which everything around the lines is said; of a procedure that names none, that of whoever it names first. */
export function languageOfExit({ shown }: State): Language {
  const { procedure, unit } = shown.script.setup;
  const { people } = procedure;
  const reader = people.find(({ role }) => role === 'observer') ?? people[0];
  return (reader && unit.languages[reader.id]) ?? 'en';
}

/** What lies over the line on this screen alone; nothing of it is recorded. */
export type Panel = 'none' | 'wrong' | 'emergencies' | 'early' | 'decline' | 'hand-over' | 'more' | 'reason';

export interface Desk {
  readonly run: Run;
  readonly state: State;
  readonly screen: Screen;
  /** In the observer's language. */
  readonly words: Words;
  /** Records, unless it comes too soon behind the last one. */
  readonly press: (press: Press, by?: string | null) => void;
  /** The answer that was tried last: one that is refused for want of a reason is given again with it. */
  readonly tried: 'seen' | 'not-seen';
  readonly panel: Panel;
  readonly open: (panel: Panel) => void;
}
