// What a second display is told, and what it says back. Plain data, worked out by the observer's window alone: a display
// decides nothing, and one that is started late asks for the last view.
import type { Procedure, Role } from '../../../domain/procedure.ts';
import type { Screen, Script, State } from '../../../guide/index.ts';
import type { Light } from './light.ts';

export interface DisplayView {
  readonly screen: Pick<
    Screen,
    | 'phase'
    | 'drill'
    | 'fit'
    | 'line'
    | 'step'
    | 'steps'
    | 'large'
    | 'timers'
    | 'signals'
    | 'hold'
    | 'notices'
    | 'saving'
  >;
  /** Names of those who act on it. */
  readonly actors: readonly string[];
  /** Index of the step whose words stand there. */
  readonly at: number;
  readonly display: Script['setup']['unit']['display'];
  readonly procedure: Procedure;
  readonly light: Light;
}

export type LinkMessage =
  | { readonly is: 'shown'; readonly view: DisplayView }
  /** Sent now and then, so that a display notices when nobody is there any more. */
  | { readonly is: 'here' }
  | { readonly is: 'hello' }
  | { readonly is: 'stop'; readonly role: Role };

/** `who`: those who act, and the step whose words stand there. */
export function displayView(
  screen: Screen,
  { shown }: State,
  light: Light,
  who: Pick<DisplayView, 'actors' | 'at'>,
): DisplayView {
  const { phase, drill, fit, line, step, steps, large, timers, signals, hold, notices, saving } = screen;
  return {
    screen: {
      phase,
      drill,
      fit,
      line,
      step,
      steps,
      large,
      timers,
      signals,
      ...(hold ? { hold } : {}),
      notices,
      saving,
    },
    ...who,
    display: shown.script.setup.unit.display,
    procedure: shown.script.setup.procedure,
    light,
  };
}
