// The order search and substitution in Spanish.
import { lower } from '../romance/grammar.ts';
import type { OrderTable } from '../orderWords.ts';
import { SPANISH } from './grammar.ts';

const { of, quoted } = SPANISH;

const which = (kept: boolean): string => (kept ? 'el dado' : 'este');

/** Percentages take an article: 'pasa del 1,1 % al 1,2 %'. */
const from = (text: string): string => (text.endsWith('%') ? `del ${text}` : `de ${text}`);
const to = (text: string): string => (text.endsWith('%') ? `al ${text}` : `a ${text}`);

export const ORDERING: OrderTable = {
  figure: (is, name) => {
    if (is === 'seconds' || is === 'chance') return `la ${lower(name)}`;
    return `el número de ${lower(name)}`;
  },
  points: (size) => `${size} ${size === '1' ? 'punto porcentual' : 'puntos porcentuales'}`,
  slight: (within, rises) => `menos de ${within} ${rises ? 'más' : 'menos'}`,
  difference: (name, [before, after, within], rests, rises) => {
    if (within === undefined) return `${name} pasa ${from(before)} ${to(after)}${rests}`;
    return `${name} ${rises ? 'aumenta' : 'disminuye'} menos de ${within} y, redondeada, es ${from(before)} en ambos casos${rests}`;
  },
  chosen: {
    order: (step, next) => `${step} antes ${of(next)}`,
    technique: (step) => `${step} como se indica aquí`,
    helper: (step, helped) => `${step}${helped}`,
    hygiene: (step) => `${step} en este momento`,
    numbered: (step, number) => `${step} (paso ${number})`,
  },
  other: {
    order: 'en el orden inverso',
    technique: (way) => `con ${quoted(way)}`,
    helper: 'sin ayuda',
    hygiene: 'sin eso',
  },
  reason: {
    worse: (other, difference) => `, ya que ${other} ${difference}.`,
    impossible: (other, wrong) => `, ya que ${other} no se puede hacer: ${wrong}.`,
    departs: (other, rule) =>
      `, ya que ${other} habría una desviación de una práctica publicada: ${quoted(rule)}.`,
    same: (other) => `; ${other} ninguna cifra cambia.`,
    better: (other, difference) =>
      `; ${other} ${difference}, pero la búsqueda no puede elegir eso o no lo siguió hasta el final.`,
  },
  tried: (tried, scenes) =>
    `${tried} ${tried === 1 ? 'comienzo de orden probado' : 'comienzos de orden probados'} en ${scenes} ${scenes === 1 ? 'situación' : 'situaciones'}`,
  proved: (kept, tried) =>
    `Demostrado: ningún orden que la búsqueda puede elegir es mejor que ${which(kept)} (${tried}).`,
  notProved: (kept, name, [least, found, within], rests, tried) =>
    `No demostrado: órdenes que no se siguieron hasta el final aún podrían ser mejores que ${which(kept)}. ` +
    `La diferencia: ${name} es ${from(found)}, y ningún orden que la búsqueda puede elegir ${within === undefined ? `queda por debajo ${from(least)}` : `la reduce en ${within} o más`}${rests} (${tried}).`,
  rewritings: {
    'same-steps': 'Bastan los mismos pasos.',
    'few-steps': 'Unos pocos pasos se mueven o se añaden.',
    'new-order': 'Hace falta un orden nuevo.',
  },
  kept: 'Nada es peor que antes, salvo quizá la duración.',
  lost: 'Algo es peor que antes.',
  changes: {
    new: (now) => `Nuevo: ${now}`,
    gone: (was) => `Omitido: ${was}`,
    moved: (now) => `En otro lugar: ${now}`,
    changed: (now, was) => `Modificado: ${now}${was && ` Antes: ${was}`}`,
  },
  learns: (person, count, role) =>
    `${person} ${role === 'observer' ? 'lee y vigila' : 'aprende'} ${count} ${count === 1 ? 'paso modificado' : 'pasos modificados'}.`,
  refusals: {
    donning: 'Solo una retirada tiene un orden que buscar; esto es una colocación.',
    'nothing-worn': 'En este procedimiento nadie lleva nada que se quite.',
    unknown:
      'Indique dos elementos, o dos productos, por sus nombres en el archivo (docs/procedure-file.md).',
    'not-alike': 'Un elemento solo puede sustituir a un elemento, un producto a un producto.',
    'not-used': 'Este procedimiento no lo usa.',
    'used-already': 'Los dos se llevan ya puestos.',
  },
};
