// Every sentence pattern and every name of a language, one row each, so that somebody who speaks it can read all of it
// beside English and sign it off. The rows follow from the tables: what is added to a table is read too. Not in them: the
// order search's reasons and figures with many values, which no list could show whole.
import type { Finding, FindingCode } from '../check/finding.ts';
import { FINDING_KINDS } from '../check/finding.ts';
import type { FixtureField, Rewritten } from '../compare/around.ts';
import { PROBLEM_CODES } from '../contacts/problem.ts';
import type { SurfaceClass } from '../contacts/plan.ts';
import { ACTION_IDS } from '../domain/actions.ts';
import { ITEM_IDS } from '../domain/items.ts';
import { KINDS, ROLES } from '../domain/procedure.ts';
import { AGENTS, PRODUCT_IDS } from '../domain/products.ts';
import { SLIPS } from '../domain/slips.ts';
import { TECHNIQUE_IDS } from '../domain/techniques/index.ts';
import { evidenceIds, evidenceStatuses } from '../evidence/index.ts';
import { ruleOf } from './figures.ts';
import { ROOM, SAMPLE } from './sampleRoom.ts';
import type { Words } from './words.ts';

export const PATTERN_GROUPS = [
  'steps',
  'findings',
  'impossible',
  'practice',
  'slips',
  'changes',
  'guide',
  'cautions',
  'items',
  'techniques',
  'products',
  'other-names',
] as const;
export type PatternGroup = (typeof PATTERN_GROUPS)[number];

export interface PatternRow {
  readonly group: PatternGroup;
  /** Names the row within its group. */
  readonly key: string;
  readonly text: string;
}

type Rows = readonly (readonly [key: string, text: string])[];

const SURFACES: Readonly<Record<SurfaceClass, string>> = {
  mucosa: 'wearer.eyes',
  skin: 'wearer.hand.left',
  clothes: 'wearer.scrubs.front',
  shoes: 'wearer.shoes.right.sole',
  'clean-side': 'room.clean-chair.seat',
  equipment: 'assistant.gloves.left.outside',
  fixture: 'room.exit.handle',
};
const CLASSES = Object.keys(SURFACES) as readonly SurfaceClass[];

const BARE = {
  severity: 'note',
  surfaces: [],
  params: {},
  events: [],
  route: [],
  mends: [],
  evidence: [],
} as const;

/** Two steps of the sample that slips and findings happen at. */
const REMOVED = SAMPLE.steps.findIndex(({ id }) => id === 'into-bin');
const HELPED = SAMPLE.steps.findIndex(({ id }) => id === 'with-helper');

const SOMEBODY = SLIPS.filter(({ kind }) => kind !== 'circumstance').map(({ id }) => `into-bin:${id}`);
const SOMETHING = SLIPS.filter(({ kind }) => kind === 'circumstance').map(
  ({ id }) => `start:${id}:wearer.apron.front`,
);

function atSurface(kind: 'open' | 'accepted' | 'one-slip'): readonly Finding[] {
  return CLASSES.map((end) => ({
    ...BARE,
    code: `${kind}.${end}` as FindingCode,
    kind,
    steps: [REMOVED],
    surface: SURFACES[end],
    surfaces: [SURFACES[end], 'wearer.neck', 'wearer.face'],
    events: kind === 'one-slip' ? ['into-bin:brush'] : [],
  }));
}

const variant = (code: 'variant.omission' | 'variant.order', params: Finding['params']): Finding => ({
  ...BARE,
  code,
  kind: 'variant',
  steps: [REMOVED],
  surface: 'wearer.eyes',
  surfaces: ['wearer.eyes'],
  params: { before: '2', after: '0', unseen: 'yes', ...params },
});

const coverage = (code: FindingCode, more: Partial<Finding>): Finding => ({
  ...BARE,
  code,
  kind: 'coverage',
  steps: [],
  params: { person: 'wearer', item: 'gown' },
  ...more,
});

const acceptance = (code: FindingCode, more: Partial<Finding>): Finding => ({
  ...BARE,
  code,
  kind: 'acceptance',
  steps: [],
  params: { finding: 'coverage.left-on', by: '…', date: '2026-01-31', review: '2026-07-31', entry: '1' },
  ...more,
});

const ACCEPTED = {
  finding: 'practice.example',
  reason: '…',
  by: '…',
  date: '2026-01-31',
  review: '2026-07-31',
} as const;

