// The patterns that say how contaminated a surface is: hatching for 'contaminated though nobody slips', dots for 'takes
// slips'. Pattern first, colour second, so that the picture holds on paper and for every eye.

export interface PatternIds {
  readonly contaminated: string;
  readonly slips: string;
}

export const patternIds = (base: string): PatternIds => ({
  contaminated: `${base}-hatch`,
  slips: `${base}-dots`,
});

export function Patterns({ ids }: { readonly ids: PatternIds }) {
  return (
    <defs>
      <pattern
        id={ids.contaminated}
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width="1.9" height="8" className="hatch-line" />
      </pattern>
      <pattern id={ids.slips} width="8" height="8" patternUnits="userSpaceOnUse">
        <circle cx="2" cy="2" r="1.5" className="dot" />
        <circle cx="6" cy="6" r="1.5" className="dot" />
      </pattern>
    </defs>
  );
}

/** Fill of a mark; undefined where nothing is known. */
export function fillOf(ids: PatternIds, mark: 'contaminated' | 'slips' | 'nothing'): string | undefined {
  return mark === 'nothing' ? undefined : `url(#${ids[mark]})`;
}
