// Spanish: 'a' and 'de' melt into 'el', 'y' becomes 'e' before the sound of i.
import type { Grammar, Phrase } from '../romance/grammar.ts';

const of = (text: string): string => (text.startsWith('el ') ? `del ${text.slice(3)}` : `de ${text}`);

/** 'a': 'al paso 9', 'a la cara'. */
export const to = (text: string): string => (text.startsWith('el ') ? `al ${text.slice(3)}` : `a ${text}`);

const and = (next: string): string => (/^h?i(?!e)/i.test(next) ? 'e' : 'y');

const joined = (texts: readonly string[]): string => {
  const last = texts.at(-1) ?? '';
  return texts.length < 2 ? last : `${texts.slice(0, -1).join(', ')} ${and(last)} ${last}`;
};

export const SPANISH: Grammar = {
  the: (noun, gender, many) => `${gender === 'f' ? (many ? 'las' : 'la') : many ? 'los' : 'el'} ${noun}`,
  some: (noun, gender) => `${gender === 'f' ? 'una' : 'un'} ${noun}`,
  of,
  at: (text) => (text === 'el inicio' ? 'al inicio' : `en ${text}`),
  sides: { left: { m: 'izquierdo', f: 'izquierda' }, right: { m: 'derecho', f: 'derecha' } },
  joined,
  quoted: (text) => `«${text}»`,
  set: (text) => text.replaceAll(' %', '\u00a0%'),
};

/** The participle of a stem: 'contaminad' -> 'contaminado', 'contaminadas' ... */
export const agree = (stem: string, { gender, many }: Phrase): string =>
  `${stem}${gender === 'f' ? 'a' : 'o'}${many ? 's' : ''}`;

/** Of a state: 'está', 'están'. */
export const is = ({ many }: Phrase): string => (many ? 'están' : 'está');
/** The third person of a verb in -ar: 'toca', 'tocan'. */
export const does = (stem: string, { many }: Phrase): string => `${stem}${many ? 'an' : 'a'}`;
/** 'lo', 'la', 'los', 'las' for a thing that was named. */
export const it = ({ gender, many }: Phrase): string => agree('l', { text: '', gender, many });
/** 'de' and the phrase; every member of several gets its own. */
export const de = ({ text, each }: Phrase): string => (each ? joined(each.map(of)) : of(text));
