// Presses: which key means what, and a second tap that comes too soon to be meant. A gloved finger and a worn pedal both
// bounce; half a second is longer than a bounce and shorter than any step.
import type { PressName } from '../../../words/guide.ts';

const BOUNCE = 500;

/** True for a press that may count, given the time of each by the page's clock in milliseconds. */
export function steady(): (at: number) => boolean {
  let last = -Infinity;
  return (at) => {
    const counts = at - last >= BOUNCE;
    if (counts) last = at;
    return counts;
  };
}

export type KeyMeaning =
  | 'confirm'
  | 'before'
  | 'stop'
  | 'resume'
  | 'not-seen'
  | 'wrong'
  | 'emergency'
  | 'yes'
  | 'no'
  | 'not-sure';

const MEANINGS: Readonly<Record<string, KeyMeaning>> = {
  PageDown: 'confirm',
  Enter: 'confirm',
  ArrowRight: 'confirm',
  PageUp: 'before',
  ArrowLeft: 'before',
  Escape: 'stop',
  s: 'stop',
  r: 'resume',
  o: 'not-seen',
  w: 'wrong',
  e: 'emergency',
  y: 'yes',
  n: 'no',
  u: 'not-sure',
};

interface Key {
  readonly key: string;
  readonly repeat: boolean;
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** `on`: what has the focus. Writing, and Enter on what can be pressed, stay the browser's own. */
export function meaningOf(event: Key, on: 'text' | 'control' | 'page'): KeyMeaning | undefined {
  if (event.repeat || event.altKey || event.ctrlKey || event.metaKey) return undefined;
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const meaning = MEANINGS[key];
  if (on === 'text') return key === 'Escape' ? 'stop' : undefined;
  return on === 'control' && key === 'Enter' ? undefined : meaning;
}

const NEXT: readonly PressName[] = ['forward', 'seen', 'start-timer', 'leave', 'end'];

/** What the confirming key and the largest button do; nothing while the exit is stopped. */
export const nextPress = (presses: readonly PressName[]): PressName | undefined =>
  presses.includes('resume') ? undefined : NEXT.find((name) => presses.includes(name));