const FINDINGS: readonly Finding[] = [
  ...(['open', 'accepted', 'one-slip'] as const).flatMap(atSurface),
  {
    ...BARE,
    code: 'one-slip.skin',
    kind: 'one-slip',
    steps: [0],
    surface: SURFACES.skin,
    events: SOMETHING.slice(0, 1),
  },
  variant('variant.omission', {}),
  variant('variant.order', { to: '0' }),
  variant('variant.order', { to: '3', after: 'none' }),
  coverage('coverage.bare', { surface: 'wearer.neck', params: { person: 'wearer', declared: 'yes' } }),
  coverage('coverage.left-on', {}),
  coverage('coverage.left-open', {}),
  acceptance('acceptance.unmatched', { steps: [REMOVED] }),
  acceptance('acceptance.void', {}),
  acceptance('acceptance.overdue', {}),
];

const RULES = evidenceIds.flatMap((id) => ruleOf(id) ?? []);

const both = (key: string, { title, text }: { readonly title: string; readonly text: string }): Rows => [
  [`${key} heading`, title],
  [key, text],
];

function problemRows(words: Words): Rows {
  const given = {
    item: 'outer-gloves',
    side: 'left',
    by: 'gown',
    person: 'wearer',
    fixture: 'exit',
    product: 'soap-and-water',
    surface: SURFACES.skin,
    action: 'wipe',
  };
  const layering = ['never-put-on', 'never-taken-off', 'other-way-round'].map((what): Finding => {
    const params = { item: 'gown', by: 'apron', what };
    return { ...BARE, code: 'impossible.layering', kind: 'impossible', steps: [REMOVED], params };
  });
  return [
    ...PROBLEM_CODES.flatMap((code): Rows => {
      const { wrong, mend } = words.problem(SAMPLE, { code, step: REMOVED, params: given });
      return [
        [code, wrong],
        [`${code} mend`, mend],
      ];
    }),
    ...layering.flatMap((one) => both(`layering ${one.params.what ?? ''}`, words.finding(SAMPLE, one))),
    ...both(
      'not-worked-out',
      words.finding(SAMPLE, { ...BARE, code: 'impossible.not-worked-out', kind: 'impossible', steps: [] }),
    ),
  ];
}

const practiceRows = (words: Words): Rows =>
  RULES.flatMap((rule) =>
    both(
      rule,
      words.finding(SAMPLE, {
        ...BARE,
        code: rule,
        kind: 'practice',
        steps: [HELPED],
        params: { person: 'assistant', when: 'before' },
        accepted: ACCEPTED,
      }),
    ),
  );

const CHANGED = { ...SAMPLE, title: '…', agents: ['non-enveloped'] } as const;

type Change = Parameters<Words['compare']['around']>[2];

const WEARER = { person: 'wearer' } as const;
const [SEAT] = ROOM.fixtures;

const keys = <Key extends string>(all: Readonly<Record<Key, true>>): readonly Key[] =>
  Object.keys(all) as Key[];
const REWRITTEN = keys<Rewritten>({ title: true, about: true, source: true, donning: true });
const FIELDS = keys<FixtureField>({ kind: true, zone: true, clean: true, worked: true, product: true });

/** What one of the two has and the other has not. */
const lone = (only: 'a' | 'b'): readonly Change[] => [
  { what: 'agent', only, agent: 'enveloped' },
  { what: 'person', only, ...WEARER },
  { what: 'worn', where: 'over', only, ...WEARER, item: 'gown' },
  { what: 'worn', where: 'underneath', only, ...WEARER, item: 'shoes' },
  { what: 'bare', only, ...WEARER, place: 'neck' },
  { what: 'zone', only, zone: 'doffing-area' },
  { what: 'fixture', only, fixture: 'exit' },
  { what: 'product', only, product: 'soap-and-water' },
];

const STATED = { surface: 'room.exit.handle', state: 'contaminated' } as const;

