// A paper as data: blocks in reading order, words already in them. Whoever sets it (Typst, a page, a test) knows nothing of
// procedures; whoever writes it knows nothing of paper.
import type { DocumentKind } from '../words/print/index.ts';

/** SVG text, and the same in words. */
export interface PictureBlock {
  readonly svg: string;
  readonly alt: string;
}

export interface ChartCell {
  readonly number: number;
  readonly who: string;
  readonly picture: PictureBlock;
  readonly sentence: string;
  readonly note: string | null;
  readonly hold: string | null;
}

export interface ScriptLine {
  readonly number: number;
  readonly who: string;
  /** The step's sentence, one action per line; joined by a blank it is the sentence again. */
  readonly lines: readonly string[];
  readonly note: string | null;
  readonly answer: string;
  readonly hold: string | null;
}

export interface CardLine {
  readonly number: number;
  readonly who: string | null;
  readonly text: string;
  readonly hold: boolean;
}

export type Block =
  | { readonly is: 'heading'; readonly level: 2 | 3; readonly text: string }
  | {
      readonly is: 'text';
      readonly text: string;
      /** `lead` stays with what follows it. */
      readonly tone: 'plain' | 'lead' | 'small' | 'strong' | 'boxed';
    }
  | {
      readonly is: 'list';
      readonly items: readonly string[];
      readonly numbered: boolean;
      /** A short line above it. */
      readonly title: string | null;
    }
  | {
      readonly is: 'table';
      /** Shares of the width; 0 is as wide as its words. */
      readonly widths: readonly number[];
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  | { readonly is: 'facts'; readonly facts: readonly (readonly [label: string, value: string])[] }
  | { readonly is: 'chart'; readonly cells: readonly ChartCell[] }
  | {
      readonly is: 'script';
      readonly heading: string;
      readonly head: readonly string[];
      readonly boxes: readonly string[];
      /** On one page where it fits; what follows the blanks of the first page may break. */
      readonly together: boolean;
      readonly lines: readonly ScriptLine[];
    }
  | { readonly is: 'cards'; readonly lines: readonly CardLine[]; readonly foot: readonly string[] }
  | {
      readonly is: 'ticks';
      readonly head: readonly string[];
      readonly boxes: readonly string[];
      readonly rows: readonly (readonly [number: string, text: string])[];
    }
  /** Choices, none of them ticked. */
  | { readonly is: 'choices'; readonly items: readonly string[] }
  /** Labels with room to write. */
  | { readonly is: 'blanks'; readonly labels: readonly string[] };

export interface PrintModel {
  readonly kind: DocumentKind;
  /** BCP 47. */
  readonly language: string;
  readonly document: string;
  readonly title: string;
  /** What is known of its approval, 'version 1', 'hash 0fd2u92', and the date where one was given: on every page. */
  readonly stamp: readonly string[];
  /** That nobody approved it, or works by it any more: once more, in large letters, at the head of every page. */
  readonly warning: string | null;
  /** On every page where the procedure is invented. */
  readonly invented: string | null;
  /** With {page} and {pages}. */
  readonly page: string;
  readonly defers: string;
  /** 'HOLD' and the like for short places. */
  readonly holdMark: string;
  readonly blocks: readonly Block[];
}
