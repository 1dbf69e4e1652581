// The room under and behind the figures: the floor or mat they stand on, the chair they sit on, and the fixtures at hand.
import type { FixtureKindId } from '../../domain/room.ts';
import type { FixtureSpot } from '../model/layout.ts';
import type { FixtureView } from '../model/picture.ts';
import { wrapped } from '../model/wrap.ts';
import { FIXTURE_DRAWINGS } from '../../drawing/fixtures.ts';
import { fillOf, type PatternIds } from './Patterns.tsx';
import { ringOf } from './ring.ts';

const CHAIR =
  'M46 236 H154 V252 H148 V424 H138 V300 H62 V424 H52 V252 H46 Z M60 150 H66 V236 H60 Z M134 150 H140 V236 H134 Z';

/** A chair behind the one who sits. */
export function Chair({ chair, ids }: { readonly chair: FixtureView | undefined; readonly ids: PatternIds }) {
  const fill = chair && fillOf(ids, chair.mark);
  return (
    <>
      <path className="chair-behind" d={CHAIR} />
      {fill && <path d={CHAIR} fill={fill} className="over" />}
    </>
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
        const ring = ringOf(fixture);
        return (
          <g key={fixture.fixture} transform={`translate(${fixture.x} ${fixture.y})`}>
            <g transform="translate(2 0)">
              <path d={d} fillRule="evenodd" className={fixture.clean ? 'fixture kept-clean' : 'fixture'} />
              {fill && <path d={d} fillRule="evenodd" fill={fill} className="over" />}
              {ring && <path d={d} className={ring} />}
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

interface GroundProps {
  readonly ground: FixtureView | undefined;
  readonly name: string;
  readonly ids: PatternIds;
}

/** What one stands on, with the pattern of what is known of it. */
export function Ground({ ground, name, ids }: GroundProps) {
  const d = ground?.kind === 'mat' ? 'M30 424 H170 V434 H30 Z' : 'M4 424 H196 V432 H4 Z';
  const fill = ground && fillOf(ids, ground.mark);
  const ring = ground && ringOf(ground);
  return (
    <>
      <path d={d} className="fixture" />
      {fill && <path d={d} fill={fill} className="over" />}
      {ring && <path d={d} className={ring} />}
      <text x="100" y="446" className="label middle">
        {name}
      </text>
    </>
  );
}
