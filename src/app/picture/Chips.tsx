// The labels beside a figure: backs, straps, ties, insides and what lies beneath, which a view from the front cannot show.
import { type Chip, type PersonSpot, SIZES } from '../model/layout.ts';
import { wrapped } from '../model/wrap.ts';
import { fillOf, type PatternIds } from './Patterns.tsx';
import { ringOf } from './ring.ts';

interface ChipsProps {
  readonly spot: PersonSpot;
  readonly ids: PatternIds;
  readonly nameOf: (surface: string) => string;
}

function OneChip({ chip, ids, nameOf }: { readonly chip: Chip } & Omit<ChipsProps, 'spot'>) {
  const fill = fillOf(ids, chip.mark);
  const lines = wrapped(nameOf(chip.surface), 21, 2);
  const ring = ringOf(chip);
  return (
    <g transform={`translate(${chip.x} ${chip.y})`}>
      <rect width={SIZES.chip - 8} height={SIZES.chipHeight} rx="4" className="chip" />
      <rect x="2" y="2" width="18" height={SIZES.chipHeight - 4} rx="3" className="chip-swatch" />
      {fill && (
        <rect x="2" y="2" width="18" height={SIZES.chipHeight - 4} rx="3" fill={fill} className="over" />
      )}
      {ring && <rect width={SIZES.chip - 8} height={SIZES.chipHeight} rx="4" className={ring} />}
      <text className="label">
        {lines.map((line, index) => (
          <tspan key={line} x="25" y={lines.length === 1 ? 19 : 13 + index * 12}>
            {line}
          </tspan>
        ))}
      </text>
    </g>
  );
}

export function Chips({ spot, ids, nameOf }: ChipsProps) {
  if (spot.chips.length === 0) return null;
  const last = spot.chips.at(-1);
  return (
    <>
      <text x={spot.chips[0]?.x} y={SIZES.top - 6} className="label quiet">
        Back, inside, beneath
      </text>
      {spot.chips.map((chip) => (
        <OneChip key={chip.surface} chip={chip} ids={ids} nameOf={nameOf} />
      ))}
      {spot.more > 0 && last && (
        <text x={last.x} y={last.y + SIZES.chipHeight + 15} className="label quiet">
          and {spot.more} more: see the ledger
        </text>
      )}
    </>
  );
}
