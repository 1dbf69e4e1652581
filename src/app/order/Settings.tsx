// What the search is told: the agent, how long it may take, what it may depart from, and which steps it must keep.
import type { Procedure } from '../../domain/procedure.ts';
import { type Agent, AGENTS } from '../../domain/products.ts';
import { sentenceOf } from '../compose/editing.ts';
import { OneOf, Tick, Ticks } from '../parts/Choices.tsx';
import { words } from '../words.ts';
import { pinnedIn } from './model/pins.ts';

/** In seconds. */
export const TIMES = ['10', '30', '120'] as const;
export type Time = (typeof TIMES)[number];

const TIME_NAMES: Readonly<Record<Time, string>> = {
  '10': '10 seconds',
  '30': '30 seconds',
  '120': '2 minutes',
};

export interface Wanted {
  readonly agent: Agent;
  readonly time: Time;
  readonly free: boolean;
}

interface SettingsProps {
  readonly wanted: Wanted;
  readonly change: (wanted: Wanted) => void;
}

export function AgentAndTime({ wanted, change }: SettingsProps) {
  return (
    <div className="wanted">
      <OneOf
        label="Search against"
        values={AGENTS}
        chosen={wanted.agent}
        set={(agent) => change({ ...wanted, agent })}
        nameOf={words.agent}
      />
      <OneOf
        label="Time for the proof"
        values={TIMES}
        chosen={wanted.time}
        set={(time) => change({ ...wanted, time })}
        nameOf={(time) => TIME_NAMES[time]}
      />
    </div>
  );
}

export function Freedom({ wanted, change }: SettingsProps) {
  return (
    <Tick on={wanted.free} set={(free) => change({ ...wanted, free })}>
      It may depart from published practice where the given steps do not
    </Tick>
  );
}

interface PinsProps {
  readonly procedure: Procedure;
  readonly pin: (ids: ReadonlySet<string>) => void;
}

export function Pins({ procedure, pin }: PinsProps) {
  const pinned = pinnedIn(procedure);
  const number = new Map(
    procedure.steps.map((step, at) => [step.id, `${at + 1}. ${sentenceOf(procedure, step)}`]),
  );
  return (
    <details className="pins">
      <summary>
        Steps to keep as they are: {pinned.size} of {procedure.steps.length}
      </summary>
      <p className="quiet">
        A step that is kept stays as it is written, and those that are kept stay in their order. The search
        may put other steps between them.
      </p>
      <Ticks
        label="Keep"
        values={procedure.steps.map(({ id }) => id)}
        chosen={pinned}
        set={pin}
        nameOf={(id) => number.get(id)}
      />
    </details>
  );
}
