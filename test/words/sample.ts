// A small invented procedure that uses every action once, for the golden sentences: it changes only with its test.
import { readProcedure } from '../../src/language/index.ts';
import type { Finding } from '../../src/check/finding.ts';
import type { Procedure } from '../../src/domain/procedure.ts';

const EVERY_ACTION = `doffline: 1
title: Every action (invented)
kind: doffing
version: "1"
invented: true
people:
  wearer:
    wears: [inner-gloves, hooded-coverall, shoe-covers, n95-respirator, face-shield, apron, outer-gloves]
    hand: right
  observer: {wears: [gloves]}
  assistant: {wears: [gloves]}
room:
  zones: {patient-room: patient, doffing-area: doffing, clean-side: clean}
  fixtures:
    clean-chair: {kind: chair, zone: doffing-area, clean: true}
    bin-1: {kind: bin, zone: doffing-area, worked: hand}
    wet-mat: {kind: mat, zone: doffing-area, product: chlorine-0.5}
    exit: {kind: door, zone: doffing-area, worked: hand}
products: [alcohol-hand-rub, disinfectant-wipe, chlorine-0.5]
start:
  - {surface: room.exit.handle, state: contaminated, reason: not cleaned since the last exit}
steps:
  - {id: call, who: observer, do: say, helper: wearer}
  - {id: look, do: inspect}
  - {id: leave, do: move, to: doffing-area}
  - {id: mat, do: step-on, on: wet-mat}
  - {id: apron, do: remove, item: apron, helper: assistant, on: bin-1}
  - {id: rub-outer, do: sanitise, with: alcohol-hand-rub}
  - {id: outer, do: remove, item: outer-gloves}
  - {id: look-inner, who: observer, do: inspect, item: inner-gloves, of: wearer}
  - {id: rub-inner, do: sanitise, with: alcohol-hand-rub}
  - {id: shield, do: remove, item: face-shield, technique: front-grip}
  - {id: strings, do: unfasten, item: shoe-covers}
  - {id: zip, do: unfasten, item: hooded-coverall}
  - {id: suit, do: remove, item: hooded-coverall, technique: helper-rolls-outside, helper: assistant}
  - {id: rub-assistant, who: assistant, do: sanitise, with: alcohol-hand-rub}
  - {id: sit, do: sit, on: clean-chair}
  - {id: covers, do: remove, item: shoe-covers}
  - {id: shoes, do: wipe, item: shoes, with: disinfectant-wipe}
  - {id: stand, do: stand, on: clean-side-floor}
  - {id: respirator, do: remove, item: n95-respirator}
  - {id: inner-left, do: remove, item: inner-gloves, side: left, technique: peel-one}
  - {id: fresh, do: put-on, item: gloves, side: left, technique: pull-on-one}
  - {id: zip-assistant, who: assistant, do: fasten, item: hooded-coverall, of: wearer}
  - {id: door, do: touch, on: exit}
  - {id: back, who: assistant, do: touch, place: back, of: wearer}
`;

/** Reads the sample. */
export function everyAction(): Procedure {
  const { procedure, diagnostics } = readProcedure(EVERY_ACTION);
  if (!procedure) throw new Error(JSON.stringify(diagnostics));
  return procedure;
}

const BARE = {
  severity: 'error',
  steps: [0],
  surfaces: [],
  params: {},
  events: [],
  route: [],
  mends: [],
  evidence: [],
} as const;
const GLOVE = 'wearer.inner-gloves.left.outside';
const SOILED = { step: -1, to: 'wearer.face-shield.front', events: [] } as const;
const ON_GLOVE = { step: 9, from: 'wearer.face-shield.front', to: GLOVE, events: [] } as const;

