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
  unchanged: (count: number): string =>
    `${count === 1 ? '1 place takes' : `${count} places take`} the same as read, fewest first`,
} as const;