const CHANGES: readonly Change[] = [
  ...REWRITTEN.map((field): Change => ({ what: 'rewritten', field, before: '…', now: '' })),
  { what: 'invented', now: true },
  { what: 'invented', now: false },
  ...lone('a'),
  ...lone('b'),
  { what: 'layers', ...WEARER, before: ['gown', 'outer-gloves'], now: ['outer-gloves', 'gown'] },
  { what: 'starts', ...WEARER, before: 'patient-room', now: 'doffing-area' },
  { what: 'hand', ...WEARER, now: 'left' },
  ...FIELDS.map(
    (field): Change => ({ what: 'fixture-field', field, before: SEAT, now: { ...SEAT, clean: false } }),
  ),
  { what: 'start', surface: STATED.surface, before: null, now: STATED },
  { what: 'spraying', now: true },
  { what: 'spraying', now: false },
  { what: 'observer', before: null, now: { misses: '…', dependence: 'low' } },
  { what: 'accepted', before: null, now: ACCEPTED },
  { what: 'accepted', before: ACCEPTED, now: null },
  { what: 'accepted', before: ACCEPTED, now: { ...ACCEPTED, review: '2027-01-31' } },
];

/** What became of a step, of what stands around the steps, and what only one of two has. */
function changeRows({ compare }: Words): Rows {
  const row = { a: REMOVED, b: REMOVED, by: 'id', moved: false, changed: [] } as const;
  const rows: readonly (readonly [string, Parameters<typeof compare.step>[2]])[] = [
    ['new', { ...row, a: null }],
    ['gone', { ...row, b: null }],
    ['moved', { ...row, a: HELPED, moved: true }],
    ['changed', { ...row, a: HELPED, changed: ['helper', 'fixture'] }],
  ];
  return [
    ...rows.map(([key, one]) => [key, compare.step(SAMPLE, CHANGED, one)] as const),
    ...CHANGES.map((one, at) => [`${one.what} ${at}`, compare.around(SAMPLE, CHANGED, one)] as const),
    ['gap', compare.gap(SAMPLE, CHANGED, { what: 'person', only: 'a', id: 'wearer' })],
  ];
}

/** More places than any sentence has to fill. */
const DOTS = Array.from({ length: 9 }, () => '…');

/** Every text of a table of sentences; a sentence with places to fill is read with dots in them. */
function textsIn(table: unknown, path: string): Rows {
  if (typeof table === 'string') return [[path, table]];
  if (typeof table === 'function') {
    const say = table as (...places: readonly string[]) => unknown;
    return textsIn(say(...DOTS), path);
  }
  if (typeof table !== 'object' || table === null) return [];
  return Object.entries(table).flatMap(([key, inner]) =>
    textsIn(inner, path === '' ? key : `${path} ${key}`),
  );
}

function otherNames(words: Words): Rows {
  return [
    ...KINDS.map((id) => [id, words.kind(id)] as const),
    ...ROLES.map((id) => [id, words.role(id)] as const),
    ...ACTION_IDS.map((id) => [id, words.action(id)] as const),
    ...AGENTS.map((id) => [id, words.agent(id)] as const),
    ...CLASSES.map((id) => [id, words.surfaceClass(id)] as const),
    ...FINDING_KINDS.map((id) => [id, words.findingKind(id)] as const),
    ...(['error', 'note'] as const).map((id) => [id, words.severity(id)] as const),
    ...evidenceStatuses.map((id) => [id, words.status(id)] as const),
    ...[0, 1, 2, null].map((count) => [`barriers ${count ?? 'none'}`, words.barriers(count)] as const),
    ['percent', words.chance(0.008, 'judgement')],
  ];
}

const ROWS: Readonly<Record<PatternGroup, (words: Words) => Rows>> = {
  steps: (words) => SAMPLE.steps.map((step) => [step.id, words.step(SAMPLE, step)]),
  findings: (words) =>
    FINDINGS.flatMap((finding, at) => both(`${finding.code} ${at}`, words.finding(SAMPLE, finding))),
  impossible: problemRows,
  practice: practiceRows,
  slips: (words) => [
    ...SLIPS.map(({ id }) => [`${id} name`, words.slip(id)] as const),
    ...[...SOMEBODY, ...SOMETHING].map((key) => [key, words.event(SAMPLE, key)] as const),
  ],
  changes: changeRows,
  guide: (words) => textsIn(words.guide, ''),
  cautions: (words) => words.cautions.map((caution, at) => [String(at + 1), caution]),
  items: (words) => ITEM_IDS.map((id) => [id, words.item(id)]),
  techniques: (words) => TECHNIQUE_IDS.map((id) => [id, words.technique(id)]),
  products: (words) => PRODUCT_IDS.map((id) => [id, words.product(id)]),
  'other-names': otherNames,
};

/** Every row of a language, in a fixed order. */
export const patternsOf = (words: Words): readonly PatternRow[] =>
  PATTERN_GROUPS.flatMap((group) => ROWS[group](words).map(([key, text]) => ({ group, key, text })));
