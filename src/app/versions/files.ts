// The files that versions stand for, read once each, and offered to the pages that show a procedure: steps with picture,
// ledger, surfaces, supplies, comparison.
import type { Procedure } from '../../domain/procedure.ts';
import { readProcedure } from '../../language/index.ts';
import type { BookState } from '../journal/book.ts';
import { book } from '../journal/useBook.ts';
import { offerVersions } from '../library.ts';
import { allVersions, approvalOf, entryIdOf, stageText } from './model.ts';

const read = new Map<string, Procedure | undefined>();

/** The procedure of a file by the hash of its text; undefined where this device has not got it. */
export function fileIn({ texts }: Pick<BookState, 'texts'>, content: string): Procedure | undefined {
  const text = Object.hasOwn(texts, content) ? texts[content] : undefined;
  if (text === undefined) return undefined;
  if (!read.has(content)) read.set(content, readProcedure(text).procedure);
  return read.get(content);
}

const fileName = (procedure: string, version: string): string =>
  `${procedure}-v${version.replaceAll(/[^\p{L}\p{N}.]+/gu, '-')}.yaml`;

/** The question to the check, and the file to save. */
export function fileOf(
  { texts }: Pick<BookState, 'texts'>,
  procedure: string,
  { version, content }: { readonly version: string; readonly content: string },
): { readonly text: string; readonly fileName: string } | undefined {
  const text = Object.hasOwn(texts, content) ? texts[content] : undefined;
  return text === undefined ? undefined : { text, fileName: fileName(procedure, version) };
}

/** Keeps the list of versions in step with the journal. */
export function followBook(): void {
  const offer = (): void => {
    const state = book.state();
    offerVersions(
      allVersions(state).flatMap((known) => {
        const file = fileOf(state, known.procedure, known.version);
        return file
          ? [
              {
                ...file,
                id: entryIdOf(known.version),
                stage: stageText(known),
                approval: approvalOf(known.version),
              },
            ]
          : [];
      }),
    );
  };
  book.subscribe(offer);
  offer();
}
