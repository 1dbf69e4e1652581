// What touches what: a line between the two surfaces with a number that the list beside the picture explains. A link of a
// route is drawn as a thick arrow, over everything else.
import type { Point } from '../model/layout.ts';

export interface NumberedTouch {
  readonly number: number;
  readonly a: string;
  readonly b: string;
  readonly kind: 'always' | 'slip';
}

export interface Link {
  readonly from?: string;
  readonly to: string;
}

type Anchors = ReadonlyMap<string, Point>;

const far = ([ax, ay]: Point, [bx, by]: Point): boolean => Math.hypot(ax - bx, ay - by) > 6;

interface Curve {
  readonly d: string;
  readonly at: (share: number) => Point;
}

/** A line, bowed to the left where both ends stand above one another, so that labels in a column can be joined. */
function curveOf(a: Point, b: Point): Curve {
  const steep = Math.abs(a[0] - b[0]) < 30;
  const bow = steep ? Math.min(46, 14 + Math.abs(a[1] - b[1]) / 3) : 0;
  const control: Point = [(a[0] + b[0]) / 2 - bow, (a[1] + b[1]) / 2];
  const at = (share: number): Point => {
    const [one, two, three] = [(1 - share) ** 2, 2 * share * (1 - share), share ** 2];
    return [one * a[0] + two * control[0] + three * b[0], one * a[1] + two * control[1] + three * b[1]];
  };
  return { d: `M${a[0]} ${a[1]} Q${control[0]} ${control[1]} ${b[0]} ${b[1]}`, at };
}

function Line({ touch, anchors }: { readonly touch: NumberedTouch; readonly anchors: Anchors }) {
  const [a, b] = [anchors.get(touch.a), anchors.get(touch.b)];
  if (!a || !b) return null;
  const curve = curveOf(a, b);
  // Numbers of contacts between the same places must not hide one another.
  const [x, y] = curve.at(0.4 + (touch.number % 3) * 0.1);
  return (
    <g className={`contact ${touch.kind}`}>
      {far(a, b) && (
        <>
          <path d={curve.d} className="contact-under" />
          <path d={curve.d} className="contact-line" />
          <circle cx={a[0]} cy={a[1]} r="3.5" className="contact-end" />
          <circle cx={b[0]} cy={b[1]} r="3.5" className="contact-end" />
        </>
      )}
      <circle cx={x} cy={y} r="9" className="contact-disc" />
      <text x={x} y={y + 4} className="contact-number">
        {touch.number}
      </text>
    </g>
  );
}

function Arrow({
  link,
  anchors,
  id,
}: {
  readonly link: Link;
  readonly anchors: Anchors;
  readonly id: string;
}) {
  const to = anchors.get(link.to);
  const from = link.from === undefined ? undefined : anchors.get(link.from);
  if (!to) return null;
  const curve = from && far(from, to) ? curveOf(from, to) : undefined;
  return (
    <g className="link">
      <marker id={id} viewBox="0 0 10 10" refX="8" refY="5" markerWidth="5" markerHeight="5" orient="auto">
        <path d="M0 0 L10 5 L0 10 Z" className="link-head" />
      </marker>
      {curve && (
        <>
          <path d={curve.d} className="link-under" />
          <path d={curve.d} className="link-line" markerEnd={`url(#${id})`} />
        </>
      )}
      {from && <circle cx={from[0]} cy={from[1]} r="9" className="link-from" />}
      <circle cx={to[0]} cy={to[1]} r="13" className="link-to" />
    </g>
  );
}

interface ContactsProps {
  readonly touches: readonly NumberedTouch[];
  readonly anchors: Anchors;
  readonly link: Link | undefined;
  readonly id: string;
}

export function Contacts({ touches, anchors, link, id }: ContactsProps) {
  return (
    <>
      {touches.map((touch) => (
        <Line key={touch.number} touch={touch} anchors={anchors} />
      ))}
      {link && <Arrow link={link} anchors={anchors} id={`${id}-head`} />}
    </>
  );
}
