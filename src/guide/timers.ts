// What is timed at a step, and for how long: wet contact, rubbing and drying of hands, from the unit's own product data
// where it gives them, else from published records. Where a label's time is not given, the longest published one holds:
// waiting too long harms nobody.
import type { Performed } from '../contacts/interpret.ts';
import { itemKind } from '../domain/items.ts';
import type { TimerKind } from '../domain/guiding.ts';
import type { Step } from '../domain/procedure.ts';
import type { ProductId } from '../domain/products.ts';
import { type EvidenceId, evidence, evidenceField, evidenceNumber } from '../evidence/index.ts';
import { compiledFor } from './plans.ts';
import type { ProductTime, Setup } from './setup.ts';

/** A time to be kept, and where it comes from: a record, or the unit's own words. */
export interface TimerSpec {
  readonly id: string;
  readonly kind: TimerKind;
  readonly seconds: number;
  readonly evidence?: EvidenceId;
  readonly source?: string;
}

type Published = readonly [seconds: number, evidence: EvidenceId];
const MINUTE = 60;

const RUB: Published = [
  evidenceField('disinfection.hand-rub.who', 'envelopedSeconds'),
  'disinfection.hand-rub.who',
];
const WASH: Published = [evidenceField('handwash.duration', 'highSeconds'), 'handwash.duration'];
const DRY: Published = [evidenceNumber('handrub.dry.3ml'), 'handrub.dry.3ml'];
const LABEL: Published = [
  evidenceField('disinfection.wipe.label-contact', 'highSeconds'),
  'disinfection.wipe.label-contact',
];
const CHLORINE: Published = [evidenceNumber('chlorine.contact-minutes') * MINUTE, 'chlorine.contact-minutes'];

function contactOf(id: EvidenceId): Published {
  const { value } = evidence(id);
  const seconds = typeof value === 'object' && 'contactSeconds' in value ? value.contactSeconds : 0;
  return [typeof seconds === 'number' ? seconds : 0, id];
}

/** How long hands are rubbed or washed with each product. */
const ON_HANDS: Readonly<Record<ProductId, Published>> = {
  'alcohol-hand-rub': RUB,
  'soap-and-water': WASH,
  'chlorine-0.05': WASH,
  'chlorine-0.5': contactOf('efficacy.chlorine-strong.enveloped.hard'),
  'disinfectant-wipe': LABEL,
};

/** What is not rubbed in but left wet on a glove. */
const STAYS_WET: readonly ProductId[] = ['chlorine-0.5', 'disinfectant-wipe'];

/** How long things stay wet. Washing with soap and water has no contact time. */
const ON_THINGS: Readonly<Record<ProductId, Published | undefined>> = {
  'alcohol-hand-rub': contactOf('efficacy.alcohol-hand-rub.enveloped.hard'),
  'soap-and-water': undefined,
  'chlorine-0.05': CHLORINE,
  'chlorine-0.5': CHLORINE,
  'disinfectant-wipe': LABEL,
};

type OwnField = 'contactSeconds' | 'rubSeconds' | 'drySeconds';

function spec(
  kind: TimerKind,
  id: string,
  own: ProductTime | undefined,
  field: OwnField,
  published: Published | undefined,
): readonly TimerSpec[] {
  const seconds = own?.[field];
  if (own && seconds !== undefined) return [{ id, kind, seconds, source: own.source }];
  return published === undefined || published[0] === 0
    ? []
    : [{ id, kind, seconds: published[0], evidence: published[1] }];
}

/** Whether the same hands next put on a glove, and so must be dry. */
function glovesNext(performed: readonly Performed[], index: number): boolean {
  const who = performed[index]?.step.who;
  const next = performed.slice(index + 1).find(({ step }) => step.who === who);
  const [item] = next?.step.items ?? [];
  return next?.step.action === 'put-on' && item !== undefined && itemKind(item).group === 'glove';
}

const NOT_RUBBED: ReadonlySet<string> = new Set(['spray-hands']);
const ONTO: readonly Step['action'][] = ['step-on', 'stand', 'move'];

/** The product of a soaked mat that this step walks onto. */
function matProduct({ procedure }: Setup, step: Step): ProductId | undefined {
  if (!ONTO.includes(step.action)) return undefined;
  const mat = procedure.fixtures.find(({ id }) => id === step.fixture);
  return mat?.product as ProductId | undefined;
}

function handTimers(setup: Setup, performed: readonly Performed[], index: number): readonly TimerSpec[] {
  const one = performed[index];
  if (!one?.step.product || NOT_RUBBED.has(one.technique.id)) return [];
  const own = setup.unit.times?.[one.step.product];
  const { id, product } = one.step;
  const stays = STAYS_WET.includes(product);
  const rub = stays
    ? spec('contact', `${id}-contact`, own, 'contactSeconds', ON_HANDS[product])
    : spec('rub', `${id}-rub`, own, 'rubSeconds', ON_HANDS[product]);
  const wet = one.technique.id === 'rub-until-dry' && glovesNext(performed, index);
  return wet ? [...rub, ...spec('dry', `${id}-dry`, own, 'drySeconds', DRY)] : rub;
}

/** The times to be kept at a step; none for most. */
export function timersAt(setup: Setup, index: number): readonly TimerSpec[] {
  const performed = compiledFor(setup.procedure)[0]?.performed ?? [];
  const step = performed[index]?.step;
  if (!step) return [];
  if (step.action === 'sanitise') return handTimers(setup, performed, index);
  const product = step.action === 'wipe' ? step.product : matProduct(setup, step);
  if (!product) return [];
  return spec(
    'contact',
    `${step.id}-contact`,
    setup.unit.times?.[product],
    'contactSeconds',
    ON_THINGS[product],
  );
}
