// How each item looks, part by part, for the parts one sees from the front; the others (back, ties, straps, insides) are
// named beside the figure. Drawn by hand for this tool, recognisable rather than exact. An item without an entry
// here does not compile.
import type { ItemId, PartId } from '../domain/items.ts';
import type { Point } from './geometry.ts';

export interface Shape {
  readonly part: PartId;
  readonly d: string;
  /** Where a contact with it is marked. */
  readonly at: Point;
  /** Drawn on the wearer's right and mirrored to the left. */
  readonly mirror?: boolean;
  /** One sees through it. */
  readonly clear?: boolean;
}

export interface Drawing {
  /** Class of its colour. */
  readonly tint: string;
  readonly shapes: readonly Shape[];
  /** Lines on top without contamination of their own: pleats, seams, a valve. */
  readonly lines?: string;
}

const shape = (part: PartId, at: Point, d: string, more: Partial<Shape> = {}): Shape => ({
  part,
  at,
  d,
  ...more,
});

/** A sided part of an item worn in the middle: right as drawn, left mirrored. */
const pair = (part: 'sleeve' | 'cuff' | 'leg', at: Point, d: string): readonly Shape[] => [
  shape(`${part}-right`, at, d),
  shape(`${part}-left`, at, d, { mirror: true }),
];

const HAND =
  'M30 209 L46 214 C47 221 53 227 52 234 C50 237 45 234 43.5 231 C43.5 241 40 252 34 252 C27 251 23.5 239 26 227 Z';
const SOLE = 'M65 415 L98 415 L98 424 L65 424 Z';
const FOOT = 'M78 388 L96 388 L98 415 L65 415 C66 404 76 402 78 388 Z';

const TORSO =
  'M87 88 C92 94 108 94 113 88 L135 97 L130 140 L128 180 L132 234 L68 234 L72 180 L70 140 L65 97 Z';
const SLEEVE = 'M66 96 C53 102 48 122 42 152 L32 198 L49 203 L60 168 L75 128 Z';
const CUFF = 'M32 197 L49 202 L46 215 L29 210 Z';

const gown = (): Drawing => ({
  tint: 'gown',
  shapes: [
    shape('skirt', [90, 310], 'M68 233 L132 233 L142 348 L58 348 Z'),
    shape('front', [100, 140], TORSO),
    ...pair('sleeve', [52, 150], SLEEVE),
    ...pair('cuff', [39, 206], CUFF),
  ],
});

const COVERALL_LEG = 'M68 230 L100 230 L99 310 L99 394 L76 394 L72 310 Z';

const coverall = (more: readonly Shape[]): Drawing => ({
  tint: 'coverall',
  shapes: [
    ...pair('leg', [85, 320], COVERALL_LEG),
    shape('front', [84, 150], TORSO),
    ...pair('sleeve', [52, 150], SLEEVE),
    ...pair('cuff', [39, 206], CUFF),
    shape('collar', [116, 91], 'M84 84 C92 93 108 93 116 84 L121 95 C108 103 92 103 79 95 Z'),
    ...more,
    shape('zip', [100, 160], 'M96.5 98 L103.5 98 L103.5 230 L96.5 230 Z'),
  ],
  lines: 'M68 234 L132 234',
});

const glove = (tint: string, cuff: string): Drawing => ({
  tint,
  shapes: [shape('outside', [36, 232], `${HAND} ${cuff}`)],
});

const MASK_LINES = 'M83 64 L117 64 M84 70 L116 70 M86 76 L114 76';
const CUP = 'M100 48 C107 50 118 60 119 68 C117 80 108 86 100 87 C92 86 83 80 81 68 C82 60 93 50 100 48 Z';

const footCover = (top: number, tint: string): Drawing => ({
  tint,
  shapes: [
    shape('outside', [84, 380], `M74 ${top} L100 ${top} L99 390 L100 416 L62 416 C63 403 75 400 76 388 Z`),
    shape('sole', [82, 420], 'M62 415 L100 415 L100 424 L62 424 Z'),
  ],
});

const VISOR = 'M76 36 C84 30 116 30 124 36 L123 78 C114 86 86 86 77 78 Z';

/** The window of a hood: part of its outside, seen through. */
const window = shape('outside', [70, 30], VISOR, { clear: true });

