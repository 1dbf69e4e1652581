// Portuguese, as written in Brazil: 'de', 'em', 'a' and 'por' all melt into the article that follows.
import type { Grammar, Phrase } from '../romance/grammar.ts';

const ARTICLE = /^(os|as|o|a) /;

/** Melts a preposition into the article that a phrase begins with, if it begins with one. */
function melted(before: string, text: string, forms: Readonly<Record<string, string>>): string {
  const article = ARTICLE.exec(text)?.[1];
  const form = article === undefined ? undefined : forms[article];
  return article === undefined || form === undefined
    ? `${before} ${text}`
    : `${form} ${text.slice(article.length + 1)}`;
}

const of = (text: string): string => melted('de', text, { o: 'do', a: 'da', os: 'dos', as: 'das' });
/** 'em': 'na etapa 9', 'no piso'. */
export const within = (text: string): string =>
  melted('em', text, { o: 'no', a: 'na', os: 'nos', as: 'nas' });
/** 'a': 'ao rosto', 'às mãos'. */
export const to = (text: string): string => melted('a', text, { o: 'ao', a: 'à', os: 'aos', as: 'às' });
/** 'por': 'pelo capote', 'pelas luvas'. */
export const by = (text: string): string =>
  melted('por', text, { o: 'pelo', a: 'pela', os: 'pelos', as: 'pelas' });

const joined = (texts: readonly string[]): string =>
  texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} e ${texts.at(-1) ?? ''}`;

export const PORTUGUESE: Grammar = {
  the: (noun, gender, many) => `${gender === 'f' ? 'a' : 'o'}${many ? 's' : ''} ${noun}`,
  some: (noun, gender) => `${gender === 'f' ? 'uma' : 'um'} ${noun}`,
  of,
  at: within,
  sides: { left: { m: 'esquerdo', f: 'esquerda' }, right: { m: 'direito', f: 'direita' } },
  joined,
  quoted: (text) => `“${text}”`,
  set: (text) => text,
};

/** The participle of a stem: 'contaminad' -> 'contaminado', 'contaminadas' ... */
export const agree = (stem: string, { gender, many }: Phrase): string =>
  `${stem}${gender === 'f' ? 'a' : 'o'}${many ? 's' : ''}`;

/** Of a state: 'está', 'estão'. */
export const is = ({ many }: Phrase): string => (many ? 'estão' : 'está');
/** The third person of a verb in -ar: 'toca', 'tocam'. */
export const does = (stem: string, { many }: Phrase): string => `${stem}${many ? 'am' : 'a'}`;
/** 'o', 'a', 'os', 'as' for a thing that was named. */
export const it = ({ gender, many }: Phrase): string => agree('', { text: '', gender, many });
/** 'de' and the phrase; every member of several gets its own. */
export const de = ({ text, each }: Phrase): string => (each ? joined(each.map(of)) : of(text));
