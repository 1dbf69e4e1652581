// That it is working: at once, with the time it has taken and the way to call it off. The clock is no live region, or it
// would be read out every second.
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { duration } from '../../words/index.ts';
import { focusLost } from '../parts/useLanding.ts';
import type { Limits } from './result.ts';
import type { Run } from './useRun.ts';

interface RunningProps {
  readonly since: number;
  /** Time for the proof, in milliseconds. */
  readonly limit: number;
  readonly cancel: () => void;
}

function useClock(): number {
  const [now, tick] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => tick(Date.now()), 500);
    return () => clearInterval(timer);
  }, []);
  return now;
}

function Running({ since, limit, cancel }: RunningProps) {
  const passed = Math.max(0, useClock() - since);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus(), []);
  const over = passed > limit;
  return (
    <div className="running">
      <progress aria-label="Time used" max={limit} value={over ? undefined : passed} />
      <span>
        <span role="timer" className="clock">
          {duration(Math.floor(passed / 1000))}
        </span>{' '}
        of at most {duration(limit / 1000)} for the proof
        {over && '; now the reasons are worked out'}
      </span>
      <Button ref={button} className="button" onPress={cancel}>
        Cancel
      </Button>
    </div>
  );
}

interface ControlsProps {
  readonly run: Run<{ readonly limits: Limits }, unknown>;
  readonly start: () => void;
  readonly cancel: () => void;
  /** What the button says before anything was asked, and after. */
  readonly press: readonly [first: string, again: string];
  readonly disabled?: boolean;
}

/** How long it took. */
export const tookText = (milliseconds: number): string =>
  milliseconds < 1000 ? 'less than a second' : duration(Math.round(milliseconds / 1000));

/** Said once, when it changes. */
function textOf(run: ControlsProps['run']): string {
  if (run.is === 'running') return 'Searching …';
  if (run.is === 'off') return `Called off after ${tookText(run.after)}. Nothing was changed.`;
  return run.is === 'done' ? `Done after ${tookText(run.took)}. The answer stands below.` : '';
}

/** Begin, call off, and how far it is. */
export function Controls({ run, start, cancel, press, disabled = false }: ControlsProps) {
  const begin = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (focusLost() && (run.is === 'off' || run.is === 'failed')) begin.current?.focus();
  }, [run.is]);
  return (
    <div className="controls">
      {run.is === 'running' ? (
        <Running since={run.since} limit={run.question.limits.milliseconds} cancel={cancel} />
      ) : (
        <Button ref={begin} className="button main" isDisabled={disabled} onPress={start}>
          {press[run.is === 'none' ? 0 : 1]}
        </Button>
      )}
      <output>{textOf(run)}</output>
      {run.is === 'failed' && (
        <p role="alert" className="wrong">
          The search stopped: {run.why}. Nothing was changed.
        </p>
      )}
    </div>
  );
}
