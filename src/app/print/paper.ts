// Having a paper set by the server that the page came from: whether it can, the request as the journal and the languages of this
// device have it, and what became of it. Without a server the page prints itself, and nothing here is needed.
import type { ApiProblem, ProblemCode } from '../../api/problems.ts';
import type { PaperRequest } from '../../api/shapes/papers.ts';
import type { Language, Overrides } from '../../words/index.ts';
import type { DocumentKind } from '../../words/print/index.ts';
import type { BookState } from '../journal/book.ts';
import { trustIn } from '../languages/useTrust.ts';
import type { Approval } from '../library.ts';
import { saveFile } from '../parts/save.ts';
import { call, callForPaper } from '../sync/wire.ts';
import { today } from '../today.ts';

export type PaperSize = PaperRequest['size'];

/** A procedure that can be printed. */
export interface Printable {
  readonly text: string;
  /** The text of the donning that it names. */
  readonly donning?: string | undefined;
  readonly approval: Approval;
}

export interface Wanted {
  readonly kind: DocumentKind;
  readonly size: PaperSize;
  readonly language: Language;
}

/** `stranger`: this device does not belong to the server's unit. `cannot`: the server lacks what sets papers. */
export type Reach = 'asking' | 'can' | 'none' | 'stranger' | 'cannot';

const STRANGERS: readonly ProblemCode[] = [
  'not-signed-in',
  'not-paired',
  'device-revoked',
  'first-password',
  'not-allowed',
];

export async function reachNow(): Promise<Reach> {
  const answer = await call('read-papers');
  if (answer.is === 'answer') return 'can';
  if (answer.is === 'lost') return 'none';
  return STRANGERS.includes(answer.problem.code) ? 'stranger' : 'cannot';
}

type Wording = NonNullable<PaperRequest['wording']>;

/** The unit's own sentences of a language as a file has them, and who signed it off as the journal has it. */
function wordingOf(language: Language, overrides: Overrides, state: BookState): Wording {
  const own = overrides[language];
  const { signedOff } = trustIn(language, overrides, state);
  const steps = [...(own?.steps ?? [])].map(
    ([id, { insteadOf, say }]) => [id, { 'instead-of': insteadOf, say }] as const,
  );
  return {
    [language]: {
      ...(signedOff ? { 'signed-off': { by: signedOff.signedBy, date: signedOff.date } } : {}),
      steps: Object.fromEntries(steps),
      sentences: Object.fromEntries(own?.sentences ?? []),
    },
  };
}

/** The largest sheet that is usual where the browser's owner lives. */
export const usualSize = (): PaperSize => (/-(US|CA|MX)$/.test(navigator.language) ? 'letter' : 'a4');

export type Outcome =
  | { readonly is: 'saved'; readonly name: string }
  | { readonly is: 'faults'; readonly faults: NonNullable<ApiProblem['faults']> }
  | { readonly is: 'busy' | 'slow' | 'failed' | 'lost' };

function refused({ code, faults }: ApiProblem): Outcome {
  if (code === 'paper-unreadable') return { is: 'faults', faults: faults ?? [] };
  if (code === 'papers-busy' || code === 'too-many') return { is: 'busy' };
  return { is: code === 'paper-too-slow' ? 'slow' : 'failed' };
}

/** Has a paper set and offers it to be saved. Never throws. */
export async function printed(
  { text, donning, approval }: Printable,
  { kind, size, language }: Wanted,
  overrides: Overrides,
  state: BookState,
): Promise<Outcome> {
  const wording = wordingOf(language, overrides, state);
  const answer = await callForPaper({
    text,
    ...(donning === undefined ? {} : { donning }),
    kind,
    size,
    language,
    date: today(),
    stage: approval,
    wording,
  });
  if (answer.is === 'lost') return { is: 'lost' };
  if (answer.is === 'refused') return refused(answer.problem);
  saveFile(answer.body.name, answer.body.file);
  return { is: 'saved', name: answer.body.name };
}
