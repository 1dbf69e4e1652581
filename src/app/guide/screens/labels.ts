// What the guide's pages say that are filled in before an exit or read after it. What stands on a screen of the exit itself is in the
// language of whoever reads it (src/words/guideLabels.ts).

/** The observer's own screen, and from how far it is read. */
export const OWN_SCREEN = {
  title: 'This screen',
  width: 'Width of its picture, millimetres; empty where nobody has measured it',
  distance: 'Read from how far, metres',
  needs: (capital: number, metres: number): string =>
    `Capitals of ${capital.toFixed(1)} mm are needed at ${metres} m. A line for which they are too high says so, and from how far it is read.`,
} as const;

/** What whoever begins is warned of. */
export const WARNINGS = {
  title: 'Before it begins',
  noAssistant: (steps: string): string =>
    `Steps that need an assistant: ${steps}. None is named. Name one above.`,
  inAnother: (initials: string, when: string, room: string): string =>
    `${initials} stands in an exit that has not ended: begun ${when}, ${room}.`,
  goTo: 'Go to that exit',
  knowingly: 'Begin all the same. It is recorded.',
  unanswered: 'Mend what stands under “Before it begins”, or say there that you begin all the same.',
  notes: {
    noAssistant: (steps: string): string => `Begun knowingly without the assistant that steps ${steps} need`,
    inAnother: (exit: string): string => `Begun knowingly while the wearer stands in exit ${exit}, not ended`,
  },
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
