// The room under and behind the figures: the floor or mat they stand on, the chair they sit on, and the fixtures at hand.
import type { FixtureKindId } from '../../domain/room.ts';
import type { FixtureSpot } from '../model/layout.ts';
import { wrapped } from '../model/wrap.ts';
import { FIXTURE_DRAWINGS } from './fixtures.ts';
import { fillOf, type PatternIds } from './Patterns.tsx';

/** A chair behind the one who sits. */
export function Chair() {
  return (
    <path
      className="chair-behind"
      d="M46 236 H154 V252 H148 V424 H138 V300 H62 V424 H52 V252 H46 Z M60 150 H66 V236 H60 Z M134 150 H140 V236 H134 Z"
    />
  );
}

interface FixturesProps {
  readonly fixtures: readonly FixtureSpot[];
  readonly ids: PatternIds;
  readonly nameOf: (fixture: string) => string;
}

export function Fixtures({ fixtures, ids, nameOf }: FixturesProps) {
  return (
    <>
      {fixtures.map((fixture) => {
        const d = FIXTURE_DRAWINGS[fixture.kind as FixtureKindId];
        const fill = fillOf(ids, fixture.mark);
        return (
          <g key={fixture.fixture} transform={`translate(${fixture.x} ${fixture.y})`}>
            <g transform="translate(2 0)">
              <path d={d} fillRule="evenodd" className={fixture.clean ? 'fixture kept-clean' : 'fixture'} />
              {fill && <path d={d} fillRule="evenodd" fill={fill} className="over" />}
              {(fixture.touched || fixture.changed) && (
                <path d={d} className={fixture.touched ? 'ring touched' : 'ring changed'} />
              )}
            </g>
            <text y="50" className="label">
              {wrapped(nameOf(fixture.fixture), 14, 2).map((line, index) => (
                <tspan key={line} x="2" dy={index === 0 ? 0 : 12}>
                  {line}
                </tspan>
              ))}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** The ground under a figure, with the pattern of what is known of it. */
export function Ground({
  fixture,
  ids,
}: {
  readonly fixture: FixtureSpot | undefined;
  readonly ids: PatternIds;
}) {
  const d = fixture?.kind === 'mat' ? 'M30 424 H170 V434 H30 Z' : 'M4 424 H196 V430 H4 Z';
  const fill = fixture && fillOf(ids, fixture.mark);
  return (
    <>
      <path d={d} className="fixture" />
      {fill && <path d={d} fill={fill} className="over" />}
    </>
  );
}
