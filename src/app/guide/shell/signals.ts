// Sounds and shakes of the device. Two plain tones that rise or fall: nothing that could be taken for the alarm of medical
// equipment. Where the device has neither, the screen says it all the same.
import type { Effect } from '../../../guide/index.ts';

export type Signal = Extract<Effect, { do: 'sound' | 'vibrate' }>;

const TONES: Readonly<Record<Signal['what'], readonly number[]>> = {
  'time-up': [523, 659],
  warning: [440, 440],
  stop: [392, 294],
  emergency: [392, 294],
  refused: [294],
};
const SHAKES: Readonly<Record<Signal['what'], readonly number[]>> = {
  'time-up': [200, 100, 200],
  warning: [300, 150, 300],
  stop: [500],
  emergency: [500],
  refused: [60],
};
const SECONDS = 0.25;
const LOUDNESS = 0.15;

function play(context: AudioContext, tones: readonly number[]): void {
  tones.forEach((tone, index) => {
    const [source, loudness] = [context.createOscillator(), context.createGain()];
    const start = context.currentTime + index * SECONDS;
    source.frequency.value = tone;
    loudness.gain.value = LOUDNESS;
    source.connect(loudness).connect(context.destination);
    source.start(start);
    source.stop(start + SECONDS * 0.8);
  });
}

export function signalsOf(page: Window): (signal: Signal) => void {
  let context: AudioContext | undefined;
  return ({ do: how, what }) => {
    if (how === 'vibrate') {
      page.navigator.vibrate?.([...SHAKES[what]]);
      return;
    }
    if (!page.navigator.userActivation?.hasBeenActive) return;
    context ??= new AudioContext();
    play(context, TONES[what]);
  };
}
