// What no sentence of a language may contain, for the tests of every language. The lists are of our own choosing: they
// find a word left over from English, a preposition that did not melt into its article, and a verdict.
import type { Language } from '../../src/words/index.ts';

export type Foreign = Exclude<Language, 'en'>;
export const FOREIGN: readonly Foreign[] = ['fr', 'es', 'pt'];

/** English function words that none of these languages has: 'a', 'as', 'do', 'no', 'on', 'son' ... are theirs too. */
const ENGLISH_WORDS =
  'the of and with without from by into onto is are was were be been this that these those which who whose it its they them ' +
  'their at for not nobody nothing before after when where while until may must should could would has have had step ' +
  'remove put clean wipe touch touches glove gloves gown hand hands left right outer inner face mask hood helper ' +
  'wearer observer assistant undefined null';

const ENGLISH = new RegExp(`(?<![\\p{L}-])(${ENGLISH_WORDS.split(' ').join('|')})(?![\\p{L}-])`, 'iu');

/**
 * Said in English on purpose: names that a file gives, which stand in quotes, and the file's own reasons. `of` is none of
 * theirs, `face` is French and Portuguese, `observer` a French verb.
 */
const LOANS: Readonly<Record<Foreign, readonly string[]>> = {
  fr: ['face', 'assistant', 'observer'],
  es: [],
  pt: ['face'],
};

const GRAMMAR: Readonly<Record<Foreign, readonly RegExp[]>> = {
  fr: [
    /(?<![\p{L}-])(le|la|de|ne|que|se|je) (?=[aeiouyâàéèêëîïôùû])/iu,
    /(?<![\p{L}-])(le|la|de|que) h(?=yg|abill|eure|omme|umid)/iu,
    /(?<!\p{L})de les?(?!\p{L})/iu,
    /(?<!\p{L})à les?(?!\p{L})/iu,
    /(?<!\p{L})si ils?(?!\p{L})/iu,
    /['’] /u,
    // The space before these signs does not break.
    /[^\u00a0][;?!»](\s|$)| :|« /u,
  ],
  es: [/(?<!\p{L})(a|de) el(?!\p{L})/iu, /(?<!\p{L})y h?i(?!e)\p{L}*/iu, /(?<!\p{L})o h?o\p{L}+/iu],
  pt: [
    /(?<!\p{L})(de|em|por) (o|a|os|as)(?!\p{L})/iu,
    /(?<!\p{L})a (o|os)(?!\p{L})/iu,
    /(?<!\p{L})a as?(?!\p{L})/iu,
  ],
};

/** 'is clean', 'are safe': the program never says so. */
const VERDICT: Readonly<Record<Foreign, RegExp>> = {
  fr: /(?<!\p{L})(est|sont|reste(nt)?|devien(t|nent)|semble(nt)?) (désormais |maintenant )?(propres?|sûre?s?|sans danger|sans risque|sains?|saines?)(?!\p{L})/iu,
  es: /(?<!\p{L})(es|son|está|están|queda|quedan|sigue|siguen) (ahora |ya )?(limpi[oa]s?|segur[oa]s?|sin peligro|sin riesgo)(?!\p{L})/iu,
  pt: /(?<!\p{L})(é|são|está|estão|fica|ficam|continua|continuam) (agora |já )?(limp[oa]s?|segur[oa]s?|sem perigo|sem risco)(?!\p{L})/iu,
};

/** A noun and an adjective or participle that disagree, as far as a pattern can see it. */
const AGREEMENT: Readonly<Record<Foreign, readonly RegExp[]>> = {
  fr: [
    /\bgants? (extérieure|intérieure|droite)/u,
    /\b(main|chaussure|botte|surbotte) droit\b/u,
    /\bles gant\b/u,
  ],
  es: [
    /\bguante (exteriores|interiores|izquierda|derecha)/u,
    /\b(mano|bota de goma|pernera|manga|muñeca) (izquierdo|derecho)\b/u,
    /\blos guante\b/u,
  ],
  pt: [
    /\bluva (externas|internas|esquerdo|direito)/u,
    /(?<!\p{L})(mão|bota de borracha|manga|coxa) (esquerdo|direito)\b/u,
    /\bas luva\b/u,
  ],
};

/** Texts that stand in quotes are the file's own. */
const withoutQuotes = (text: string): string => text.replaceAll(/«[^»]*»|“[^”]*”/gu, 'X');

/** What is wrong with a sentence of this language; undefined where nothing is. */
export function faultIn(language: Foreign, text: string): string | undefined {
  if (text.trim() === '') return 'empty';
  if (/undefined|null|NaN|\[object|[{}]| {2}|\.\.|::|: :/.test(text)) return `hole: ${text}`;
  if (VERDICT[language].test(text)) return `verdict: ${text}`;
  for (const pattern of [...GRAMMAR[language], ...AGREEMENT[language]]) {
    const found = pattern.exec(text);
    if (found) return `"${found[0]}": ${text}`;
  }
  let rest = withoutQuotes(text);
  for (const loan of LOANS[language]) rest = rest.replaceAll(new RegExp(`\\b${loan}s?\\b`, 'giu'), 'X');
  const english = ENGLISH.exec(rest);
  return english ? `English "${english[0]}": ${text}` : undefined;
}
