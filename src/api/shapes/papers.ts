// Asking for a paper: the procedure as text, which paper, and what the journal of the one who asks says of it. The texts are
// judged by the program that reads procedures; here stands only how long they may be.
import * as z from 'zod';

export const PAPER_KINDS = ['chart', 'script', 'card', 'sign-off', 'dossier'] as const;
export const PAPER_SIZES = ['a4', 'letter'] as const;
export const PAPER_LANGUAGES = ['en', 'fr', 'es', 'pt'] as const;
export const PAPER_STAGES = ['not-recorded', 'draft', 'review', 'approved', 'retired'] as const;

/** Characters of a procedure's text, and bytes of a whole request. Some ten times the longest that was published. */
export const MOST_PAPER_TEXT = 256 * 1024;
export const MOST_PAPER_BODY = 1024 * 1024;

const kind = z.enum(PAPER_KINDS);
const size = z.enum(PAPER_SIZES);
const language = z.enum(PAPER_LANGUAGES);
const text = z.string().min(1).max(MOST_PAPER_TEXT);
const day = z.iso.date();

const sentence = z.string().max(1000);

/** Of one language. What the sentences may say is judged by whoever speaks them. */
const wording = z.strictObject({
  'signed-off': z.strictObject({ by: sentence, date: day }).optional(),
  steps: z.record(z.string(), z.strictObject({ 'instead-of': sentence, say: sentence })).optional(),
  sentences: z.record(z.string(), sentence).optional(),
});

export const paperRequest = z.strictObject({
  /** A procedure file (docs/procedure-file.md). */
  text,
  /** The donning that a doffing names. */
  donning: text.optional(),
  kind,
  size,
  language,
  /** Printed on it. */
  date: day.optional(),
  /** What the journal of the one who asks says of this version: on every page. */
  stage: z.strictObject({ is: z.enum(PAPER_STAGES), on: day.optional() }).optional(),
  /** The unit's own sentences, as a file of wording has them (docs/languages.md). */
  wording: z.record(z.string(), wording).optional(),
});

export type PaperRequest = z.infer<typeof paperRequest>;

export const offer = z.strictObject({
  kinds: z.array(kind),
  sizes: z.array(size),
  languages: z.array(language),
});

/** The file, and the name by which it is saved. */
export interface PdfFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly name: string;
}

export const pdf = z
  .custom<PdfFile>()
  .meta({ id: 'Pdf', type: 'string', format: 'binary', description: 'PDF 1.7, tagged.' });
