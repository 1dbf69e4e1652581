// The shape of a procedure file, format version 1: which keys, which kinds of value. What names mean to one another
// (is there such a zone?) is checked afterwards. The published JSON Schema is made from this.
import * as z from 'zod';
import { step } from './shape-steps.ts';
import * as w from './words.ts';

const source = z.strictObject({
  title: w.short.describe('Title of the document.'),
  publisher: w.short.describe('Who published it.'),
  year: w.label.optional().describe('Year of publication.'),
  where: w.text.optional().describe('Page, section or address.'),
  seen: w.text.describe('What was read at the source.'),
  memory: w.text.optional().describe('What is from memory.'),
  interpreted: w.text.optional().describe('What we interpreted.'),
});

const person = z.strictObject({
  role: w.role.optional(),
  wears: z.array(w.item).optional().describe('Worn at the start, in the order of putting on.'),
  underneath: z.array(w.item).optional().describe('Worn beneath and kept on; scrubs and shoes unless said.'),
  starts: w.name.optional().describe('Zone at the start.'),
  hand: w.side.optional().describe('The dominant hand; right unless said.'),
  'leaves-bare': z
    .array(w.placeOrPair)
    .optional()
    .describe('Places that this ensemble leaves bare on purpose.'),
});

const fixture = z.strictObject({
  kind: w.fixtureKind,
  zone: w.name.describe('Zone in which it stands.'),
  clean: z.boolean().optional().describe('Kept clean to the end; false unless said.'),
  worked: w.worked.optional(),
  product: w.product.optional().describe('What a mat is soaked with.'),
});

const room = z.strictObject({
  zones: z.record(w.zoneName, w.zoneSide).describe("Zones from the patient's side to the clean side."),
  fixtures: z
    .record(w.name, fixture)
    .optional()
    .describe('What people touch, sit and stand on. Floors come by themselves.'),
});

const startingState = z.strictObject({
  surface: w.short.describe('A surface, like wearer.apron.front or room.door.handle.'),
  state: w.state,
  reason: w.note.optional().describe('Why.'),
});

const policy = z.strictObject({
  'credit-spraying': z
    .boolean()
    .optional()
    .describe('Whether spraying counts as cleaning; false unless said.'),
  observer: z
    .strictObject({
      misses: w.observerEvidence,
      dependence: w.dependence,
    })
    .optional()
    .describe('How far the observer is relied on; not at all unless said.'),
});

const acceptance = z.strictObject({
  finding: w.short.describe('Code of the finding that the unit accepts.'),
  step: w.name.optional().describe('Id of the step; everywhere unless said.'),
  surface: w.short.optional().describe('Only for this surface.'),
  reason: w.text.describe('Why it is accepted.'),
  by: w.short.describe('Who accepts it, by role.'),
  date: w.date.describe('When it was accepted.'),
  review: w.date.describe('When it must be looked at again.'),
});

export const procedureFile = z.strictObject({
  doffline: z
    .literal('1', { error: 'version-not-known' })
    .meta({ type: 'integer', const: 1, description: 'Version of this file format.' }),
  title: w.label.describe('Title of the procedure.'),
  kind: w.kind,
  version: w.version.describe('Version of the procedure; never edited, only followed by the next.'),
  invented: z.boolean().optional().describe('True for invented demonstration data.'),
  about: w.text.optional().describe('What it is for.'),
  source: source.optional().describe('The published document it follows.'),
  agents: z
    .array(w.agent)
    .min(1)
    .optional()
    .describe('Kinds of agent it must hold against; enveloped unless said.'),
  donning: w.short.optional().describe('File of the donning that this doffing undoes.'),
  people: z.record(w.name, person).describe('Who takes part, by name in this file; never real names.'),
  room: room.describe('Zones and fixtures.'),
  products: z.array(w.product).optional().describe('Products at hand.'),
  start: z.array(startingState).optional().describe('Surfaces whose state at the start is known.'),
  policy: policy.optional().describe("The unit's own rules."),
  steps: z.array(step).min(1).describe('The steps in order.'),
  accepted: z.array(acceptance).optional().describe('Findings that the unit accepts, in writing.'),
});

/** The same with steps unchecked: steps are checked one by one, since there may be many. */
export const fileWithoutSteps = procedureFile.extend({ steps: z.array(z.unknown()).min(1) });

export type FileShape = z.output<typeof procedureFile>;
export type PersonShape = z.output<typeof person>;
export type FixtureShape = z.output<typeof fixture>;

/** The same with anything missing: what is left of a file once its wrong values are taken out. */
export type Loose<T> = T extends readonly (infer Element)[]
  ? readonly (Loose<Element> | undefined)[]
  : T extends object
    ? { readonly [Key in keyof T]?: Loose<T[Key]> | undefined }
    : T | undefined;
export type LooseFile = Loose<FileShape>;
