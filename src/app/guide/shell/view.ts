// What a second display is told, and what it says back. Plain data, worked out by the observer's window alone: a display
// decides nothing, and one that is started late asks for the last view.
import type { Procedure, Role } from '../../../domain/procedure.ts';
import type { Screen, Script, State } from '../../../guide/index.ts';
import type { Moment } from '../../model/picture.ts';
import type { Light } from './light.ts';

/** A surface that is worse than the plan has it, as the step begins and as it ends: entries of a board. */
export type Worse = readonly [surface: string, begins: number, ends: number];

/** Which picture of which step: plain data and short, because it is sent with every line. */
export interface Recorded {
  readonly step: number;
  readonly moment: Moment;
  /** Null where it is the plan's own: nothing was recorded, or what that means cannot be worked out. */
  readonly worse: readonly Worse[] | null;
}

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
  /** The picture as it stands on the observer's screen; null where none stands there. */
  readonly pictured: Recorded | null;
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

/** `also`: those who act, and the picture. */
export function displayView(
  screen: Screen,
  { shown }: State,
  light: Light,
  also: Pick<DisplayView, 'actors' | 'pictured'>,
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
    ...also,
    display: shown.script.setup.unit.display,
    procedure: shown.script.setup.procedure,
    light,
  };
}
