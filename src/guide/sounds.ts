// How a timer that is up makes itself heard: a time in the suit warns, any other says that it is over. No sound imitates
// an alarm of medical equipment; which sound it is, is the shell's business.
import type { Effect } from './events.ts';

export function timerSounds(timer: string): readonly Effect[] {
  const what = timer.startsWith('wear') ? 'warning' : 'time-up';
  return [
    { do: 'sound', what },
    { do: 'vibrate', what },
  ];
}