export const DRAWINGS: Readonly<Record<ItemId, Drawing>> = {
  scrubs: {
    tint: 'scrubs',
    shapes: [
      ...pair('leg', [86, 300], 'M72 228 L100 228 L98 300 L96 386 L79 386 L76 300 Z'),
      shape('hem', [100, 215], 'M74 180 L126 180 L129 232 L71 232 Z'),
      shape(
        'front',
        [100, 132],
        'M87 88 L100 108 L113 88 L134 96 L145 134 L129 138 L126 181 L74 181 L71 138 L55 134 L66 96 Z',
      ),
    ],
    lines: 'M74 181 L126 181',
  },
  shoes: { tint: 'shoes', shapes: [shape('upper', [82, 405], FOOT), shape('sole', [82, 420], SOLE)] },
  gloves: glove('glove-single', 'M32 200 L48 205 L46 215 L29 210 Z'),
  'outer-gloves': glove('glove-outer', 'M29 186 L54 193 L46 216 L29 211 Z'),
  'inner-gloves': glove('glove-inner', 'M32 200 L48 205 L46 215 L29 210 Z'),
  gown: gown(),
  'gown-hook-and-loop': { ...gown(), lines: 'M112 88 L124 92 L122 98 L111 94 Z' },
  coverall: coverall([]),
  'hooded-coverall': coverall([
    shape(
      'hood',
      [78, 26],
      'M100 4 C126 4 136 26 134 52 C133 72 126 90 112 96 L88 96 C74 90 67 72 66 52 C64 26 74 4 100 4 Z M100 24 C86 24 80 36 80 52 C80 70 88 84 100 84 C112 84 120 70 120 52 C120 36 114 24 100 24 Z',
    ),
  ]),
  apron: {
    tint: 'apron',
    shapes: [
      shape(
        'neck-strap',
        [88, 98],
        'M82 110 C82 96 86 88 90 84 L94 87 C89 92 86 98 86 110 Z M118 110 C118 96 114 88 110 84 L106 87 C111 92 114 98 114 110 Z',
      ),
      shape('skirt', [114, 300], 'M66 226 L134 226 L138 338 L62 338 Z'),
      shape('front', [114, 160], 'M81 109 L119 109 L122 146 L134 178 L134 227 L66 227 L66 178 L78 146 Z'),
    ],
    lines: 'M66 180 L58 184 M134 180 L142 184',
  },
  'surgical-hood': {
    tint: 'hood',
    shapes: [
      shape(
        'lower-edge',
        [78, 96],
        'M78 74 C70 88 62 96 58 106 C84 116 116 116 142 106 C138 96 130 88 122 74 C114 88 86 88 78 74 Z',
      ),
      shape(
        'outside',
        [74, 30],
        'M100 5 C125 5 134 26 132 52 C131 72 124 88 112 92 L88 92 C76 88 69 72 68 52 C66 26 75 5 100 5 Z M100 26 C87 26 81 37 81 52 C81 69 89 82 100 82 C111 82 119 69 119 52 C119 37 113 26 100 26 Z',
      ),
    ],
  },
  cap: {
    tint: 'hood',
    shapes: [
      shape(
        'outside',
        [100, 17],
        'M71 50 C66 20 82 5 100 5 C118 5 134 20 129 50 C126 34 116 30 100 30 C84 30 74 34 71 50 Z',
      ),
    ],
    lines: 'M73 42 C84 30 116 30 127 42',
  },
  'face-shield': {
    tint: 'shield',
    shapes: [
      shape('front', [122, 84], 'M70 28 C84 21 116 21 130 28 L128 92 C116 104 84 104 72 92 Z', {
        clear: true,
      }),
      shape('strap', [70, 26], 'M69 24 C84 16 116 16 131 24 L131 32 C116 25 84 25 69 32 Z'),
    ],
  },
  goggles: {
    tint: 'goggles',
    shapes: [
      shape('strap', [76, 45], 'M73 42 L80 41 L80 49 L73 48 Z M127 42 L120 41 L120 49 L127 48 Z'),
      shape(
        'front',
        [112, 46],
        'M84 36 L116 36 C122 36 123 42 122 48 C121 55 112 57 107 55 C103 53 97 53 93 55 C88 57 79 55 78 48 C77 42 78 36 84 36 Z',
        { clear: true },
      ),
    ],
    lines: 'M82 40 L118 40',
  },
  'surgical-mask': {
    tint: 'mask',
    shapes: [shape('front', [104, 70], 'M82 58 C92 52 108 52 118 58 L116 80 C108 87 92 87 84 80 Z')],
    lines: MASK_LINES,
  },
  'n95-respirator': {
    tint: 'respirator',
    shapes: [shape('front', [104, 70], CUP)],
    lines: 'M94 53 L106 53 M81 64 L72 56 M119 64 L128 56 M82 72 L73 78 M118 72 L127 78',
  },
  'ffp2-respirator': {
    tint: 'respirator',
    shapes: [shape('front', [104, 70], 'M100 48 L119 66 L114 82 L100 88 L86 82 L81 66 Z')],
    lines: 'M100 48 L100 88 M81 66 L119 66',
  },
  'ffp3-respirator': {
    tint: 'respirator',
    shapes: [shape('front', [108, 64], CUP)],
    lines: 'M94 53 L106 53 M93 72 a7 7 0 1 0 14 0 a7 7 0 1 0 -14 0 M95 69 L105 69 M94 73 L106 73',
  },
  'powered-hood': {
    tint: 'powered',
    shapes: [
      shape(
        'lower-edge',
        [72, 112],
        'M72 84 C64 94 58 102 54 118 C84 130 116 130 146 118 C142 102 136 94 128 84 Z',
      ),
      shape(
        'outside',
        [70, 30],
        `M100 0 C128 0 140 22 138 50 C137 74 132 88 126 94 L74 94 C68 88 63 74 62 50 C60 22 72 0 100 0 Z ${VISOR}`,
      ),
      window,
    ],
    lines: VISOR,
  },
  'powered-helmet': {
    tint: 'powered',
    shapes: [
      shape(
        'lower-edge',
        [72, 102],
        'M74 84 C68 92 64 98 60 108 C84 118 116 118 140 108 C136 98 132 92 126 84 Z',
      ),
      shape(
        'outside',
        [72, 20],
        `M100 -2 C130 -2 140 16 138 38 L136 60 C134 78 130 86 124 92 L76 92 C70 86 66 78 64 60 L62 38 C60 16 70 -2 100 -2 Z ${VISOR}`,
      ),
      window,
    ],
    lines: `${VISOR} M64 32 L136 32`,
  },
  blower: {
    tint: 'blower',
    shapes: [
      shape('hose', [148, 120], 'M141 180 C156 150 156 96 130 62 L135 58 C163 94 163 152 148 182 Z'),
      shape('unit', [144, 194], 'M128 178 L156 178 L156 212 L128 212 Z'),
      shape('buckle', [100, 192], 'M68 186 L132 186 L132 194 L110 194 L110 199 L90 199 L90 194 L68 194 Z'),
    ],
    lines: 'M133 186 L151 186 M133 192 L151 192 M133 198 L151 198',
  },
  'boot-covers': { ...footCover(306, 'boot-cover'), lines: 'M74 312 L100 312' },
  'shoe-covers': {
    tint: 'shoe-cover',
    shapes: [
      ...footCover(382, 'shoe-cover').shapes,
      shape('strings', [88, 366], 'M77 362 L98 362 L98 368 L77 368 Z'),
    ],
    lines: 'M84 364 L78 356 M84 364 L92 356',
  },
  'rubber-boots': { ...footCover(318, 'rubber-boot'), lines: 'M74 326 L100 326 M63 408 L99 408' },
};

