// The picture of one step: who is in it, what they have on, what may be contaminated, what touches what. It is drawn
// from the board alone, and always comes with the same in words.
import { useEffect, useId, useRef } from 'react';
import type { Procedure } from '../../domain/procedure.ts';
import type { Board } from '../model/board.ts';
import { describePicture } from '../model/describe.ts';
import { layoutOf, type PersonSpot, SIZES } from '../model/layout.ts';
import { bare, namesBeside } from '../model/names.ts';
import { type Moment, type PictureView, pictureOf } from '../model/picture.ts';
import { Scroll } from '../parts/Scroll.tsx';
import { words } from '../words.ts';
import { Chips } from './Chips.tsx';
import { Contacts, type Link, type NumberedTouch } from './Contacts.tsx';
import { Figure } from './Figure.tsx';
import { MEASURES, shapesOf } from './measures.ts';
import { type PatternIds, patternIds, Patterns } from './Patterns.tsx';
import { Chair, Fixtures, Ground } from './Room.tsx';
import { capital } from '../../words/capital.ts';

interface PersonProps {
  readonly spot: PersonSpot;
  readonly layout: ReturnType<typeof layoutOf>;
  readonly ids: PatternIds;
  readonly procedure: Procedure;
}

function Person({ spot, layout, ids, procedure }: PersonProps) {
  const { person } = spot;
  const chair = layout.fixtures.find((one) => one.fixture === person.seated);
  const zone = person.zone.replaceAll('-', ' ');
  return (
    <>
      <g transform={`translate(${spot.x} 0)`}>
        <text x="100" y="14" className="who">
          {capital(bare(words.person(procedure, person.id)))}
        </text>
        <text x="100" y="27" className="label quiet middle">
          {person.seated ? `sits on ${person.seated.replaceAll('-', ' ')}` : `in ${zone}`}
        </text>
        <g transform={`translate(0 ${SIZES.top})`}>
          {person.seated && <Chair chair={chair} ids={ids} />}
          <Ground
            ground={spot.ground}
            name={bare(words.surface(procedure, `room.${person.standing}`))}
            ids={ids}
          />
          <Figure person={person} ids={ids} />
          <text x="14" y="268" className="side-label">
            R
          </text>
          <text x="186" y="268" className="side-label">
            L
          </text>
        </g>
      </g>
      <Chips spot={spot} ids={ids} nameOf={namesBeside(procedure, person.id, words)} />
    </>
  );
}

export interface PictureProps {
  readonly procedure: Procedure;
  readonly board: Board;
  readonly step: number;
  readonly moment: Moment;
  readonly link?: Link | undefined;
  /** Draw what only a slip would touch as well. */
  readonly slips?: boolean;
  /** Draw no contact but the link. */
  readonly alone?: boolean;
  /** As small as its frame asks, instead of scrolling in it. */
  readonly whole?: boolean;
}

/** The contacts that are drawn, numbered as they are listed. */
export function numbered(view: PictureView, slips: boolean): readonly NumberedTouch[] {
  return view.touches
    .flatMap(({ a, b, kind }) => (kind === 'always' || (kind === 'slip' && slips) ? [{ a, b, kind }] : []))
    .map((touch, index) => ({ ...touch, number: index + 1 }));
}

/** The view of a step as the picture and its words need it. */
export function viewOf({ procedure, board, step, moment, link, slips = false, alone = false }: PictureProps) {
  const also = link ? [link.to, ...(link.from === undefined ? [] : [link.from])] : [];
  return pictureOf(procedure, board, { step, moment, shapes: shapesOf, also, slips, alone });
}

/** Where the picture is wider than the screen, the end of the link is brought into sight. */
function useInSight(end: string | undefined, step: number) {
  const scroller = useRef<HTMLElement>(null);
  useEffect(() => {
    const mark = end !== undefined && step >= 0 ? scroller.current?.querySelector('.link-to') : undefined;
    if (!mark || !scroller.current) return;
    const [at, frame] = [mark.getBoundingClientRect(), scroller.current.getBoundingClientRect()];
    scroller.current.scrollLeft += at.left + at.width / 2 - frame.left - frame.width / 2;
  }, [end, step]);
  return scroller;
}

export function Picture(props: PictureProps) {
  const { procedure, moment, link, slips = false, alone = false, whole = false } = props;
  const id = useId().replaceAll(/[^\w-]/g, '');
  const scroller = useInSight(link?.to, props.step);
  const view = viewOf(props);
  if (!view) return null;
  const ids = patternIds(id);
  const layout = layoutOf(view, MEASURES);
  const touches = moment === 'before' && !alone ? numbered(view, slips) : [];
  return (
    <Scroll className="picture-scroll" label="Picture of the step" at={scroller}>
      <svg
        className="picture"
        viewBox={`0 0 ${layout.width} ${layout.height}`}
        role="img"
        aria-label={describePicture(procedure, view, words).join(' ')}
        {...(whole ? {} : { style: { minWidth: `${layout.width * 0.74}px` } })}
      >
        <Patterns ids={ids} />
        {layout.people.map((spot) => (
          <Person key={spot.person.id} spot={spot} layout={layout} ids={ids} procedure={procedure} />
        ))}
        <Fixtures
          fixtures={layout.fixtures}
          ids={ids}
          nameOf={(fixture) => bare(words.surface(procedure, `room.${fixture}`))}
        />
        <Contacts touches={touches} anchors={layout.anchors} link={link} id={id} />
      </svg>
    </Scroll>
  );
}
