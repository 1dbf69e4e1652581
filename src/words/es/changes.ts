// What edits change, and two procedures side by side, in Spanish.
import type { Phrase } from '../romance/grammar.ts';
import { capital } from '../capital.ts';
import type { Comparing, Mends } from '../romance/tongue.ts';
import { de, to } from './grammar.ts';

const phrase = (text: string, many: boolean): Phrase => ({ text, gender: 'f', many });

export const MENDS: Mends = {
  insert: (where, steps) => `Insertar ${where}: ${steps}.`,
  beginning: 'al principio',
  after: (step) => `después ${de(step)}`,
  move: (step, where) => `Mover ${step.text} ${where}.`,
  leaveOut: (step) => `Omitir ${step.text}.`,
  replace: (number, sentence) => `Cambiar el paso ${number} por: ${sentence}`,
  groups: {
    mucosa: phrase('las mucosas', true),
    skin: phrase('la piel', false),
    'clothes-shoes': phrase('la ropa o los zapatos', true),
    'clean-side': phrase('el lado limpio', false),
  },
  impossible: 'Pasos que no se pueden hacer',
  departures: 'Desviaciones de la práctica publicada',
  time: 'Duración',
  openTo: (group) => `Vías abiertas hasta ${group.text}`,
  chanceOf: (group) => `Probabilidad de llegar ${to(group.text)}`,
  barriers: 'Barreras',
  gone: 'Hallazgos que desaparecen',
  fresh: 'Hallazgos nuevos',
  noLongerOpen: 'Ya no está abierto, pero sigue',
  newSlips: (count, places) =>
    `Nuevos fallos o circunstancias que bastan por sí solos: ${count} (hasta ${places})`,
  more: (count) => `y ${count} más`,
};

const WHICH = { a: 'Solo el primer procedimiento', b: 'Solo el segundo procedimiento' } as const;

export const COMPARING: Comparing = {
  fields: {
    who: 'quién lo hace',
    action: 'acción',
    items: 'elementos',
    side: 'lado',
    part: 'parte',
    of: 'de quién',
    place: 'zona del cuerpo',
    technique: 'técnica',
    product: 'producto',
    fixture: 'elemento de la sala',
    zone: 'zona',
    helper: 'ayuda',
    note: 'nota',
  },
  mats: 'alfombrillas',
  soakedMats: (product) => `alfombrillas empapadas (${product})`,
  wettedCloths: (product) => `paños empapados (${product})`,
  units: { wipe: ['toallita', 'toallitas'], use: ['uso', 'usos'], mat: ['alfombrilla', 'alfombrillas'] },
  pair: ['par', 'pares'],
  single: ['pieza suelta', 'piezas sueltas'],
  added: (step, told) => `Nuevo: paso ${step}. ${told}`,
  leftOut: (step, told) => `Omitido: paso ${step}. ${told}`,
  moved: (from, now) => `Movido: el paso ${from} es ahora el paso ${now}.`,
  movedAndChanged: (fields, from, now) =>
    `Movido y modificado (${fields}): el paso ${from} es ahora el paso ${now}.`,
  changed: (fields, from, now) => `Modificado (${fields}): paso ${from}, ahora paso ${now}.`,
  unchanged: (from, now) =>
    from === now ? `Sin cambios: paso ${now}.` : `Sin cambios: paso ${from}, ahora paso ${now}.`,
  beforeAndNow: (before, now) => `Antes: ${before} Ahora: ${now}`,
  kinds: (a, b) =>
    `${capital(a)} por un lado, ${b} por otro: lea sus cifras una junto a otra, sin ver en ello una mejor y otra peor.`,
  onlyOne: (which, name, isPerson) =>
    `${WHICH[which]} tiene ${name.text}: lo que llega ${isPerson ? 'a esa persona' : 'a ese elemento'} no se puede comparar y no cuenta en las cifras por clase.`,
  noDifference: 'ninguna diferencia',
  range: (low, high) => `intervalo del 90 %: de ${low} a ${high}`,
  points: 'puntos porcentuales',
  cannotTell: 'no se pueden distinguir',
  chance: ['menor', 'mayor'],
  time: ['más corto', 'más largo'],
};
