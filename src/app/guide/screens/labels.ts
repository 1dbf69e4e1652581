// What the guide's own pages say beside the words of the exit.

/** Another tab of this browser runs the exit. */
export const ELSEWHERE = {
  title: 'This exit is run in another tab',
  says: 'Another tab or window of this browser runs this exit. Nothing is recorded here. Go on there, or take over here: the other one then stops.',
  unsaved:
    'The other tab has entries that it cannot save, and keeps the exit. Go to it, make room, press “Save again”; then take over here.',
  take: 'Take over here',
} as const;

/** What another way changes, place by place. */
export const OFFER = {
  changed: (count: number): string =>
    `${count === 1 ? '1 place' : `${count} places`} harder to reach: slips and circumstances it takes, as read and this way, fewest first.`,
  heading: (count: number): string =>
    `Another way on. ${count === 1 ? '1 place is' : `${count} places are`} harder to reach this way.`,
  unchanged: (count: number): string =>
    `${count === 1 ? '1 place takes' : `${count} places take`} the same as read, fewest first`,
} as const;

/** The observer's own screen, and from how far it is read. */
export const OWN_SCREEN = {
  title: 'This screen',
  width: 'Width of its picture, millimetres; empty where nobody has measured it',
  distance: 'Read from how far, metres',
  needs: (capital: number, metres: number): string =>
    `Capitals of ${capital.toFixed(1)} mm are needed at ${metres} m. A line for which they are too high says so, and from how far it is read.`,
  short: (capital: number, metres: number, wanted: number): string =>
    `Capitals here are ${capital.toFixed(1)} mm high: read from ${metres.toFixed(1)} m, not from ${wanted} m.`,
  unmeasured: 'This screen was not measured.',
} as const;

/** Times from the labels of the unit's own products. */
export const TIMES = {
  title: 'Times from the unit’s labels',
  says: 'How long a product must stay wet, be rubbed or dry, as its own label says. The guide keeps these times before the published ones, and shows which label, who wrote it down and when. An exit that has begun keeps the times it began with.',
  published: 'Nothing written down: the published time is kept.',
  product: 'Product',
  spans: { contactSeconds: 'Stays wet', rubSeconds: 'Rubbed or washed', drySeconds: 'Dries' },
  hint: 'seconds; empty where the label says none',
  label: 'Which label: product and edition, as it is written there',
  who: 'Written down by',
  wrong: 'Whole seconds, at most a day.',
  /** Seconds of a day: what the journal takes. */
  most: 86_400,
  write: 'Write down a label’s times …',
  sentence: (product: string, times: string, label: string): string =>
    `The journal will say that the label “${label}” of ${product} gives: ${times === '' ? 'no time, so that the published one is kept' : times}.`,
} as const;
