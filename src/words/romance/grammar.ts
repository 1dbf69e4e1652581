// What French, Spanish and Portuguese really share: nouns with a gender, an article that goes with it, adjectives behind
// the noun, prepositions that melt into the article, and steps in two forms (named, and read aloud). How each
// does that is its own (fr/, es/, pt/); nothing here is a word of any of them.
import type { Side } from '../../domain/places.ts';

export type Gender = 'm' | 'f';

/** Without article. `one` of a pair; `all` as it is worn; `many` when `all` takes the plural. */
export interface Noun {
  readonly one: string;
  readonly all: string;
  readonly gender: Gender;
  readonly many: boolean;
  /** Where the side does not simply follow the noun: 'planta del pie izquierdo'. */
  readonly left?: string;
  readonly right?: string;
}

/** With its article. `each`: its members where several are joined, since a preposition is said before each. */
export interface Phrase {
  readonly text: string;
  readonly gender: Gender;
  readonly many: boolean;
  readonly each?: readonly string[];
}

export interface Grammar {
  /** The definite article and the noun: "l'assistant", 'el mono', 'as luvas'. */
  readonly the: (noun: string, gender: Gender, many: boolean) => string;
  /** The indefinite article, singular. */
  readonly some: (noun: string, gender: Gender) => string;
  /** 'of', melted into the article that follows. */
  readonly of: (text: string) => string;
  /** Where a step is meant: "à l'étape 9", 'en el paso 9', 'na etapa 9'. */
  readonly at: (text: string) => string;
  readonly sides: Readonly<Record<Side, Readonly<Record<Gender, string>>>>;
  readonly joined: (texts: readonly string[]) => string;
  readonly quoted: (text: string) => string;
  /** The spaces that print wants before signs; changes no letter. */
  readonly set: (text: string) => string;
}

export const m = (one: string, all = one, many = false): Noun => ({ one, all, gender: 'm', many });
export const f = (one: string, all = one, many = false): Noun => ({ one, all, gender: 'f', many });
/** Comes in pairs, and is worn as such. */
export const pairM = (one: string, all: string): Noun => m(one, all, true);
export const pairF = (one: string, all: string): Noun => f(one, all, true);
/** Has no singular. */
export const manyM = (all: string): Noun => m(all, all, true);
export const manyF = (all: string): Noun => f(all, all, true);

export const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
export const spaced = (id: string): string => id.replaceAll('-', ' ');

/** Article and noun as a phrase. */
export const the = (grammar: Grammar, noun: Noun, text = noun.all, many = noun.many): Phrase => ({
  text: grammar.the(text, noun.gender, many),
  gender: noun.gender,
  many,
});

/** The phrase after 'of': 'de la surblouse et des gants'. */
const of = (grammar: Grammar, { text, each }: Phrase): string =>
  each ? grammar.joined(each.map(grammar.of)) : grammar.of(text);

/** `whole` after `part`: 'la face externe du gant'. */
export const partOf = (grammar: Grammar, part: Phrase, whole: Phrase): Phrase => ({
  ...part,
  text: `${part.text} ${of(grammar, whole)}`,
});

/** Several as one: masculine unless all are feminine. */
export function together(grammar: Grammar, phrases: readonly Phrase[]): Phrase | undefined {
  const [first] = phrases;
  if (phrases.length < 2) return first;
  const texts = phrases.map(({ text }) => text);
  return {
    text: grammar.joined(texts),
    gender: phrases.every(({ gender }) => gender === 'f') ? 'f' : 'm',
    many: true,
    each: texts,
  };
}
