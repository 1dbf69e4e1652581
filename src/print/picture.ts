// The picture of one step for paper: who is in it, whole, and beside them what the step is about, close up, with a sign for
// the action. Drawn from the check's scenes, so that a picture and a finding cannot disagree.
import { type Body, outermost } from '../contacts/body.ts';
import { itemKind } from '../domain/items.ts';
import { PLACES, SIDES } from '../domain/places.ts';
import type { Step } from '../domain/procedure.ts';
import { FIXTURE_DRAWINGS } from '../drawing/fixtures.ts';
import { FIGURE, spotOf } from '../drawing/geometry.ts';
import { lookedOver } from '../words/given.ts';
import { type Look, type Person, personOf } from './figure.ts';
import { GLYPHS } from './glyphs.ts';
import type { PictureBlock } from './model.ts';
import type { StepMoment } from './moments.ts';
import { type Paper, roleOf } from './paper.ts';
import { around, type Box, tag, text } from './svg.ts';

const SIZE = { width: 330, height: 190, thumb: 76, top: 2, names: 162 } as const;
const SCALE = 0.35;

/** The frame of the close-up: all that the small figures leave. */
function frameBeside(people: number): Box {
  const x = Math.max(1, people) * SIZE.thumb + 6;
  return { x, y: 2, width: SIZE.width - x - 2, height: SIZE.height - 4 };
}

/** Whom a step is about: whose items or place it is done to, or who is looked over. */
const subjectOf = ({ procedure }: Paper, step: Step): string =>
  step.of ??
  (step.action === 'inspect' && step.items.length === 0 ? lookedOver(procedure, step) : undefined) ??
  step.who;

/** The surfaces a step is about: its items' on whoever wears them, the hands it cleans, the place it touches. */
function meantBy(step: Step, scene: StepMoment['before']): (surface: string) => boolean {
  const owner = step.of ?? step.who;
  const body = scene.bodies[owner];
  if (step.items.length > 0) {
    const side = step.side === undefined ? '' : `${step.side}.`;
    return (surface) =>
      step.items.some((item) =>
        surface.startsWith(`${owner}.${item}.${itemKind(item).pair ? side : ''}${step.part ?? ''}`),
      );
  }
  const places =
    step.action === 'sanitise' && step.fixture === undefined
      ? SIDES.map((side) => `hand.${side}` as const)
      : step.place === undefined
        ? []
        : [step.place];
  const surfaces = places.map((place) => (body && outermost(body, place)) ?? `${owner}.${place}`);
  return (surface) => surfaces.includes(surface);
}

/** Those in the picture: whoever it is about first, then who does it or helps. */
function peopleIn(paper: Paper, step: Step): readonly string[] {
  const { who, helper } = step;
  return [...new Set([subjectOf(paper, step), who, ...(helper === undefined ? [] : [helper])])].slice(0, 2);
}

const MARGIN = 34;

/** What is shown close up: a box of the shape of its frame, wide enough to see where on the body it is. */
function closeOn(meant: readonly Box[], frame: Box): Box {
  const found = around(meant);
  const ratio = frame.width / frame.height;
  if (!found) return { x: 100 - 220 * ratio, y: -4, width: 440 * ratio, height: 440 };
  const height = Math.min(448, Math.max(found.height + 2 * MARGIN, (found.width + 2 * MARGIN) / ratio, 170));
  const width = height * ratio;
  const x = found.x + found.width / 2 - width / 2;
  const y = Math.max(-6, Math.min(found.y + found.height / 2 - height / 2, 444 - height));
  return { x, y, width, height };
}

