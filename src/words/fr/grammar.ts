// French: elision before a vowel, 'de' melted into the article, and the spaces that French print sets before its signs.
import type { Grammar, Phrase } from '../romance/grammar.ts';

/** A vowel or a mute h begins the word; no word of the tables begins with an aspirated one. */
const ELIDES = /^[aeiouyhàâéèêëîïôùû]/i;
const HARD_SPACE = '\u00a0';

function of(text: string): string {
  if (text.startsWith('le ')) return `du ${text.slice(3)}`;
  if (text.startsWith('les ')) return `des ${text.slice(4)}`;
  return ELIDES.test(text) ? `d'${text}` : `de ${text}`;
}

/** 'à': "à l'étape 9", 'au départ'. */
export function to(text: string): string {
  if (text.startsWith('le ')) return `au ${text.slice(3)}`;
  if (text.startsWith('les ')) return `aux ${text.slice(4)}`;
  return `à ${text}`;
}

export const FRENCH: Grammar = {
  the: (noun, gender, many) => {
    if (many) return `les ${noun}`;
    if (ELIDES.test(noun)) return `l'${noun}`;
    return `${gender === 'f' ? 'la' : 'le'} ${noun}`;
  },
  some: (noun, gender) => `${gender === 'f' ? 'une' : 'un'} ${noun}`,
  of,
  at: to,
  sides: { left: { m: 'gauche', f: 'gauche' }, right: { m: 'droit', f: 'droite' } },
  joined: (texts) =>
    texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} et ${texts.at(-1) ?? ''}`,
  quoted: (text) => `« ${text} »`,
  set: (text) =>
    text
      .replaceAll(/[ \u00a0]?([:;?!])(?=\s|$)/g, `${HARD_SPACE}$1`)
      .replaceAll(' %', `${HARD_SPACE}%`)
      .replaceAll(/«[ \u00a0]?/g, `«${HARD_SPACE}`)
      .replaceAll(/[ \u00a0]?»/g, `${HARD_SPACE}»`),
};

/** 'contaminé', 'contaminées' ... as the noun asks. */
export const agree = (word: string, { gender, many }: Phrase): string =>
  `${word}${gender === 'f' ? 'e' : ''}${many ? 's' : ''}`;

export const is = ({ many }: Phrase): string => (many ? 'sont' : 'est');
/** The third person of a regular verb: 'touche', 'touchent'. */
export const does = (stem: string, { many }: Phrase): string => `${stem}${many ? 'ent' : 'e'}`;
/** 'le', 'la', 'les' for a thing that was named. */
export const it = ({ gender, many }: Phrase): string => (many ? 'les' : gender === 'f' ? 'la' : 'le');
/** 'de' and the phrase; every member of several gets its own. */
export const de = ({ text, each }: Phrase): string => (each ? FRENCH.joined(each.map(of)) : of(text));
