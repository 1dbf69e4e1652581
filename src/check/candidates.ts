// Candidate edits for a finding: what a colleague would propose at each step of its route. Nothing here claims to help;
// mends.ts tries each one.
import type { Layer } from '../contacts/body.ts';
import type { Step } from '../domain/procedure.ts';
import { type Material, product, type ProductId, works } from '../domain/products.ts';
import { itemKind } from '../domain/items.ts';
import { techniquesFor, type TechniqueId } from '../domain/techniques/index.ts';
import type { Edit } from './edit.ts';
import type { Finding } from './finding.ts';
import { type CandidateContext, stepWith, zoneAt } from './proposals.ts';
import { repairs } from './repairs.ts';

/** The first product of the unit's that works on this material against this agent. */
function productFor({ procedure, agent }: CandidateContext, material: Material): ProductId | undefined {
  return procedure.products.find((id) => works(id, agent, material) && product(id).suits.includes(material));
}

const outerGlove = (context: CandidateContext, at: number, who: string): Layer | undefined =>
  context.performed[at]?.before.bodies[who]?.layers.findLast(
    (layer) => itemKind(layer.item).group === 'glove',
  );

/** Hand hygiene of this person before step `at`. */
function hygiene(context: CandidateContext, at: number, who: string): readonly Edit[] {
  const gloved = outerGlove(context, at, who) !== undefined;
  const chosen = productFor(context, gloved ? 'glove' : 'skin');
  if (!chosen) return [];
  return [
    {
      do: 'insert',
      at,
      steps: [stepWith(context, 'hygiene', { who, action: 'sanitise', items: [], product: chosen })],
    },
  ];
}

/** Fresh gloves before step `at`: hygiene, off, hygiene, on. */
function gloveChange(context: CandidateContext, at: number, who: string): readonly Edit[] {
  const glove = outerGlove(context, at, who)?.item;
  const onGlove = productFor(context, 'glove');
  const under = glove === 'outer-gloves' ? 'glove' : 'skin';
  // Where nothing the unit has works on the agent, fresh gloves are the mend, and hands are cleaned all the same.
  const beneath =
    productFor(context, under) ?? context.procedure.products.find((id) => product(id).suits.includes(under));
  if (!glove || !beneath) return [];
  const clean = (base: string, chosen: ProductId): Step =>
    stepWith(context, base, { who, action: 'sanitise', items: [], product: chosen });
  const steps: readonly Step[] = [
    ...(onGlove ? [clean('hygiene-gloved', onGlove)] : []),
    stepWith(context, 'gloves-off', { who, action: 'remove', items: [glove] }),
    clean('hygiene-beneath', beneath),
    stepWith(context, 'gloves-on', { who, action: 'put-on', items: [glove] }),
  ];
  return [{ do: 'insert', at, steps }];
}

const kindOf = (context: CandidateContext, fixture: string): string | undefined =>
  context.procedure.fixtures.find((candidate) => candidate.id === fixture)?.kind;

/** A fixture on the route (nobody stops to wipe a floor), wiped before step `at`. */
function wipe(context: CandidateContext, at: number, who: string, surface: string): readonly Edit[] {
  const [owner, fixture] = surface.split('.');
  const chosen = productFor(context, 'hard');
  if (owner !== 'room' || !fixture || !chosen || kindOf(context, fixture) === 'floor') return [];
  const steps = [stepWith(context, 'wipe', { who, action: 'wipe', items: [], fixture, product: chosen })];
  return [{ do: 'insert', at, steps }];
}

/** The same action by every other technique that fits. */
function otherTechniques(context: CandidateContext, at: number): readonly Edit[] {
  const step = context.procedure.steps[at];
  if (!step) return [];
  return techniquesFor(step.action, step.items)
    .filter((technique) => technique.id !== context.performed[at]?.technique.id)
    .map((technique) => ({ do: 'replace', at, step: { ...step, technique: technique.id as TechniqueId } }));
}

/** Another seat, mat or floor for a step that sits, stands, walks or is done to a fixture. */
function otherFixtures(context: CandidateContext, at: number): readonly Edit[] {
  const step = context.procedure.steps[at];
  if (!step || !['sit', 'stand', 'step-on'].includes(step.action)) return [];
  const kinds: readonly string[] = step.action === 'sit' ? ['chair'] : ['mat', 'floor'];
  const patient = context.procedure.zones.filter((zone) => zone.side === 'patient').map((zone) => zone.id);
  return context.procedure.fixtures
    .filter(({ kind, id, zone }) => id !== step.fixture && kinds.includes(kind) && !patient.includes(zone))
    .map(({ id }) => ({ do: 'replace', at, step: { ...step, fixture: id } }));
}