/** Bare places one sees, drawn before anything is worn. */
export const BODY: readonly { readonly place: string; readonly d: string; readonly mirror?: boolean }[] = [
  ...[false, true].map((mirror) => ({ place: 'foot', d: FOOT, mirror })),
  { place: 'neck', d: 'M88 76 L112 76 L115 97 L85 97 Z' },
  ...[false, true].flatMap((mirror) => [
    { place: 'arm', d: 'M66 98 C54 104 50 124 44 152 L34 200 L47 204 L58 168 L74 128 Z', mirror },
    { place: 'wrist', d: 'M34 198 L47 203 L45 215 L30 210 Z', mirror },
    { place: 'hand', d: HAND, mirror },
    { place: 'ankle', d: 'M79 384 L95 384 L95 396 L78 396 Z', mirror },
  ]),
  { place: 'ears', d: 'M74 44 C68 42 68 58 74 60 Z M126 44 C132 42 132 58 126 60 Z' },
  {
    place: 'face',
    d: 'M100 16 C118 16 127 30 126 48 C125 68 113 86 100 86 C87 86 75 68 74 48 C73 30 82 16 100 16 Z',
  },
  {
    place: 'scalp',
    d: 'M73 44 C70 22 84 8 100 8 C116 8 130 22 127 44 C120 30 112 27 100 27 C88 27 80 30 73 44 Z',
  },
  {
    place: 'eyes',
    d: 'M84 46 C87 41 94 41 97 46 C94 50 87 50 84 46 Z M103 46 C106 41 113 41 116 46 C113 50 106 50 103 46 Z',
  },
  { place: 'nose', d: 'M100 49 L95 61 C97 64 103 64 105 61 Z' },
  { place: 'mouth', d: 'M89 71 C96 67 104 67 111 71 C106 79 94 79 89 71 Z' },
];