/** Findings of every kind about the sample, written by hand so that only wording changes them. */
export const FINDINGS: readonly Finding[] = [
  {
    ...BARE,
    code: 'impossible.held-by',
    kind: 'impossible',
    steps: [12],
    params: { item: 'hooded-coverall', by: 'shoe-covers', person: 'wearer' },
  },
  {
    ...BARE,
    code: 'open.skin',
    kind: 'open',
    agent: 'enveloped',
    steps: [18],
    surface: 'wearer.face',
    surfaces: ['wearer.face'],
    route: [
      SOILED,
      ON_GLOVE,
      { step: 18, from: GLOVE, to: 'wearer.n95-respirator.strap', events: [] },
      { step: 18, from: 'wearer.n95-respirator.strap', to: 'wearer.face', events: [] },
    ],
  },
  {
    ...BARE,
    code: 'one-slip.clothes',
    kind: 'one-slip',
    severity: 'note',
    steps: [13],
    surface: 'wearer.scrubs.back',
    surfaces: [
      'wearer.scrubs.back',
      'assistant.hand.left',
      'assistant.hand.right',
      'wearer.neck',
      'wearer.ears',
    ],
    events: ['rub-assistant:omitted-hygiene'],
    route: [
      {
        step: -1,
        to: 'wearer.hooded-coverall.back',
        events: ['start:soiled-back:wearer.hooded-coverall.back'],
      },
      { step: 12, from: 'wearer.hooded-coverall.back', to: 'assistant.gloves.left.outside', events: [] },
      { step: 23, from: 'assistant.gloves.left.outside', to: 'wearer.scrubs.back', events: [] },
    ],
  },
  {
    ...BARE,
    code: 'one-slip.skin',
    kind: 'one-slip',
    severity: 'note',
    steps: [6],
    surface: 'assistant.hand.left',
    surfaces: ['assistant.hand.left'],
    events: ['start:pinhole:assistant.gloves'],
    route: [
      SOILED,
      { step: 12, from: 'wearer.face-shield.front', to: 'assistant.gloves.left.outside', events: [] },
      {
        step: 12,
        from: 'assistant.gloves.left.outside',
        to: 'assistant.hand.left',
        events: ['start:pinhole:assistant.gloves'],
      },
    ],
  },
  {
    ...BARE,
    code: 'accepted.equipment',
    kind: 'accepted',
    severity: 'note',
    steps: [9],
    surface: GLOVE,
    surfaces: [GLOVE],
    route: [SOILED, ON_GLOVE],
  },
  {
    ...BARE,
    code: 'practice.shield-by-rear-strap',
    kind: 'practice',
    severity: 'note',
    steps: [9],
    evidence: ['practice.shield-by-rear-strap'],
    accepted: {
      finding: 'practice.shield-by-rear-strap',
      reason: 'The straps of this model break.',
      by: 'the infection-prevention lead',
      date: '2026-01-31',
      review: '2026-07-31',
    },
  },
  {
    ...BARE,
    code: 'variant.omission',
    kind: 'variant',
    severity: 'note',
    steps: [8],
    surface: 'wearer.eyes',
    surfaces: ['wearer.eyes'],
    params: { before: '2', after: '1', unseen: 'yes' },
  },
  {
    ...BARE,
    code: 'variant.order',
    kind: 'variant',
    severity: 'note',
    steps: [8, 0],
    surface: 'wearer.eyes',
    surfaces: ['wearer.eyes'],
    params: { before: 'none', after: '0', unseen: 'no', to: '0' },
  },
  {
    ...BARE,
    code: 'coverage.bare',
    kind: 'coverage',
    surface: 'wearer.neck',
    surfaces: ['wearer.neck'],
    params: { person: 'wearer', declared: 'yes' },
  },
  {
    ...BARE,
    code: 'coverage.left-on',
    kind: 'coverage',
    params: { person: 'wearer', item: 'inner-gloves' },
  },
  {
    ...BARE,
    code: 'coverage.left-open',
    kind: 'coverage',
    params: { person: 'wearer', item: 'gown' },
  },
  {
    ...BARE,
    code: 'acceptance.unmatched',
    kind: 'acceptance',
    severity: 'note',
    steps: [9],
    params: {
      finding: 'practice.shield-by-rear-strap',
      step: 'shield-off',
      by: 'the infection-prevention lead',
      date: '2026-01-31',
      review: '2026-07-31',
      entry: '2',
    },
  },
  {
    ...BARE,
    code: 'acceptance.void',
    kind: 'acceptance',
    severity: 'note',
    steps: [],
    params: {
      finding: 'open.skin',
      by: 'the infection-prevention lead',
      date: '2026-01-31',
      review: '2026-07-31',
      entry: '1',
    },
  },
  {
    ...BARE,
    code: 'acceptance.overdue',
    kind: 'acceptance',
    severity: 'note',
    steps: [],
    params: {
      finding: 'coverage.bare',
      surface: 'wearer.neck',
      by: 'the infection-prevention lead',
      date: '2026-01-31',
      review: '2026-07-31',
      entry: '3',
    },
  },
];