const DEFS = tag(
  'defs',
  {},
  tag(
    'pattern',
    { id: 'hatch', width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    tag('rect', { width: 1.7, height: 7, fill: '#000' }),
  ),
);

const CHAIR =
  'M46 236 H154 V252 H148 V424 H138 V300 H62 V424 H52 V252 H46 Z M60 150 H66 V236 H60 Z M134 150 H140 V236 H134 Z';

const behind = (body: Body): string =>
  body.seated === undefined
    ? ''
    : tag('path', { d: CHAIR, fill: '#fff', stroke: '#000', 'stroke-width': 1.5 });

/** Wide letters of the font, as a share of its size; what is written small must not run out of its place. */
const WIDE = 0.66;

/** A role's name, a word to a line, as large as the longest word allows. */
function nameBelow(middle: number, name: string): string {
  const lines = name.split(' ');
  const longest = Math.max(...lines.map((line) => line.length));
  const size = Math.min(11, SIZE.thumb / (WIDE * longest), (SIZE.height - SIZE.names) / lines.length);
  return lines
    .map((line, index) =>
      tag(
        'text',
        {
          x: middle,
          y: SIZE.names + size * (index + 0.9),
          'font-size': size.toFixed(1),
          'font-family': 'Noto Sans',
          'font-weight': 600,
          'text-anchor': 'middle',
        },
        text(line),
      ),
    )
    .join('');
}

/** Somebody whole, small, with their role beneath. */
function thumb(at: number, drawing: string, name: string): string {
  const middle = at * SIZE.thumb + SIZE.thumb / 2;
  const x = middle - (FIGURE.width * SCALE) / 2;
  return (
    tag('g', { transform: `translate(${x} ${SIZE.top}) scale(${SCALE})` }, drawing) + nameBelow(middle, name)
  );
}

/** A fixture that the step goes to, stands on or uses. */
function fixtureOf({ procedure }: Paper, { fixture }: Step, frame: Box): string {
  const found = procedure.fixtures.find(({ id }) => id === fixture);
  if (!found) return '';
  const { x, y, width, height } = frame;
  return tag(
    'g',
    { transform: `translate(${x + width - 56} ${y + height - 52}) scale(1.15)` },
    tag('path', {
      d: FIXTURE_DRAWINGS[found.kind],
      fill: '#fff',
      stroke: '#000',
      'stroke-width': 1.6,
      'fill-rule': 'evenodd',
    }),
  );
}

function closeUp(paper: Paper, step: Step, frame: Box, { svg: drawing, meant }: Person): string {
  const view = closeOn(meant, frame);
  const { x, y } = frame;
  return (
    tag('rect', { ...frame, fill: '#fff' }) +
    tag('svg', { ...frame, viewBox: `${view.x} ${view.y} ${view.width} ${view.height}` }, drawing) +
    fixtureOf(paper, step, frame) +
    tag('rect', { ...frame, fill: 'none', stroke: '#000', 'stroke-width': 1.4 }) +
    tag(
      'g',
      { transform: `translate(${x + 4} ${y + 4})` },
      `${tag('circle', { cx: 23, cy: 23, r: 22, fill: '#fff', stroke: '#000', 'stroke-width': 1.4 })}${tag('g', { transform: 'translate(7 7) scale(0.8)' }, GLYPHS[step.action])}`,
    )
  );
}

/** A ring where a place lies that the drawing does not show: a back that is touched. */
function ringAt(
  { place }: Step,
  { meant }: Person,
): { readonly svg: string; readonly meant: readonly Box[] } {
  if (place === undefined || meant.length > 0) return { svg: '', meant };
  const [cx, cy] = spotOf(place);
  const ring = {
    cx,
    cy,
    r: 20,
    fill: 'none',
    stroke: '#000',
    'stroke-width': 4.5,
    'stroke-dasharray': '7 5',
  };
  return { svg: tag('circle', ring), meant: [{ x: cx - 20, y: cy - 20, width: 40, height: 40 }] };
}

const LISTED = 8;

function contaminatedOn({ words, procedure }: Paper, body: Body | undefined, moment: StepMoment): string {
  if (!body) return '';
  const surfaces = [...new Set(PLACES.map((place) => outermost(body, place) ?? `${body.id}.${place}`))];
  const names = surfaces.filter(moment.contaminated).map((id) => words.surface(procedure, id));
  const rest = names.length - LISTED;
  return [...names.slice(0, LISTED), ...(rest > 0 ? [`+ ${rest}`] : [])].join(', ');
}

function altOf(paper: Paper, step: Step, moment: StepMoment, scene: StepMoment['before']): string {
  const { words, print, procedure } = paper;
  const body = scene.bodies[subjectOf(paper, step)];
  const worn = [...new Set(body?.layers.map(({ item }) => item) ?? [])]
    .toReversed()
    .map((item) => words.item(item));
  const label = paper.print.set(`${roleOf(paper, step.who)}: ${words.stepLabel(procedure, step)}`);
  return print.picture(label, worn.join(', '), contaminatedOn(paper, body, moment));
}

/** The picture of a step; what is put on is shown as it is worn then. */
export function stepPicture(paper: Paper, index: number): PictureBlock {
  const step = paper.procedure.steps[index];
  const moment = paper.moments[index];
  if (!step || !moment) return { svg: '', alt: '' };
  const dressing = step.action === 'put-on' || step.action === 'sit';
  const scene = dressing ? moment.after : moment.before;
  const look: Look = { meant: meantBy(step, scene), hatched: moment.contaminated };
  const people = peopleIn(paper, step).flatMap((id): readonly (Person & { readonly id: string })[] => {
    const body = scene.bodies[id];
    if (!body) return [];
    const person = personOf(body, look);
    const about = id === subjectOf(paper, step) ? ringAt(step, person) : { svg: '', meant: person.meant };
    return [{ id, meant: about.meant, svg: behind(body) + person.svg + about.svg }];
  });
  const [first] = people;
  const inside =
    DEFS +
    people.map(({ id, svg }, at) => thumb(at, svg, roleOf(paper, id))).join('') +
    (first ? closeUp(paper, step, frameBeside(people.length), first) : '');
  return {
    svg: tag(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        viewBox: `0 0 ${SIZE.width} ${SIZE.height}`,
        width: SIZE.width,
        height: SIZE.height,
      },
      inside,
    ),
    alt: altOf(paper, step, moment, scene),
  };
}
