// The line as large as it goes in, measured on the screen itself: widths of letters differ by language and typeface, so that
// nothing worked out before is as true. Where the distance asks for more than goes in, what it is worth is told.
import { type RefObject, useLayoutEffect, useState } from 'react';
import { type OwnFit, ownFitOf } from '../../../guide/index.ts';
import { keeper } from '../shell/rooms.ts';

/** Sizes of type that are tried, pixels. */
const LEAST = 22;
const MOST = 160;
/** What lies below the line needs room, unless the line would then be too small. */
const SHARE_BESIDE = 0.62;
/** Margins of what stands beside the line, pixels: more than they are. */
const AROUND_REST = 16;

export interface Largest {
  readonly capital: number;
  readonly metres: number;
  /** Metres that were asked for; undefined where they are reached. */
  readonly wanted: number | undefined;
}

const isWithin = (line: HTMLElement, height: number): boolean =>
  line.scrollHeight <= height &&
  [...line.querySelectorAll<HTMLElement>('.g-row')].every((row) => row.scrollWidth <= row.clientWidth);

/** The largest size that goes into a height; the least where none does. */
function largestIn(line: HTMLElement, height: number): number {
  let [low, high] = [LEAST, MOST];
  while (high - low > 0.5) {
    const size = (low + high) / 2;
    line.style.setProperty('--type', `${size}px`);
    if (isWithin(line, height)) low = size;
    else high = size;
  }
  return low;
}

/** How high all that stands in the room beside the line is: notices, times and where they come from. */
function heightOfRest(line: HTMLElement, room: HTMLElement): number {
  const [first, last, own] = [room.firstElementChild, room.lastElementChild, line.getBoundingClientRect()];
  const top = first ? first.getBoundingClientRect().top : own.top;
  const bottom = last ? last.getBoundingClientRect().bottom : own.bottom;
  return own.top - top + bottom - own.bottom + AROUND_REST;
}

/** Room for the line without what is said of its size: that is said only where it must be. */
function sized(line: HTMLElement, room: HTMLElement, fit: OwnFit): number {
  const style = getComputedStyle(room);
  const height =
    room.clientHeight - Number.parseFloat(style.paddingTop) - Number.parseFloat(style.paddingBottom);
  const shares = room.querySelector('.g-card') !== null;
  const best = (): number => {
    const beside = largestIn(line, shares ? height * SHARE_BESIDE : height - heightOfRest(line, room));
    return beside >= fit.needed ? beside : Math.min(fit.needed, largestIn(line, height));
  };
  line.classList.add('unsaid');
  const unsaid = best();
  line.classList.remove('unsaid');
  const size = isReached(unsaid, fit) ? unsaid : best();
  line.style.setProperty('--type', `${size}px`);
  return size;
}

/** Half a pixel is what the search leaves open. */
const isReached = (size: number, { needed }: OwnFit): boolean => size + 0.5 >= needed;

/** Measured anew whenever something in the room changes, or its size. */
export function useLargest(line: RefObject<HTMLElement | null>): Largest | undefined {
  const [largest, setLargest] = useState<Largest>();
  useLayoutEffect(() => {
    const [here, room] = [line.current, line.current?.closest<HTMLElement>('.g-middle')];
    if (!here || !room) return undefined;
    const own = keeper.screen();
    const fit = ownFitOf(own, window.screen.width);
    const measure = (): void => {
      const size = sized(here, room, fit);
      const wanted = isReached(size, fit) ? undefined : own.distanceMetres;
      setLargest({ ...fit.worth(size), wanted });
    };
    measure();
    const resized = new ResizeObserver(measure);
    resized.observe(room);
    const changed = new MutationObserver(measure);
    changed.observe(room, { childList: true, characterData: true, subtree: true });
    return () => {
      resized.disconnect();
      changed.disconnect();
    };
  }, [line]);
  return largest;
}
