// A procedure and its check into papers, as data. Pure: no file, no clock; a date is printed only where it is given, so that
// the same procedure prints the same bytes.
import type { Verdict } from '../verify.ts';
import type { DocumentKind, PAPER_STAGES, PrintWords } from '../words/print/index.ts';
import type { Words } from '../words/words.ts';
import { cardBlocks } from './card.ts';
import { chartBlocks } from './chart.ts';
import { dossierBlocks } from './dossier.ts';
import type { Block, PrintModel } from './model.ts';
import { cautionBlocks, type Paper, paperOf } from './paper.ts';
import { scriptBlocks } from './script.ts';
import { signOffBlocks } from './signOff.ts';

export type * from './model.ts';
export { DOCUMENT_KINDS, type DocumentKind, PAPER_STAGES } from '../words/print/index.ts';

/** What the journal says of the version: stands on every page. */
export interface PaperStage {
  readonly is: (typeof PAPER_STAGES)[number];
  /** The day of an approval. */
  readonly on?: string | undefined;
}

export interface PrintOptions {
  readonly kind: DocumentKind;
  readonly words: Words;
  /** Shown as it is given. */
  readonly date?: string;
  /** Nothing is said of it where it is not given. */
  readonly stage?: PaperStage;
}

const BLOCKS: Readonly<Record<DocumentKind, (paper: Paper) => readonly Block[]>> = {
  chart: chartBlocks,
  script: scriptBlocks,
  card: cardBlocks,
  'sign-off': signOffBlocks,
  dossier: dossierBlocks,
};

/** The papers whose check needs mends and variants: they are worked out for no other. */
export const needsAll = (kind: DocumentKind): boolean => kind === 'dossier';

function stageText(print: PrintWords, { is, on }: PaperStage): string {
  return is === 'approved' && on !== undefined ? print.approvedOn(on) : print.stage[is];
}

/** A paper, ready to be set. */
export function printModel(verdict: Verdict, { kind, words, date, stage }: PrintOptions): PrintModel {
  const paper = paperOf(verdict, words);
  const { procedure, print } = paper;
  const blocks = BLOCKS[kind](paper);
  return {
    kind,
    language: words.language,
    document: print.document[kind],
    title: procedure.title,
    stamp: [
      ...(stage ? [stageText(print, stage)] : []),
      print.version(procedure.version),
      print.hash(verdict.hash),
      date ?? print.undated,
    ],
    warning: stage && stage.is !== 'approved' ? print.stage[stage.is] : null,
    invented: procedure.invented ? print.invented : null,
    page: print.page,
    defers: print.defers,
    holdMark: print.script.holdMark,
    blocks: kind === 'card' ? blocks : [...blocks, ...cautionBlocks(paper)],
  };
}