/** Leaving out a touch that nothing else needs; a removal or a cleaning is never left out as a mend. */
function leaveOut(context: CandidateContext, at: number): readonly Edit[] {
  return context.procedure.steps[at]?.action === 'touch' ? [{ do: 'remove', at }] : [];
}

/** A call, or a look by the observer, before or after step `at`; nobody is touched by it. */
function looksAndCalls(context: CandidateContext, at: number): readonly Edit[] {
  const { people, steps } = context.procedure;
  const who = people.find((person) => person.role === 'observer')?.id ?? steps[at]?.who ?? '';
  const wearer = steps[at]?.of ?? steps[at]?.who ?? '';
  const look = stepWith(context, 'look', {
    who,
    action: 'inspect',
    items: [],
    ...(who === wearer ? {} : { of: wearer }),
  });
  // A seal check names what is looked at.
  const items = steps[at]?.items ?? [];
  const named = steps[at]?.action === 'put-on' && items.length > 0 ? [{ ...look, items }] : [];
  const call = stepWith(context, 'call', { who, action: 'say', items: [] });
  return [look, ...named, call].flatMap((step) =>
    [at, at + 1].map((place): Edit => ({ do: 'insert', at: place, steps: [step] })),
  );
}

const REACH = 6;

/** Rub and wipes are where the step was written for: cleaning is moved about its own zone only. */
function staysByItsProduct(context: CandidateContext, from: number, to: number): boolean {
  const step = context.procedure.steps[from];
  if (step?.product === undefined) return true;
  return zoneAt(context, from, step.who) === zoneAt(context, to > from ? to + 1 : to, step.who);
}

/** The step earlier or later, within reach. */
function moves(context: CandidateContext, at: number): readonly Edit[] {
  const last = context.procedure.steps.length - 1;
  const places = Array.from({ length: 2 * REACH + 1 }, (_, index) => at - REACH + index);
  return places
    .filter((to) => to >= 0 && to <= last && to !== at && staysByItsProduct(context, at, to))
    .map((to) => ({ do: 'move', from: at, to }));
}

/** Who has a hand in this surface: `assistant.outer-gloves.left.outside` is the assistant's. */
const personOf = (context: CandidateContext, surface: string): string | undefined =>
  context.procedure.people.find((person) => surface.startsWith(`${person.id}.`))?.id;

function alongRoute(context: CandidateContext, finding: Finding): readonly Edit[] {
  return finding.route
    .filter((link) => link.step >= 0)
    .flatMap((link) => {
      const step = context.procedure.steps[link.step];
      const who = personOf(context, link.from ?? link.to) ?? step?.who ?? '';
      const people = [...new Set([step?.who ?? who, who])];
      return [
        ...people.flatMap((person) => [
          ...hygiene(context, link.step, person),
          ...hygiene(context, link.step + 1, person),
          ...gloveChange(context, link.step, person),
        ]),
        ...wipe(context, link.step, step?.who ?? who, link.from ?? ''),
        ...otherTechniques(context, link.step),
        ...otherFixtures(context, link.step),
        ...leaveOut(context, link.step),
        ...moves(context, link.step),
      ];
    });
}

function aroundStep(context: CandidateContext, at: number): readonly Edit[] {
  const who = context.procedure.steps[at]?.who ?? '';
  const helper = context.procedure.steps[at]?.helper;
  return [
    ...[who, ...(helper ? [helper] : [])].flatMap((person) => [
      ...hygiene(context, at + 1, person),
      ...hygiene(context, at, person),
    ]),
    ...gloveChange(context, at, who),
    ...looksAndCalls(context, at),
    ...otherTechniques(context, at),
    ...otherFixtures(context, at),
    ...leaveOut(context, at),
    ...moves(context, at),
  ];
}

/** Edits worth trying for a finding, without repeats. */
export function candidatesFor(context: CandidateContext, finding: Finding): readonly Edit[] {
  const [at = 0] = finding.steps;
  const found =
    finding.kind === 'impossible'
      ? [...repairs(context, finding, at), ...moves(context, at), ...otherTechniques(context, at)]
      : finding.route.length > 0
        ? alongRoute(context, finding)
        : aroundStep(context, at);
  return [...new Map(found.map((edit) => [JSON.stringify(edit), edit])).values()];
}
